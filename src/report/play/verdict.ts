/** How the spindle sits and shakes in a machinist's words: a headline and a few sentences, from the report alone. */
import type { Design } from '../../design/definition.ts';
import { fromUnit, inUnit, measureText, unitOf } from '../../design/measures.ts';
import { type AngleWay, angleSaid, fineText, placeText, type System } from '../../design/units.ts';
import type { FitReport } from '../fit/definition.ts';
import { fitVerdict, type Verdict } from '../fit/verdict.ts';
import type { PlayReport, SeatedReport, ShakeReport } from './definition.ts';

/** A travel (mm) that no shop indicator shows. */
const STILL = 1e-4;
/** The press a freeing force is told for (N): a firm push by hand, 100 N or 20 lbf. */
const PRESS: Record<System, number> = { metric: 100, inch: fromUnit('force', 20, 'inch') };

/** `way`: how the person says angles. */
export function playVerdict(
  design: Design,
  play: PlayReport,
  fit: FitReport,
  system: System,
  way: AngleWay = 'half',
): Verdict {
  const { seated } = play;
  if (seated.status === 'infeasible') {
    return {
      tone: 'stop',
      headline: `The spindle does not go in: however it lies, it is ${fineText(seated.interference!, system)} into a bush.`,
      sentences: [],
    };
  }
  if (play.endPlay !== null && play.endPlay < -STILL) {
    return {
      tone: 'stop',
      headline: `The spindle does not go in: its two stops overlap by ${fineText(-play.endPlay, system)}.`,
      sentences: [],
    };
  }
  const sticking = stickingSeats(play);
  const sentences = [
    shakeSentence(play, system),
    againstSentence(play, system),
    endPlaySentence(play, system),
    ...sticking.map((name) => stickingSentence(design, play, name, system, way)),
  ];
  const rocks = (play.shakeAgainst?.total ?? 0) > STILL;
  const sound = seated.status === 'solved' && sticking.length === 0 && !rocks && play.shake.status === 'solved';
  // That it cannot rock when pressed home is no praise where the films are wrong.
  const fits = fitVerdict(design, fit, system).tone === 'good';
  return {
    tone: sound ? (fits ? 'good' : 'plain') : 'mend',
    headline: seatedHeadline(design, play, system),
    sentences: sentences.filter((s) => s !== ''),
  };
}

function seatedHeadline(design: Design, play: PlayReport, system: System): string {
  const { seated } = play;
  if (seated.status === 'stalled')
    return 'The spindle finds no seat: a part rests on its edge, or only just enters its bush.';
  if (seated.status === 'unbounded') {
    if (play.noseStop !== null)
      return `Nothing stops the spindle going rearward; going noseward it stops at ${fineText(play.noseStop, system)}.`;
    return 'Nothing stops the spindle axially, either way.';
  }
  const shares = seatShares(seated);
  const names = [...shares.keys()];
  if (names.length === 0) return 'The spindle bears nowhere.';
  if (names.length === 1)
    return `Pushed home, the spindle bears in the ${names[0]} seat alone${placeClause(design, seated, names[0]!, system)}.`;
  return `Pushed home, the spindle bears in the ${listed(names.map((name) => `${name} seat (${percent(shares.get(name)!)})`))}.`;
}

/** Share of all normal force by seat, the greatest first. */
function seatShares({ contacts }: SeatedReport): Map<string, number> {
  const total = contacts.reduce((sum, c) => sum + c.share, 0);
  const shares = new Map<string, number>();
  for (const { seat, share } of contacts) shares.set(seat, (shares.get(seat) ?? 0) + share / total);
  return new Map([...shares].sort((a, b) => b[1] - a[1]));
}

