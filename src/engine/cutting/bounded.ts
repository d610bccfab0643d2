/**
 * The most likely point of a normal variable that is also known to lie within bounds.
 *
 *   least  (x - m)ᵀ·P⁻¹·(x - m)   with  g_c·x ≤ h_c
 *
 * By its dual: with K = G·P·Gᵀ and the overshoot r = G·m - h,
 *
 *   least  ½·λᵀ·K·λ - rᵀ·λ  with  λ ≥ 0,      x = m - P·Gᵀ·λ,      the least is rᵀ·λ
 *
 * m mean, P covariance without the bounds · λ multipliers, 0 where a bound does not hold x back. Where m keeps every
 * bound x is m: a bound alone moves nothing. The dual is solved by the active set of Lawson and Hanson. Bounds that
 * repeat each other or contradict each other make K singular; every bound is therefore one that may be overstepped by
 * a normal 0.1 nm, and a contradiction is told by a least that is enormous.
 * @source constrained least squares and its active set: C. L. Lawson, R. J. Hanson, Solving Least Squares Problems,
 *         1974, chapter 23; the dual of a quadratic programme: S. Boyd, L. Vandenberghe, Convex Optimization, 2004,
 *         section 5.2.4 (both from memory)
 */

/** g·x ≤ h */
export interface HalfSpace {
  normal: number[];
  limit: number;
}

export interface Normal {
  mean: number[];
  covariance: number[][];
}

/** Deviation (m) by which every bound may be overstepped. */
const SOFT = 1e-10;
/** A bound overstepped by less than this (m) is kept. */
const KEPT = 1e-14;

export const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, x, i) => sum + x * b[i]!, 0);
export const times = (matrix: readonly number[][], x: readonly number[]): number[] => matrix.map((row) => dot(row, x));

export interface Mode {
  point: number[];
  /** squared distance from the mean, in standard deviations */
  cost: number;
}

export function modeWithin({ mean, covariance }: Normal, bounds: readonly HalfSpace[]): Mode {
  const over = bounds.map(({ normal, limit }) => dot(normal, mean) - limit);
  if (over.every((r) => r <= KEPT)) return { point: mean, cost: 0 };
  const pulls = bounds.map(({ normal }) => times(covariance, normal));
  const dual = bounds.map(({ normal }, i) => pulls.map((pull, j) => dot(normal, pull) + (i === j ? SOFT * SOFT : 0)));
  const multipliers = nonNegative(dual, over);
  return { point: mean.map((m, i) => m - pulls.reduce((sum, pull, c) => sum + multipliers[c]! * pull[i]!, 0)), cost: Math.max(0, dot(multipliers, over)) };
}

/** λ ≥ 0 with the least ½·λᵀ·K·λ - rᵀ·λ, K positive. */
function nonNegative(matrix: readonly number[][], right: readonly number[]): number[] {
  const size = right.length;
  let x = new Array<number>(size).fill(0);
  let active: number[] = [];
  // Every round adds one bound; each of them is left a few times at most.
  for (let round = 0; round < 10 * size + 10; round++) {
    const rest = right.map((r, i) => r - dot(matrix[i]!, x));
    let next = -1;
    for (let i = 0; i < size; i++) if (!active.includes(i) && rest[i]! > KEPT && (next < 0 || rest[i]! > rest[next]!)) next = i;
    if (next < 0) break;
    active = [...active, next];
    for (;;) {
      const found = solvedFor(matrix, right, active);
      if (found.every((value) => value > 0)) {
        x = new Array<number>(size).fill(0);
        for (const [k, i] of active.entries()) x[i] = found[k]!;
        break;
      }
      // As far toward it as all stay above nothing; what arrives at nothing is let go.
      let step = 1;
      for (const [k, i] of active.entries()) if (found[k]! <= 0) step = Math.min(step, x[i]! / (x[i]! - found[k]!) || 0);
      for (const [k, i] of active.entries()) x[i] = x[i]! + step * (found[k]! - x[i]!);
      const kept = active.filter((i, k) => !(found[k]! <= 0 && x[i]! <= 1e-12 * Math.abs(found[k]!)));
      for (const i of active) if (!kept.includes(i)) x[i] = 0;
      if (kept.length === 0 || kept.length === active.length) return x;
      active = kept;
    }
  }
  return x;
}

/** Solves the rows and columns that are active, by Cholesky's root. */
function solvedFor(matrix: readonly number[][], right: readonly number[], active: readonly number[]): number[] {
  const n = active.length;
  const root: number[][] = [];
  for (let i = 0; i < n; i++) {
    const row: number[] = [];
    for (let j = 0; j <= i; j++) {
      let sum = matrix[active[i]!]![active[j]!]!;
      for (let k = 0; k < j; k++) sum -= (i === j ? row[k]! : root[j]![k]!) * row[k]!;
      row.push(i === j ? Math.sqrt(Math.max(sum, SOFT * SOFT * 1e-3)) : sum / root[j]![j]!);
    }
    root.push(row);
  }
  const y = active.map((i) => right[i]!);
  for (let i = 0; i < n; i++) {
    for (let k = 0; k < i; k++) y[i]! -= root[i]![k]! * y[k]!;
    y[i]! /= root[i]![i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let k = i + 1; k < n; k++) y[i]! -= root[k]![i]! * y[k]!;
    y[i]! /= root[i]![i]!;
  }
  return y;
}
