/**
 * The fitted shape taken into the design: half angles and diameters as measured, profiles where straightness was read.
 */

import { withKnown } from '../../design/assumed.ts';
import type { Design, Part, Surface } from '../../design/definition.ts';
import type { FitReport } from '../fit/definition.ts';
import { fitSection } from '../fit/section.ts';
import type { MeasureReport } from './definition.ts';

type SurfaceMeasured = MeasureReport['surfaces'][number];

/**
 * The design with the measured surfaces in place of those drawn. What the readings leave open is as the report
 * tells it: held as drawn, or fitted to the rest of the surface as drawn. Nothing else changes.
 */
export const designWithMeasured = (design: Design, measure: MeasureReport): Design =>
  withSurfaces(design, measure, surfaceWith);

/**
 * The design with those numbers alone that the readings tell; what they leave open stays as drawn. A line that they
 * tell whole is known wherever its diameter is said, so its station is assumed no more.
 */
export function designWithTold(design: Design, measure: MeasureReport): Design {
  const told = withSurfaces(design, measure, (surface, found) => surfaceWith(surface, toldOf(surface, found)));
  const known = measure.surfaces.flatMap(({ seat, part, sigma }) => {
    const path = `seats[${design.seats.findIndex(({ name }) => name === seat)}].${part}`;
    const [angle, diameter] = [sigma.halfAngle !== null, sigma.diameter !== null];
    return [
      ...(angle ? [`${path}.halfAngle`] : []),
      ...(diameter ? [`${path}.diameter`] : []),
      ...(angle && diameter ? [`${path}.station`] : []),
    ];
  });
  return known.reduce(withKnown, told);
}

/** Whether the readings tell anything at all that could be taken into the design. */
export const tellsAnything = ({ surfaces }: MeasureReport): boolean =>
  surfaces.some(
    ({ sigma, profile }) =>
      (sigma.halfAngle !== null && sigma.halfAngle > 0) ||
      sigma.diameter !== null ||
      profile?.some((point) => point.sigma !== null),
  );

/**
 * The design with the taper that the readings say a surface drawn straight has: from then on it is a cone like others.
 */
export const designWithTaper = (design: Design, measure: MeasureReport, seat: string, part: Part): Design =>
  withSurfaces(design, measure, (surface, { seat: on, part: of, tapered }) =>
    on === seat && of === part && tapered
      ? { ...surface, halfAngle: tapered.halfAngle, diameter: tapered.diameter }
      : surface,
  );

function withSurfaces(
  design: Design,
  measure: MeasureReport,
  take: (surface: Surface, found: SurfaceMeasured) => Surface,
): Design {
  const seats = design.seats.map((seat) => {
    const taken = { ...seat };
    for (const part of ['journal', 'bush'] as const) {
      const found = measure.surfaces.find((s) => s.seat === seat.name && s.part === part);
      if (found) taken[part] = take(seat[part], found);
    }
    return taken;
  });
  return { ...design, seats };
}

function surfaceWith(surface: Surface, { halfAngle, diameter, profile }: SurfaceMeasured): Surface {
  const taken: Surface = { ...surface, halfAngle, diameter };
  if (profile)
    taken.profile = [
      [surface.from, 0],
      ...profile.map(({ station, deviation }): [number, number] => [station, deviation]),
      [surface.to, 0],
    ];
  return taken;
}

/** A measured surface with the drawn numbers for those that are open. */
function toldOf(surface: Surface, { profile, ...found }: SurfaceMeasured): SurfaceMeasured {
  const told = { ...found };
  if (found.sigma.halfAngle === null) told.halfAngle = surface.halfAngle;
  if (found.sigma.diameter === null) told.diameter = surface.diameter;
  return profile?.every((point) => point.sigma !== null) ? { ...told, profile } : told;
}

/** The fit of the parts as measured. */
export const fitMeasured = (design: Design, measure: MeasureReport): FitReport =>
  fitSection(designWithMeasured(design, measure));
