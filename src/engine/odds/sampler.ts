/**
 * How a pair is drawn: from as many independent numbers, even between 0 and 1, as there are dimensions.
 *
 *   x = mean + Σ_d F_d·w_d       w_d = standard normal of u_d, or √12·(u_d - ½) where it is rectangular
 *   F·Fᵀ = C                     the covariance given
 *
 * x the numbers of the pair that are in doubt (rad, m); one may have several sources of doubt, which add. F is
 * Cholesky's factor, parts that know nothing of each other apart, so that a dimension belongs to one part: what matters
 * (shares.ts) can then be told part by part.
 * @source JCGM101 6.4.8.4 (normal draws that go together); JCGM101 6.4.2.4 (rectangular)
 */
import { isShape } from '../belief/unknowns.ts';
import type { SeatInput } from '../contact/fit.ts';
import type { Part } from '../parts/line.ts';
import { normalsOf, standardNormal } from './normal.ts';

export interface Sampler {
  dimensions: number;
  /** A pair for numbers in (0, 1), as many as dimensions; null where they make no shape. */
  shape(u: Float64Array): SeatInput[] | null;
  /** as how many independent draws all of them count at most: those of a short list of shapes; no limit left out */
  effective?: number;
  /** the fast way, for many draws at once; left out where there is none */
  varied?: Varied;
}

/** A pair of which numbers vary, and what is added to them. */
export interface Varied {
  seats: SeatInput[];
  sources: Source[];
  /** Adds to a column for each source, from a column of even draws for each dimension. */
  add(u: readonly Float64Array[], columns: readonly Float64Array[]): void;
}

/** A number of the pair that is in doubt. */
export interface Source {
  seat: number;
  part: Part;
  of: 'halfAngle' | 'radius' | 'station' | 'from' | 'to';
}

export type Marginal = 'normal' | 'rectangular';

export interface Linear {
  seats: SeatInput[];
  sources: Source[];
  /** by source and dimension (rad or m) */
  factor: Float64Array[];
  /** of each dimension */
  marginals: Marginal[];
  /** sources that know of each other stand in one group: its number, of each source and of each dimension */
  groups: number[];
}

/** One whose numbers follow the draws evenly. */
export interface LinearSampler extends Sampler {
  varied: Varied;
  linear: Linear;
}

/** Correlation below which two sources know nothing of each other. */
const UNRELATED = 1e-9;
/** Share of a variance that is rounding: a source is then wholly told by those before it. */
const NOTHING = 1e-12;
/** Share of a variance that is missing: more is no rounding, but no covariance either. */
const NEGATIVE = 1e-9;

/**
 * The sampler of a mean and a covariance. `marginals`: the shape of each source, normal when left out; one that is
 * rectangular goes with no other.
 */
export function linearSampler(
  seats: SeatInput[],
  sources: Source[],
  covariance: readonly ArrayLike<number>[],
  marginals: readonly Marginal[] = [],
): LinearSampler {
  const n = sources.length;
  const groups = groupsOf(covariance, n);
  sources.forEach((_, i) => {
    if (marginals[i] === 'rectangular' && groups.some((g, k) => k !== i && g === groups[i]))
      throw new RangeError(`source ${i} is rectangular and correlated with another: allowed is one or the other`);
  });
  const factor = choleskyOf(covariance, n);
  const linear: Linear = {
    seats,
    sources,
    factor,
    marginals: sources.map((_, i) => marginals[i] ?? 'normal'),
    groups,
  };
  return samplerOf(linear);
}

export function samplerOf(linear: Linear): LinearSampler {
  const { seats, sources, factor, marginals } = linear;
  const used = marginals.flatMap((_, d) => (factor.some((row) => row[d] !== 0) ? [d] : []));
  let w = new Float64Array(0);
  const add: Varied['add'] = (u, columns) => {
    const count = u[0]?.length ?? 0;
    if (w.length !== count) w = new Float64Array(count);
    for (const d of used) {
      standardise(u[d]!, marginals[d]!, w);
      columns.forEach((column, i) => {
        if (factor[i]![d] !== 0) addTo(column, w, factor[i]![d]!);
      });
    }
  };
  const varied = { seats, sources, add };
  return { dimensions: marginals.length, shape: (u) => shapeOf(varied, u), varied, linear };
}

