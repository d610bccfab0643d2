/** Fewer points of a measured line, where a screen cannot show them all. */
import type { Point } from './drawn.ts';

/** At most about `most` of the items: both ends, and of each run between the least and the greatest by `value`. */
export function thinned<T>(items: readonly T[], most: number, value: (item: T) => number): T[] {
  if (items.length <= Math.max(4, most)) return [...items];
  const runs = Math.max(1, Math.floor(most / 2) - 1);
  const keep = new Set([0, items.length - 1]);
  for (let run = 0; run < runs; run++) {
    const start = Math.floor((items.length * run) / runs);
    const stop = Math.floor((items.length * (run + 1)) / runs);
    let least = start;
    let greatest = start;
    for (let i = start; i < stop; i++) {
      if (value(items[i]!) < value(items[least]!)) least = i;
      if (value(items[i]!) > value(items[greatest]!)) greatest = i;
    }
    keep.add(least).add(greatest);
  }
  return [...keep].sort((a, b) => a - b).map((i) => items[i]!);
}

/** How far a point is to the side of the line from the first to the last, times the length of that line. */
export function fromChord(points: readonly Point[]): (point: Point) => number {
  const [z0, r0] = points[0]!;
  const [z1, r1] = points[points.length - 1]!;
  return ([z, r]) => (r - r0) * (z1 - z0) - (z - z0) * (r1 - r0);
}