/** Where along and round one seat it bears. */
function placeClause(design: Design, seated: SeatedReport, name: string, system: System): string {
  const contacts = seated.contacts.filter((c) => c.seat === name);
  const stations = [...new Set(contacts.map((c) => c.station))];
  const angles = [...new Set(contacts.map((c) => `${(Math.round(c.angle) % 360).toFixed(0)}°`))];
  const round = contacts.every((c) => c.ring)
    ? 'all round'
    : `at ${numberWord(angles.length)} ${angles.length === 1 ? 'place' : 'places'} round (${listed(angles)})`;
  if (stations.length > 1) return `, ${round}, at both ends of its line`;
  const { bush } = design.seats.find((s) => s.name === name)!;
  const nearRear = Math.abs(stations[0]! - bush.from) <= Math.abs(bush.to - stations[0]!);
  const end = bush.halfAngle === 0 ? (nearRear ? 'rear' : 'nose') : nearRear === bush.halfAngle > 0 ? 'small' : 'large';
  const middle = Math.min(stations[0]! - bush.from, bush.to - stations[0]!) > 0.2 * (bush.to - bush.from);
  return `, ${round}, ${middle ? 'part way along' : `toward its ${end} end`} (station ${placeText(stations[0]!, system)})`;
}

function shakeSentence(play: PlayReport, system: System): string {
  const where = `at station ${placeText(play.indicator, system)}`;
  const { shake } = play;
  switch (shake.status) {
    case 'solved':
      return shake.total! > STILL
        ? `At this position an indicator ${where} reads ${fineText(shake.total!, system)} from side to side${boundBy(shake)}.`
        : `At this position an indicator ${where} reads no shake.`;
    case 'unbounded':
      return 'At this position nothing holds it sideways: some motion is free of every seat.';
    case 'infeasible':
      return `At this position it is ${fineText(shake.interference!, system)} into a bush however it lies.`;
    case 'stalled':
      return 'Its shake at this position could not be worked out.';
  }
}

function boundBy({ contacts }: ShakeReport): string {
  const names = [...new Set(contacts.map((c) => c.seat))];
  return names.length === 0 ? '' : `, stopped by the ${listed(names)} seat${names.length > 1 ? 's' : ''}`;
}

/** Pressed home it may be held where it is loose a little way off: both are said, and where each holds. */
function againstSentence({ seated, shakeAgainst, endPlay }: PlayReport, system: System): string {
  if (shakeAgainst?.status !== 'solved' || shakeAgainst.total === null) return '';
  if (shakeAgainst.total > STILL)
    return `Kept pressed home it still rocks by ${fineText(shakeAgainst.total, system)} there.`;
  const names = [...seatShares(seated).keys()];
  const home = names.length === 0 ? '' : ` in the ${listed(names)} seat${names.length > 1 ? 's' : ''}`;
  const held = `Kept pressed home${home} it cannot rock`;
  return endPlay !== null && endPlay < STILL
    ? `${held}.`
    : `${held}; backed off to a film, or pulled off the seat, it can.`;
}

const endPlaySentence = ({ endPlay }: PlayReport, system: System) =>
  endPlay === null ? '' : `End play between the stops is ${fineText(Math.max(0, endPlay), system)}.`;

/** What must be known of shares that balance alone does not settle; empty where it does. */
export const sharedNote = ({ status, shared }: Pick<SeatedReport, 'status' | 'shared'>): string =>
  status === 'solved' && shared
    ? 'More places touch than it takes to hold the spindle, so balance alone does not tell how they part the force; these shares are those of places that all give alike, as equal springs do.'
    : '';

/** Self-holding seats that carry the push home. */
const stickingSeats = ({ seated, selfHolding }: PlayReport) =>
  seated.status === 'solved' ? selfHolding.filter((name) => seated.contacts.some((c) => c.seat === name)) : [];

function stickingSentence(design: Design, play: PlayReport, name: string, system: System, way: AngleWay): string {
  const { bush } = design.seats.find((s) => s.name === name)!;
  const force = play.freeing[name]! * PRESS[system];
  return `The ${name} seat takes the push, and at ${angleSaid(bush.halfAngle, way)} with a friction of ${play.friction} it sticks: pressed home with ${measureText('force', PRESS[system], system)} it takes ${twoFigures(force, system)} to free, before any heat.`;
}

/** A force as far as the hand tells it. */
function twoFigures(force: number, system: System): string {
  const shown = inUnit('force', force, system);
  return `${shown.toFixed(shown < 10 ? 1 : 0)} ${unitOf('force', system).name}`;
}

const percent = (share: number) => `${(100 * share).toFixed(0)} %`;
const numberWord = (n: number) => ['no', 'one', 'two', 'three', 'four', 'five', 'six'][n] ?? String(n);
const listed = (items: readonly string[]) =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
