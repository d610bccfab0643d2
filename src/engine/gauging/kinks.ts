/**
 * Steps over the kinks of readings that are the greatest of several values (a stand-off: the place of the pair that
 * touches first). Each of those values, a branch, is smooth; a step may follow any one of them, or keep several equal:
 *
 *   follow b    the row and the residual of branch b in place of the deciding one
 *   keep a = b  one more, heavy row  (∂f_a/∂x - ∂f_b/∂x)·x = f_b - f_a
 */
import { type Direction, directionOf } from './direction.ts';
import { type Linear, over, type Problem } from './linearise.ts';
import { gradientOf } from './shape.ts';

/** A gain of chi-square worth the name: a thirtieth of an uncertainty. */
export const WORTH = 1e-3;
/** How much heavier than any reading two branches are held together. */
const HEAVY = 1e4;

/** So many branches at most are kept together: two ends of two seats. */
const MOST_TOGETHER = 4;

/** Readings of the assembled pair are greatest values of several. */
export const hasKinks = ({ readings }: Problem) => readings.some((reading) => !('seat' in reading));

/** A step that follows one branch, and what chi-square and the branches would be at its end, were all linear. */
export interface BranchDirection extends Direction {
  branch: number;
  chiSquare: number;
}

/** The steps that follow each branch of the readings that have several. */
export function branchDirections(problem: Problem, linear: Linear, held: readonly boolean[]): BranchDirection[] {
  return nearestBranches(linear).map((branch) => ({ branch, ...togetherDirection(problem, linear, held, [branch]) }));
}

/** Those that are nearest to deciding, the deciding one first. */
function nearestBranches(linear: Linear): number[] {
  const branches = branchesOf(linear);
  return branches
    .map((_, k) => k)
    .sort((a, b) => branches[b]!.value - branches[a]!.value)
    .slice(0, MOST_TOGETHER);
}

/** The branches of the first reading that has several; all such readings have the same, since they tell of one assembled pair. */
const branchesOf = (linear: Linear) => linear.predictions[branchyOf(linear)[0] ?? -1]?.branches ?? [];

/** The step that follows one branch and keeps others at its value. */
function togetherDirection(problem: Problem, linear: Linear, held: readonly boolean[], [first, ...others]: readonly number[]): Direction & { chiSquare: number } {
  const { readings, unknowns } = problem;
  const rows = linear.rows.slice();
  const residuals = linear.residuals.slice();
  const told = (branch: number) => branchesOf(linear)[branch]!;
  const gradients = new Map([first!, ...others].map((branch) => [branch, gradientOf(told(branch).influences, linear.seats, unknowns)]));
  for (const i of branchyOf(linear)) {
    const { value, sigma } = readings[i]!;
    rows[i] = over(gradients.get(first!)!, sigma);
    residuals[i] = (value - told(first!).value) / sigma;
  }
  const chiSquare = residuals.reduce((sum, e) => sum + e * e, 0);
  const heavy = HEAVY / readings[branchyOf(linear)[0]!]!.sigma;
  for (const other of others) {
    const gradient = gradients.get(other)!;
    rows.push(gradients.get(first!)!.map((g, j) => (g - gradient[j]!) * heavy));
    residuals.push((told(other).value - told(first!).value) * heavy);
  }
  const direction = directionOf(rows, residuals, held);
  return { ...direction, chiSquare: chiSquare - direction.gain };
}

const branchyOf = ({ predictions }: Linear) => predictions.flatMap((prediction, i) => ((prediction.branches?.length ?? 0) > 1 ? [i] : []));

/** Whether a branch leads to where chi-square is less and it is the one that decides. */
export function leadsAcross({ unknowns }: Problem, linear: Linear, { step, branch, chiSquare }: BranchDirection): boolean {
  if (chiSquare > linear.chiSquare - WORTH) return false;
  const branches = linear.predictions[branchyOf(linear)[0]!]!.branches!;
  const there = branches.map(({ value, influences }) => value + gradientOf(influences, linear.seats, unknowns).reduce((sum, g, j) => sum + g * step[j]!, 0));
  return there.every((value) => value <= there[branch]! + 1e-9);
}

/** The steps that follow one branch, or keep several together: every choice of the few that are nearest to deciding. */
export function otherDirections(problem: Problem, linear: Linear, held: readonly boolean[]): Direction[] {
  const nearest = nearestBranches(linear);
  const choices = Array.from({ length: 2 ** nearest.length - 1 }, (_, mask) => nearest.filter((_, k) => (mask + 1) & (1 << k)));
  return choices.map((set) => togetherDirection(problem, linear, held, set));
}
