/**
 * What may be cut off the parts, and what every amount does to the films.
 *
 * Amounts x: normal stock of every surface, both of each seat, and metal off each face (below 0: put on, by a thicker
 * spacer). Surfaces that may not be cut have room from 0 to 0. About any amounts x₀ and position p₀ the least film
 * of seat i is
 *
 *   film_i = film_i(p₀, x₀) + g_i·(p - p₀) + Σ G_ik·(x_k - x₀_k)
 *
 * g_i gain by position and G_ik by stock (m/m): those of the place of least film (gauging/filmGradient.ts); a face that
 * moves its seats' bush by d toward the nose is a position less by d, one that moves their journal more by d. This is
 * exact for lines of one half angle without profile; otherwise up to the next place that becomes the least.
 */
import { leastFilm } from '../contact/film.ts';
import { type SeatInput, type Stretch, seatLines } from '../contact/fit.ts';
import { filmPerPosition, leastFilmFollowed } from '../gauging/filmGradient.ts';
import type { Part } from '../gauging/reading.ts';
import { cleanUp, movedAxially, radialOf, renewed, withStock } from './stock.ts';

/** A surface that may be cut. */
export interface Allowed {
  seat: number;
  part: Part;
  /** least and greatest normal stock (m) */
  cleanup: number;
  limit: number;
  /** cut to a straight new line at this half angle (rad) instead of following the old one */
  renew?: number;
}

/** A face or spacer: metal off it moves the part of these seats along the axis. */
export interface Face {
  name: string;
  part: Part;
  seats: readonly number[];
  /** 1 toward the nose, -1 toward the rear, as metal comes off */
  moves: 1 | -1;
  /** m */
  cleanup: number;
  limit: number;
  /** greatest that may be put on (m), by a thicker spacer or a shim */
  add: number;
}

export interface Preferences {
  /** this part is cut only for what the other cannot give */
  spare?: Part;
  /** only one part is cut */
  oneSetUp?: boolean;
  /** the journal stays where it is, as nearly as may be */
  keepPosition?: boolean;
}

export interface PlanInput {
  seats: readonly SeatInput[];
  /** m, of the journal now */
  position: number;
  allow: readonly Allowed[];
  faces?: readonly Face[];
  /** positions (m) that adjuster and shoulders let the journal have */
  reach?: Stretch;
  prefer?: Preferences;
}

export type Cuttable = { kind: 'surface'; seat: number; part: Part } | { kind: 'face'; face: number };

/** Room of one amount (m). */
export interface Room {
  of: Cuttable;
  least: number;
  most: number;
}

/** A plan's question made ready: renewed surfaces straight, room for every amount. */
export interface Problem {
  input: PlanInput;
  /** the parts with nothing off yet, renewed surfaces already on their new line */
  base: SeatInput[];
  rooms: Room[];
}

export const PARTS: readonly Part[] = ['journal', 'bush'];

export function problemOf(input: PlanInput): Problem {
  const base = input.seats.map((seat) => ({ ...seat }));
  const rooms: Room[] = [];
  for (const [seat, old] of input.seats.entries()) {
    for (const part of PARTS) {
      const allowed = input.allow.find((a) => a.seat === seat && a.part === part);
      let least = allowed?.cleanup ?? 0;
      if (allowed?.renew !== undefined) {
        base[seat]![part] = renewed(old[part], allowed.renew);
        least = Math.max(least, cleanUp(old[part], base[seat]![part], part));
      }
      rooms.push({ of: { kind: 'surface', seat, part }, least, most: allowed?.limit ?? 0 });
    }
  }
  for (const [face, { cleanup, limit, add }] of (input.faces ?? []).entries()) rooms.push({ of: { kind: 'face', face }, least: add > 0 ? -add : cleanup, most: limit });
  return { input, base, rooms };
}

/** The parts with the amounts taken off. */
export function cutParts({ base, rooms, input }: Problem, amounts: readonly number[]): SeatInput[] {
  const seats = base.map((seat) => ({ ...seat }));
  for (const [k, { of }] of rooms.entries()) {
    if (of.kind === 'surface') seats[of.seat]![of.part] = withStock(seats[of.seat]![of.part], of.part, amounts[k]!);
    else {
      const { seats: moved, part, moves } = input.faces![of.face]!;
      for (const seat of moved) seats[seat]![part] = movedAxially(seats[seat]![part], moves * amounts[k]!);
    }
  }
  return seats;
}

/** What metal off a face (m) adds to the position of the journal as one seat sees it. */
export const faceShift = ({ seats, part, moves }: Face, seat: number): number => (seats.includes(seat) ? (part === 'bush' ? -moves : moves) : 0);

export interface Linear {
  /** m; null where the parts of the seat do not overlap */
  films: (number | null)[];
  perPosition: number[];
  /** by seat, then by amount */
  perAmount: number[][];
}

/** The least films about a position (m) and amounts (m). */
export function linearised(problem: Problem, position: number, amounts: readonly number[]): Linear {
  const { rooms, input } = problem;
  const linear: Linear = { films: [], perPosition: [], perAmount: [] };
  for (const [i, seat] of cutParts(problem, amounts).entries()) {
    const lines = seatLines(seat);
    const followed = leastFilmFollowed(lines, i, position);
    // No axial move closes a straight seat, however its profile leans where it is tightest.
    const perPosition = lines.closes === 'never' ? 0 : (filmPerPosition(lines, position) ?? 0);
    linear.films.push(followed && leastFilm(lines.gap, position));
    linear.perPosition.push(perPosition);
    linear.perAmount.push(
      rooms.map(({ of }) => {
        if (of.kind === 'face') return perPosition * faceShift(input.faces![of.face]!, i);
        if (of.seat !== i || !followed) return 0;
        const perRadius = followed.influences.reduce((sum, { part, by, rate }) => sum + (part === of.part && by === 'radius' ? rate : 0), 0);
        return (of.part === 'journal' ? -1 : 1) * perRadius * radialOf(1, seat[of.part].halfAngle);
      }),
    );
  }
  return linear;
}
