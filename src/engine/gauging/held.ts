/**
 * Which unknowns are held as drawn where the readings leave some open: as few as will do.
 *
 * The null space of the readings (decomposition.ts) is a space of changes that no reading sees. Holding an unknown
 * that moves in it takes one direction out; it is done until none is left.
 */
import { type Decomposition, NOTHING, openDirections } from '../belief/decomposition.ts';
import type { Unknowns } from '../belief/unknowns.ts';

/** As few unknowns as take the null space away when they are held: deviations first, then half angles, then radii. */
export function heldOf(d: Decomposition, { list }: Unknowns): boolean[] {
  const held = list.map(() => false);
  let open = openDirections(d);
  const order = list.map((_, j) => j).sort((a, b) => ORDER[list[a]!.of] - ORDER[list[b]!.of] || a - b);
  for (const j of order) {
    const lean = Math.hypot(...open.map((vector) => vector[j]!));
    if (open.length === 0 || lean <= NOTHING) continue;
    held[j] = true;
    // Take the direction in which unknown j moves out of the open ones.
    const moved = list.map((_, i) => open.reduce((sum, vector) => sum + (vector[i]! * vector[j]!) / lean, 0));
    open = orthonormal(open.map((vector) => vector.map((v, i) => v - (vector[j]! / lean) * moved[i]!)));
  }
  return held;
}

const ORDER = { stock: 0, deviation: 0, halfAngle: 1, radius: 2 };

/**
 * An orthonormal basis of what the vectors span, which is one dimension fewer than there are vectors (modified
 * Gram–Schmidt).
 */
function orthonormal(vectors: readonly number[][]): number[][] {
  const basis: number[][] = [];
  let left = vectors.map((vector) => vector.slice());
  while (basis.length < vectors.length - 1) {
    left.sort((a, b) => norm(b) - norm(a));
    const length = norm(left[0]!);
    const direction = left[0]!.map((v) => v / length);
    basis.push(direction);
    left = left.slice(1).map((vector) => {
      const along = vector.reduce((sum, v, i) => sum + v * direction[i]!, 0);
      return vector.map((v, i) => v - along * direction[i]!);
    });
  }
  return basis;
}

const norm = (vector: readonly number[]) => Math.hypot(...vector);
