/** The fitted shape taken into the design: half angles and diameters as measured, profiles where straightness was read. */
import type { Design, Surface } from '../../design/definition.ts';
import type { MeasureReport } from './definition.ts';

/**
 * The design with the measured surfaces in place of those drawn. What the readings leave open is as the report
 * tells it: held as drawn, or fitted to the rest of the surface as drawn. Nothing else changes.
 */
export function designWithMeasured(design: Design, measure: MeasureReport): Design {
  const seats = design.seats.map((seat) => {
    const taken = { ...seat };
    for (const part of ['journal', 'bush'] as const) {
      const found = measure.surfaces.find((s) => s.seat === seat.name && s.part === part);
      if (found) taken[part] = surfaceWith(seat[part], found);
    }
    return taken;
  });
  return { ...design, seats };
}

function surfaceWith(surface: Surface, { halfAngle, diameter, profile }: MeasureReport['surfaces'][number]): Surface {
  const taken: Surface = { ...surface, halfAngle, diameter };
  if (profile) taken.profile = [[surface.from, 0], ...profile.map(({ station, deviation }): [number, number] => [station, deviation]), [surface.to, 0]];
  return taken;
}
