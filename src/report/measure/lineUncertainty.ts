/** How sure the fitted line of a surface is, station by station. */
import type { Surface } from '../../design/definition.ts';
import { radians } from '../convert.ts';
import type { MeasureReport } from './definition.ts';

/**
 * Standard uncertainty (mm) of where the line of a measured surface stands at a station, normal to itself:
 *   s = cos a·√( (s_D/2)² + (x·s_a)² + 2·ρ·(s_D/2)·(x·s_a) ),   x = (Z - station)/cos²a
 * s_D, s_a of diameter (mm) and half angle (rad) · ρ their correlation · Z station (mm), from r = D/2 + (Z -
 * station)·tan a. Null where either is open. Profile points add their own and are left out: they are told beside the
 * line.
 * @source JCGM100 5.2.2 (correlated uncertainties)
 */
export function lineUncertainty(
  surface: Surface,
  { halfAngle, sigma, correlation }: MeasureReport['surfaces'][number],
  station: number,
): number | null {
  if (sigma.diameter === null || sigma.halfAngle === null) return null;
  const cos = Math.cos(radians(halfAngle));
  const size = sigma.diameter / 2;
  const lean = ((station - surface.station) / cos ** 2) * radians(sigma.halfAngle);
  return cos * Math.sqrt(Math.max(0, size ** 2 + lean ** 2 + 2 * (correlation ?? 0) * size * lean));
}
