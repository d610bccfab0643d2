/**
 * A cone in words, on the drawing and in the table. Its half angle carries the tolerance, since that is what is set at
 * the machine; taper and included angle follow from it and stand in brackets, as auxiliary dimensions do (ISO 129-1,
 * ASME Y14.5, from memory).
 */
import { angleText, fineText, type System } from '../../../design/units.ts';
import { radians } from '../../../report/convert.ts';
import type { TolerancedSurface } from '../../../report/sheet/tolerancedSurfaces.ts';
import { taperText } from '../../pictures/dimensions.ts';
import { zoneText } from './figures.ts';

/** Above this half angle (degrees) a cone is told by its included angle rather than its taper. */
const STEEP = 20;

export const hasSymbol = ({ halfAngle, taper }: TolerancedSurface) => taper !== null && Math.abs(halfAngle) <= STEEP;

/** mm of diameter from end to end: less is straight to every gauge. */
const UNSEEN = 5e-5;

/**
 * A slender cone by its taper, a steep one by its included angle; a straight surface by that, and what it is off all
 * the same.
 */
export const coneText = ({ halfAngle, straight, taperOver }: TolerancedSurface, system: System) =>
  straight
    ? `straight${taperOver < UNSEEN ? '' : ` to ${fineText(taperOver, system)}`}`
    : `(${taperText(halfAngle, system)})`;
/** The same where room is scarce. */
export const coneShort = (surface: TolerancedSurface, system: System) =>
  coneText(surface, system).replace(' included', '');

/**
 * Half angle with its tolerance; of a straight surface by how much its diameter may differ from end to end: twice its
 * length times the angle.
 */
export function angleToleranceText(
  { halfAngle, straight, halfAngleTolerance, from, to }: TolerancedSurface,
  system: System,
): string {
  if (straight)
    return halfAngleTolerance === null
      ? ''
      : `⌀ alike to ${zoneText(2 * (to - from) * Math.tan(radians(halfAngleTolerance)), system)}`;
  return `half angle ${angleText(Math.abs(halfAngle))}${halfAngleTolerance === null ? '' : ` ±${angleZoneText(halfAngleTolerance)}`}`;
}

/** A tolerance of an angle (degrees), rounded down: in seconds up to a degree, so that those of one sheet compare. */
export function angleZoneText(degrees: number): string {
  const tenths = Math.floor(degrees * 36_000 + 1e-6);
  if (tenths >= 36_000) return angleText(Math.floor(degrees * 10_000) / 10_000);
  return tenths < 1000 ? `${(tenths / 10).toFixed(1)}″` : `${Math.floor(tenths / 10)}″`;
}

export const cutText = ({ cut }: TolerancedSurface, system: System) =>
  cut === null ? 'as it is' : `${fineText(Math.abs(cut), system)} ${cut < 0 ? 'less' : 'more'}`;
