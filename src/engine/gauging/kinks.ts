/**
 * Steps over the kinks of readings that are the greatest of several values (a stand-off: the place of the pair that
 * touches first). Each of those values, a branch, is smooth; a step may follow any one of them, or keep several equal:
 *
 *   follow b    the row and the residual of branch b in place of the deciding one
 *   keep a = b  one more, heavy row  (∂f_a/∂x - ∂f_b/∂x)·x = f_b - f_a
 */

import type { Branch } from '../belief/unknowns.ts';
import { type Direction, directionOf } from './direction.ts';
import { type LeastSquares, type Linearised, over } from './linearise.ts';
import { gradientSeen } from './shape.ts';

/** A gain of chi-square worth the name: a thirtieth of an uncertainty. */
export const WORTHWHILE = 1e-3;
/** How much heavier than any reading two branches are held together. */
const HEAVY = 1e4;

/** So many branches at most are kept together: two ends of two seats. */
const MOST_TOGETHER = 4;

/** Readings of the assembled pair are greatest values of several. */
export const hasKinks = ({ readings }: LeastSquares) => readings.some((reading) => !('seat' in reading));

/** A step that follows branches, and what chi-square would be at its end, were all linear. */
interface BranchDirection extends Direction {
  chiSquare: number;
}

/** The branches at one shape; readings of one assembled pair, between which no metal came off, have the same. */
interface Kink {
  /** places of those readings */
  readings: number[];
  branches: Branch[];
  gradients: Float64Array[];
  /** those that are nearest to deciding, the deciding one first */
  nearest: number[];
}

function kinksOf(problem: LeastSquares, linear: Linearised): Kink[] {
  const several = linear.predictions.flatMap(({ branches }, i) => (branches ? [i] : []));
  const states = [...new Set(several.map((i) => problem.readings[i]!.since))];
  return states.flatMap(
    (since) =>
      kinkOf(
        problem,
        linear,
        several.filter((i) => problem.readings[i]!.since === since),
      ) ?? [],
  );
}

function kinkOf(
  { unknowns, readings: all }: LeastSquares,
  { predictions, seen }: Linearised,
  readings: number[],
): Kink | null {
  const [first] = readings as [number];
  const branches = predictions[first]!.branches!();
  if (branches.length < 2) return null;
  const nearest = branches
    .map((_, k) => k)
    .sort((a, b) => branches[b]!.value - branches[a]!.value)
    .slice(0, MOST_TOGETHER);
  return {
    readings,
    branches,
    gradients: branches.map(({ influences }) => gradientSeen(all[first]!, influences, seen[first]!, unknowns)),
    nearest,
  };
}

/** The steps that follow one branch to where chi-square is less and it is the one that decides. */
export function directionsAcross(
  problem: LeastSquares,
  linear: Linearised,
  held: readonly boolean[],
): BranchDirection[] {
  return kinksOf(problem, linear).flatMap((kink) =>
    kink.nearest.flatMap((branch) => {
      const direction = togetherDirection(problem, linear, held, kink, [branch]);
      return direction.chiSquare <= linear.chiSquare - WORTHWHILE && decides(kink, branch, direction.step)
        ? [direction]
        : [];
    }),
  );
}

/** Whether a branch is the greatest at the end of a step. */
function decides({ branches, gradients }: Kink, branch: number, step: Float64Array): boolean {
  const there = branches.map(({ value }, k) => value + gradients[k]!.reduce((sum, g, j) => sum + g * step[j]!, 0));
  return there.every((value) => value <= there[branch]! + 1e-9);
}

/** The step that follows one branch and keeps others at its value. */
function togetherDirection(
  { readings, unknowns }: LeastSquares,
  linear: Linearised,
  held: readonly boolean[],
  kink: Kink,
  [first, ...others]: readonly number[],
): BranchDirection {
  const rows = linear.rows.slice();
  const residuals = linear.residuals.slice();
  const { branches, gradients } = kink;
  for (const i of kink.readings) {
    const { value, sigma } = readings[i]!;
    rows[i] = over(gradients[first!]!, sigma);
    residuals[i] = (value - branches[first!]!.value) / sigma;
  }
  const heavy = HEAVY / readings[kink.readings[0]!]!.sigma;
  for (const other of others) {
    const gradient = gradients[other]!;
    rows.push(gradients[first!]!.map((g, j) => (g - gradient[j]!) * heavy));
    residuals.push((branches[other]!.value - branches[first!]!.value) * heavy);
  }
  const direction = directionOf(rows, residuals, held, unknowns.points);
  return { ...direction, chiSquare: residuals.reduce((sum, e) => sum + e * e, 0) - direction.gain };
}

/**
 * The steps that follow one branch, or keep several together: every choice of the few that are nearest to deciding, the
 * most promising first.
 */
export function otherDirections(
  problem: LeastSquares,
  linear: Linearised,
  held: readonly boolean[],
): BranchDirection[] {
  const directions = kinksOf(problem, linear).flatMap((kink) => {
    const choices = Array.from({ length: 2 ** kink.nearest.length - 1 }, (_, mask) =>
      kink.nearest.filter((_, k) => (mask + 1) & (1 << k)),
    );
    return choices.map((set) => togetherDirection(problem, linear, held, kink, set));
  });
  return directions.sort((a, b) => a.chiSquare - b.chiSquare);
}
