/**
 * A quantity of many draws, kept in little: its moments, its ends, and how many fell into each of even steps.
 *
 *   mean = c + S₁/n        variance = (S₂ - S₁²/n)/(n - 1)        S₁ = Σ (x - c), S₂ = Σ (x - c)²
 *
 * c the middle of the steps. The sums of a block are added as whole numbers of 2^-300, without rounding, so that blocks
 * put together in any order, by any number of workers, give the same to the last digit. Steps are a 256th of the spread
 * of the first block and reach eight of it to each side; the two beyond end at the least and greatest value met.
 *
 *   quantile p       the place under which p·n of the draws lie, even within a step
 *   its limits       the places of p ± 1.96·√(p(1 - p)/n), each moved out to the end of its step
 *
 * @source JCGM101 7.6 (mean and variance); JCGM101 7.7 (quantiles); Woodruff1952 (limits)
 */
import { Z95 } from './limits.ts';

/** Even steps about `centre`. */
export interface Grid {
  centre: number;
  step: number;
}

const A_SPREAD = 256;
const BINS = 16 * A_SPREAD;

export interface Distribution {
  count: number;
  /** of x - c and of its square, in 2^-300 */
  sum: bigint;
  square: bigint;
  least: number;
  most: number;
  /** below the steps, the steps, above them */
  bins: Uint32Array;
}

export const emptyDistribution = (): Distribution => ({
  count: 0,
  sum: 0n,
  square: 0n,
  least: Number.POSITIVE_INFINITY,
  most: Number.NEGATIVE_INFINITY,
  bins: new Uint32Array(BINS + 2),
});

/** Steps for values like these: about their middle, by the middle half of them, or all where that has no width. */
export function gridFor(values: Float64Array): Grid {
  const sorted = values.filter(Number.isFinite).sort();
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  const centre = at(0.5);
  const spread = (at(0.75) - at(0.25)) / NORMAL_QUARTILES || (at(1) - at(0)) / 2;
  return { centre, step: Math.max(spread / A_SPREAD, Math.abs(centre) * 1e-14, Number.MIN_VALUE * 2 ** 100) };
}

/** Quartiles of a normal stand so many standard deviations apart. */
const NORMAL_QUARTILES = 1.349;

/** The values of one block; what is no number is left out. */
export function distributionOf({ centre, step }: Grid, values: Float64Array, count = values.length): Distribution {
  const result = emptyDistribution();
  const { bins } = result;
  let n = 0;
  let [sum, square] = [0, 0];
  let [least, most] = [result.least, result.most];
  for (let k = 0; k < count; k++) {
    const x = values[k]!;
    if (!Number.isFinite(x)) continue;
    const from = x - centre;
    n++;
    sum += from;
    square += from * from;
    if (x < least) least = x;
    if (x > most) most = x;
    const bin = Math.floor(from / step) + BINS / 2;
    bins[bin < 0 ? 0 : bin >= BINS ? BINS + 1 : bin + 1]!++;
  }
  return { ...result, count: n, sum: whole(sum), square: whole(square), least, most };
}

export function joined(one: Distribution, other: Distribution): Distribution {
  return {
    count: one.count + other.count,
    sum: one.sum + other.sum,
    square: one.square + other.square,
    least: Math.min(one.least, other.least),
    most: Math.max(one.most, other.most),
    bins: one.bins.map((bin, i) => bin + other.bins[i]!),
  };
}

interface Moments {
  mean: number;
  sd: number;
}

export function momentsOf({ centre }: Grid, { count, sum, square }: Distribution): Moments {
  const s1 = fraction(sum);
  return {
    mean: centre + s1 / count,
    sd: count < 2 ? 0 : Math.sqrt(Math.max(0, (fraction(square) - (s1 * s1) / count) / (count - 1))),
  };
}

export interface Quantile {
  value: number;
  low: number;
  high: number;
}

/** `most`: as how many independent draws they count at most. */
export function quantileOf(
  grid: Grid,
  distribution: Distribution,
  share: number,
  most = Number.POSITIVE_INFINITY,
): Quantile {
  const off = Z95 * Math.sqrt((share * (1 - share)) / Math.min(distribution.count, most));
  const [from, to] = placeOf(grid, distribution, share);
  return {
    value: from.at + (to.at - from.at) * from.within,
    low: placeOf(grid, distribution, share - off)[0].at,
    high: placeOf(grid, distribution, share + off)[1].at,
  };
}

/** Ends of the step in which a share of the draws is reached, and how far within it. */
function placeOf(
  { centre, step }: Grid,
  { count, bins, least, most }: Distribution,
  share: number,
): [from: { at: number; within: number }, to: { at: number }] {
  const wanted = Math.min(1, Math.max(0, share)) * count;
  let below = 0;
  let bin = 0;
  let last = 0;
  for (; bin < bins.length; bin++) {
    if (bins[bin] === 0) continue;
    last = bin;
    if (below + bins[bin]! >= wanted) break;
    below += bins[bin]!;
  }
  const edge = (i: number) => centre + (i - BINS / 2) * step;
  const from = last === 0 ? least : Math.max(least, edge(last - 1));
  const to = last === BINS + 1 ? most : Math.min(most, edge(last));
  return [{ at: from, within: count === 0 ? 0 : (wanted - below) / bins[last]! }, { at: to }];
}

const PLACES = 300n;

/** A number as a whole number of 2^-300, what is less cut off. */
function whole(x: number): bigint {
  // x = m·2^e with m whole: 53 places of a double.
  const e = x === 0 ? 0 : Math.max(-1000, Math.floor(Math.log2(Math.abs(x)))) - 60;
  const m = BigInt(Math.trunc(x * 2 ** -e));
  const shift = PLACES + BigInt(e);
  return shift >= 0n ? m << shift : m / (1n << -shift);
}

/** Back again, rounded once. */
const fraction = (x: bigint): number => Number(x) / 2 ** Number(PLACES);
