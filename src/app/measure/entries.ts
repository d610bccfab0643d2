/** Changes of the notebook: another reading, one less, several from a table. */
import type { Design, Part, Seat } from '../../design/definition.ts';
import { predictedReading } from '../../report/measure/predictedReading.ts';
import { KINDS, type Kind, type Reading } from './kinds.ts';

/** Uncertainties a new entry starts with (mm): a micrometer, an indicator; common practice, no source. */
const MICROMETER = 0.002;
const INDICATOR = 0.001;
/** mm, a usual sine bar; common practice, no source */
const BAR = 100;
/** mm, usual rolls; common practice, no source */
const ROLLS = [10, 8, 6, 5, 4, 3, 2, 1];

/**
 * A set-up of a kind, on the first seat it can be taken on, half way along the surface. Its value is what the parts
 * as drawn would give: to be shown as such, and never to be taken for a reading.
 */
export function newReading(design: Design, kind: Kind): Reading {
  const seat = design.seats.find(({ bush }) => kind !== 'ballDepth' || bush.halfAngle !== 0) ?? design.seats[0]!;
  const reading = setUpFor(kind, seat, KINDS[kind].parts[0] ?? 'journal', design);
  const { value } = predictedReading(design, reading);
  return { ...reading, value: value === null ? 0 : round(value) };
}

function setUpFor(kind: Kind, seat: Seat, part: Part, design: Design): Reading {
  const { from, to, halfAngle, diameter, station } = seat[part];
  const middle = round((from + to) / 2);
  const on = { seat: seat.name, part, value: 0 };
  switch (kind) {
    case 'diameter':
      return { kind, ...on, sigma: MICROMETER, station: middle };
    case 'overRolls':
      return { kind, ...on, sigma: MICROMETER, roll: ROLLS.find((roll) => roll <= (to - from) / 3) ?? 1, station: middle };
    case 'ballDepth':
      // The ball that touches half way along stands square to the line there.
      return { kind, ...on, sigma: MICROMETER, ball: round((diameter + 2 * (middle - station) * Math.tan(radians(halfAngle))) / Math.cos(radians(halfAngle))), face: to };
    case 'sineRise':
      return { kind, ...on, sigma: INDICATOR, bar: BAR, stack: round(BAR * Math.sin(radians(halfAngle))), travel: round(0.7 * (to - from)) };
    case 'straightness':
      return { kind, ...on, sigma: INDICATOR, station: middle };
    case 'standOff':
      return { kind, value: 0, sigma: INDICATOR };
    case 'shake':
      return { kind, value: 0, sigma: INDICATOR, indicator: design.play?.indicator ?? to, position: design.position ?? 0, direction: 0 };
  }
}

const radians = (degrees: number) => (degrees * Math.PI) / 180;
const round = (mm: number) => Number(mm.toFixed(4));

export const withReadings = (design: Design, readings: readonly Reading[]): Design => ({ ...design, readings: [...(design.readings ?? []), ...readings] });

export function withoutReading(design: Design, index: number): Design {
  const { readings = [], ...rest } = design;
  const kept = readings.filter((_, i) => i !== index);
  return kept.length > 0 ? { ...rest, readings: kept } : rest;
}
