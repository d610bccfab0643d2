/**
 * The pressure of a film that can break:   p ≥ 0,   A p - b ≥ 0,   p·(A p - b) = 0   in every cell.
 *
 * Where oil is under pressure the equation holds; where it does not, the film is broken, p = 0 and more room
 * opens than oil flows in (Reynolds' or Swift and Stieber's condition). A and b as in multigrid.ts. Solved from the
 * coarsest level up: each level starts from the one below, so its broken part is known but for a column or two.
 * On a level: cells of negative pressure are broken, broken cells into which more flows than they can take are filled
 * again, and one multigrid cycle is done on the unbroken rest; over again until what is left over of every cell's
 * balance, and of the inequality, sums to less than `tolerance` of all that is dragged in and out. For an M-matrix this
 * exchange ends at the one solution. The tolerance is one of conservation: it bounds the imbalance of any region.
 * @source Swift1931; Stieber1933; Hintermueller2002 (exchange of the active set); Kornhuber1994 (correction on the
 * truncated set)
 */
import { BROKEN, settleTouched } from './brokenColumns.ts';
import { coarsen, cycle, factor, type Level, newLevel, sumLinks } from './multigrid.ts';

/** Held at its given pressure throughout: a groove. */
export const GIVEN = 2;

export interface PressureSolver {
  /** The problem on every level; levels[0] is filled in by the caller: along, around, sink, b. */
  levels: Level[];
  /** 0 full, 1 broken, 2 given (pressure counted from it is 0: what it feeds is in b). */
  held: Uint8Array[];
  /** What multigrid needs below each level, shared by all of them: corrections[i] is as large as levels[i]. */
  corrections: (Level | null)[];
  /** columns in which cells were filled again, while solving */
  touched: Uint8Array;
}

export interface Solution {
  /** Full set: what is left over of the balance, as a part of all that is dragged in and out. */
  imbalance: number;
  cycles: number;
  converged: boolean;
}

export function newPressureSolver(rows: number, columns: number): PressureSolver {
  const levels = [newLevel(rows, columns)];
  const corrections: (Level | null)[] = [null];
  for (let n = columns; n % 2 === 0; ) {
    n /= 2;
    levels.push(newLevel(rows, n));
    corrections.push(newLevel(rows, n));
  }
  return {
    levels,
    corrections,
    held: levels.map((level) => new Uint8Array(rows * level.columns)),
    touched: new Uint8Array(columns),
  };
}

/** The hierarchy of corrections under levels[at]. */
const below = ({ levels, corrections }: PressureSolver, at: number): Level[] => [
  levels[at]!,
  ...(corrections.slice(at + 1) as Level[]),
];

const MAX_CYCLES = 60;
/** On the way up a level is solved as far as the next can use. */
const ON_THE_WAY = 1e-2;
/**
 * A cycle takes away some 5/6 of what is left (measured, whatever the grid); two take this much, with something to
 * spare.
 */
const FAR_TO_GO = 30;

/** Solves for levels[0].p. The caller has filled levels[0] and marked cells GIVEN in held[0]. */
export function solvePressure(solver: PressureSolver, tolerance: number): Solution {
  const { levels, held } = solver;
  sumLinks(levels[0]!);
  for (let at = 0; at + 1 < levels.length; at++) {
    const fine = levels[at]!;
    const coarse = levels[at + 1]!;
    for (let k = 0; k < held[at]!.length; k++) if (held[at]![k] !== GIVEN) held[at]![k] = 0;
    factor(fine, held[at]!);
    coarsen(fine, coarse, held[at]!);
    restrictProblem(fine, coarse, held[at]!, held[at + 1]!);
  }
  levels[levels.length - 1]!.p.fill(0);
  let cycles = 0;
  let solution: Solution = { imbalance: 0, cycles: 0, converged: true };
  for (let at = levels.length - 1; at >= 0; at--) {
    if (at + 1 < levels.length) prolong(levels[at + 1]!, levels[at]!, held[at]!);
    solution = solveLevel(solver, at, at === 0 ? tolerance : Math.max(tolerance, ON_THE_WAY));
    if (at === 0) cycles = solution.cycles;
  }
  return { ...solution, cycles };
}

/** Inflow of a dropped column goes to the kept ones by its weights; a kept cell is given where the fine one is. */
function restrictProblem(fine: Level, coarse: Level, fineHeld: Uint8Array, coarseHeld: Uint8Array): void {
  const { rows, columns, before, after, b } = fine;
  for (let j = 0; j < columns; j += 2) {
    const at = j * rows;
    const left = (j === 0 ? columns - 1 : j - 1) * rows;
    const right = (j + 1 === columns ? 0 : j + 1) * rows;
    const to = (j >> 1) * rows;
    for (let i = 0; i < rows; i++) {
      coarse.b[to + i] = b[at + i]! + after[left + i]! * b[left + i]! + before[right + i]! * b[right + i]!;
      coarseHeld[to + i] = fineHeld[at + i] === GIVEN ? GIVEN : 0;
    }
  }
}

/** Pressure of the kept columns, and between them by their weights. */
function prolong(coarse: Level, fine: Level, held: Uint8Array): void {
  const { rows, columns, before, after, p } = fine;
  for (let j = 0; j < columns; j++) {
    const at = j * rows;
    const lo = (j >> 1) * rows;
    const hi = (((j >> 1) + 1) % coarse.columns) * rows;
    for (let i = 0; i < rows; i++) {
      const k = at + i;
      p[k] =
        held[k] === GIVEN
          ? 0
          : j % 2 === 0
            ? coarse.p[lo + i]!
            : before[k]! * coarse.p[lo + i]! + after[k]! * coarse.p[hi + i]!;
    }
  }
}

