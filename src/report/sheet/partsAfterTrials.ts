/**
 * The parts after trials, as designs that can be drawn and reckoned with. Trials tell films, not diameters: which of
 * the two surfaces of a seat is other than it was measured they cannot tell. So there are two answers,
 *
 *   reckoned   the surfaces as measured, less all that came off them: for the drawing
 *   believed   the same with every bush wider by what its film is believed to be greater: its films are those believed
 *
 * as in cutting/trialReadings.ts, both once as they are now and once with what is left off them too.
 */
import type { Design, Part, Seat, Surface } from '../../design/definition.ts';
import { diameterChange } from '../../engine/parts/stock.ts';
import { metres, millimetres, radians } from '../convert.ts';
import type { CutReport } from '../cut/definition.ts';
import { openTrials } from '../cut/openTrials.ts';

export interface PartsAfterTrials {
  now: Design;
  reckoned: Design;
  believed: Design;
  believedNow: Design;
}

/** Normal stock off a surface, metal off a face (mm). */
export interface Off {
  surfaces: readonly { seat: string; part: Part; normal: number }[];
  faces: readonly { name: string; off: number }[];
}

/** Null where no trial told anything, or the last one could not be taken in. */
export function partsAfterTrials(
  design: Design,
  { trials = [], remaining }: Pick<CutReport, 'trials' | 'remaining'>,
): PartsAfterTrials | null {
  const films = trials[trials.length - 1]?.films;
  if (!remaining || !films) return null;
  const now = partsNow(design);
  const then = {
    ...partsLess(now, { surfaces: remaining.steps, faces: remaining.faces }),
    position: remaining.position,
  };
  const opened = (parts: Design) => openedBy(parts, (seat) => films[seat]?.more ?? 0);
  return { now, reckoned: then, believed: opened(then), believedNow: opened(now) };
}

/** The surfaces of the design, less all that came off them since. */
export function partsNow(design: Design): Design {
  const told = design.cut ? openTrials(design.cut) : [];
  return partsLess(design, {
    surfaces: told.flatMap(({ taken = [] }) => taken),
    faces: told.flatMap(({ faces = [] }) => faces),
  });
}

/** Every bush wider, so that its film is greater by so much (mm). */
export const openedBy = (parts: Design, more: (seat: string) => number): Design => ({
  ...parts,
  seats: parts.seats.map((seat) => ({ ...seat, bush: less(seat.bush, 'bush', more(seat.name)) })),
});

export function partsLess(design: Design, { surfaces, faces }: Off): Design {
  const { cut } = design;
  const cutSurface = (seat: Seat, part: Part): Surface => {
    const normal = surfaces.reduce(
      (sum, off) => (off.seat === seat.name && off.part === part ? sum + off.normal : sum),
      0,
    );
    const entry = cut?.allow.find((a) => a.seat === seat.name && a.part === part);
    const surface = seat[part];
    const renewed = normal > 0 && entry?.renew ? lineAnew(surface, entry.halfAngle) : surface;
    const move = (cut?.faces ?? []).reduce((sum, face) => {
      const off = faces.reduce((all, { name, off }) => (name === face.name ? all + off : all), 0);
      return face.part === part && face.seats.includes(seat.name)
        ? sum + (face.moves === 'noseward' ? off : -off)
        : sum;
    }, 0);
    return movedBy(less(renewed, part, normal), move);
  };
  return {
    ...design,
    seats: design.seats.map((seat) => ({
      ...seat,
      journal: cutSurface(seat, 'journal'),
      bush: cutSurface(seat, 'bush'),
    })),
  };
}

/** The straight, round line a surface is cut anew to. */
function lineAnew({ profile: _, lobes: __, ...line }: Surface, halfAngle: number | undefined): Surface {
  return { ...line, halfAngle: halfAngle ?? line.halfAngle };
}

const less = (surface: Surface, part: Part, normal: number): Surface =>
  normal === 0
    ? surface
    : {
        ...surface,
        diameter: surface.diameter + millimetres(diameterChange(metres(normal), radians(surface.halfAngle), part)),
      };

function movedBy(surface: Surface, by: number): Surface {
  if (by === 0) return surface;
  const { profile, station, from, to } = surface;
  return {
    ...surface,
    station: station + by,
    from: from + by,
    to: to + by,
    ...(profile && { profile: profile.map(([z, d]): [number, number] => [z + by, d]) }),
  };
}
