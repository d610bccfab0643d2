/**
 * A cone in words, on the drawing and in the table. The angle as the person says it carries the tolerance; what the
 * trade wants beside it stands in brackets, as auxiliary dimensions do (ISO 129-1, ASME Y14.5, from memory): of a
 * slender cone its taper (ISO 3040), and of one that is said otherwise the half angle that is set at the machine.
 */
import {
  type AngleWay,
  angleFigure,
  angleNamed,
  angleOff,
  angleText,
  fineText,
  type System,
  taperOfHalfAngle,
  wayOf,
} from '../../../design/units.ts';
import { radians } from '../../../report/convert.ts';
import type { TolerancedSurface } from '../../../report/sheet/tolerancedSurfaces.ts';
import { zoneText } from './figures.ts';

/** Above this half angle (degrees) a cone is told by its angle alone, and no taper. */
const STEEP = 20;

export const hasSymbol = ({ halfAngle, taper }: TolerancedSurface, way: AngleWay) =>
  way === 'half' && taper !== null && Math.abs(halfAngle) <= STEEP;

/** mm of diameter from end to end: less is straight to every gauge. */
const UNSEEN = 5e-5;

/** What stands in brackets, if anything. Of a straight surface that it is, and what it is off all the same. */
export const coneText = ({ halfAngle, straight, taperOver }: TolerancedSurface, system: System, way: AngleWay) =>
  straight
    ? `straight${taperOver < UNSEEN ? '' : ` to ${fineText(taperOver, system)}`}`
    : way !== 'half' && wayOf(halfAngle, way) !== 'steep'
      ? `(${angleText(Math.abs(halfAngle))} half)`
      : Math.abs(halfAngle) > STEEP
        ? ''
        : `(${taperText(halfAngle, system)})`;

/** The taper on diameter: 1 in so many, or so much a foot. */
function taperText(halfAngle: number, system: System): string {
  const taper = Math.abs(taperOfHalfAngle(halfAngle));
  return system === 'metric' ? `1:${(1 / taper).toFixed(3)}` : `${(12 * taper).toFixed(4)} in/ft`;
}

/** The angle and its tolerance behind what it is called. */
export const angleToleranceText = (surface: TolerancedSurface, system: System, way: AngleWay): string =>
  surface.straight
    ? angleToleranceFigure(surface, system, way)
    : `${angleNamed(surface.halfAngle, way)}${toleranceFigure(surface, way)}`;

/**
 * The angle with its tolerance; of a straight surface by how much its diameter may differ from end to end: twice its
 * length times the angle.
 */
export function angleToleranceFigure(
  { halfAngle, straight, halfAngleTolerance: tolerance, from, to }: TolerancedSurface,
  system: System,
  way: AngleWay,
): string {
  if (straight)
    return tolerance === null ? '' : `⌀ even to ${zoneText(2 * (to - from) * Math.tan(radians(tolerance)), system)}`;
  return `${angleFigure(halfAngle, way)}${toleranceFigure({ halfAngle, halfAngleTolerance: tolerance }, way)}`;
}

const toleranceFigure = (
  { halfAngle, halfAngleTolerance: tolerance }: Pick<TolerancedSurface, 'halfAngle' | 'halfAngleTolerance'>,
  way: AngleWay,
) => (tolerance === null ? '' : ` ±${zoneIn(halfAngle, tolerance, way)}`);

/** Decimals of a tolerance of a taper per foot (in), and of 1 in n. */
const DECIMALS = { foot: 5, ratio: 4 };

/** A tolerance of a half angle (degrees), rounded down, as the person says angles. */
function zoneIn(halfAngle: number, tolerance: number, way: AngleWay): string {
  const off = angleOff(halfAngle, tolerance, way);
  const said = wayOf(halfAngle, way);
  if (said !== 'foot' && said !== 'ratio') return angleZoneText(off);
  const scale = 10 ** DECIMALS[said];
  return `${(Math.floor(off * scale + 1e-6) / scale).toFixed(DECIMALS[said])}${said === 'foot' ? ' in/ft' : ''}`;
}

/** A tolerance of an angle (degrees), rounded down: in seconds up to a degree, so that those of one sheet compare. */
export function angleZoneText(degrees: number): string {
  const tenths = Math.floor(degrees * 36_000 + 1e-6);
  if (tenths >= 36_000) return angleText(Math.floor(degrees * 10_000) / 10_000);
  return tenths < 1000 ? `${(tenths / 10).toFixed(1)}″` : `${Math.floor(tenths / 10)}″`;
}

export const cutText = ({ cut }: TolerancedSurface, system: System) =>
  cut === null ? 'as it is' : `${fineText(Math.abs(cut), system)} ${cut < 0 ? 'less' : 'more'}`;
