/**
 * The fit by brute force, written from the definitions of the design file alone: every vertex of one line
 * against every piece of the other. Lengths mm, angles degrees. Shares nothing with the engine, on purpose.
 */
import type { Seat, Surface } from '../../src/design/definition.ts';

export type Point = readonly [z: number, r: number];
const rad = (degrees: number) => (degrees * Math.PI) / 180;

/** The vertices of a surface's line, from the rear to the nose. Proud metal makes a journal larger, a bush smaller. */
export function vertices(surface: Surface, part: 'journal' | 'bush'): Point[] {
  const profile = surface.profile ?? [];
  const deviation = (z: number): number => {
    if (profile.length === 0) return 0;
    const before = profile.filter(([s]) => s <= z).at(-1);
    const after = profile.find(([s]) => s >= z);
    if (!before) return profile[0]![1];
    if (!after) return profile.at(-1)![1];
    return after[0] === before[0]
      ? after[1]
      : (before[1] * (after[0] - z) + after[1] * (z - before[0])) / (after[0] - before[0]);
  };
  const outward = part === 'journal' ? 1 : -1;
  const a = rad(surface.halfAngle);
  const stations = [
    surface.from,
    ...profile.map(([z]) => z).filter((z) => z > surface.from && z < surface.to),
    surface.to,
  ];
  return stations.map(
    (z) =>
      [z, surface.diameter / 2 + (z - surface.station) * Math.tan(a) + (outward * deviation(z)) / Math.cos(a)] as const,
  );
}

/** Every place where a chain crosses the line { point + t·direction }, as the values of t. */
function crossings(chain: readonly Point[], [pz, pr]: Point, [dz, dr]: Point): number[] {
  const found: number[] = [];
  // side > 0 on one side of the line; along: t of the foot
  const side = ([z, r]: Point) => (z - pz) * dr - (r - pr) * dz;
  const along = ([z, r]: Point) => ((z - pz) * dz + (r - pr) * dr) / (dz * dz + dr * dr);
  for (let i = 1; i < chain.length; i++) {
    const [s0, s1] = [side(chain[i - 1]!), side(chain[i]!)];
    const [t0, t1] = [along(chain[i - 1]!), along(chain[i]!)];
    if (Math.abs(s0) < 1e-13) found.push(t0);
    if (Math.abs(s1) < 1e-13) found.push(t1);
    if (s0 * s1 < 0) found.push((t0 * s1 - t1 * s0) / (s1 - s0));
  }
  return found;
}

export type Closes = 'rearward' | 'noseward';

/** Position at which the pair touches first, coming from far on the open side; null when it never touches. */
export function touch(bush: readonly Point[], journal: readonly Point[], closes: Closes): number | null {
  const entry = closes === 'rearward' ? [journal[0]!, bush.at(-1)!] : [journal.at(-1)!, bush[0]!];
  // The leading end of the journal is wider than the mouth: it cannot enter.
  if (entry[0]![1] > entry[1]![1]) return null;
  const axial: Point = [1, 0];
  const meetings: number[] = [];
  for (const b of bush) for (const t of crossings(journal, b, axial)) meetings.push(-t);
  for (const j of journal) for (const t of crossings(bush, j, axial)) meetings.push(t);
  if (meetings.length === 0) return null;
  return closes === 'rearward' ? Math.max(...meetings) : Math.min(...meetings);
}

export const moved = (chain: readonly Point[], position: number): Point[] =>
  chain.map(([z, r]) => [z + position, r] as const);

/** Films at every vertex of either line, along the normal of the bush line, the journal at a position. */
export function filmsAtVertices(
  bush: readonly Point[],
  journal: readonly Point[],
  halfAngle: number,
  position: number,
): number[] {
  const inward: Point = [Math.sin(rad(halfAngle)), -Math.cos(rad(halfAngle))];
  const outward: Point = [-inward[0], -inward[1]];
  const here = moved(journal, position);
  return [...bush.flatMap((b) => crossings(here, b, inward)), ...here.flatMap((j) => crossings(bush, j, outward))];
}

/** Films at many places between the vertices: none of them may be less than the least at the vertices. */
export function filmsBetween(
  bush: readonly Point[],
  journal: readonly Point[],
  halfAngle: number,
  position: number,
  places: number,
): number[] {
  const inward: Point = [Math.sin(rad(halfAngle)), -Math.cos(rad(halfAngle))];
  const here = moved(journal, position);
  const films: number[] = [];
  for (let i = 1; i < bush.length; i++) {
    for (let k = 1; k < places; k++) {
      const t = k / places;
      const at: Point = [bush[i - 1]![0] * (1 - t) + bush[i]![0] * t, bush[i - 1]![1] * (1 - t) + bush[i]![1] * t];
      films.push(...crossings(here, at, inward));
    }
  }
  return films;
}

export function least(seat: Seat, position: number): number | null {
  const films = filmsAtVertices(
    vertices(seat.bush, 'bush'),
    vertices(seat.journal, 'journal'),
    seat.bush.halfAngle,
    position,
  );
  return films.length === 0 ? null : Math.min(...films);
}
