/**
 * All readings and priors about one shape, as rows of a least-squares problem:
 *
 *   e_i = (value_i - f_i(x))/σ_i        row_i = ∂f_i/∂x / σ_i        chi-square = Σ e_i²
 *
 * x numbers of the unknowns · f forward model of the reading (readings/) · σ its standard uncertainty. A prior
 * is a reading of the unknown itself at its nominal value.
 */
import type { SeatInput } from '../contact/fit.ts';
import type { On, Prediction, Reading } from './reading.ts';
import { predict } from './readings/index.ts';
import { gradientOf, isShape, type Unknowns, withNumbers } from './shape.ts';

/** How near its nominal value a number may be taken to be before anything is read. */
export interface Prior extends On {
  of: 'halfAngle' | 'radius';
  /** standard uncertainty, rad or m */
  sigma: number;
}

export interface Problem {
  /** the shape before any reading */
  start: readonly SeatInput[];
  unknowns: Unknowns;
  startNumbers: Float64Array;
  readings: readonly Reading[];
  priors: readonly Prior[];
}

export interface Linear {
  seats: SeatInput[];
  predictions: Prediction[];
  rows: Float64Array[];
  residuals: number[];
  chiSquare: number;
  /** what rounding alone can make of chi-square */
  noise: number;
}

/** The place of a prior's unknown. */
const placeOf = ({ list }: Unknowns, prior: Prior) => list.findIndex((u) => u.seat === prior.seat && u.part === prior.part && u.of === prior.of);

/**
 * Chi-square of a set of numbers; infinite where they make no shape or a reading has no value there, and as soon as it is
 * seen to reach `most`. Readings of the assembled pair come last, since they take longest to predict.
 */
export function chiSquareOf({ start, unknowns, startNumbers, readings, priors }: Problem, numbers: Float64Array, most = Number.POSITIVE_INFINITY): number {
  const seats = withNumbers(start, unknowns, numbers);
  if (!isShape(seats)) return Number.POSITIVE_INFINITY;
  let sum = 0;
  for (const prior of priors) {
    const place = placeOf(unknowns, prior);
    sum += ((startNumbers[place]! - numbers[place]!) / prior.sigma) ** 2;
  }
  for (const ofPair of [false, true]) {
    for (const reading of readings) {
      if ('seat' in reading === ofPair) continue;
      if (sum >= most) return Number.POSITIVE_INFINITY;
      const { value } = predict(reading, seats);
      if (value === null) return Number.POSITIVE_INFINITY;
      sum += ((reading.value - value) / reading.sigma) ** 2;
    }
  }
  return sum;
}

type Residuals = Omit<Linear, 'rows'>;

function residualsOf({ start, unknowns, startNumbers, readings, priors }: Problem, numbers: Float64Array): Residuals | null {
  const seats = withNumbers(start, unknowns, numbers);
  if (!isShape(seats)) return null;
  const predictions = readings.map((reading) => predict(reading, seats));
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
  for (const prior of priors) {
    const place = placeOf(unknowns, prior);
    add(startNumbers[place]! - numbers[place]!, Math.abs(numbers[place]!), prior.sigma);
  }
  return { seats, predictions, residuals, chiSquare: residuals.reduce((sum, e) => sum + e * e, 0), noise };
}

/** The size (m) of the numbers a prediction is made of, whose rounding it carries. */
function sizeOf(seats: readonly SeatInput[], reading: Reading): number {
  const seat = 'seat' in reading ? seats[reading.seat]! : seats[0]!;
  const steepness = reading.kind === 'ballDepth' || reading.kind === 'standOff' ? 1 / Math.max(1e-6, Math.abs(Math.tan(seat.bush.halfAngle))) : 1;
  return (2 * seat.bush.radius + Math.abs(reading.value)) * steepness;
}

/** The rows at a set of numbers; null where chi-square is infinite. */
export function linearise(problem: Problem, numbers: Float64Array): Linear | null {
  const found = residualsOf(problem, numbers);
  return found && { ...found, rows: rowsOf(problem, found.seats, found.predictions) };
}

/** The rows of readings, each with its prediction on the shape `seats`, and of the priors after them. */
export function rowsOf({ readings, priors, unknowns }: Omit<Problem, 'start' | 'startNumbers'>, seats: readonly SeatInput[], predictions: readonly Prediction[]): Float64Array[] {
  const rows = readings.map((reading, i) => over(gradientOf(predictions[i]!.influences, seats, unknowns), reading.sigma));
  for (const prior of priors) {
    const row = new Float64Array(unknowns.list.length);
    row[placeOf(unknowns, prior)] = 1 / prior.sigma;
    rows.push(row);
  }
  return rows;
}

export function over(gradient: Float64Array, sigma: number): Float64Array {
  return gradient.map((g) => g / sigma);
}
