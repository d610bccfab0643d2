/**
 * All readings and priors about one shape, as rows of a least-squares problem:
 *
 *   e_i = (value_i - f_i(x))/σ_i        row_i = ∂f_i/∂x / σ_i        chi-square = Σ e_i²
 *
 * x numbers of the unknowns · f forward model of the reading (readings/) · σ its standard uncertainty. A prior
 * is a reading of the unknown itself at its nominal value; so is what is known of the error of a stock
 * (cutsBetween.ts).
 */

import { isShape, type On, type Unknowns, withNumbers } from '../belief/unknowns.ts';
import type { SeatInput } from '../contact/fit.ts';
import { type Since, seenBy } from './cutsBetween.ts';
import type { Prediction, Reading } from './reading.ts';
import { predictSeen, tellsOf } from './readings/index.ts';
import { gradientSeen } from './shape.ts';

/** How near its nominal value a number may be taken to be before anything is read. */
export interface Prior extends On {
  of: 'halfAngle' | 'radius';
  /** standard uncertainty, rad or m */
  sigma: number;
}

export interface LeastSquares {
  /** the shape before any reading */
  start: readonly SeatInput[];
  unknowns: Unknowns;
  startNumbers: Float64Array;
  readings: readonly Reading[];
  priors: readonly Prior[];
}

export interface Linearised {
  seats: SeatInput[];
  /** the shape that each reading saw */
  seen: (readonly SeatInput[])[];
  predictions: Prediction[];
  rows: Float64Array[];
  residuals: number[];
  chiSquare: number;
  /** what rounding alone can make of chi-square */
  noise: number;
}

/** A number told beside the readings: where it is, what it is told to be, and how surely. */
interface Told {
  place: number;
  value: number;
  sigma: number;
}

function toldOf({ unknowns, startNumbers, priors }: LeastSquares): Told[] {
  // A half angle that is held straight is told already.
  const ofPriors = priors.flatMap((prior) => {
    const place = placeOf(unknowns, prior);
    return place < 0 ? [] : [{ place, value: startNumbers[place]!, sigma: prior.sigma }];
  });
  return [...ofPriors, ...[...unknowns.stock].map(([{ sigma }, place]) => ({ place, value: 0, sigma }))];
}

/** The shape as each reading saw it; worked out once for those between which nothing came off. */
export function seeing(
  { unknowns }: LeastSquares,
  seats: readonly SeatInput[],
  numbers: Float64Array,
): (reading: Reading) => readonly SeatInput[] {
  const known = new Map<readonly Since[] | undefined, readonly SeatInput[]>();
  return (reading) => {
    const seen =
      known.get(reading.since) ?? seenBy(reading, seats, (cut) => numbers[unknowns.stock.get(cut) ?? -1] ?? 0);
    known.set(reading.since, seen);
    return seen;
  };
}

/** The place of a prior's unknown. */
const placeOf = ({ list }: Unknowns, prior: Prior) =>
  list.findIndex((u) => u.seat === prior.seat && u.part === prior.part && u.of === prior.of);

/**
 * Chi-square of a set of numbers; infinite where they make no shape or a reading has no value there, and as soon as it
 * is seen to reach `most`. Readings of the assembled pair come last, since they take longest to predict.
 */
export function chiSquareOf(problem: LeastSquares, numbers: Float64Array, most = Number.POSITIVE_INFINITY): number {
  const { start, unknowns, readings } = problem;
  const seats = withNumbers(start, unknowns, numbers);
  if (!isShape(seats)) return Number.POSITIVE_INFINITY;
  let sum = 0;
  for (const { place, value, sigma } of toldOf(problem)) sum += ((value - numbers[place]!) / sigma) ** 2;
  const seenOf = seeing(problem, seats, numbers);
  for (const ofPair of [false, true]) {
    for (const reading of readings) {
      if ('seat' in reading === ofPair) continue;
      if (sum >= most) return Number.POSITIVE_INFINITY;
      const { value } = predictSeen(reading, seenOf(reading));
      if (value === null) return Number.POSITIVE_INFINITY;
      sum += ((reading.value - value) / reading.sigma) ** 2;
    }
  }
  return sum;
}

type Residuals = Omit<Linearised, 'rows'>;

function residualsOf(problem: LeastSquares, numbers: Float64Array): Residuals | null {
  const { start, unknowns, readings } = problem;
  const seats = withNumbers(start, unknowns, numbers);
  if (!isShape(seats)) return null;
  const seen = readings.map(seeing(problem, seats, numbers));
  const predictions = readings.map((reading, i) => predictSeen(reading, seen[i]!));
  const residuals: number[] = [];
  let noise = 0;
  const add = (difference: number, size: number, sigma: number) => {
    const e = difference / sigma;
    const rounding = (4 * Number.EPSILON * size) / sigma;
    residuals.push(e);
    noise += 2 * Math.abs(e) * rounding + rounding * rounding;
  };
  for (const [i, { value, sigma }] of readings.entries()) {
    const predicted = predictions[i]!.value;
    if (predicted === null) return null;
    add(value - predicted, sizeOf(seats, readings[i]!), sigma);
  }
  for (const { place, value, sigma } of toldOf(problem)) add(value - numbers[place]!, Math.abs(numbers[place]!), sigma);
  return { seats, seen, predictions, residuals, chiSquare: residuals.reduce((sum, e) => sum + e * e, 0), noise };
}

/** The size (m) of the numbers a prediction is made of, whose rounding it carries. */
function sizeOf(seats: readonly SeatInput[], reading: Reading): number {
  const seat = 'seat' in reading ? seats[reading.seat]! : seats[0]!;
  const tells = tellsOf(reading.kind);
  const steepness =
    tells === 'depth' || tells === 'position' ? 1 / Math.max(1e-6, Math.abs(Math.tan(seat.bush.halfAngle))) : 1;
  return (2 * seat.bush.radius + Math.abs(reading.value)) * steepness;
}

/** The rows at a set of numbers; null where chi-square is infinite. */
export function linearise(problem: LeastSquares, numbers: Float64Array): Linearised | null {
  const found = residualsOf(problem, numbers);
  return found && { ...found, rows: rowsOf(problem, found.seen, found.predictions) };
}

/** The rows of readings, each with its prediction on the shape it saw, and of what is told beside them. */
export function rowsOf(
  problem: LeastSquares,
  seen: readonly (readonly SeatInput[])[],
  predictions: readonly Prediction[],
): Float64Array[] {
  const { readings, unknowns } = problem;
  const rows = readings.map((reading, i) =>
    over(gradientSeen(reading, predictions[i]!.influences, seen[i]!, unknowns), reading.sigma),
  );
  for (const { place, sigma } of toldOf(problem)) {
    const row = new Float64Array(unknowns.list.length);
    row[place] = 1 / sigma;
    rows.push(row);
  }
  return rows;
}

export function over(gradient: Float64Array, sigma: number): Float64Array {
  return gradient.map((g) => g / sigma);
}