function solveLevel(solver: PressureSolver, at: number, tolerance: number): Solution {
  const level = solver.levels[at]!;
  const held = solver.held[at]!;
  const hierarchy = below(solver, at);
  let scale = 0;
  for (let k = 0; k < level.b.length; k++) if (held[k] !== GIVEN) scale += Math.abs(level.b[k]!);
  if (scale === 0) {
    level.p.fill(0);
    for (let k = 0; k < held.length; k++) if (held[k] !== GIVEN) held[k] = BROKEN;
    factorAll(hierarchy, held);
    return { imbalance: 0, cycles: 0, converged: true };
  }
  for (let k = 0; k < held.length; k++) if (held[k] !== GIVEN) held[k] = level.p[k]! > 0 ? 0 : BROKEN;
  let built = false;
  for (let cycles = 0; ; cycles++) {
    const broken = breakNegative(level, held);
    const { left, filled } = fillAgain(level, held, solver.touched);
    const imbalance = left / scale;
    const converged = imbalance <= tolerance;
    if (filled > 0 && !converged) settleTouched(level, held, solver.touched);
    // Even a single cell changed matters to the coarse levels: left as they were they would cost more cycles than
    // making them anew.
    if (!built || broken + filled > 0) factorAll(hierarchy, held);
    built = true;
    if (converged || cycles >= MAX_CYCLES) return { imbalance, cycles, converged };
    cycle(hierarchy, 0);
    // Nothing breaks or fills any more and there is far to go: the next look can wait a cycle.
    if (broken + filled === 0 && imbalance > FAR_TO_GO * tolerance) {
      cycle(hierarchy, 0);
      cycles++;
    }
  }
}

/** Factors and coarsens the whole hierarchy for the cells that are full now. */
function factorAll(hierarchy: readonly Level[], held: Uint8Array): void {
  factor(hierarchy[0]!, held);
  for (let at = 0; at + 1 < hierarchy.length; at++) coarsen(hierarchy[at]!, hierarchy[at + 1]!, held);
}

function breakNegative({ p }: Level, held: Uint8Array): number {
  let broken = 0;
  for (let k = 0; k < p.length; k++) {
    if (p[k]! < 0) {
      p[k] = 0;
      held[k] = BROKEN;
      broken++;
    }
  }
  return broken;
}

/**
 * Fills broken cells into which more flows than they take, marks their columns; returns how many, and what is left over
 * in all cells (m³/s).
 */
function fillAgain(level: Level, held: Uint8Array, touched: Uint8Array): { left: number; filled: number } {
  const { rows, columns, along, around, diagonal, p, b } = level;
  let left = 0;
  let filled = 0;
  for (let j = 0; j < columns; j++) {
    const at = j * rows;
    const before = (j === 0 ? columns - 1 : j - 1) * rows;
    const after = (j === columns - 1 ? 0 : j + 1) * rows;
    let under = 0;
    touched[j] = 0;
    for (let i = 0; i < rows; i++) {
      const k = at + i;
      const up = along[k]!;
      const state = held[k]!;
      if (state !== GIVEN) {
        let r = b[k]! - diagonal[k]! * p[k]! + around[before + i]! * p[before + i]! + around[k]! * p[after + i]!;
        if (i > 0) r += under * p[k - 1]!;
        if (i < rows - 1) r += up * p[k + 1]!;
        if (state === 0) left += Math.abs(r);
        else if (r > 0) {
          left += r;
          held[k] = 0;
          touched[j] = 1;
          filled++;
        }
      }
      under = up;
    }
  }
  return { left, filled };
}

/**
 * Solves A x = b on the cells that are full now, with the factors solvePressure left, to `tolerance` of Σ|b|. `x`
 * starts from what it holds where `warm`, otherwise from 0; levels[0].p and b are put back.
 */
export function solveLinear(
  solver: PressureSolver,
  b: Float64Array,
  x: Float64Array,
  tolerance: number,
  warm = false,
): Solution {
  const level = solver.levels[0]!;
  const held = solver.held[0]!;
  const hierarchy = below(solver, 0);
  const { p: pressure, b: inflow } = level;
  level.p = x;
  level.b = b;
  if (!warm) x.fill(0);
  let scale = 0;
  for (let k = 0; k < b.length; k++) if (held[k] === 0) scale += Math.abs(b[k]!);
  let solution: Solution = { imbalance: 0, cycles: 0, converged: true };
  for (let cycles = 0; scale > 0; cycles++) {
    // leftOver holds after a cycle only
    const imbalance = cycles === 0 ? 1 : leftOver(level, held) / scale;
    solution = { imbalance, cycles, converged: imbalance <= tolerance };
    if (solution.converged || cycles === MAX_CYCLES) break;
    cycle(hierarchy, 0);
  }
  level.p = pressure;
  level.b = inflow;
  return solution;
}

/** Σ|b - A p| over the full cells; after a cycle only the dropped columns have any. */
function leftOver({ rows, columns, along, around, diagonal, p, b }: Level, held: Uint8Array): number {
  let left = 0;
  for (let j = columns === 1 ? 0 : 1; j < columns; j += columns % 2 === 0 ? 2 : 1) {
    const at = j * rows;
    const before = (j === 0 ? columns - 1 : j - 1) * rows;
    const after = (j === columns - 1 ? 0 : j + 1) * rows;
    let under = 0;
    for (let i = 0; i < rows; i++) {
      const k = at + i;
      const up = along[k]!;
      if (held[k] === 0) {
        let r = b[k]! - diagonal[k]! * p[k]! + around[before + i]! * p[before + i]! + around[k]! * p[after + i]!;
        if (i > 0) r += under * p[k - 1]!;
        if (i < rows - 1) r += up * p[k + 1]!;
        left += Math.abs(r);
      }
      under = up;
    }
  }
  return left;
}
