/** The one edge between the units of the file (mm, degrees, MPa, rev/min) and those of the engine (SI, rad). */
import type { Design, Seat, Surface } from '../design/definition.ts';
import { metres, radians } from '../design/dimension.ts';
import type { SeatInput } from '../engine/contact/fit.ts';
import type { Surface as EngineSurface } from '../engine/parts/line.ts';

export * from '../design/dimension.ts';

/** Degrees: less does not show in the digits of any radius, and is straight. */
const STRAIGHT = 1e-12;

export function toSurface(surface: Surface): EngineSurface {
  return {
    halfAngle: Math.abs(surface.halfAngle) < STRAIGHT ? 0 : radians(surface.halfAngle),
    radius: metres(surface.diameter) / 2,
    station: metres(surface.station),
    from: metres(surface.from),
    to: metres(surface.to),
    profile: (surface.profile ?? []).map(([station, deviation]) => [metres(station), metres(deviation)] as const),
    ...(surface.lobes && { lobes: surface.lobes.map(toLobe) }),
  };
}

const toLobe = ({ count, amplitude, phase }: NonNullable<Surface['lobes']>[number]) => ({
  count,
  amplitude: metres(amplitude),
  phase: radians(phase ?? 0),
});

export function toSeat({ name, journal, bush, film }: Seat): SeatInput {
  const ends = { name, journal: toSurface(journal), bush: toSurface(bush) };
  return film ? { ...ends, target: metres(film.target), tolerance: metres(film.tolerance ?? 0) } : ends;
}

export const toSeats = (design: Design): SeatInput[] => design.seats.map(toSeat);
