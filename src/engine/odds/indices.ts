/**
 * Sobol' indices: which share of the variance of f goes with a group of draws alone, and with all it takes part in.
 *
 *   S  = mean of f(B)·[f(A_B) - f(A)]/V          alone (first)
 *   S_T = mean of [f(A) - f(A_B)]²/2V            with all that it takes part in (total)
 *
 * A, B two independent sets of draws, A_B the set A with the group's draws taken from B; f less its mean, V its
 * variance over A and B. A and B are halves of one set of scrambled Sobol' points. Intervals: middle 95 % of the same
 * rows drawn anew from themselves; the points being more even than chance, they are rather too wide.
 * @source Saltelli2010 (first); Jansen1999 (total); DavisonHinkley 2.2 (drawn anew)
 */
import { mixed, sobolPoints } from './sobol.ts';

/** A value for each row of even draws, a column for each dimension. NaN: none. */
export type Model = (u: readonly Float64Array[]) => ArrayLike<number>;

export interface Index {
  share: number;
  low: number;
  high: number;
}

interface GroupIndices {
  first: Index;
  total: Index;
}

export interface Indices {
  mean: number;
  variance: number;
  groups: GroupIndices[];
}

/** How often the rows are drawn anew. */
const ANEW = 200;

/** `groups`: the dimensions of each. `rows` at a time are handed to the model, `blocks` times. */
export function sobolIndices(
  model: Model,
  dimensions: number,
  groups: readonly (readonly number[])[],
  { rows, blocks, seed }: { rows: number; blocks: number; seed: number },
): Indices {
  const n = rows * blocks;
  const [a, b] = [new Float64Array(n), new Float64Array(n)];
  const mixedIn = groups.map(() => new Float64Array(n));
  const points = sobolPoints(seed);
  const columns = () => Array.from({ length: dimensions }, () => new Float64Array(rows));
  const [uA, uB] = [columns(), columns()];
  for (let block = 0; block < blocks; block++) {
    for (let d = 0; d < dimensions; d++) {
      points(d, block * rows, uA[d]!);
      points(dimensions + d, block * rows, uB[d]!);
    }
    a.set(model(uA), block * rows);
    b.set(model(uB), block * rows);
    groups.forEach((group, g) => {
      mixedIn[g]!.set(model(uA.map((column, d) => (group.includes(d) ? uB[d]! : column))), block * rows);
    });
  }
  return told(withNumbersOnly(a, b, mixedIn), seed);
}

interface Rows {
  a: Float64Array;
  b: Float64Array;
  groups: Float64Array[];
}

/** Rows in which every set has a value. */
function withNumbersOnly(a: Float64Array, b: Float64Array, groups: Float64Array[]): Rows {
  const kept = a.map((x, k) => (Number.isFinite(x + b[k]! + groups.reduce((s, g) => s + g[k]!, 0)) ? 1 : 0));
  const only = (values: Float64Array) => values.filter((_, k) => kept[k] === 1);
  return { a: only(a), b: only(b), groups: groups.map(only) };
}

function told({ a, b, groups }: Rows, seed: number): Indices {
  const n = a.length;
  const mean = (sumOf(a) + sumOf(b)) / (2 * n);
  for (const values of [a, b, ...groups]) for (let k = 0; k < n; k++) values[k]! -= mean;
  const all = new Uint32Array(n).map((_, k) => k);
  const variance = varianceOf(a, b, all);
  const estimates = groups.map((group) => estimate(a, b, group, all));
  const again = drawnAnew(n, seed).map((rows) => groups.map((group) => estimate(a, b, group, rows)));
  return {
    mean,
    variance,
    groups: estimates.map(({ first, total }, g) => ({
      first: within(
        first,
        again.map((of) => of[g]!.first),
      ),
      total: within(
        total,
        again.map((of) => of[g]!.total),
      ),
    })),
  };
}

const sumOf = (values: Float64Array) => values.reduce((sum, x) => sum + x, 0);

function varianceOf(a: Float64Array, b: Float64Array, rows: Uint32Array): number {
  let [sum, square] = [0, 0];
  for (const k of rows) {
    sum += a[k]! + b[k]!;
    square += a[k]! * a[k]! + b[k]! * b[k]!;
  }
  const n = 2 * rows.length;
  return (square - (sum * sum) / n) / (n - 1);
}

function estimate(a: Float64Array, b: Float64Array, group: Float64Array, rows: Uint32Array) {
  let [first, total] = [0, 0];
  for (const k of rows) {
    const change = group[k]! - a[k]!;
    first += b[k]! * change;
    total += change * change;
  }
  const variance = varianceOf(a, b, rows);
  return { first: first / rows.length / variance, total: total / (2 * rows.length) / variance };
}

/** Rows drawn from themselves, the same for the same seed. */
function drawnAnew(n: number, seed: number): Uint32Array[] {
  let state = mixed(seed ^ 0x5bd1e995);
  return Array.from({ length: ANEW }, () =>
    new Uint32Array(n).map(() => {
      state = (state + 0x3c6ef372) | 0;
      return Math.floor(((mixed(state) >>> 0) / 2 ** 32) * n);
    }),
  );
}

function within(share: number, again: number[]): Index {
  const sorted = Float64Array.from(again).sort();
  const at = (p: number) => sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))]!;
  return { share, low: Math.min(share, at(0.025)), high: Math.max(share, at(0.975)) };
}
