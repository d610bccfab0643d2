/**
 * Every surface as a drawing dimensions a cone: diameter in a gauge plane whose place is exact, included angle or rate
 * of taper, and the tolerance of each (the practice of ISO 3040, from memory).
 *
 * The tolerance of a film, ±t, is shared by both parts, half to each, the position being held: a normal stock of t/2
 * more or less is a diameter of t/cos a more or less (cutting/stock.ts). The half angle may be wrong by half of what
 * one part alone might be with the film still within ±t (cutting/angleSetting.ts). Both at their worst together are
 * more than the film stands: they are limits of each by itself.
 */
import type { Design, Part } from '../../design/definition.ts';
import { taperOfHalfAngle } from '../../design/units.ts';
import { angleSetting } from '../../engine/cutting/angleSetting.ts';
import { diameterChange } from '../../engine/cutting/stock.ts';
import { radiusOf } from '../../engine/gauging/shape.ts';
import type { CutReport } from '../cut/definition.ts';
import { toAngleTools } from '../cut/toCut.ts';
import { degrees, metres, millimetres, radians, toSeats, toSurface } from '../toEngine.ts';

export interface TolerancedSurface {
  seat: string;
  part: Part;
  /** mm: the gauge plane, the diameter there, and its tolerance to either side; null where the film has none */
  gaugePlane: number;
  diameter: number;
  diameterTolerance: number | null;
  from: number;
  to: number;
  /** degrees, above 0 where it widens toward the nose */
  halfAngle: number;
  halfAngleTolerance: number | null;
  /** taper on diameter, 1 in so much; null for a straight surface */
  taper: number | null;
  /** mm of diameter that come off or on by the plan; null where it is not cut */
  cut: number | null;
  /** whether the line is not straight, or not round, in the design */
  asMeasured: boolean;
}

/** @param design the parts as they shall be, at the position (mm) where they shall run */
export function tolerancedSurfaces(design: Design, position: number, steps: CutReport['steps']): TolerancedSurface[] {
  const seats = toSeats(design);
  const tools = toAngleTools(design.cut ?? { allow: [] });
  return design.seats.flatMap((seat, i) =>
    (['journal', 'bush'] as const).map((part): TolerancedSurface => {
      const { halfAngle, from, to, station, profile, lobes } = seat[part];
      const gaugePlane = Math.min(to, Math.max(from, station));
      const tolerance = seat.film?.tolerance ?? 0;
      const stands = angleSetting(seats, metres(position), i, part, metres(gaugePlane), tools).stands;
      const step = steps.find((s) => s.seat === seat.name && s.part === part);
      return {
        seat: seat.name,
        part,
        gaugePlane,
        diameter: 2 * millimetres(radiusOf({ ...toSurface(seat[part]), profile: [] }, part, metres(gaugePlane))),
        diameterTolerance: tolerance > 0 ? Math.abs(millimetres(diameterChange(metres(tolerance / 2), radians(halfAngle), part))) : null,
        from,
        to,
        halfAngle,
        halfAngleTolerance: stands === null || stands === 0 ? null : degrees(stands) / 2,
        taper: halfAngle === 0 ? null : 1 / Math.abs(taperOfHalfAngle(halfAngle)),
        cut: step ? step.diameter : null,
        asMeasured: (profile ?? []).length > 0 || (lobes ?? []).length > 0,
      };
    }),
  );
}
