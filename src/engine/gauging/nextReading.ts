/**
 * What to read next: for a quantity, the further readings that would shrink its uncertainty most.
 *
 * In the directions that the readings tell (decomposition.ts), a = Sᵀ⁻¹·Vᵀ·D⁻¹·g is the quantity and c the same of a
 * candidate's gradient over its uncertainty:
 *
 *   u²  = |a|²        u² after = |a|² - (a·c)²/(1 + |c|²)
 *
 * (update of the inverse of a matrix by one row). Where the quantity leans on what is left open, a₀, a candidate
 * settles it alone when its own lean c₀ points the same way, a₀ = f·c₀; then u² after = |a - f·c|² + f². Where no one
 * reading settles it, candidates are ranked by what they take from the open part as a shop's first guess P of every
 * number would leave it, G = (NᵀP⁻¹N)⁻¹ in the null space N:
 *
 *   gain = (a₀ᵀ·G·c₀)²/(1 + |c|² + c₀ᵀ·G·c₀)
 *
 * @source ShermanMorrison1950; derived (the case of an open quantity, checked against a new estimate)
 */

import { Matrix, pseudoInverse } from 'ml-matrix';
import type { Metres } from '../../design/dimension.ts';
import { dot } from '../algebra/dot.ts';
import { type Decomposition, decompose, isTold, NOTHING, openParts, toldParts, unit } from '../belief/decomposition.ts';
import { followed, type Quantity } from '../belief/quantities.ts';
import { gradientOf, numbersOf, type On, type Unknown, type Unknowns } from '../belief/unknowns.ts';
import type { SeatInput } from '../contact/fit.ts';
import { candidatesOf } from './candidates.ts';
import type { Estimate } from './estimate.ts';
import { type LeastSquares, over, type Prior, rowsOf, seeing } from './linearise.ts';
import type { Reading } from './reading.ts';
import { predict, predictSeen } from './readings/index.ts';
import { startingShape } from './shape.ts';
import { METRIC_TOOLS, type Tooling } from './tooling.ts';

/** A further reading and what it would do. */
export interface Suggestion {
  /** as it would read on the fitted shape */
  reading: Reading;
  /** standard uncertainty of the quantity with it (rad or m); null where it would still be open */
  sigma: number | null;
}

/** The whole pair as the readings tell it: every surface an unknown, also those nothing was read of. */
export interface WholePair {
  seats: readonly SeatInput[];
  unknowns: Unknowns;
  told: Decomposition;
  /** G: covariance of the open directions where every number were known to a first guess */
  guess: Matrix;
  candidates: Reading[];
  rows: Float64Array[];
}

/** A shop's first guess of a number that nobody has read. rad; m. @source practice */
const GUESS = { halfAngle: 1e-3, radius: 5e-5, deviation: 5e-6, stock: 5e-6 };

export function wholePairOf(
  { seats, isHeld }: Pick<Estimate, 'seats' | 'isHeld'>,
  readings: readonly Reading[],
  priors: readonly Prior[] = [],
  tools: Tooling = METRIC_TOOLS,
): WholePair {
  const everything = seats.flatMap((_, seat): On[] => [
    { seat, part: 'journal' },
    { seat, part: 'bush' },
  ]);
  const possible = readings.filter((reading) => predict(reading, seats).fault === null);
  const { seats: start, unknowns } = startingShape(seats, everything, possible, isHeld);
  const problem: LeastSquares = {
    start,
    unknowns,
    startNumbers: numbersOf(start, unknowns),
    readings: possible,
    priors,
  };
  // Told anew, a shape is another by rounding: a reading on the very edge of what is possible may then be beyond it,
  // and tells nothing.
  const seen = possible.map(seeing(problem, start, problem.startNumbers));
  const rows = rowsOf(
    problem,
    seen,
    possible.map((reading, i) => predictSeen(reading, seen[i]!)),
  );
  const count = unknowns.list.length;
  const told = decompose(rows, count, unknowns.points);
  const candidates = candidatesOf(start, possible, tools);
  return {
    seats: start,
    unknowns,
    told,
    guess: guessOf(told, unknowns),
    candidates,
    rows: candidates.map((candidate) =>
      over(gradientOf(predict(candidate, start).influences, start, unknowns), candidate.sigma),
    ),
  };
}

