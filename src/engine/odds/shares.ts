/**
 * What the doubt of a quantity comes from, group by group of sources that know nothing of each other (sampler.ts).
 *
 * Where the quantity q follows the numbers evenly the shares of its variance are exact:
 *
 *   share of a group = Σ over its dimensions d of (Σ_i g_i·F_id)²/u²         u² = gᵀ·F·Fᵀ·g        g = ∂q/∂x
 *
 * g by central differences a thousandth of a standard deviation to each side. Whether it holds is looked at in draws:
 * what the straight line leaves of their variance,
 *
 *   left = Σ [q - q₀ - g·(x - x₀) - mean]²/Σ [q - mean]²
 *
 * Beyond LEFT (another seat may touch first, another end bear the film) the shares are Sobol' indices (indices.ts),
 * first and total. A chance that something is in its band follows nothing evenly: indices always. A group with sources
 * on more than one surface is told apart by how each goes with the whole, x_i·g_i with q: these add up too, and one may
 * be below 0.
 *   share of source i = g_i·(C·g)_i/u²
 * @source JCGM100 5.1.3 (shares of a variance); XuGertner2008 (of correlated inputs)
 */

import { type Index, type Model, sobolIndices } from './indices.ts';
import { kernelOf } from './kernel.ts';
import { BLOCK, drawer } from './odds.ts';
import { answerOne } from './oneByOne.ts';
import { type Question, roomFor } from './outcomes.ts';
import { type Linear, samplerOf, standard, withAdded } from './sampler.ts';

/** A quantity by its column, or whether all films are in their bands. */
export type Asked = number | 'inBand' | 'inBandAtBest';

/** Share of the variance that a straight line may leave for it to be called straight. A choice, no more. */
const LEFT = 0.02;
const STEP = 1e-3;

export interface GroupShare {
  /** places of the sources */
  sources: number[];
  /** alone; exact where linear, its interval then no wider than itself */
  first: Index;
  /** with all it takes part in; as `first` where linear */
  total: Index;
  /** of each source by itself, linear only */
  each: number[] | null;
}

interface SharesAnswer {
  method: 'linear' | 'indices';
  /** standard deviation by the straight line (null: of a chance, or where it does not vary), and of the draws */
  linearSd: number | null;
  sampledSd: number;
  /** share of the variance that the straight line leaves; null likewise */
  left: number | null;
  groups: GroupShare[];
}

export function sharesOf(
  linear: Linear,
  question: Question,
  asked: Asked,
  { blocks, seed }: { blocks: number; seed: number },
): SharesAnswer {
  const groups = groupsOf(linear);
  const straight = typeof asked === 'number' ? straightShares(linear, question, asked, groups) : null;
  const check = straight && straightness(linear, question, asked as number, straight.gradient, { blocks, seed });
  if (straight && check && check.left <= LEFT)
    return { method: 'linear', linearSd: straight.sd, sampledSd: check.sd, left: check.left, groups: straight.groups };
  const indices = sobolIndices(modelOf(linear, question, asked), linear.marginals.length, groups.map(dimensionsOf), {
    rows: BLOCK,
    blocks,
    seed,
  });
  return {
    method: 'indices',
    linearSd: straight?.sd ?? null,
    sampledSd: Math.sqrt(indices.variance),
    left: check?.left ?? null,
    groups: groups.map((sources, g) => ({ sources, ...indices.groups[g]!, each: null })),
  };
}

/** Sources and dimensions go by the same numbers (Cholesky's factor). */
const dimensionsOf = (sources: readonly number[]) => sources;

function groupsOf({ groups }: Linear): number[][] {
  return [...new Set(groups)].map((group) => groups.flatMap((g, i) => (g === group ? [i] : [])));
}

/** A column of the kernel, or 1 where all are in band. */
export function modelOf(linear: Linear, question: Question, asked: Asked): Model {
  const kernel = kernelOf(samplerOf(linear), linear.seats, question, BLOCK);
  const all = (1 << linear.seats.length) - 1;
  return (u) => {
    const outcomes = kernel(u);
    return typeof asked === 'number'
      ? outcomes.values[asked]!
      : Float64Array.from(outcomes[asked], (bits) => (bits === all ? 1 : 0));
  };
}

/** Variances of the sources. */
const varianceOf = (row: Float64Array) => row.reduce((sum, f) => sum + f * f, 0);

function straightShares(linear: Linear, question: Question, column: number, groups: number[][]) {
  const gradient = slopesOf(linear, question, column);
  if (gradient.some((g) => !Number.isFinite(g))) return null;
  const along = linear.marginals.map((_, d) => gradient.reduce((sum, g, i) => sum + g * linear.factor[i]![d]!, 0));
  const variance = along.reduce((sum, a) => sum + a * a, 0);
  if (variance === 0) return null;
  const each = gradient.map((g, i) => (g * along.reduce((sum, a, d) => sum + a * linear.factor[i]![d]!, 0)) / variance);
  return {
    gradient,
    sd: Math.sqrt(variance),
    groups: groups.map((sources): GroupShare => {
      const share = sources.reduce((sum, d) => sum + along[d]! ** 2, 0) / variance;
      const exact = { share, low: share, high: share };
      return { sources, first: exact, total: exact, each: sources.map((i) => each[i]!) };
    }),
  };
}

/** ∂q/∂x at the middle, by source; NaN where q is none there. */
export function slopesOf(linear: Linear, question: Question, column: number): Float64Array {
  const room = roomFor(linear.seats, 1);
  const at = (source: number, by: number) => {
    answerOne(withAdded(linear.seats, [linear.sources[source]!], [by]), linear.seats, question, room, 0);
    return room.values[column]![0]!;
  };
  return Float64Array.from(linear.sources, (_, i) => {
    const step = STEP * Math.sqrt(varianceOf(linear.factor[i]!));
    return step === 0 ? 0 : (at(i, step) - at(i, -step)) / (2 * step);
  });
}

/** What a straight line leaves of the variance of the draws, and their standard deviation. */
function straightness(
  linear: Linear,
  question: Question,
  column: number,
  gradient: Float64Array,
  { blocks, seed }: { blocks: number; seed: number },
): { left: number; sd: number } | null {
  const sampler = samplerOf(linear);
  const model = modelOf(linear, question, column);
  const drawn = drawer(sampler, seed);
  const slope = linear.marginals.map((_, d) => gradient.reduce((sum, g, i) => sum + g * linear.factor[i]![d]!, 0));
  const found: [value: number, off: number][] = [];
  for (let block = 0; block < blocks; block++) {
    const u = drawn(block * BLOCK);
    const values = model(u);
    for (let k = 0; k < BLOCK; k++) {
      const line = slope.reduce(
        (sum, s, d) => (s === 0 ? sum : sum + s * standard(u[d]![k]!, linear.marginals[d]!)),
        0,
      );
      if (Number.isFinite(values[k]!)) found.push([values[k]!, values[k]! - line]);
    }
  }
  if (found.length < BLOCK) return null;
  const spread = (of: 0 | 1) => {
    const mean = found.reduce((sum, pair) => sum + pair[of], 0) / found.length;
    return found.reduce((sum, pair) => sum + (pair[of] - mean) ** 2, 0) / (found.length - 1);
  };
  return { left: spread(1) / spread(0), sd: Math.sqrt(spread(0)) };
}
