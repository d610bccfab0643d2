/**
 * Stock taken off a surface: its radius changes by s/cos a, less on a journal and more in a bush.
 *
 * s stock (m), normal to the surface · a half angle (rad), |a| < 90°
 * @source derived (the right triangle between line, normal and axis)
 */
import type { Radians } from '../../design/dimension.ts';
import { outward, type Part, type Surface } from './line.ts';

/** Change of radius (m, above 0) that a normal stock (m) is. */
export const radialOf = (normal: number, halfAngle: Radians): number => normal / Math.cos(halfAngle);

/** Change of the diameter (m): below 0 on a journal, above 0 in a bush. */
export const diameterChange = (normal: number, halfAngle: Radians, part: Part): number =>
  -2 * outward(part) * radialOf(normal, halfAngle);

/** The surface with a normal stock (m) taken off all along it: its line keeps its profile. */
export function withStock(surface: Surface, part: Part, normal: number): Surface {
  return normal === 0
    ? surface
    : { ...surface, radius: surface.radius - outward(part) * radialOf(normal, surface.halfAngle) };
}

/**
 * The new straight line a renewed surface is cut to, before any stock is counted: through the radius at the
 * station of the old one, at the half angle (rad) of the set-up. Its profile is gone.
 */
export const renewed = (surface: Surface, halfAngle: Radians): Surface => ({ ...surface, halfAngle, profile: [] });
