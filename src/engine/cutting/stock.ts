/**
 * What taking stock off a surface does.
 *
 *   radius changes by        s/cos a          the diameter by twice that: less on a journal, more in a bush
 *   feed along a direction   s/|sin(t - a)|   cross feed t = 90°: s/cos a; axial feed t = 0: s/|sin a|, where that is of use
 *   the touch moves by       -s/sin a         rearward where the seat widens toward the nose
 *
 * s stock (m), normal to the surface, from both parts alike · a half angle (rad) · t angle of the feed's direction
 * from the axis, on the same side as a (rad). A straight surface is a = 0: no axial feed cuts it, and none is of use on a
 * line so slender that it would be more than a hundred times the stock and no stock moves
 * its touch (null). A flat face is the limit a = ±90°: only an axial feed cuts it, and a diameter has no meaning
 * there; these formulas hold short of it, |a| < 90°. The touch moves by that amount for lines of one half angle
 * that touch all along; with other lines it is what contact/fit.ts says of the parts before and after.
 * @source plane geometry of the right triangle between line, normal and axis
 */
import type { Part } from '../gauging/reading.ts';
import { lineOf, type Surface } from '../geometry/line.ts';

/** A direction (rad) nearer to the surface's own line than this cuts nothing off it. */
const ALONG = 1e-9;

/** Change of radius (m, above 0) that a normal stock (m) is. */
export const radialOf = (normal: number, halfAngle: number): number => normal / Math.cos(halfAngle);

/** Change of the diameter (m): below 0 on a journal, above 0 in a bush. */
export const diameterChange = (normal: number, halfAngle: number, part: Part): number => (part === 'journal' ? -2 : 2) * radialOf(normal, halfAngle);

/** Feed (m) along a direction (rad from the axis) that takes off a normal stock; null along the surface itself. */
export function feedAlong(normal: number, halfAngle: number, direction: number): number | null {
  const square = Math.abs(Math.sin(direction - halfAngle));
  return square < ALONG ? null : normal / square;
}

/** Cross feed (m), square to the axis, as a change of radius. */
export const crossFeed = (normal: number, halfAngle: number): number => radialOf(normal, halfAngle);

/** An axial feed longer than so many times its stock cuts nothing that a dial could tell. Common practice, no source. */
const LONGEST_FEED = 100;
const isSlender = (halfAngle: number): boolean => Math.abs(Math.sin(halfAngle)) * LONGEST_FEED < 1;

/** Axial feed (m); null for a straight surface, or one nearly so. */
export const axialFeed = (normal: number, halfAngle: number): number | null => (isSlender(halfAngle) ? null : feedAlong(normal, halfAngle, 0));

/** m: a diameter that differs by no more from end to end is that of a straight surface, and no angle is set for it. Common practice, no source. */
const ALIKE = 1e-5;

/** How much the diameter differs from end to end (m). */
export const taperOver = ({ halfAngle, from, to }: Pick<Surface, 'halfAngle' | 'from' | 'to'>): number => 2 * (to - from) * Math.tan(Math.abs(halfAngle));

/** Whether a surface is straight, or so nearly that nobody sets an angle for it: no axial feed cuts it, and its ends are alike. */
export const isMadeStraight = (line: Pick<Surface, 'halfAngle' | 'from' | 'to'>): boolean => isSlender(line.halfAngle) && taperOver(line) <= ALIKE;

/** How far (m, toward the nose) the touch moves; null for a straight surface. */
export const touchMove = (normal: number, halfAngle: number): number | null => (halfAngle === 0 ? null : -normal / Math.sin(halfAngle));

/** The surface with a normal stock (m) taken off all along it: its line keeps its profile. */
export function withStock(surface: Surface, part: Part, normal: number): Surface {
  return normal === 0 ? surface : { ...surface, radius: surface.radius + diameterChange(normal, surface.halfAngle, part) / 2 };
}

/**
 * The new straight line a renewed surface is cut to, before any stock is counted: through the radius at the
 * station of the old one, at the half angle (rad) of the set-up. Its profile is gone.
 */
export const renewed = (surface: Surface, halfAngle: number): Surface => ({ ...surface, halfAngle, profile: [] });

/**
 * Least normal stock (m) off the new straight line `fresh` at which it lies below the old surface all along, so
 * that no place is left uncut:
 *   greatest over the old line of  ±(r_new - r_old)·cos a      + for a journal, - for a bush
 * r radii (m), a half angle of the new line. Exact: the difference of two chains is greatest at a breakpoint.
 */
export const cleanUp = (old: Surface, fresh: Surface, part: Part): number => Math.max(0, ...proud(fresh, old, part));

/** Greatest normal stock (m) anywhere along the line between an old surface and the straight new one it is cut to. */
export const deepest = (old: Surface, cut: Surface, part: Part): number => Math.max(0, ...proud(cut, old, part).map((s) => -s));

/** How far (m, normal to it) a straight surface stands proud of an old one, at every breakpoint of that. */
function proud(straight: Surface, old: Surface, part: Part): number[] {
  const line = lineOf(old, part === 'journal' ? 'inside' : 'outside');
  const outward = (part === 'journal' ? 1 : -1) * Math.cos(straight.halfAngle);
  return Array.from(line.z, (z, i) => outward * (straight.radius + (z - straight.station) * Math.tan(straight.halfAngle) - line.r[i]!));
}

/** The surface moved along the axis by a distance (m): its part stands there after a face or spacer was cut. */
export function movedAxially(surface: Surface, distance: number): Surface {
  if (distance === 0) return surface;
  return {
    ...surface,
    station: surface.station + distance,
    from: surface.from + distance,
    to: surface.to + distance,
    profile: surface.profile.map(([z, d]) => [z + distance, d] as const),
  };
}
