/**
 * Shapes drawn as the readings allow: normal about the fitted numbers with their covariance.
 * @source JCGM101 5.9
 */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { mersenne } from 'pure-rand/generator/mersenne';
import type { SeatInput } from '../contact/fit.ts';
import type { Belief } from './belief.ts';
import { drawOf } from './decomposition.ts';
import { normalQuantile } from './distributions.ts';
import { isShape, withNumbers } from './unknowns.ts';

/**
 * Something of each of shapes drawn, the same for the same seed; the shapes themselves are not kept. What the readings
 * leave open stays as it is; draws that are no shape at all are left out.
 */
export function ofDrawnShapes<T>(
  { seats, unknowns, numbers, decomposition }: Belief,
  count: number,
  seed: number,
  of: (shape: SeatInput[]) => T,
): T[] {
  const { rank } = decomposition;
  const normal = standardNormals(seed, count * rank);
  const results: T[] = [];
  for (let k = 0; k < count; k++) {
    const change = drawOf(decomposition, normal.subarray(k * rank, (k + 1) * rank));
    const drawn = withNumbers(
      seats,
      unknowns,
      numbers.map((x, j) => x + change[j]!),
    );
    if (isShape(drawn)) results.push(of(drawn));
  }
  return results;
}

/** The last sequence made: every edit of a notebook asks for the same one again. */
let last = { seed: Number.NaN, random: mersenne(0), values: new Float64Array(0) };

/** Standard normal draws, the same for the same seed however many are asked for. */
export function standardNormals(seed: number, count: number): Float64Array {
  // Not xoroshiro128plus: begun with a small seed, its first numbers are far out.
  if (last.seed !== seed) last = { seed, random: mersenne(seed), values: new Float64Array(0) };
  const known = last.values.length;
  if (known < count) {
    const values = new Float64Array(count);
    values.set(last.values);
    for (let i = known; i < count; i++) values[i] = normalQuantile(uniformFloat64(last.random) + Number.EPSILON / 4);
    last.values = values;
  }
  return last.values;
}
