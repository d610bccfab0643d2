/** How far the upright scale of a lesson's chart goes, before the answer and after. */
import type { Curve, DealtQuestion } from '../../../lessons/deal.ts';

export interface Ends {
  low: number;
  high: number;
}

/** Room above the line, and the most of it that a slip may ask for, times what the line has. */
const ROOM = 1.6;
const FAR = 20;
const TEN = 10;
/** Above what has to be seen once it is let go. */
const ABOVE = 1.12;
const ROUND = [1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];
/** Less than this part of the whole is rounding, and no film below nothing. */
const NOTHING = 1e-6;

/** The round number above. */
function rounded(value: number): number {
  const step = 10 ** Math.floor(Math.log10(value));
  return (ROUND.find((times) => times * step >= value * (1 - 1e-9)) ?? TEN) * step;
}

const mostOf = ({ points }: Curve) => Math.max(...points.map(([, up]) => Math.abs(up))) || 1;
const below = (curve: Curve, more: readonly number[], high: number): number =>
  Math.min(...more, ...curve.points.map(([, up]) => up)) < -NOTHING * high ? -high : 0;

/** Before: it does not tell where the answer lies, and has room for what slips give. */
export function askingEnds(curve: Curve, { slips, right }: Pick<DealtQuestion, 'slips' | 'right'>): Ends {
  const line = mostOf(curve);
  // A point that slipped is typed, and not drawn: it would press the line to the foot of the chart.
  const slipped = (value: number) => Math.abs(value / Number(right) - TEN) < 0.01;
  const given = slips.flatMap(({ value }) =>
    typeof value === 'number' && value <= FAR * line && !slipped(value) ? [value] : [],
  );
  const high = rounded(Math.max(ROOM * line, ...given));
  return { low: below(curve, [], high), high };
}

/** After: the line and the learner's own mark fill it, so that what lies between them is seen. */
export function openEnds(curve: Curve, mark: number): Ends {
  const high = rounded(ABOVE * Math.max(mostOf(curve), Math.abs(mark)));
  return { low: below(curve, [mark], high), high };
}

/** On the way from one scale to the other: by the same factor all the time, so that it is seen to close in. */
export function endsBetween(from: Ends, to: Ends, share: number): Ends {
  if (share <= 0) return from;
  if (share >= 1) return to;
  const high = from.high * (to.high / from.high) ** share;
  return { low: from.low + (to.low - from.low) * share, high };
}

/** Parts of the scale at which a mark may begin. */
const BEGINS = [0.15, 0.3, 0.45, 0.6, 0.75, 0.9];
/** And how far from what is right it does, so that where it lies tells nothing. */
const AWAY = 0.2;

/** Where the mark lies before a hand has it: of this round, and never near what is right. */
export function markBegins({ low, high }: Ends, right: number, seed: number): number {
  const free = BEGINS.map((part) => low + (high - low) * part).filter(
    (value) => Math.abs(value - right) > AWAY * (high - low),
  );
  return free[seed % free.length] ?? low;
}

/** mm: how far the scale goes on which a place is marked, to either side. It tells neither the side nor the place. */
export function reachOfPlace({ right, slips, from }: Pick<DealtQuestion, 'right' | 'slips' | 'from'>): number {
  const stands = Math.abs(from.position ?? 0);
  const given = slips.flatMap(({ value }) =>
    typeof value === 'number' && Math.abs(value) < FAR_OFF * Math.abs(Number(right)) ? [Math.abs(value)] : [],
  );
  return rounded(ROOM * Math.max(Math.abs(Number(right)), stands, ...given));
}
/** Times what is right: a slip of a whole place is typed. */
const FAR_OFF = 6;
