/** The one edge between the units of the file (mm, degrees, MPa, rev/min) and those of the engine (SI, rad). */
import type { Design, Seat, Surface } from '../design/definition.ts';
import type { Degrees, Metres, Millimetres, Radians } from '../design/dimension.ts';
import type { SeatInput } from '../engine/contact/fit.ts';
import type { Surface as EngineSurface } from '../engine/parts/line.ts';

export const metres = (mm: Millimetres): Metres => mm / 1000;
export const millimetres = (m: Metres): Millimetres => m * 1000;
export const radians = (degrees: Degrees): Radians => (degrees * Math.PI) / 180;
export const degrees = (radians: Radians): Degrees => (radians * 180) / Math.PI;

/** In whole thousandths of a micrometre, as a slider tells it. */
export const micrometres = (mm: Millimetres) => Math.round(mm * 1e6) / 1e3;
/** Up to the next whole micrometre. */
export const upToMicrometre = (m: Metres): Millimetres => Math.ceil(m * 1e6) / 1e3;
/** N/m to N/mm, and whatever else is by the millimetre. */
export const perMillimetre = (perMetre: number) => perMetre * 1e-3;
export const squareMetres = (mm2: number) => mm2 * 1e-6;
export const cubicMillimetres = (m3: number) => m3 * 1e9;
export const pascals = (mpa: number) => mpa * 1e6;
export const megapascals = (pa: number) => pa * 1e-6;
/** Pa·s to mPa·s */
export const millipascalSeconds = (pas: number) => pas * 1000;
/** g/cm³ to kg/m³ */
export const kilogramsPerCubicMetre = (density: number) => density * 1000;
/** mm³/(N·m) to m²/N: wear */
export const wearInMetres = (wear: number) => wear * 1e-9;
export const radPerSecond = (revPerMinute: number) => (revPerMinute * Math.PI) / 30;
export const revPerMinute = (radPerSecond: number) => (radPerSecond * 30) / Math.PI;
/** ms to s */
export const seconds = (ms: number) => ms / 1000;

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
