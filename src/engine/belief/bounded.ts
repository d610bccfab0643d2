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
 * @source LawsonHanson chapter 23 (constrained least squares and its active set); BoydVandenberghe 5.2.4 (the dual of a
 * quadratic programme)
 */
import { dot } from '../algebra/dot.ts';
import { lowerRoot, lowerSolved, upperSolved } from '../algebra/triangular.ts';

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
/** of the softness: no root of the matrix is taken for less */
const LEAST_ROOT = 1e-3;
/** A bound overstepped by less than this (m) is kept. */
const KEPT = 1e-14;

export const times = (matrix: readonly number[][], x: readonly number[]): number[] => matrix.map((row) => dot(row, x));

export interface Mode {
  point: number[];
  /** squared distance from the mean, in standard deviations */
  cost: number;
}

export const modeWithin = ({ mean, covariance }: Normal, bounds: readonly HalfSpace[]): Mode => {
  const { cost, shift } = new Walls(bounds, (g) => times(covariance, g)).held(
    bounds.map(({ normal, limit }) => dot(normal, mean) - limit),
  );
  return { point: shift ? mean.map((m, i) => m + shift()[i]!) : mean, cost };
};

/**
 * Bounds round normal variables of one covariance; what a bound needs of it is worked out the first time it holds
 * something back.
 */
export class Walls {
  private readonly pulls: number[][] = [];
  private readonly columns: number[][] = [];

  /** @param pull the covariance times a vector */
  constructor(
    private readonly bounds: readonly HalfSpace[],
    private readonly pull: (normal: readonly number[]) => number[],
  ) {}

  /**
   * By how much the mean oversteps each bound (m): what it costs to be moved back, and the way back; null where it need
   * not move.
   */
  held(over: readonly number[]): { cost: number; shift: (() => number[]) | null } {
    if (over.every((r) => r <= KEPT)) return { cost: 0, shift: null };
    const { active, values } = this.multipliers(over);
    const cost = active.reduce((sum, c, k) => sum + values[k]! * over[c]!, 0);
    return {
      cost: Math.max(0, cost),
      shift: () =>
        active.reduce<number[]>((sum, c, k) => this.pulls[c]!.map((p, i) => (sum[i] ?? 0) - values[k]! * p), []),
    };
  }

  /** Column of K for one bound. */
  private column(c: number): number[] {
    const known = this.columns[c];
    if (known) return known;
    const pull = this.pull(this.bounds[c]!.normal);
    const column = this.bounds.map(({ normal }, i) => dot(normal, pull) + (i === c ? SOFT * SOFT : 0));
    this.pulls[c] = pull;
    this.columns[c] = column;
    return column;
  }

  /** λ ≥ 0 with the least ½·λᵀ·K·λ - rᵀ·λ, those above 0. */
  private multipliers(right: readonly number[]): { active: number[]; values: number[] } {
    const size = right.length;
    let active: number[] = [];
    let values: number[] = [];
    // Every round adds one bound; each of them is left a few times at most.
    for (let round = 0; round < 10 * size + 10; round++) {
      const rest = [...right];
      for (const [k, c] of active.entries()) {
        const column = this.column(c);
        for (let i = 0; i < size; i++) rest[i]! -= column[i]! * values[k]!;
      }
      let next = -1;
      for (let i = 0; i < size; i++)
        if (rest[i]! > KEPT && (next < 0 || rest[i]! > rest[next]!) && !active.includes(i)) next = i;
      if (next < 0) break;
      const before = { active, values };
      active = [...active, next];
      values = [...values, 0];
      for (;;) {
        const found = this.solvedFor(active, right);
        if (found.every((value) => value > 0)) {
          values = found;
          break;
        }
        // As far toward it as all stay above nothing; what arrives at nothing is let go.
        let step = 1;
        for (const [k, value] of found.entries())
          if (value <= 0) step = Math.min(step, values[k]! / (values[k]! - value) || 0);
        const moved = values.map((v, k) => v + step * (found[k]! - v));
        const kept = active.flatMap((_, k) => (found[k]! <= 0 && moved[k]! <= 1e-12 * Math.abs(found[k]!) ? [] : [k]));
        if (kept.length === active.length) return before;
        active = kept.map((k) => active[k]!);
        values = kept.map((k) => moved[k]!);
        if (active.length === 0) return before;
      }
    }
    return { active, values };
  }

  /** Solves the rows and columns that are active, by Cholesky's root. */
  private solvedFor(active: readonly number[], right: readonly number[]): number[] {
    const root = lowerRoot(active.length, (i, k) => this.column(active[k]!)[active[i]!]!, SOFT * SOFT * LEAST_ROOT);
    return upperSolved(
      root,
      lowerSolved(
        root,
        active.map((c) => right[c]!),
      ),
    );
  }
}
