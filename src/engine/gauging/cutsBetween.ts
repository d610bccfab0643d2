/**
 * Metal that came off between a reading and the state in which the parts are sought. The reading saw other surfaces:
 *
 *   seen = sought with (amount + e) off, or put back        amount normal stock, or metal off a face (m)
 *
 * e is the error of that amount, an unknown of its own with mean 0 and the amount's uncertainty: all readings from
 * before one cut share it, so that many of them together tell the shape no better than the cut is known, while what
 * they tell of each other (half angles, straightness) is as sure as before.
 * @source JCGM102 6.2 (a common error as one more input quantity)
 */

import type { Influence, On } from '../belief/unknowns.ts';
import type { SeatInput } from '../contact/fit.ts';
import { withMetalOff } from '../parts/asTheyStand.ts';
import type { Part } from '../parts/line.ts';
import type { Reading } from './reading.ts';

/** One amount of metal, known by its identity: readings that name the same object share its error. */
export type CutBetween =
  | ({ of: 'surface'; normal: number; sigma: number } & On)
  /** `moves`: 1 where the seats move toward the nose as metal comes off, -1 rearward */
  | { of: 'face'; part: Part; seats: readonly number[]; moves: 1 | -1; normal: number; sigma: number };

/** `sign` 1: the reading saw the parts with that much more off than they are sought with; -1: with it still on. */
export interface Since {
  cut: CutBetween;
  sign: 1 | -1;
}

/** Error (m) of an amount. */
type ErrorOf = (cut: CutBetween) => number;

const NONE: ErrorOf = () => 0;

/** The parts as a reading saw them; the same object where nothing came off between. */
export function seenBy(
  { since = [] }: Pick<Reading, 'since'>,
  seats: readonly SeatInput[],
  errorOf: ErrorOf = NONE,
): readonly SeatInput[] {
  if (since.length === 0) return seats;
  return withMetalOff(
    seats,
    since.map(({ cut, sign }) => ({ ...cut, normal: sign * (cut.normal + errorOf(cut)) })),
  );
}

/** How far (m) toward the nose a surface then stood from where it is sought. */
export function movedBetween({ since = [] }: Pick<Reading, 'since'>, { seat, part }: On): number {
  return since.reduce(
    (sum, { cut, sign }) =>
      cut.of === 'face' && cut.part === part && cut.seats.includes(seat) ? sum + sign * cut.moves * cut.normal : sum,
    0,
  );
}

/**
 * How a value follows the error of an amount (m/m), by its influences on the shape that was seen; of metal off a face
 *   ∂r/∂e = -moves·tan a
 */
export function rateOf({ cut, sign }: Since, influences: readonly Influence[], seen: readonly SeatInput[]): number {
  if (cut.of === 'surface') return sign * perStock(influences, seen, cut);
  return influences.reduce((sum, { seat, part, by, rate }) => {
    if (by !== 'radius' || cut.part !== part || !cut.seats.includes(seat)) return sum;
    return sum - sign * cut.moves * Math.tan(seen[seat]![part].halfAngle) * rate;
  }, 0);
}

/** How it follows normal stock off one surface (m/m):  ∂r/∂e = ∓1/cos a    - of a journal, + of a bush */
export function perStock(influences: readonly Influence[], seats: readonly SeatInput[], on: On): number {
  const { halfAngle } = seats[on.seat]![on.part];
  const radius = (on.part === 'journal' ? -1 : 1) / Math.cos(halfAngle);
  return influences.reduce(
    (sum, { seat, part, by, rate }) =>
      by === 'radius' && seat === on.seat && part === on.part ? sum + radius * rate : sum,
    0,
  );
}

/** Every amount whose error some reading leans on, each once; those known exactly have none. */
export function cutsOf(readings: readonly Reading[]): CutBetween[] {
  return [...new Set(readings.flatMap(({ since = [] }) => since.map(({ cut }) => cut)))].filter(
    ({ sigma }) => sigma > 0,
  );
}
