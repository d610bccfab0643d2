/**
 * Every surface as a drawing dimensions a cone: diameter in a gauge plane whose place is exact, included angle or rate
 * of taper, and the tolerance of each.
 *
 * The tolerance of a film, ±t, is shared by both parts, half to each, the position being held:
 *
 *   size      a normal stock of t/2 more or less is a diameter of t/cos a more or less (parts/stock.ts)
 *   angle     half of what one part alone might be wrong with the film still within ±t (cutting/angleSetting.ts)
 *   form      straight and round within a zone t/2 wide, square to the surface
 *   run-out   an axis e beside that of the part's other seats changes the film by e·cos a to either side; an indicator
 *             square to the surface reads twice that over a turn, so it may read 2·(t/2) = t
 *
 * They share that half: each alone may use all of it, and the parts of it that they use may add up to no more than one,
 * all of them being in proportion to the film they cost. A set-up is held to the same angle as the drawing.
 * @source ISO3040; ASME-Y14.5; derived (the shares of the tolerance)
 */

import { isAssumed } from '../../design/assumed.ts';
import type { Design, Part, Surface } from '../../design/definition.ts';
import type { Degrees, Millimetres } from '../../design/dimension.ts';
import { type System, THOU, taperOfHalfAngle } from '../../design/units.ts';
import { angleSetting } from '../../engine/cutting/angleSetting.ts';
import { isMadeStraight, taperOver } from '../../engine/cutting/feeds.ts';
import { radiusOf } from '../../engine/parts/line.ts';
import { diameterChange } from '../../engine/parts/stock.ts';
import { degrees, metres, millimetres, radians, toSeats, toSurface } from '../convert.ts';
import type { CutReport } from '../cut/definition.ts';
import { toAngleTools } from '../cut/toCut.ts';

export interface TolerancedSurface {
  seat: string;
  part: Part;
  /** mm: the gauge plane, the diameter there, and its tolerance to either side; null where the film has none */
  gaugePlane: number;
  diameter: Millimetres;
  diameterTolerance: number | null;
  from: Millimetres;
  to: Millimetres;
  /** degrees, above 0 where it widens toward the nose */
  halfAngle: Degrees;
  halfAngleTolerance: number | null;
  /**
   * mm: width of the zone within which it is straight and round, and full movement of an indicator square to it; null
   * as above
   */
  form: number | null;
  runOut: number | null;
  /** whether it is made straight (cutting/feeds.ts), and by how much (mm) its diameter then differs all the same */
  straight: boolean;
  taperOver: number;
  /** taper on diameter, 1 in so much; null for a straight surface */
  taper: number | null;
  /** mm of diameter that come off or on by the plan; null where it is not cut */
  cut: number | null;
  /** whether the line is not straight, or not round, in the design */
  asMeasured: boolean;
  /** what of it nobody has measured or typed: a diameter in the gauge plane leans on station and angle too */
  assumed: { diameter: boolean; halfAngle: boolean; from: boolean; to: boolean };
}

/**
 * mm: an exact place is told in whole steps of this, so that what is printed is exact, and the diameter is that of the
 * place printed.
 */
const STEP: Record<System, number> = { metric: 0.01, inch: THOU };
/** A station that is told exactly as it is stays; of a step. */
const FINEST = 0.1;

/**
 * The gauge plane (mm): the station of the design, brought on to the surface and to a place that can be told exactly.
 */
export function gaugePlaneOf(
  { station, from, to }: { station: Millimetres; from: Millimetres; to: Millimetres },
  system: System,
): number {
  const wanted = Math.min(to, Math.max(from, station));
  const step = STEP[system];
  const fine = step * FINEST;
  if (Math.abs(wanted - fine * Math.round(wanted / fine)) < 1e-9) return wanted;
  const places = [Math.round(wanted / step), Math.ceil(wanted / step), Math.floor(wanted / step)].map(
    (count) => count * step,
  );
  return places.find((place) => place >= from && place <= to) ?? wanted;
}

type Changed = Pick<CutReport['steps'][number], 'seat' | 'part' | 'diameter'>;
type Set = Pick<CutReport['settings'][number], 'seat' | 'part' | 'stands'>;

/**
 * @param design the parts as they shall be, at the position (mm) where they shall run
 * @param settings where a set-up is gauged elsewhere than in the gauge plane, the smaller of both angles holds
 */
export function tolerancedSurfaces(
  design: Design,
  position: Millimetres,
  steps: readonly Changed[],
  system: System,
  settings: readonly Set[] = [],
): TolerancedSurface[] {
  const seats = toSeats(design);
  const tools = toAngleTools(design.cut ?? { allow: [] });
  return design.seats.flatMap((seat, i) =>
    (['journal', 'bush'] as const).map((part): TolerancedSurface => {
      const { halfAngle, from, to, profile, lobes } = seat[part];
      const line = toSurface(seat[part]);
      const straight = isMadeStraight(line);
      const gaugePlane = gaugePlaneOf(seat[part], system);
      const tolerance = seat.film?.tolerance ?? 0;
      const shared = tolerance > 0 ? tolerance : null;
      const drawn = angleSetting(seats, metres(position), i, part, metres(gaugePlane), tools).stands;
      const set = settings.find((s) => s.seat === seat.name && s.part === part)?.stands ?? null;
      const stands = drawn === null ? null : Math.min(degrees(drawn), set ?? Number.POSITIVE_INFINITY);
      const guessed = (key: keyof Surface) => isAssumed(design, `seats[${i}].${part}.${key}`);
      const step = steps.find((s) => s.seat === seat.name && s.part === part);
      return {
        seat: seat.name,
        part,
        gaugePlane,
        diameter: 2 * millimetres(radiusOf({ ...line, profile: [] }, part, metres(gaugePlane))),
        diameterTolerance:
          shared && Math.abs(millimetres(diameterChange(metres(shared / 2), radians(halfAngle), part))),
        from,
        to,
        halfAngle,
        halfAngleTolerance: stands === null || stands === 0 ? null : stands / 2,
        form: shared && shared / 2,
        runOut: shared,
        straight,
        taperOver: straight ? millimetres(taperOver(line)) : 0,
        taper: straight ? null : 1 / Math.abs(taperOfHalfAngle(halfAngle)),
        cut: step ? step.diameter : null,
        asMeasured: (profile ?? []).length > 0 || (lobes ?? []).length > 0,
        assumed: {
          diameter: guessed('diameter'),
          halfAngle: guessed('halfAngle'),
          from: guessed('from'),
          to: guessed('to'),
        },
      };
    }),
  );
}
