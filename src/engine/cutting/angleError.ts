/** A surface set at a wrong half angle but gauged right at one station, and what that leaves of the film. */
import type { Metres } from '../../design/dimension.ts';
import { filmAlong } from '../contact/film.ts';
import { type SeatInput, seatLines } from '../contact/fit.ts';
import type { Part, Surface } from '../parts/line.ts';

/** The surface turned by an error (rad) of its half angle about its radius at a station (m). */
function tiltedSurface(surface: Surface, gauged: number, error: number): Surface {
  const radius = surface.radius + (gauged - surface.station) * Math.tan(surface.halfAngle);
  return { ...surface, halfAngle: surface.halfAngle + error, radius, station: gauged };
}

export const tilted = (seat: SeatInput, part: Part, gauged: number, error: number): SeatInput => ({
  ...seat,
  [part]: tiltedSurface(seat[part], gauged, error),
});

/** Least and greatest film (m) of a seat at a position (m); null where its parts do not overlap. */
export function worstFilms(seat: SeatInput, position: Metres): { least: number; greatest: number } | null {
  const { count, film } = filmAlong(seatLines(seat).gap, position);
  if (count === 0) return null;
  const films = film.subarray(0, count);
  return { least: films.reduce((a, b) => Math.min(a, b)), greatest: films.reduce((a, b) => Math.max(a, b)) };
}
