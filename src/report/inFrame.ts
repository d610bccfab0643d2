/**
 * What pictures, charts and hands that drag ask of the engine within a frame: the one way from the screens to it. What
 * stands here in the engine's own units (m, rad) is for the drawings, which are drawn in metres; all else is in mm.
 */

import type { Design, Part, Surface } from '../design/definition.ts';
import type { Millimetres } from '../design/dimension.ts';
import { leastFilm } from '../engine/contact/film.ts';
import { positionForFilm, type SeatLines, seatLines } from '../engine/contact/fit.ts';
import { type Line, lineOf, metalOf } from '../engine/parts/line.ts';
import { metres, millimetres, toSeats, toSurface } from './convert.ts';

export { type Chain, type FilmChain, filmAlong, gapOf, SAME } from '../engine/contact/film.ts';
export { type SeatInput, type SeatLines, seatLines, type Wanted } from '../engine/contact/fit.ts';
export type { Line, Surface as SurfaceInMetres } from '../engine/parts/line.ts';
export type { SeatContact } from '../engine/play/contacts.ts';
export { nearing } from '../engine/spindle/height.ts';
export { proudAt, roundOf } from '../engine/spindle/lobes.ts';
export { AT_HOME, axisAt, type Pose } from '../engine/spindle/pose.ts';

export const linesOf = (design: Design): SeatLines[] => toSeats(design).map(seatLines);

export const lineOfPart = (surface: Surface, part: Part): Line => lineOf(toSurface(surface), metalOf(part));

/** Least film (mm) of a seat with the journal at a position (mm); null where its parts do not overlap. */
export function filmAtPosition({ gap }: SeatLines, position: Millimetres): Millimetres | null {
  const film = leastFilm(gap, metres(position));
  return film === null ? null : millimetres(film);
}

/** The position (mm) at which the least film of a seat is so much (mm); null where none is. */
export function positionAtFilm(seat: SeatLines, film: Millimetres): Millimetres | null {
  const position = positionForFilm(seat, metres(film));
  return position === null ? null : millimetres(position);
}

/** The position (m) at which a seat touches; null where none is. */
export const positionOfTouch = (seat: SeatLines): number | null => positionForFilm(seat, metres(0));
