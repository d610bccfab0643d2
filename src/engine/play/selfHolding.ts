/**
 * Cones that stick. A journal pressed home into a cone of half angle a by the axial force P, friction µ against
 * the way it slides, carries the normal forces N in all:
 *
 *   pressing   P = N·(sin a + µ·cos a)
 *   freeing    Q = N·(µ·cos a - sin a) = P·(µ - tan a)/(µ + tan a)
 *
 * The normal forces stay when P is taken away, held by the friction, which now points the other way; Q pulls
 * the journal free. It holds by itself when Q ≥ 0: tan a ≤ µ.
 *
 * a half angle (rad), 0 < |a| < 90° · µ dry friction, the same pressed and freed · P, Q, N (N). Rigid parts, no
 * wedging by elastic stretch or by heat, which only make it hold harder.
 * @source derived (equilibrium of a cone under Coulomb friction)
 */
import type { Radians } from '../../design/dimension.ts';

/** Whether a cone sticks once pressed home. A straight seat is never pressed home. */
export const isSelfHolding = (halfAngle: Radians, friction: number): boolean => holdsAt(Math.tan(halfAngle), friction);

/** The same from the tangent of the half angle. */
export const holdsAt = (tan: number, friction: number): boolean => tan !== 0 && Math.abs(tan) <= friction;

/**
 * Axial force (N) that frees a cone pressed home by an axial force (N) since taken away; 0 where it comes free by
 * itself.
 */
export function forceToFree(halfAngle: Radians, friction: number, press: number): number {
  if (!isSelfHolding(halfAngle, friction)) return 0;
  const tan = Math.tan(Math.abs(halfAngle));
  return (press * (friction - tan)) / (friction + tan);
}
