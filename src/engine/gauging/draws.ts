/** Shapes drawn as the readings allow: normal about the fitted numbers with their covariance (JCGM 101:2008, 5.9). */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { mersenne } from 'pure-rand/generator/mersenne';
import type { SeatInput } from '../contact/fit.ts';
import { drawOf } from './decomposition.ts';
import { normalQuantile } from './distributions.ts';
import type { Estimate } from './estimate.ts';
import { isShape, withNumbers } from './shape.ts';

/** Shapes drawn, the same for the same seed. What the readings leave open stays as it is; draws that are no shape at all are left out. */
export function drawnShapes({ seats, unknowns, numbers, decomposition }: Estimate, count: number, seed: number): SeatInput[][] {
  // Not xoroshiro128plus: begun with a small seed, its first numbers are far out.
  const random = mersenne(seed);
  const shapes: SeatInput[][] = [];
  for (let k = 0; k < count; k++) {
    const normal = Array.from({ length: decomposition.rank }, () => normalQuantile(uniformFloat64(random) + Number.EPSILON / 4));
    const change = drawOf(decomposition, normal);
    const drawn = withNumbers(
      seats,
      unknowns,
      numbers.map((x, j) => x + change[j]!),
    );
    if (isShape(drawn)) shapes.push(drawn);
  }
  return shapes;
}
