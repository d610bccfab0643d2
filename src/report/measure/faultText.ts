/** Why a reading cannot have been taken like that, in a machinist's words. */
import type { Design } from '../../design/definition.ts';
import { madeIn, toolText } from '../../design/tools.ts';
import { placeText, type System } from '../../design/units.ts';
import type { Fault } from '../../engine/gauging/reading.ts';
import { millimetres } from '../convert.ts';
import type { FaultReport } from './definition.ts';

/** Lengths of a fault, by name, in mm. */
type Lengths = Record<string, number>;

/** A fault of the engine for the report. */
export function faultReport(design: Design, index: number, fault: Fault): FaultReport {
  const lengths: Lengths = {};
  for (const [key, value] of Object.entries(fault))
    if (typeof value === 'number' && key !== 'seat') lengths[key] = millimetres(value);
  const told: Omit<FaultReport, 'message'> = { index, what: fault.what };
  if ('seat' in fault) told.seat = design.seats[fault.seat]!.name;
  if ('part' in fault) told.part = fault.part;
  if ('end' in fault) told.end = fault.end;
  if (Object.keys(lengths).length > 0) told.lengths = lengths;
  return { ...told, message: faultText(told, 'metric') };
}

/** What is wrong with the reading; a whole sentence without the full stop. */
export function faultText(
  { what, seat, part, end, lengths = {} }: Omit<FaultReport, 'message'>,
  system: System,
): string {
  const at = (key: string) => placeText(lengths[key] ?? Number.NaN, system);
  const tool = (key: string) => toolText(lengths[key] ?? Number.NaN, system);
  switch (what) {
    case 'wrongPart':
      return part === 'bush'
        ? 'rolls stand against a journal, and this is a bush: use balls'
        : 'a ball rests in a bush, and this is a journal: use rolls';
    case 'straight':
      return 'a straight bore holds no ball; it falls through or does not enter';
    case 'falls':
      return `the ball of ${tool('ball')} is too small: it falls through the bush, which is ${at('bore')} where it is narrowest`;
    case 'edge':
      return `it would rest on the edge at the ${end} end (station ${at('station')}) and not on the surface: take a ${end === 'small' ? 'larger' : 'smaller'} ball, or stand the rolls further ${end === 'small' ? 'toward the large end' : 'toward the small end'}`;
    case 'missed':
      return `station ${at('station')} is not on the surface, which reaches from ${at('from')} to ${at('to')}`;
    case 'otherSeat':
      return `it would touch the ${seat} surface first`;
    case 'blocked':
      return `it cannot get in past the ${seat} bush, which is ${at('bore')} where it is narrowest`;
    case 'stackBeyondBar':
      return `the stack of ${placeText(lengths.stack ?? Number.NaN, madeIn(lengths.bar ?? Number.NaN, system))} is as long as the sine bar of ${tool('bar')} or longer: the bar would stand upright`;
    case 'travelBeyondLine':
      return `the travel of ${at('travel')} is longer than the line of the surface, ${at('line')}`;
    case 'riseBeyondBar':
      return `a rise of ${at('rise')} goes beyond the sine bar of ${tool('bar')}: the line would stand square to the plate`;
    case 'crossesAxis':
      return `a rise of ${at('rise')} over a travel of ${at('travel')} would lean the line across the axis of the part`;
    case 'ofEnd':
      return `straightness is told from the line end to end, so it is nothing at station ${at('station')}, an end: set the indicator to nothing at both ends`;
    case 'negative':
      return 'a shake is the whole travel of the indicator from side to side and cannot be less than nothing';
    case 'nothingCloses':
      return 'no seat closes as the journal goes rearward, so nothing touches first';
    case 'neverTouches':
      return 'the parts never touch as the journal goes rearward: the one passes through the other or cannot enter it';
    case 'interferes':
      return `at this position the journal is ${at('interference')} into its bush, so it cannot have been shaken there`;
    case 'unbounded':
      return 'nothing restrains the journal in this direction at this position';
    case 'stalled':
      return 'it could not be worked out: a search did not come to rest';
  }
}