function standardise(u: Float64Array, marginal: Marginal, w: Float64Array): void {
  if (marginal === 'normal') normalsOf(u, w);
  else for (let k = 0; k < w.length; k++) w[k] = standard(u[k]!, marginal);
}

function addTo(column: Float64Array, w: Float64Array, by: number): void {
  for (let k = 0; k < column.length; k++) column[k]! += by * w[k]!;
}

/** The same with the doubt of each source multiplied. */
export const withSpreads = (linear: Linear, by: ArrayLike<number>): Linear => ({
  ...linear,
  factor: linear.factor.map((row, i) => row.map((f) => f * by[i]!)),
});

/** An even draw as one of variance 1. */
export const standard = (u: number, marginal: Marginal): number =>
  marginal === 'normal' ? standardNormal(u) : Math.sqrt(12) * (u - 0.5);

/** One pair. */
function shapeOf({ seats, sources, add }: Varied, u: Float64Array): SeatInput[] | null {
  const by = sources.map(() => new Float64Array(1));
  add(
    Array.from(u, (x) => Float64Array.of(x)),
    by,
  );
  return withAdded(
    seats,
    sources,
    by.map((column) => column[0]!),
  );
}

/** A pair with so much added to its numbers; null where that makes no shape. */
export function withAdded(
  seats: readonly SeatInput[],
  sources: readonly Source[],
  by: ArrayLike<number>,
): SeatInput[] | null {
  const shaped = seats.map((seat) => ({ ...seat, journal: { ...seat.journal }, bush: { ...seat.bush } }));
  sources.forEach(({ seat, part, of }, i) => {
    shaped[seat]![part][of] += by[i]!;
  });
  const inOrder = shaped.every(({ journal, bush }) => journal.from < journal.to && bush.from < bush.to);
  return inOrder && isShape(shaped) ? shaped : null;
}

/** Sources joined by correlation, however far: the number of the first of each group. */
function groupsOf(covariance: readonly ArrayLike<number>[], n: number): number[] {
  const groups = Array.from({ length: n }, (_, i) => i);
  for (let i = 0; i < n; i++)
    for (let k = 0; k < i; k++) {
      const scale = Math.sqrt(covariance[i]![i]! * covariance[k]![k]!);
      if (Math.abs(covariance[i]![k]!) <= UNRELATED * scale || groups[i] === groups[k]) continue;
      const [low, high] = [Math.min(groups[i]!, groups[k]!), Math.max(groups[i]!, groups[k]!)];
      for (let j = 0; j <= i; j++) if (groups[j] === high) groups[j] = low;
    }
  return groups;
}

/** L·Lᵀ = C, lower; a direction without doubt has none. @source GolubVanLoan 4.2 */
function choleskyOf(covariance: readonly ArrayLike<number>[], n: number): Float64Array[] {
  const rows = Array.from({ length: n }, () => new Float64Array(n));
  for (let i = 0; i < n; i++)
    for (let k = 0; k <= i; k++) {
      let left = covariance[i]![k]!;
      for (let j = 0; j < k; j++) left -= rows[i]![j]! * rows[k]![j]!;
      if (i !== k) rows[i]![k] = rows[k]![k] === 0 ? 0 : left / rows[k]![k]!;
      else if (left < -NEGATIVE * covariance[i]![i]!)
        throw new RangeError(
          `covariance of source ${i}: with those before it, it leaves a variance of ${left}; allowed is 0 or more`,
        );
      else rows[i]![i] = left <= NOTHING * covariance[i]![i]! ? 0 : Math.sqrt(left);
    }
  return rows;
}
