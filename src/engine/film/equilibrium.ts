/**
 * The pose at which the oil of all seats carries the load:  R(q) = Q(q) + load = 0, five unknowns, rigid spindle.
 *
 * Found as the journal would find it, sinking through its oil (damping B) until it rests, in implicit steps that grow into
 * Newton's own:
 *
 *   (K + B/Δt) δq = R        Δt from 2/ω upward as R falls; no step takes more than 4/5 of the least film of any seat
 *
 * K, B exact (stiffness.ts), so the end converges as Newton does (descent.ts). First on a coarse grid, then on the one asked for.
 * Where the seats cannot hold the journal axially (nothing but straight seats; or cones that all close the same way, whose
 * oil pushes it off them faster than any load brings it back), a stop holds it at the position given and its force is told.
 * Quasi-static: the load and the pose stand still; of a journal with lobes the mean over a turn balances (SpindleRun.places).
 * @source pseudo-transient continuation: C. T. Kelley, D. E. Keyes, SIAM J. Numer. Anal. 35 (1998) 508 (from memory).
 */
import { CLOSE, settle, type Task, thinnest } from './descent.ts';
import type { LeastFilm } from './height.ts';
import type { Five, Pose } from './pose.ts';
import { searchPosition } from './positionSearch.ts';
import type { SeatFilm } from './seatFilm.ts';
import type { FilmSeat, Spindle, SpindleRun, Sum } from './spindle.ts';
import type { Coefficients } from './stiffness.ts';

/** The load in the five coordinates: N, and N·m about the bush datum. */
export type Load = Readonly<Five>;

/** A force (N) at a station (m) on the axis. */
export const loadAt = (x: number, y: number, z: number, station: number): Five => [x, y, z, -station * y, station * x];

export interface Balance {
  pose: Pose;
  seats: SeatFilm[];
  total: Sum;
  /** N, what a stop has to push with along z to hold the position; 0 when the oil alone does */
  stop: number;
  /** as last used on the way: close, not exact (spindleCoefficients gives them exactly) */
  coefficients: Coefficients | null;
  /** what is left of R against the load */
  residual: number;
  iterations: number;
}

export type Equilibrium =
  | ({ status: 'solved' } & Balance)
  /** no film carries it: the least film (m) of `seat` went below the floor as the journal sank */
  | { status: 'contact'; seat: number; least: LeastFilm; pose: Pose }
  /** it does not turn and no groove is under pressure: the oil carries nothing */
  | { status: 'standing' }
  /** no axial position near the given one has a film in every seat */
  | { status: 'noRoom'; seat: number }
  | { status: 'notConverged'; residual: number; pose: Pose };

/** What is worth keeping of a balance for the next one close by. */
export type Near = Pick<Balance, 'pose' | 'coefficients' | 'stop'>;

export interface Start {
  /** m, axial position the journal is set to: where the search starts, and where a stop holds it if need be */
  position: number;
  /** what was found for a load, speed or oil close by */
  near?: Near;
  /** a coarser grid to come from */
  coarse?: Spindle;
  /** held at `position` from the start */
  held?: boolean;
  /** how well forces balance, as a part of the load; 1e-6 when left out */
  close?: number;
}

const COARSE_CLOSE = 1e-2;