/**
 * The best further readings for a quantity with the journal at `position` (m), best first; none where the shape has no
 * such quantity.
 */
export function nextFor(whole: WholePair, quantity: Quantity, position: Metres, count = 3): Suggestion[] {
  const found = followed(quantity, whole.seats, position);
  return found ? ranked(whole, gradientOf(found.influences, whole.seats, whole.unknowns), count) : [];
}

/** The best further readings for one number of the shape. */
export function nextForUnknown(whole: WholePair, { seat, part, of, station }: Unknown, count = 1): Suggestion[] {
  const place = whole.unknowns.list.findIndex(
    (u) => u.seat === seat && u.part === part && u.of === of && u.station === station,
  );
  return ranked(whole, unit(whole.unknowns.list.length, place), count);
}

/** G of the equations above. */
function guessOf(told: Decomposition, { list }: Unknowns): Matrix {
  const open = told.unknowns - told.rank;
  if (open === 0) return new Matrix(0, 0);
  const rows = list.map((u, j) => openParts(told, over(unit(told.unknowns, j), GUESS[u.of])));
  // (MᵀM)⁻¹ = M⁺·M⁺ᵀ, without squaring what may be badly scaled.
  const inverse = pseudoInverse(new Matrix(rows));
  return inverse.mmul(inverse.transpose());
}

function ranked(whole: WholePair, gradient: Float64Array, count: number): Suggestion[] {
  const gains = gainsOf(whole, gradient);
  return whole.candidates
    .map((reading, i) => ({ reading, gain: gains[i]!, sigma: sigmaWith(whole.told, gradient, whole.rows[i]!) }))
    .filter(({ gain }) => gain > LEAST_GAIN)
    .sort(
      (a, b) =>
        (a.sigma === null || b.sigma === null ? 0 : a.sigma - b.sigma) || openOf(a) - openOf(b) || b.gain - a.gain,
    )
    .slice(0, count)
    .map(({ reading, sigma }) => ({ reading, sigma }));
}

/** The share of the variance that each candidate takes: of the open part where there is one. */
function gainsOf({ told, guess, rows }: WholePair, gradient: Float64Array): number[] {
  const a = toldParts(told, gradient);
  if (isTold(told, gradient)) {
    return rows.map((row) => {
      const c = toldParts(told, row);
      return isTold(told, row) ? dot(a, c) ** 2 / (1 + squared(c)) / squared(a) : 0;
    });
  }
  const a0 = openParts(told, gradient);
  const before = dot(a0, times(guess, a0));
  return rows.map((row) => {
    const c0 = openParts(told, row);
    const spread = times(guess, c0);
    return dot(a0, spread) ** 2 / (1 + squared(toldParts(told, row)) + dot(c0, spread)) / before;
  });
}

const times = (matrix: Matrix, vector: readonly number[]) =>
  Array.from({ length: matrix.rows }, (_, i) => matrix.getRow(i).reduce((sum, m, j) => sum + m * vector[j]!, 0));

/** A share of the variance that is no gain. */
const LEAST_GAIN = 1e-3;
/** Those that leave it told go before those that do not. */
const openOf = ({ sigma }: { sigma: number | null }) => (sigma === null ? 1 : 0);

/** Standard uncertainty of a quantity with one more row; null where it would still be open. */
function sigmaWith(told: Decomposition, gradient: Float64Array, row: Float64Array): number | null {
  const a = toldParts(told, gradient);
  const c = toldParts(told, row);
  const c0 = openParts(told, row);
  if (isTold(told, gradient)) {
    // A candidate that leans on something open can only settle that.
    if (!isTold(told, row)) return Math.sqrt(squared(a));
    return Math.sqrt(Math.max(0, squared(a) - dot(a, c) ** 2 / (1 + squared(c))));
  }
  if (isTold(told, row)) return null;
  const a0 = openParts(told, gradient);
  const f = dot(a0, c0) / squared(c0);
  const left = Math.sqrt(a0.reduce((sum, v, k) => sum + (v - f * c0[k]!) ** 2, 0));
  if (left > NOTHING * Math.sqrt(squared(a0))) return null;
  return Math.sqrt(a.reduce((sum, v, k) => sum + (v - f * c[k]!) ** 2, 0) + f * f);
}

const squared = (a: readonly number[]) => dot(a, a);
