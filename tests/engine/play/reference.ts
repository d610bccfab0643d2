/**
 * The rigid spindle written a second time, from the definitions of the design file alone: every vertex of the two
 * lines, every angle of a fine row, no hull, no scaling, no worst angle. Lengths µm in the programme (stations
 * there m, tilts µrad), mm elsewhere. Shares nothing with the engine, on purpose.
 */
import type { Design, Seat, Surface } from '../../../src/design/definition.ts';
import { type Point, vertices } from '../bruteForce.ts';

const rad = (degrees: number) => (degrees * Math.PI) / 180;

/** A place that may touch: film (mm) of the true rounds, centred, and where its normal meets the axis (mm). */
export interface Place {
  seat: Seat;
  film: number;
  zn: number;
}

/** Distance along a direction from a point to a chain; null where it misses. */
function hit(chain: readonly Point[], [pz, pr]: Point, [dz, dr]: Point): number | null {
  const side = ([z, r]: Point) => (z - pz) * dr - (r - pr) * dz;
  const along = ([z, r]: Point) => (z - pz) * dz + (r - pr) * dr;
  for (let i = 1; i < chain.length; i++) {
    const [s0, s1] = [side(chain[i - 1]!), side(chain[i]!)];
    if (Math.abs(s0) < 1e-11) return along(chain[i - 1]!);
    if (Math.abs(s1) < 1e-11) return along(chain[i]!);
    if (s0 * s1 < 0) return (along(chain[i - 1]!) * s1 - along(chain[i]!) * s0) / (s1 - s0);
  }
  return null;
}

/** All places of a design with the journal at a position (mm). */
export function places(design: Design, position: number): Place[] {
  return design.seats.flatMap((seat) => {
    const a = rad(seat.bush.halfAngle);
    const bush = vertices(seat.bush, 'bush');
    const journal = vertices(seat.journal, 'journal').map(([z, r]): Point => [z + position, r]);
    const inward: Point = [Math.sin(a), -Math.cos(a)];
    const outward: Point = [-inward[0], -inward[1]];
    const from = (points: readonly Point[], other: readonly Point[], way: Point): Place[] =>
      points.flatMap((point) => {
        const film = hit(other, point, way);
        return film === null ? [] : [{ seat, film, zn: point[0] + point[1] * Math.tan(a) }];
      });
    return [...from(bush, journal, inward), ...from(journal, bush, outward)];
  });
}

const proud = (surface: Surface, angle: number) =>
  (surface.lobes ?? []).reduce(
    (sum, { count, amplitude, phase = 0 }) => sum + amplitude * Math.cos(count * (angle - rad(phase))),
    0,
  );

/** What the lobes of both parts take of the film (mm) at an angle (rad). */
export const lobed = ({ journal, bush }: Seat, angle: number) => proud(journal, angle) + proud(bush, angle);

export interface MmPose {
  x: number;
  y: number;
  tiltX: number;
  tiltY: number;
}

/** Film (mm) at a place and angle, position as that of the places. */
export function filmAt({ seat, film, zn }: Place, angle: number, { x, y, tiltX, tiltY }: MmPose): number {
  const a = rad(seat.bush.halfAngle);
  return (
    film - lobed(seat, angle) - Math.cos(a) * ((x + tiltY * zn) * Math.cos(angle) + (y - tiltX * zn) * Math.sin(angle))
  );
}

/** Least film (mm) over every place and `count` angles. */
export function leastFilm(all: readonly Place[], pose: MmPose, count: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (const place of all)
    for (let k = 0; k < count; k++) least = Math.min(least, filmAt(place, (2 * Math.PI * k) / count, pose));
  return least;
}

export type Objective = Partial<Record<'x' | 'y' | 'z' | 'tiltX' | 'tiltY', number>>;

/**
 * The programme as text for the general-purpose solver: maximise the objective (x, y, z in µm, tilts in µrad) over
 * the motions that are free, with h ≥ 0 at `count` angles of every place and at `extra` angles besides.
 */
export function programme(
  all: readonly Place[],
  objective: Objective,
  free: readonly string[],
  count: number,
  extra: readonly number[],
): string {
  const number = (value: number) => (value < 0 ? `- ${(-value).toExponential(16)}` : `+ ${value.toExponential(16)}`);
  const sum = (terms: Record<string, number>) =>
    Object.entries(terms)
      .filter(([name, value]) => free.includes(name) && value !== 0)
      .map(([name, value]) => `${number(value)} ${name}`)
      .join(' ');
  const angles = [...Array.from({ length: count }, (_, k) => (2 * Math.PI * k) / count), ...extra];
  const rows = all.flatMap(({ seat, film, zn }) => {
    const a = rad(seat.bush.halfAngle);
    return angles.map((angle) => {
      const [c, s] = [Math.cos(a) * Math.cos(angle), Math.cos(a) * Math.sin(angle)];
      const terms = sum({ x: c, y: s, z: -Math.sin(a), tiltX: (-s * zn) / 1000, tiltY: (c * zn) / 1000 });
      return ` ${terms === '' ? '0 x' : terms} <= ${(1000 * (film - lobed(seat, angle))).toExponential(16)}`;
    });
  });
  return `Maximize\n obj: ${sum(objective as Record<string, number>)}\nSubject To\n${rows.join('\n')}\nBounds\n${free.map((name) => ` ${name} free`).join('\n')}\nEnd\n`;
}
