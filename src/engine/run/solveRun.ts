/**
 * The running spindle cold, everything at the room's temperature, on a fine grid and on one half as fine, whose
 * difference tells the error.
 */
import type { Metres } from '../../design/dimension.ts';
import { type Equilibrium, equilibrium, type Load, type Near } from '../film/equilibrium.ts';
import { type FilmSeat, type Grids, newGrids, type Sum, solveFilms, summedCoefficients } from '../film/films.ts';
import type { SeatFilm } from '../film/seatFilm.ts';
import type { Coefficients } from '../film/stiffness.ts';
import { leastFilmOf, UNGROWN } from '../spindle/height.ts';
import { asFive, type Pose } from '../spindle/pose.ts';
import { atRest } from './atRest.ts';
import { COARSE, FINE, HALF, type Running } from './running.ts';

export interface Carried {
  status: 'held' | 'found' | 'stopped';
  pose: Pose;
  seats: SeatFilm[];
  total: Sum;
  stop: number;
}

export interface Solved extends Carried {
  coefficients: Coefficients;
  /** on half as fine a grid: the seats at this very pose, and the least film at the pose found there */
  half: { seats: SeatFilm[]; total: Sum; leastFilm: Metres };
}

export type RunVerdict =
  | Solved
  | {
      status: 'contact' | 'apart' | 'noRoom' | 'standing' | 'notConverged' | 'givenUp';
      pose: Pose;
      seat: number | null;
    };

export function solveRun(running: Running): RunVerdict {
  const { seats, load, run } = running;
  const [fine, half] = [newGrids(seats, FINE), newGrids(seats, HALF)];
  const first = load === null ? held(half, running) : found(half, load, running, { coarse: newGrids(seats, COARSE) });
  if (!('seats' in first)) return first;
  const { near } = first;
  const last = load === null ? held(fine, running) : found(fine, load, running, near ? { near } : {});
  if (!('seats' in last)) return last;
  const same = solveFilms(half, asFive(last.pose), run);
  if (same.status !== 'solved') return { status: same.status, pose: last.pose, seat: same.seat };
  return {
    ...last,
    coefficients: summedCoefficients(fine, run),
    half: { ...same, leastFilm: thinnestOf(first.seats) },
  };
}

/** `near` where it was found for a load: what the next grid begins with. */
type Attempt = (Carried & { near?: Near }) | Exclude<RunVerdict, Solved>;

function held(grids: Grids, { pose, run }: Running): Attempt {
  const solved = solveFilms(grids, asFive(pose), run);
  if (solved.status !== 'solved') return { status: solved.status, pose, seat: solved.seat };
  return { status: 'held', pose, seats: solved.seats, total: solved.total, stop: 0 };
}

function found(grids: Grids, load: Load, running: Running, from: { coarse: Grids } | { near?: Near }): Attempt {
  const { position, adjusted, run } = running;
  return attemptOf(equilibrium(grids, load, run, { position, adjusted, ...from }), running);
}

function attemptOf(verdict: Equilibrium, running: Running): Attempt {
  const from = running.pose;
  if (verdict.status === 'solved')
    return {
      status: verdict.stop === 0 ? 'found' : 'stopped',
      pose: verdict.pose,
      seats: verdict.seats,
      total: verdict.total,
      stop: verdict.stop,
      near: verdict,
    };
  if (verdict.status === 'standing') return standing(running);
  if (verdict.status === 'noRoom') return { status: 'noRoom', pose: from, seat: verdict.seat };
  return { status: verdict.status, pose: verdict.pose, seat: verdict.status === 'contact' ? verdict.seat : null };
}

/** At rest on metal; the seat that bears most. */
export function standing(running: Running): Exclude<RunVerdict, Solved> {
  const rest = atRest(running);
  if (rest === null) return { status: 'standing', pose: running.pose, seat: null };
  const bearing = rest.contacts.toSorted((a, b) => b.share - a.share)[0];
  const seat = running.seats.findIndex(({ name }) => name === bearing?.seat);
  return { status: 'standing', pose: rest.pose, seat: seat < 0 ? null : seat };
}

/** Least film of every seat of cold parts at a pose, whether oil flows there or metal touches. */
export const leastFilms = (seats: readonly FilmSeat[], pose: Pose) =>
  seats.map((seat) => leastFilmOf(seat, pose, UNGROWN));

/** The least of all seats (m). */
export const thinnestOf = (seats: readonly SeatFilm[]): number => Math.min(...seats.map(({ least }) => least.film));

export interface Accuracy {
  /** errors of the forces, as a part of the greatest, and of the torque, as a part of it */
  force: number;
  torque: number;
  /** m */
  leastFilm: Metres;
  /** of the oil, the worst seat */
  imbalance: number;
}

/** Errors of second order: a third of the difference to the grid half as fine. */
export function accuracyOf({ seats, total, half }: Solved): Accuracy {
  const greatest = Math.max(
    ...seats.flatMap(({ force }) => [Math.hypot(force[0], force[1]), Math.abs(force[2])]),
    1e-9,
  );
  const change = Math.max(
    ...seats.flatMap(({ force }, i) => [0, 1, 2].map((c) => Math.abs(force[c]! - half.seats[i]!.force[c]!))),
  );
  return {
    force: change / greatest / 3,
    torque: Math.abs(total.torque / (half.total.torque || 1) - (total.torque === 0 ? 0 : 1)) / 3,
    leastFilm: Math.abs(thinnestOf(seats) - half.leastFilm) / 3,
    imbalance: Math.max(...seats.map(({ solution }) => solution.imbalance)),
  };
}
