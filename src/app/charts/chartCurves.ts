/**
 * What the closing chart shows, in mm: every seat's least film against position, its film wanted, the stretch where it
 * has it.
 */

import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import type { FitReport } from '../../report/fit/definition.ts';
import { filmAtPosition, positionAtFilm, type SeatLines } from '../../report/inFrame.ts';
import { landmarks } from '../pictures/journalMove.ts';

export type Curve = [position: Millimetres, film: Millimetres][];
export type Range = readonly [low: number, high: number];

const SAMPLES = 160;

/** Sampled for the eye; the figures and the marks on it are exact. */
export function curveOf(seat: SeatLines, [low, high]: Range): Curve {
  const curve: Curve = [];
  for (let i = 0; i <= SAMPLES; i++) {
    const position = low + ((high - low) * i) / SAMPLES;
    const film = filmAtPosition(seat, position);
    if (film !== null) curve.push([position, film]);
  }
  return curve;
}

/** From where to where the film is within its tolerance. */
export function goodStretch(lines: SeatLines, { film }: Design['seats'][number]): Curve {
  if (!film) return [];
  return [film.target - (film.tolerance ?? 0), film.target + (film.tolerance ?? 0)].flatMap((h): Curve => {
    const position = positionAtFilm(lines, h);
    return position === null ? [] : [[position, h]];
  });
}

/** Positions shown: every touch, every film wanted, and where the journal stands. */
export function rangeOf(fit: FitReport, design: Design): Range {
  const marks = [...landmarks(fit), fit.position];
  const reach = Math.max(0.02, ...design.seats.map((s) => 2 * (s.film?.target ?? 0)));
  const [low, high] = [Math.min(...marks), Math.max(...marks)];
  const pad = Math.max(reach - (high - low), 0) / 2 + 0.12 * Math.max(high - low, reach);
  return [low - pad, high + pad];
}

/** Films shown: enough over the films wanted, a little under nothing. */
export function filmsShown(curves: readonly Curve[], seats: Design['seats']): Range {
  const films = curves.flatMap((curve) => curve.map(([, film]) => film));
  const wanted = seats.map((s) => s.film?.target ?? 0);
  const top = Math.max(3 * Math.max(...wanted), Math.min(Math.max(...films), 6 * Math.max(0.001, ...wanted)), 0.004);
  return [Math.max(Math.min(0, ...films), -0.35 * top), top];
}

/** Films wanted, those alike told together. */
export interface Band {
  target: Millimetres;
  tolerance: Millimetres;
  /** places in the design of the seats that want it */
  seats: number[];
}

export function bandsOf(seats: Design['seats']): Band[] {
  const bands: Band[] = [];
  seats.forEach(({ film }, seat) => {
    if (!film) return;
    const tolerance = film.tolerance ?? 0;
    const like = bands.find((band) => band.target === film.target && band.tolerance === tolerance);
    if (like) like.seats.push(seat);
    else bands.push({ target: film.target, tolerance, seats: [seat] });
  });
  return bands;
}
