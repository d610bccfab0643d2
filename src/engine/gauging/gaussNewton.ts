/**
 * The numbers with the least chi-square, by Gauss–Newton steps with a line search from the nominal ones.
 *
 * A step x solves  min |e - J·x|  (decomposition.ts) and is halved until chi-square falls. A stand-off is the
 * greatest of several places of contact and has a kink where two of them meet; the least chi-square often lies
 * on it. Where a plain step gains little, the steps that follow another place, or keep two of them together, are
 * tried too, and the best is taken; where it has come to rest, it is asked whether another place leads lower
 * (kinks.ts). Ends when a step promises nothing beyond rounding, or none of them gains.
 */
import { type Direction, directionOf } from './direction.ts';
import { directionsAcross, hasKinks, otherDirections, WORTHWHILE } from './kinks.ts';
import { chiSquareOf, type LeastSquares, type Linearised, linearise } from './linearise.ts';

const MOST_STEPS = 60;
const MOST_HALVINGS = 40;
/** how often steps over a kink are tried: each time costs a step for every choice of places */
const MOST_TRIES = 12;
/** of steps over a kink, of which there are many to try */
const FEW_HALVINGS = 8;
const MOST_CROSSINGS = 2;
/** Where a plain step was cut short the next one begins at so many times its length. */
const LONGER = 8;
/**
 * A gain of chi-square that changes no number by more than a thousandth of its uncertainty; where steps fall short, it
 * is the end.
 */
const GAIN = 1e-6;

interface Minimum {
  numbers: Float64Array;
  linear: Linearised;
  /** false where the steps ran out before chi-square settled */
  settled: boolean;
}

/** `held`: unknowns that stay as they are. Null where the start itself has no chi-square. */
export function minimise(problem: LeastSquares, from: Float64Array, held: readonly boolean[]): Minimum | null {
  let best = descend(problem, from, held);
  for (let crossing = 0; best && crossing < MOST_CROSSINGS; crossing++) {
    const { numbers, linear } = best;
    const lower = directionsAcross(problem, linear, held)
      .flatMap(
        ({ step }) =>
          descend(
            problem,
            numbers.map((x, j) => x + step[j]!),
            held,
          ) ?? [],
      )
      .reduce<Minimum | null>(
        (least, there) => (there.linear.chiSquare < (least ?? best!).linear.chiSquare - WORTHWHILE ? there : least),
        null,
      );
    if (!lower) break;
    best = lower;
  }
  return best;
}

function descend(problem: LeastSquares, from: Float64Array, held: readonly boolean[]): Minimum | null {
  let numbers = from;
  let linear = linearise(problem, numbers);
  if (!linear) return null;
  let tries = 0;
  let taken = 1;
  for (let step = 0; step < MOST_STEPS; step++) {
    const plain = directionOf(linear.rows, linear.residuals, held, problem.unknowns.points);
    const rounding = linear.noise + 1e-15 * linear.chiSquare;
    let next = alongStep(problem, numbers, linear, plain, Math.min(1, LONGER * taken));
    taken = next.length;
    const promised = plain.gain <= rounding;
    if (!promised && next.gain < plain.gain / 10 && tries++ < MOST_TRIES) {
      for (const other of otherDirections(problem, linear, held)) {
        // Once one has gained more than the rest promise, they are not tried.
        if (linear.chiSquare - other.chiSquare < next.gain) break;
        const there = alongStep(problem, numbers, linear, other, 1, FEW_HALVINGS);
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
    // On a kink no step gains though a plain one promises to; elsewhere that is a search cut short, by the edge of what
    // is a shape at all.
    if (next.gain <= rounding) return { numbers, linear, settled: plain.gain < WORTHWHILE || hasKinks(problem) };
    if (next.gain < GAIN && next.gain < plain.gain / 10) return { numbers, linear, settled: true };
  }
  return { numbers, linear, settled: false };
}

interface Along {
  numbers: Float64Array;
  gain: number;
  /** share of the step that was taken */
  length: number;
}

/** Along a step, from a share of it downward, to where chi-square is less. */
function alongStep(
  problem: LeastSquares,
  numbers: Float64Array,
  { chiSquare }: Linearised,
  { step }: Direction,
  most = 1,
  halvings = MOST_HALVINGS,
): Along {
  let length = most;
  for (let k = 0; k < halvings; k++) {
    const there = numbers.map((x, j) => x + length * step[j]!);
    const gain = chiSquare - chiSquareOf(problem, there, chiSquare);
    if (gain > 0) return { numbers: there, gain, length };
    length /= 2;
  }
  return { numbers, gain: 0, length: 1 };
}
