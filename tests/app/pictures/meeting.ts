/** How two drawn chains stand to each other, by plain geometry of segments. */
import type { Point } from '../../../src/app/pictures/drawn.ts';

type Segment = readonly [Point, Point];
const segments = (chain: readonly Point[]): Segment[] => chain.slice(1).map((to, i) => [chain[i]!, to]);
export const cross = ([az, ar]: Point, [bz, br]: Point, [cz, cr]: Point) =>
  (bz - az) * (cr - ar) - (br - ar) * (cz - az);

function distance(p: Point, [a, b]: Segment): number {
  const [dz, dr] = [b[0] - a[0], b[1] - a[1]];
  const t = Math.min(1, Math.max(0, ((p[0] - a[0]) * dz + (p[1] - a[1]) * dr) / (dz * dz + dr * dr)));
  return Math.hypot(p[0] - a[0] - t * dz, p[1] - a[1] - t * dr);
}

const properlyCross = ([a, b]: Segment, [c, d]: Segment) =>
  cross(a, b, c) * cross(a, b, d) < 0 && cross(c, d, a) * cross(c, d, b) < 0;

/**
 * Whether a point lies in the solid of the journal (ray casting): under its chain, closed to the axis. The
 * spindle goes on beyond the large end, as both pictures draw it, so a far displacement still overlaps.
 */
function inJournal([z, r]: Point, journal: readonly Point[]): boolean {
  const ends = [journal[0]!, journal[journal.length - 1]!] as const;
  const [rear, nose] = ends[1][1] > ends[0][1] ? [ends[0][0], ends[1][0] + 1] : [ends[0][0] - 1, ends[1][0]];
  const outline = [
    [rear, ends[0][1]] as const,
    ...journal,
    [nose, ends[1][1]] as const,
    [nose, 0] as const,
    [rear, 0] as const,
  ];
  let inside = false;
  outline.forEach(([z1, r1], i) => {
    const [z0, r0] = outline[(i + outline.length - 1) % outline.length]!;
    if (r1 > r !== r0 > r && z < z1 + ((z0 - z1) * (r - r1)) / (r0 - r1)) inside = !inside;
  });
  return inside;
}

/** Least distance between two drawn chains, and whether one is in the other. */
export function drawnMeeting(bush: readonly Point[], journal: readonly Point[]) {
  let least = Number.POSITIVE_INFINITY;
  let overlap = bush.some((point) => inJournal(point, journal));
  for (const b of segments(bush)) {
    for (const j of segments(journal)) {
      if (properlyCross(b, j)) overlap = true;
      least = Math.min(least, distance(b[0], j), distance(b[1], j), distance(j[0], b), distance(j[1], b));
    }
  }
  return { least, overlap };
}
