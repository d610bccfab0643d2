/**
 * What every amount does to the films. About amounts x₀ and a position p₀ each place where the film of seat i is nearly
 * the least gives
 *
 *   film = film(p₀, x₀) + g·(p - p₀) + Σ G_k·(x_k - x₀_k)
 *
 * g gain by position, G_k by stock (m/m), both of that place (belief/filmGradient.ts); a face that moves its seats'
 * bush by d toward the nose is a position less by d, one that moves their journal more by d. The film of the seat is
 * the least of them. Exact for straight lines; with a profile until a place further off becomes the least.
 */

import type { Metres } from '../../design/dimension.ts';
import { type Breakpoint, breakpointsAt } from '../belief/filmGradient.ts';
import { filmAlong } from '../contact/film.ts';
import { seatLines } from '../contact/fit.ts';
import { radialOf } from '../parts/stock.ts';
import { cutParts, type Face, type Problem } from './problem.ts';

/** A film (m) as one place of its seat has it. */
export interface LinearFilm {
  film: Metres;
  perPosition: number;
  /** by amount */
  perAmount: number[];
}

/** Places further (m) from the least, or more of them, are left to the next round. */
const NEAR = 30e-6;
const MOST = 6;
/** A seat that an axial move closes by less than this much of itself (0.006°) is not moved to its film. */
const STRAIGHT = 1e-4;
/** Places that gain alike (m/m) are one. */
const ALIKE = 1e-12;

/** The places of every seat, the least film first; none where its parts do not overlap. */
export function filmPieces(problem: Problem, position: Metres, amounts: readonly number[]): LinearFilm[][] {
  return cutParts(problem, amounts).map((seat, i) => {
    const lines = seatLines(seat);
    const { count, u, film } = filmAlong(lines.gap, position);
    const lowest: number[] = [];
    // Between two places that are both lower no place can become the least.
    for (let k = 0; k < count; k++)
      if (!(film[k]! > (film[k - 1] ?? film[k]!) && film[k]! > (film[k + 1] ?? film[k]!))) lowest.push(k);
    lowest.sort((a, b) => film[a]! - film[b]!);
    const near = lowest.filter((k) => film[k]! <= film[lowest[0]!]! + NEAR).slice(0, MOST);
    const moves = lines.closes !== 'never';
    const found = near.flatMap((k) =>
      breakpointsAt(lines, i, position, u[k]!, film[k]!).map((place) => pieceOf(problem, i, place, moves)),
    );
    return found.filter((piece, k) => !found.slice(0, k).some((other) => isSame(piece, other)));
  });
}

function pieceOf(
  { rooms, input }: Problem,
  seat: number,
  { film, perPosition: gain, influences }: Breakpoint,
  moves: boolean,
): LinearFilm {
  const perPosition = moves && Math.abs(gain) >= STRAIGHT ? gain : 0;
  const perAmount = rooms.map(({ of }) => {
    if (of.kind === 'face') return gain * faceShift(input.faces![of.face]!, seat);
    if (of.seat !== seat) return 0;
    const perRadius = influences.reduce(
      (sum, { part, by, rate }) => sum + (part === of.part && by === 'radius' ? rate : 0),
      0,
    );
    return (of.part === 'journal' ? -1 : 1) * perRadius * radialOf(1, input.seats[seat]![of.part].halfAngle);
  });
  return { film, perPosition, perAmount };
}

const isSame = (a: LinearFilm, b: LinearFilm) =>
  Math.abs(a.film - b.film) <= ALIKE &&
  Math.abs(a.perPosition - b.perPosition) <= ALIKE &&
  a.perAmount.every((g, k) => Math.abs(g - b.perAmount[k]!) <= ALIKE);

/** What metal off a face (m) adds to the position of the journal as one seat sees it. */
const faceShift = ({ seats, part, moves }: Face, seat: number): number =>
  seats.includes(seat) ? (part === 'bush' ? -moves : moves) : 0;
