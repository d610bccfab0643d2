/**
 * The numbers with the least chi-square, by Gauss–Newton steps with a line search from the nominal ones.
 *
 * A step x solves  min |e - J·x|  (decomposition.ts) and is halved until chi-square falls. A stand-off is the
 * greatest of several places of contact and has a kink where two of them meet; the least chi-square often lies
 * on it. Where a plain step gains little, the steps that follow another place, or keep two of them together, are
 * tried too, and the best is taken. Ends when a step promises nothing beyond rounding, or none of them gains.
 */
import { decompose, stepOf } from './decomposition.ts';
import { chiSquareOf, type Linear, linearise, over, type Problem } from './linearise.ts';
import { gradientOf } from './shape.ts';

const MOST_STEPS = 100;
const MOST_HALVINGS = 40;
/** A gain of chi-square that changes no number by more than a thousandth of its uncertainty. */
const GAIN = 1e-6;
/** A promised gain of chi-square that is not worth the name: a thirtieth of an uncertainty. */
const LEFT = 1e-3;
/** How much heavier than any reading two places are held together. */
const HEAVY = 1e4;

export interface Minimum {
  numbers: Float64Array;
  linear: Linear;
  /** false where the steps ran out before chi-square settled */
  settled: boolean;
}

/** `held`: unknowns that stay as they are. Null where the start itself has no chi-square. */
export function minimise(problem: Problem, from: Float64Array, held: readonly boolean[]): Minimum | null {
  let numbers = from;
  let linear = linearise(problem, numbers);
  if (!linear) return null;
  for (let step = 0; step < MOST_STEPS; step++) {
    const plain = directionOf(linear.rows, linear.residuals, held);
    const rounding = linear.noise + 1e-15 * linear.chiSquare;
    let next = alongStep(problem, numbers, linear, plain);
    const promised = plain.gain <= rounding;
    if (!promised && next.gain < plain.gain / 10) {
      for (const other of otherDirections(problem, linear, held)) {
        const there = alongStep(problem, numbers, linear, other);
        if (there.gain > next.gain) next = there;
      }
    }
    if (next.gain > 0) {
      const there = linearise(problem, next.numbers);
      if (there) {
        numbers = next.numbers;
        linear = there;
      }
    }
    if (promised) return { numbers, linear, settled: true };
    // On a kink no step gains though a plain one promises to; elsewhere that is a search cut short, by the edge of what is a shape at all.
    if (next.gain <= rounding) return { numbers, linear, settled: plain.gain < LEFT || hasKinks(problem) };
    if (step > MOST_STEPS / 2 && next.gain < GAIN) return { numbers, linear, settled: true };
  }
  return { numbers, linear, settled: false };
}

/** Readings of the assembled pair are greatest values of several. */
const hasKinks = ({ readings }: Problem) => readings.some((reading) => !('seat' in reading));

interface Direction {
  step: Float64Array;
  /** gain of chi-square that the linear problem promises for the whole step */
  gain: number;
}

function directionOf(rows: readonly Float64Array[], residuals: readonly number[], held: readonly boolean[]): Direction {
  const free = held.some(Boolean) ? rows.map((row) => row.map((g, j) => (held[j] ? 0 : g))) : rows;
  const step = stepOf(decompose(free, held.length), residuals);
  let gain = 0;
  free.forEach((row, i) => {
    const change = row.reduce((sum, g, j) => sum + g * step[j]!, 0);
    gain += residuals[i]! ** 2 - (residuals[i]! - change) ** 2;
  });
  return { step, gain };
}

function alongStep(problem: Problem, numbers: Float64Array, { chiSquare }: Linear, { step }: Direction): { numbers: Float64Array; gain: number } {
  let length = 1;
  for (let k = 0; k < MOST_HALVINGS; k++) {
    const there = numbers.map((x, j) => x + length * step[j]!);
    const gain = chiSquare - chiSquareOf(problem, there);
    if (gain > 0) return { numbers: there, gain };
    length /= 2;
  }
  return { numbers, gain: 0 };
}

/** The steps that follow another branch of the readings that have several, or keep the deciding one and another together. */
function otherDirections(problem: Problem, linear: Linear, held: readonly boolean[]): Direction[] {
  const { readings, unknowns } = problem;
  const branchy = readings.flatMap((_, i) => ((linear.predictions[i]!.branches?.length ?? 0) > 1 ? [i] : []));
  const count = Math.min(...branchy.map((i) => linear.predictions[i]!.branches!.length));
  if (branchy.length === 0) return [];
  const directions: Direction[] = [];
  for (let b = 0; b < count; b++) {
    const rows = linear.rows.slice();
    const residuals = linear.residuals.slice();
    for (const i of branchy) {
      const branch = linear.predictions[i]!.branches![b]!;
      const { value, sigma } = readings[i]!;
      rows[i] = over(gradientOf(branch.influences, linear.seats, unknowns), sigma);
      residuals[i] = (value - branch.value) / sigma;
    }
    directions.push(directionOf(rows, residuals, held));
    for (let other = 0; other < b; other++) directions.push(directionOf([...rows, ...togetherRows(problem, linear, branchy[0]!, b, other)], [...residuals, togetherResidual(problem, linear, branchy[0]!, b, other)], held));
  }
  return directions;
}

/** Holds two branches of a reading at the same value. */
function togetherRows({ unknowns, readings }: Problem, { predictions, seats }: Linear, reading: number, one: number, other: number): Float64Array[] {
  const [a, b] = [one, other].map((k) => gradientOf(predictions[reading]!.branches![k]!.influences, seats, unknowns));
  return [a!.map((g, j) => ((g - b![j]!) * HEAVY) / readings[reading]!.sigma)];
}
function togetherResidual({ readings }: Problem, { predictions }: Linear, reading: number, one: number, other: number): number {
  const branches = predictions[reading]!.branches!;
  return ((branches[other]!.value - branches[one]!.value) * HEAVY) / readings[reading]!.sigma;
}
