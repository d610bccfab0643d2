/**
 * The line of a surface: its half section, a chain of straight pieces from the rear end to the nose end.
 *
 *   r(z) = diameter/2 + (z - station)·tan a + deviation(z)/cos a
 *
 * z station along the part (m, rising toward the nose) · r radius (m) · a half angle (rad)
 * The chain is exact: its breakpoints are the two ends and every profile point between them, and the
 * formula is linear from one to the next. Lobes are not in it; they belong to the round (spindle/lobes.ts).
 */
import type { Metres, Radians } from '../../design/dimension.ts';

export interface Surface {
  /** above 0 widens toward the nose */
  halfAngle: Radians;
  /** at `station` */
  radius: Metres;
  station: Metres;
  /** rear end */
  from: Metres;
  /** nose end; from < to */
  to: Metres;
  /**
   * at rising stations the deviation normal to the straight line, proud of metal being positive for a journal and for a
   * bush alike
   */
  profile: readonly (readonly [station: Metres, deviation: Metres])[];
  /** what stands proud of a true round; left out: nothing */
  lobes?: readonly Lobe[] | undefined;
}

export interface Lobe {
  /** how many around, 1 or more */
  count: number;
  amplitude: Metres;
  /** angle of one crest */
  phase: Radians;
}

export interface Line {
  halfAngle: Radians;
  z: Float64Array;
  r: Float64Array;
}

export type Part = 'journal' | 'bush';

/** 1 where metal that stands proud lies further out, -1 where further in. */
export const outward = (part: Part): 1 | -1 => (part === 'journal' ? 1 : -1);

export type Metal = 'inside' | 'outside';

export const metalOf = (part: Part): Metal => (part === 'journal' ? 'inside' : 'outside');

/**
 * The line of a surface. `metal` says on which side of it the metal lies: a deviation that stands proud
 * makes a journal (metal inside) larger and a bush (metal outside) smaller.
 */
export function lineOf(surface: Surface, metal: Metal): Line {
  const { halfAngle, radius, station, from, to, profile } = surface;
  const slope = Math.tan(halfAngle);
  const rise = (metal === 'inside' ? 1 : -1) / Math.cos(halfAngle);
  let first = 0;
  while (first < profile.length && profile[first]![0] <= from) first++;
  let after = first;
  while (after < profile.length && profile[after]![0] < to) after++;
  const count = after - first + 2;
  const line: Line = { halfAngle, z: new Float64Array(count), r: new Float64Array(count) };
  for (let i = 0; i < count; i++) {
    const end = i === 0 || i === count - 1;
    const z = i === 0 ? from : end ? to : profile[first + i - 1]![0];
    const deviation = end ? deviationAt(profile, z) : profile[first + i - 1]![1];
    line.z[i] = z;
    line.r[i] = radius + (z - station) * slope + deviation * rise;
  }
  return line;
}

/** Radius (m) of a surface at a station (m). */
export function radiusOf(surface: Surface, part: Part, z: Metres): Metres {
  return (
    surface.radius +
    (z - surface.station) * Math.tan(surface.halfAngle) +
    (outward(part) * deviationAt(surface.profile, z)) / Math.cos(surface.halfAngle)
  );
}

/** Deviation (m) of a profile at a station (m): linear between the points, level beyond the ends, 0 without any. */
export function deviationAt(profile: Surface['profile'], z: Metres): Metres {
  const last = profile.length - 1;
  if (last < 0) return 0;
  if (z <= profile[0]![0]) return profile[0]![1];
  if (z >= profile[last]![0]) return profile[last]![1];
  const k = profilePieceAt(profile, z);
  const t = shareIn(profile, k, z);
  return (1 - t) * profile[k]![1] + t * profile[k + 1]![1];
}

/** The piece of a profile in which a station between its ends lies. */
export function profilePieceAt(profile: Surface['profile'], z: number): number {
  let low = 0;
  let high = profile.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (profile[middle]![0] <= z) low = middle;
    else high = middle;
  }
  return low;
}

/** How far along its piece a station lies, from 0 to 1. */
export const shareIn = (profile: Surface['profile'], k: number, z: number) =>
  (z - profile[k]![0]) / (profile[k + 1]![0] - profile[k]![0]);

/** The line seen from the other end: stations and half angle change sign. */
export function mirrored(line: Line): Line {
  return { halfAngle: -line.halfAngle, z: line.z.map((z) => -z).reverse(), r: line.r.slice().reverse() };
}

/** The line moved by a distance (m) along its own inner normal (sin a, -cos a): a bush that is one film smaller. */
export function inset(line: Line, distance: Metres): Line {
  const dz = distance * Math.sin(line.halfAngle);
  const dr = distance * Math.cos(line.halfAngle);
  const moved: Line = { halfAngle: line.halfAngle, z: line.z.slice(), r: line.r.slice() };
  for (let i = 0; i < moved.z.length; i++) {
    moved.z[i]! += dz;
    moved.r[i]! -= dr;
  }
  return moved;
}
