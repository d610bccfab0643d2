/**
 * What a trial assembly tells of the films, linear in e (belief.ts) about a point. With the seat k touching first, at
 *
 *   P_k(e_k) = P_k - e_k/g_k                              g film gained per metre of position
 *
 *   stand-off   z = P_k(e_k) + noise
 *   touch       film_i at P_k(e_k) ≥ 0                    of every other seat: it did not touch before
 *   blue        film_i at P_k(e_k) ≤ thickness            where it prints, ≥ thickness where it stays clean
 *   film_i at P_k(e_k) = film_i(P_k) + e_i - e_k·g_i/g_k
 *   shake       the forward model of gauging (gauging/readings)
 *
 * The bounds are taken where the seat touches, not where it was read to: an error of the reading is no error of the
 * parts.
 * Exact for straight lines; those with a profile, and the shake, are worked out again about the estimate they lead to.
 */

import type { Metres } from '../../design/dimension.ts';
import type { Bound, FilmsBefore, Observation } from '../belief/accounts.ts';
import { filmPerPosition } from '../belief/filmGradient.ts';
import { leastFilm } from '../contact/film.ts';
import { positionForFilm, type SeatInput, seatLines } from '../contact/fit.ts';
import { perStock } from '../gauging/cutsBetween.ts';
import type { ReadingOf } from '../gauging/reading.ts';
import { predict } from '../gauging/readings/index.ts';
import { withStock } from '../parts/stock.ts';

export type ShakeFelt = Omit<ReadingOf<'shake'>, 'kind'>;
export type Blue = readonly { seat: number; prints: boolean }[];

/** The parts with the films greater by e. */
export const believed = (parts: readonly SeatInput[], films: readonly number[]): SeatInput[] =>
  parts.map((seat, i) => ({ ...seat, bush: withStock(seat.bush, 'bush', films[i]!) }));

interface FirstTouch {
  /** position of first touch (m), and how it follows e */
  at: number;
  gains: number[];
  bounds: Bound[];
}

/** What follows from the seat having touched first; null where it cannot have. `thickness` of the blue (m). */
export function touchOf(
  parts: readonly SeatInput[],
  about: readonly number[],
  seat: number,
  blue: Blue,
  thickness: Metres,
): FirstTouch | null {
  const now = believed(parts, about);
  const printed = (i: number) => blue.find((seen) => seen.seat === i)?.prints;
  const lines = seatLines(now[seat]!);
  const at = lines.closes === 'rearward' ? positionForFilm(lines, 0) : null;
  if (at === null || printed(seat) === false) return null;
  const gain = -1 / filmPerPosition(lines, at)!;
  const bounds = now.flatMap((other, i): Bound[] => {
    const own = seatLines(other);
    const film = i === seat ? null : leastFilm(own.gap, at);
    if (film === null) return [];
    const perPosition = own.closes === 'never' ? 0 : (filmPerPosition(own, at) ?? 0);
    const gains = now.map((_, k) => (k === i ? 1 : k === seat ? perPosition * gain : 0));
    // film at the touch = film + gains·(e - about)
    const rest = film - gains.reduce((sum, g, k) => sum + g * about[k]!, 0);
    const least: Bound = { gains: gains.map((g) => -g), limit: rest - (printed(i) === false ? thickness : 0) };
    return printed(i) === true ? [least, { gains, limit: thickness - rest }] : [least];
  });
  return { at, gains: now.map((_, i) => (i === seat ? gain : 0)), bounds };
}

/**
 * Null: it has no prediction for these parts. What it leans on beyond the films (FilmsBefore) counts as noise of the
 * reading.
 */
export function shakeTold(
  parts: readonly SeatInput[],
  about: readonly number[],
  shake: ShakeFelt,
  beyond: FilmsBefore['beyond'] = () => 0,
): Observation | null {
  const now = believed(parts, about);
  const { value: predicted, influences } = predict({ kind: 'shake', ...shake }, now);
  if (predicted === null) return null;
  const gains = now.map((_, seat) => perStock(influences, now, { seat, part: 'bush' }));
  const sigma = Math.hypot(shake.sigma, Math.sqrt(beyond(influences, now)));
  return { value: shake.value, sigma, predicted, gains, about };
}
