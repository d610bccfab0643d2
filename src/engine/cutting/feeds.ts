/**
 * What a machine has to be fed for a stock, and what that stock reaches.
 *
 *   feed along a direction   s/|sin(t - a)|   cross feed t = 90°: s/cos a; axial feed t = 0: s/|sin a|, where that is
 *   of use
 *   the touch moves by       -s/sin a         rearward where the seat widens toward the nose
 *
 * s stock (m), normal to the surface, from both parts alike · a half angle (rad) · t angle of the feed's direction
 * from the axis, on the same side as a (rad). A straight surface is a = 0: no axial feed cuts it, and none is of use on
 * a line so slender that it would be more than a hundred times the stock and no stock moves its touch (null). A flat
 * face is the limit a = ±90°: only an axial feed cuts it, and a diameter has no meaning there; these formulas hold
 * short of it, |a| < 90°. The touch moves by that amount for lines of one half angle that touch all along; with other
 * lines it is what contact/fit.ts says of the parts before and after.
 * @source derived (the right triangle between line, normal and axis)
 */
import type { Radians } from '../../design/dimension.ts';
import { lineOf, metalOf, outward, type Part, type Surface } from '../parts/line.ts';
import { radialOf } from '../parts/stock.ts';

/** A direction (rad) nearer to the surface's own line than this cuts nothing off it. */
const ALONG = 1e-9;

/** Feed (m) along a direction (rad from the axis) that takes off a normal stock; null along the surface itself. */
export function feedAlong(normal: number, halfAngle: Radians, direction: number): number | null {
  const square = Math.abs(Math.sin(direction - halfAngle));
  return square < ALONG ? null : normal / square;
}

/** Cross feed (m), square to the axis, as a change of radius. */
export const crossFeed = (normal: number, halfAngle: Radians): number => radialOf(normal, halfAngle);

/**
 * An axial feed longer than so many times its stock cuts nothing that a dial could tell.
 * @source practice
 */
const LONGEST_FEED = 100;
const isSlender = (halfAngle: Radians): boolean => Math.abs(Math.sin(halfAngle)) * LONGEST_FEED < 1;

/** Axial feed (m); null for a straight surface, or one nearly so. */
export const axialFeed = (normal: number, halfAngle: Radians): number | null =>
  isSlender(halfAngle) ? null : feedAlong(normal, halfAngle, 0);

/**
 * m: a diameter that differs by no more from end to end is that of a straight surface, and no angle is set for it.
 * @source practice
 */
const ALIKE = 1e-5;

/** How much the diameter differs from end to end (m). */
export const taperOver = ({ halfAngle, from, to }: Pick<Surface, 'halfAngle' | 'from' | 'to'>): number =>
  2 * (to - from) * Math.tan(Math.abs(halfAngle));

/**
 * Whether a surface is straight, or so nearly that nobody sets an angle for it: no axial feed cuts it, and its ends are
 * alike.
 */
export const isMadeStraight = (line: Pick<Surface, 'halfAngle' | 'from' | 'to'>): boolean =>
  isSlender(line.halfAngle) && taperOver(line) <= ALIKE;

/**
 * Least normal stock (m) off the new straight line `fresh` at which it lies below the old surface all along, so
 * that no place is left uncut:
 *   greatest over the old line of  ±(r_new - r_old)·cos a      + for a journal, - for a bush
 * r radii (m), a half angle of the new line. Exact: the difference of two chains is greatest at a breakpoint.
 */
export const cleanUp = (old: Surface, fresh: Surface, part: Part): number => Math.max(0, ...proud(fresh, old, part));

/** Greatest normal stock (m) anywhere along the line between an old surface and the straight new one it is cut to. */
export const deepest = (old: Surface, cut: Surface, part: Part): number =>
  Math.max(0, ...proud(cut, old, part).map((s) => -s));

/** How far (m, normal to it) a straight surface stands proud of an old one, at every breakpoint of that. */
function proud(straight: Surface, old: Surface, part: Part): number[] {
  const line = lineOf(old, metalOf(part));
  const square = outward(part) * Math.cos(straight.halfAngle);
  return Array.from(
    line.z,
    (z, i) => square * (straight.radius + (z - straight.station) * Math.tan(straight.halfAngle) - line.r[i]!),
  );
}