export function equilibrium(spindle: Spindle, load: Load, run: SpindleRun, start: Start): Equilibrium {
  if (run.omega === 0 && !spindle.seats.some(({ grooves }) => grooves.some(({ pressure }) => pressure > 0))) return { status: 'standing' };
  const near = start.near;
  if (near && near.stop !== 0 && near.pose.z === start.position && start.held !== true) {
    const held = equilibrium(spindle, load, run, { ...start, held: true });
    if (held.status === 'solved' && holds(spindle.seats, held.stop)) return held;
    const { near: _, ...afresh } = start;
    return equilibrium(spindle, load, run, afresh);
  }
  const axial = spindle.seats.some(({ shape }) => Math.abs(Math.sin(shape.gap.halfAngle)) > 1e-9);
  let floating: Equilibrium | 'pushedOff' = 'pushedOff';
  if (axial && start.held !== true) {
    const from = near?.pose ?? room(spindle.seats, run, start.position, load);
    if ('seat' in from) return { status: 'noRoom', seat: from.seat };
    floating = descend(spindle, load, run, start, from, false);
    if (floating !== 'pushedOff' && floating.status === 'solved') return floating;
  }
  const from = (near && near.pose.z === start.position ? near.pose : null) ?? roomAt(spindle.seats, run, start.position, load);
  if ('seat' in from) return floating === 'pushedOff' ? { status: 'noRoom', seat: from.seat } : floating;
  const held = descend(spindle, load, run, start, from, true);
  if (held === 'pushedOff') throw new Error('a held journal cannot be pushed off');
  if (floating === 'pushedOff') return held;
  // A stop may keep the oil from pushing the journal off its seats; it does not stand in for oil that is too weak.
  return held.status === 'solved' && holds(spindle.seats, held.stop) ? held : floating;
}

/** Whether a stop with this force (N along z) only keeps the journal from being pushed off its seats, or nothing else could take the thrust. */
export function holds(seats: readonly FilmSeat[], stop: number): boolean {
  const closing = seats.reduce((sum, { shape: { gap } }) => sum + Math.sin(gap.halfAngle), 0);
  return stop === 0 || Math.abs(closing) < 1e-9 || stop * closing < 0;
}

function descend(spindle: Spindle, load: Load, run: SpindleRun, start: Start, from: Pose, held: boolean): Equilibrium | 'pushedOff' {
  const task: Task = { spindle, load, run, held, close: start.close ?? CLOSE };
  let first = from;
  if (start.coarse && !start.near) {
    const coarse = settle({ ...task, spindle: start.coarse, close: COARSE_CLOSE }, from, null);
    if (coarse.status === 'pushedOff') return 'pushedOff';
    if (coarse.status === 'solved') first = coarse.pose;
  }
  let settled = settle(task, first, start.near?.coefficients ?? null);
  if (settled.status === 'notConverged' && !held) settled = searchPosition(task, from);
  if (settled.status === 'pushedOff') return 'pushedOff';
  return settled.status === 'solved' ? { ...settled, stop: held ? -(settled.total.force[2] + load[2]) : 0 } : settled;
}

/**
 * A pose to start from: at the position given if there is film there, else at the nearest where there is; off the axis by some of
 * the least film, the way the load pushes and the oil turns it.
 */
function room(seats: readonly FilmSeat[], run: SpindleRun, position: number, load: Load): Pose | { seat: number } {
  const here = roomAt(seats, run, position, load);
  if (!('seat' in here)) return here;
  for (let far = 1e-6; far < 2e-3; far *= 1.4) {
    for (const z of [position + far, position - far]) {
      const pose = roomAt(seats, run, z, load);
      if (!('seat' in pose)) return pose;
    }
  }
  return here;
}

/** The least film (m) a start needs. */
const ENOUGH = 2e-7;

function roomAt(seats: readonly FilmSeat[], run: SpindleRun, z: number, load: Load): Pose | { seat: number } {
  const centred = thinnest(seats, run, [0, 0, z, 0, 0]);
  if (centred === null) return { seat: 0 };
  if (centred.least.film < ENOUGH) return { seat: centred.seat };
  const push = Math.hypot(load[0], load[1]);
  const away = 0.3 * centred.least.film;
  // Journals ride up the way they turn: about 60° from the load for a film of middling thickness.
  const angle = (push > 0 ? Math.atan2(load[1], load[0]) : -Math.PI / 2) + (Math.sign(run.omega) * Math.PI) / 3;
  return { x: away * Math.cos(angle), y: away * Math.sin(angle), z, tiltX: 0, tiltY: 0 };
}
