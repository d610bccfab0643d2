/**
 * The sine bar: the stack under one roll tilts the bar, its rolls L apart, by the angle t.
 *   H = L·sin t
 * H stack (m), above 0 to level a half angle above 0: under the nose end of a bush, the rear end of a journal · L
 * length between the rolls (m). An error dH of the stack turns the bar by dH/(L·cos t), one dL of the length by -dL·tan
 * t/L.
 * @source MachinerysHandbook (constants of a 5 in bar: 5·sin t)
 */
import type { Radians } from '../../design/dimension.ts';

/** Stack (m) for an angle (rad, within a right angle) on a bar of length L (m). */
export const stackOfAngle = (angle: Radians, bar: number): number => bar * Math.sin(angle);

/** Angle (rad) of a bar on a stack; null where the stack is longer than the bar. */
export const angleOfStack = (stack: number, bar: number): number | null =>
  Math.abs(stack) > bar ? null : Math.asin(stack / bar);
