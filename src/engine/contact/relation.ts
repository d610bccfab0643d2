/**
 * How the seats stand to each other for the films wanted: the error of the axial relation of every pair, and the
 * positions of the journal at which every film is within its tolerance at once. SI units.
 */
import type { Metres } from '../../design/dimension.ts';
import { leastFilm } from './film.ts';
import { positionForFilm, type SeatFit, type SeatInput, type SeatLines, type Stretch } from './fit.ts';

export interface Relation {
  between: [string, string];
  /** m, position for the film of the first less that of the second: 0 when one position gives both */
  error: number;
  /** m */
  allowance: number;
}

/** m: a film this near to the end of its tolerance is within it. */
const ROUNDING = 1e-12;
/** Halvings of a stretch: to rounding of a position. */
const HALVINGS = 50;

/**
 * Positions (m) at which the film of a seat that a move closes is within its tolerance and its metal clear. Holds for
 * lines that widen steadily, whose film grows as the seat opens. Where the parts part before the film is as thick as it
 * may be, it reaches to the film wanted.
 */
export function toleratedOf(
  seat: SeatLines,
  { target, tolerance = 0 }: SeatInput,
  positionForTarget: number | null,
): Stretch | null {
  if (target === undefined || positionForTarget === null) return null;
  const [thin, thick] = [Math.max(0, target - tolerance), target + tolerance].map(
    (film) => positionForFilm(seat, film) ?? positionForTarget,
  );
  return { from: Math.min(thin!, thick!), to: Math.max(thin!, thick!) };
}

/**
 * Error of the axial relation of every two seats that have a position for their film,
 *   error = position for the one film - position for the other
 * and what the tolerances of the films allow it to be, Σ tolerance / |sin a|.
 */
export function relationsOf(inputs: readonly SeatInput[], seats: readonly SeatFit[]): Relation[] {
  const reach = ({ tolerance = 0, bush, journal }: SeatInput) =>
    tolerance / Math.abs(Math.sin(bush.halfAngle || journal.halfAngle));
  return seats.flatMap((one, i) =>
    seats.slice(i + 1).flatMap((other, k): Relation[] => {
      if (one.positionForTarget === null || other.positionForTarget === null) return [];
      return [
        {
          between: [one.name, other.name],
          error: one.positionForTarget - other.positionForTarget,
          allowance: reach(inputs[i]!) + reach(inputs[i + 1 + k]!),
        },
      ];
    }),
  );
}

/**
 * Where all films wanted are within their tolerance at once, metal clear of metal, seats that want no film among them.
 * Null where no position is so, and where no seat that a move closes wants a film.
 */
export function permittedOf(
  inputs: readonly SeatInput[],
  lines: readonly SeatLines[],
  seats: readonly SeatFit[],
): Stretch | null {
  let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  let wanted = false;
  for (const [i, { closes, seatPosition, tolerated }] of seats.entries()) {
    if (closes === 'never') continue;
    if (inputs[i]!.target !== undefined) {
      if (tolerated === null) return null;
      wanted = true;
      from = Math.max(from, tolerated.from);
      to = Math.min(to, tolerated.to);
    } else if (seatPosition !== null && closes === 'rearward') from = Math.max(from, seatPosition);
    else if (seatPosition !== null) to = Math.min(to, seatPosition);
  }
  if (!wanted || from > to) return null;
  return withStraight({ from, to }, (position) =>
    lines.every((seat, i) => seat.closes !== 'never' || isRight(leastFilm(seat.gap, position), inputs[i]!)),
  );
}

/** Whether a film (m; null: apart) is as wanted, or where none is wanted, no interference. */
function isRight(film: Metres | null, { target, tolerance = 0 }: SeatInput): boolean {
  if (target === undefined) return film === null || film >= -ROUNDING;
  return film !== null && Math.abs(film - target) <= tolerance + ROUNDING && film >= -ROUNDING;
}

/**
 * The part of a stretch where the straight seats are right too. Their film hardly changes along so short a way, by what
 * profiles make of it:
 * looked at in the ends and the middle, and from one that is right brought out to where it no longer is.
 */
function withStraight({ from, to }: Stretch, right: (position: Metres) => boolean): Stretch | null {
  const good = [(from + to) / 2, from, to].find(right);
  if (good === undefined) return null;
  const out = (end: number) => {
    if (right(end)) return end;
    let [inside, outside] = [good, end];
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (inside + outside) / 2;
      if (right(middle)) inside = middle;
      else outside = middle;
    }
    return inside;
  };
  return { from: out(from), to: out(to) };
}
