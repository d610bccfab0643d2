/**
 * The best position of every draw of a block: where the worst miss of the films wanted is least.
 *
 *   miss_i = |film_i(p) - T_i|/w_i        rising part and falling part of each:  ±(film_i - T_i)/w_i
 *
 * The rising parts grow with p, the falling ones shrink, so the worst of all is least where the greatest of the one
 * kind meets the greatest of the other: at the greatest of the heights at which any rising part of one seat meets any
 * falling part of another,
 *
 *   m = max over i ≠ j of m_ij        and the position is that at which film_i = T_i ± m·w_i
 *
 * Each part is the greater or the lesser of two straight lines, (straight.ts), and since one falls and the other rises,
 * so is the height where they meet: no search. It is kept within the reach, and where metal is clear of metal: nearest
 * to the least miss. A seat without tolerance: outcomes.ts, `scalesOf`. T film wanted, w its tolerance (m).
 * @source derived
 */
import type { Metres } from '../../design/dimension.ts';
import type { SeatInput, Stretch } from '../contact/fit.ts';
import { scalesOf } from './outcomes.ts';
import type { SeatColumns } from './straight.ts';

/** Film per travel of the journal below which no move of it is worth asking for: a straight seat, or nearly. */
const MOVES = 1e-3;

/** Seats that a move of the journal closes, as they are drawn in the middle. */
export const moving = ({ bush, journal }: SeatInput): boolean =>
  bush.halfAngle * journal.halfAngle > 0 && Math.abs(Math.sin(bush.halfAngle)) >= MOVES;

/** Seats whose films the position is chosen for. */
export const chosenFor = (seats: readonly SeatInput[]): number[] =>
  seats.flatMap((seat, i) => (seat.target !== undefined && moving(seat) ? [i] : []));

/** Positions (m) at which the least film of a seat is `film` (m), within its overlap; NaN where there is none. */
export function positionsFor(seat: SeatColumns, film: Metres, into: Float64Array): void {
  const { closes, least, most } = seat;
  for (let k = 0; k < into.length; k++) {
    const sense = closes[k]!;
    const p = sense === 1 || sense === -1 ? solved(seat, film, k, sense) : Number.NaN;
    into[k] = p >= least[k]! - EDGE && p <= most[k]! + EDGE ? p : Number.NaN;
  }
}

/** m: rounding of a place */
const EDGE = 1e-15;

function solved({ a1, s1, a2, s2 }: SeatColumns, film: Metres, k: number, closes: number): number {
  const one = (film - a1[k]!) / s1[k]!;
  const other = (film - a2[k]!) / s2[k]!;
  return closes === 1 ? Math.min(one, other) : Math.max(one, other);
}

/**
 * Into `best`, NaN where there is no such position: the stops overlap, or no film is wanted of a seat that a move
 * closes. `rear` and `nose`: the stops of every draw.
 */
export function bestPositions(
  seats: readonly SeatInput[],
  columns: readonly SeatColumns[],
  reach: Stretch | undefined,
  rear: Float64Array,
  nose: Float64Array,
  best: Float64Array,
): void {
  const chosen = chosenFor(seats);
  const scales = scalesOf(seats);
  const targets = seats.map(({ target = 0 }) => target);
  const from = reach?.from ?? Number.NEGATIVE_INFINITY;
  const to = reach?.to ?? Number.POSITIVE_INFINITY;
  for (let k = 0; k < best.length; k++) {
    let height = Number.NEGATIVE_INFINITY;
    let at = Number.NaN;
    for (let x = 0; x < chosen.length; x++) {
      const i = chosen[x]!;
      const closes = columns[i]!.closes[k]!;
      if (closes !== 1 && closes !== -1) continue;
      // Alone a seat has its film to the last digit: height 0.
      let own = 0;
      for (let y = 0; y < chosen.length; y++) {
        const j = chosen[y]!;
        if (j === i || Math.abs(columns[j]!.closes[k]!) !== 1) continue;
        own = Math.max(own, meeting(columns[i]!, targets[i]!, scales[i]!, columns[j]!, targets[j]!, scales[j]!, k));
      }
      if (own <= height) continue;
      height = own;
      at = solved(columns[i]!, targets[i]! + closes * own * scales[i]!, k, closes);
    }
    const low = Math.max(from, rear[k]!);
    const high = Math.min(to, nose[k]!);
    best[k] = low <= high ? Math.min(high, Math.max(low, at)) : Number.NaN;
  }
}

/** Height at which the rising part of one seat meets the falling part of another. */
function meeting(
  i: SeatColumns,
  targetI: number,
  scaleI: number,
  j: SeatColumns,
  targetJ: number,
  scaleJ: number,
  k: number,
): number {
  const signI = i.closes[k]! / scaleI;
  const signJ = -j.closes[k]! / scaleJ;
  const rise1 = signI * i.s1[k]!;
  const rise2 = signI * i.s2[k]!;
  const from1 = signI * (i.a1[k]! - targetI);
  const from2 = signI * (i.a2[k]! - targetI);
  const fall1 = -signJ * j.s1[k]!;
  const fall2 = -signJ * j.s2[k]!;
  const to1 = signJ * (j.a1[k]! - targetJ);
  const to2 = signJ * (j.a2[k]! - targetJ);
  const first = heightOf(from1, rise1, to1, fall1, to2, fall2, j.closes[k]!);
  const second = heightOf(from2, rise2, to1, fall1, to2, fall2, j.closes[k]!);
  // The film of a seat is the greater of its lines: a part that goes with it too, one that goes against it the lesser.
  return i.closes[k] === 1 ? Math.max(first, second) : Math.min(first, second);
}

function heightOf(
  from: number,
  rise: number,
  to1: number,
  fall1: number,
  to2: number,
  fall2: number,
  closes: number,
): number {
  const one = (from * fall1 + to1 * rise) / (rise + fall1);
  const other = (from * fall2 + to2 * rise) / (rise + fall2);
  return closes === 1 ? Math.min(one, other) : Math.max(one, other);
}
