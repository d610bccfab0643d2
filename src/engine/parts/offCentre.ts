/**
 * A tool, wheel or dressing diamond above or below the centre.
 *
 * Travelling along a line that leans by the half angle, in a plane k from the axis, it cuts at the distance x(z) from
 * the axis in that plane, and so at the radius
 *
 *   r(z) = √(x(z)² + k²)       x(z) = √(r₀² - k²) + (z - z₀)·tan a
 *
 * a hyperbola: r'' = k²·tan²a/r³ > 0, hollow on a journal, and proud in a bush. r₀ radius (m) at the station z₀ (m)
 * where the work was gauged, so that it is right there · a half angle of the setting (rad). The slope there is
 * tan a·√(1 - (k/r₀)²): the cone also comes out slimmer. A straight surface is not changed. Holds while the tool
 * stays on its side of the axis, x > 0.
 * @source derived (a line that does not meet the axis turns about it)
 */
import type { SeatInput } from '../contact/fit.ts';
import { deviationAt, lineOf, metalOf, type Part, radiusOf, type Surface } from './line.ts';

/** The chords of the profile depart from the hyperbola by this at most (m). */
const CHORD = 1e-12;
const MOST_POINTS = 4_000;

/** Radius (m) cut at a station; null where the tool would be beyond the axis. */
export function offCentreRadius(surface: Surface, gauged: number, height: number, z: number): number | null {
  const r0 = surface.radius + (gauged - surface.station) * Math.tan(surface.halfAngle);
  if (Math.abs(height) >= r0) return null;
  const x = Math.sqrt(r0 * r0 - height * height) + (z - gauged) * Math.tan(surface.halfAngle);
  return x <= 0 ? null : Math.hypot(x, height);
}

/**
 * Deviation (m, metal proud positive) from the straight line at a station; null where the tool would be beyond the
 * axis.
 */
export function offCentreDeviation(
  surface: Surface,
  part: Part,
  gauged: number,
  height: number,
  z: number,
): number | null {
  const r = offCentreRadius(surface, gauged, height, z);
  return r === null
    ? null
    : (part === 'journal' ? 1 : -1) *
        (r - radiusOf({ ...surface, profile: [] }, part, z)) *
        Math.cos(surface.halfAngle);
}

/**
 * The surface cut by a tool off the centre by `height` (m), gauged at a station (m): the hyperbola as a profile on the
 * old line, its own profile kept. Null where the tool would be beyond the axis.
 */
export function offCentreSurface(surface: Surface, part: Part, gauged: number, height: number): Surface | null {
  const { halfAngle, from, to, profile } = surface;
  const least = Math.min(...lineOf(surface, metalOf(part)).r);
  // The chord of a curve departs from it by r''·w²/8 over a width w.
  const bend = (height * Math.tan(halfAngle)) ** 2 / least ** 3;
  const pieces =
    bend === 0 ? 1 : Math.min(MOST_POINTS, Math.max(1, Math.ceil((to - from) * Math.sqrt(bend / (8 * CHORD)))));
  const stations = new Set([
    ...Array.from({ length: pieces + 1 }, (_, i) => (i === pieces ? to : from + ((to - from) * i) / pieces)),
    ...profile.flatMap(([z]) => (z > from && z < to ? [z] : [])),
  ]);
  const points: (readonly [number, number])[] = [];
  for (const z of [...stations].sort((a, b) => a - b)) {
    const deviation = offCentreDeviation(surface, part, gauged, height, z);
    if (deviation === null) return null;
    points.push([z, deviation + deviationAt(profile, z)]);
  }
  return { ...surface, profile: points };
}

export interface Hollow {
  /** greatest distance (m) of the flank from the straight line through its two ends */
  depth: number;
  /** half angle of that line less the one set (rad) */
  angleError: number;
}

/** What a measurement of the finished flank would show; null where the tool would be beyond the axis. */
export function hollowOf(surface: Surface, gauged: number, height: number): Hollow | null {
  const { from, to, halfAngle } = surface;
  const at = (z: number) => offCentreRadius(surface, gauged, height, z);
  const [rear, nose] = [at(from), at(to)];
  if (rear === null || nose === null) return null;
  const slope = (nose - rear) / (to - from);
  const chord = Math.atan(slope);
  // The flank is farthest from its chord where it is parallel to it: x·tan a/r = slope, so x = k·slope/√(tan²a -
  // slope²).
  const tan = Math.tan(halfAngle);
  const rest = Math.sqrt(Math.max(0, tan * tan - slope * slope));
  if (rest === 0 || height === 0) return { depth: 0, angleError: chord - halfAngle };
  const x = Math.abs((height * slope) / rest);
  const r0 = surface.radius + (gauged - surface.station) * tan;
  const z = gauged + (x - Math.sqrt(r0 * r0 - height * height)) / tan;
  return {
    depth: Math.abs(rear + (z - from) * slope - Math.hypot(x, height)) * Math.cos(chord),
    angleError: chord - halfAngle,
  };
}

/** The seat with one part cut off the centre; null where the tool would be beyond the axis. */
export function offCentreSeat(seat: SeatInput, part: Part, gauged: number, height: number): SeatInput | null {
  const surface = offCentreSurface(seat[part], part, gauged, height);
  return surface && { ...seat, [part]: surface };
}
