/**
 * The pose at which the oil of all seats carries the load:  R(q) = Q(q) + load = 0, five unknowns, rigid spindle.
 *
 * Found as the journal would find it, sinking through its oil (damping B) until it rests, in implicit steps that grow
 * into Newton's own:
 *
 *   (K + B/Δt) δq = R        Δt from 2/ω upward as R falls; no step takes more than 4/5 of the least film of any seat
 *
 * K, B exact (stiffness.ts), so the end converges as Newton does (descent.ts). First on a coarse grid, then on the one
 * asked for.
 * Axially an adjuster keeps the journal from coming off its seats and no more (z = position while the oil pushes toward
 * the adjuster, else the load presses it closer and the oil alone holds it). Without one the oil alone does; where it
 * pushes the journal off its seats faster than any load brings it back, or no seat closes, a stop is supposed at the
 * position and its force is told. Quasi-static: the load and the pose stand still; of a journal with lobes the mean
 * over a turn balances (SpindleRun.places).
 * @source KelleyKeyes1998 (pseudo-transient continuation)
 */

import type { Metres } from '../../design/dimension.ts';
import type { LeastFilm } from '../spindle/height.ts';
import { asFive, type Five, type Pose } from '../spindle/pose.ts';
import { CLOSE, type DescentEnd, settle, type Task, thinnest } from './descent.ts';
import type { FilmSeat, Grids, SpindleRun, Sum } from './films.ts';
import { searchPosition } from './positionSearch.ts';
import type { SeatFilm } from './seatFilm.ts';
import type { Coefficients } from './stiffness.ts';

/** The load in the five coordinates: N, and N·m about the bush datum. */
export type Load = Readonly<Five>;

export interface Balance {
  pose: Pose;
  seats: SeatFilm[];
  total: Sum;
  /** N, what a stop has to push with along z to hold the position; 0 when the oil alone does */
  stop: number;
  /** as last used on the way: close, not exact (summedCoefficients gives them exactly) */
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
  | { status: 'notConverged'; residual: number; pose: Pose }
  /** the effort of the run is spent: where the search had got to */
  | { status: 'givenUp'; pose: Pose };

/** What is worth keeping of a balance for the next one close by. */
export type Near = Pick<Balance, 'pose' | 'coefficients' | 'stop'>;

export interface Start {
  /** m, axial position the journal is set to: where an adjuster holds it, and where the search starts without one */
  position: Metres;
  /** an adjuster keeps the journal from coming off its seats; it does nothing for seats that close both ways */
  adjusted?: boolean;
  /** what was found for a load, speed or oil close by */
  near?: Near;
  /** a coarser grid to come from */
  coarse?: Grids;
  /** how well forces balance, as a part of the load; 1e-6 when left out */
  close?: number;
}

const COARSE_CLOSE = 1e-2;

export function equilibrium(grids: Grids, load: Load, run: SpindleRun, start: Start): Equilibrium {
  if (run.omega === 0 && !grids.seats.some(({ grooves }) => grooves.some(({ pressure }) => pressure > 0)))
    return { status: 'standing' };
  const side = closingSide(grids.seats);
  if (side === 'neither') return heldAt(grids, load, run, start);
  return side !== 'both' && start.adjusted === true
    ? adjusted(grids, load, run, start, side)
    : floating(grids, load, run, start, side);
}

/** Where the seats close: all rearward (1), all noseward (-1), some each way, or none. */
type ClosingSide = 1 | -1 | 'both' | 'neither';

export function closingSide(seats: readonly FilmSeat[]): ClosingSide {
  const sines = seats.map(({ sin }) => sin).filter((sine) => Math.abs(sine) > 1e-9);
  if (sines.length === 0) return 'neither';
  if (sines.every((sine) => sine > 0)) return 1;
  return sines.every((sine) => sine < 0) ? -1 : 'both';
}

/** A stop that keeps the journal from coming off its seats pushes it toward where they close. */
const keepsOn = (side: 1 | -1, stop: number) => side * stop <= 0;

/** Held by the adjuster unless the load presses the journal closer than that. */
function adjusted(grids: Grids, load: Load, run: SpindleRun, start: Start, side: 1 | -1): Equilibrium {
  const inside = (found: Equilibrium | 'pushedOff'): found is Equilibrium =>
    found !== 'pushedOff' && found.status === 'solved' && side * (found.pose.z - start.position) <= 0;
  const { near, ...afresh } = start;
  if (near?.stop === 0 && side * (near.pose.z - start.position) < 0) {
    const found = descend(grids, load, run, start, near.pose, false);
    if (inside(found)) return found;
  }
  const held = heldAt(grids, load, run, near?.stop === 0 ? afresh : start);
  if (held.status !== 'solved' || keepsOn(side, held.stop)) return held;
  const pressed = descend(grids, load, run, { ...start, near: held }, held.pose, false);
  if (inside(pressed)) return pressed;
  const sought = searchPosition(
    { grids, load, run, held: false, caught: false, close: start.close ?? CLOSE },
    held.pose,
  );
  return sought.status === 'pushedOff' ? held : balanceOf(sought, 0);
}

/** On its oil alone, from the position given; held there where the oil would drive it off its seats. */
function floating(grids: Grids, load: Load, run: SpindleRun, start: Start, side: 1 | -1 | 'both'): Equilibrium {
  const { near, ...afresh } = start;
  if (near && near.stop !== 0) {
    const held = near.pose.z === start.position ? heldAt(grids, load, run, start) : null;
    if (held?.status === 'solved' && side !== 'both' && keepsOn(side, held.stop)) return held;
    return floating(grids, load, run, afresh, side);
  }
  const from = near?.pose ?? room(grids.seats, run, start.position, load);
  if ('seat' in from) return { status: 'noRoom', seat: from.seat };
  const free = descend(grids, load, run, start, from, false);
  if (free !== 'pushedOff' && free.status === 'solved') return free;
  // A stop may keep the oil from pushing the journal off its seats; it does not stand in for oil that is too weak.
  if (side === 'both' && free !== 'pushedOff') return free;
  const held = heldAt(grids, load, run, afresh);
  return free === 'pushedOff' || (held.status === 'solved' && side !== 'both' && keepsOn(side, held.stop))
    ? held
    : free;
}

/** Held at the position given, against either side. */
function heldAt(grids: Grids, load: Load, run: SpindleRun, start: Start): Equilibrium {
  const { near, ...afresh } = start;
  const last = near && thinnest(grids.seats, run, asFive({ ...near.pose, z: start.position }));
  if (near && last && last.least.film >= ENOUGH) {
    const held = descend(grids, load, run, start, { ...near.pose, z: start.position }, true);
    if (held !== 'pushedOff' && held.status === 'solved') return held;
  }
  const from = roomAt(grids.seats, run, start.position, load);
  if ('seat' in from) return { status: 'noRoom', seat: from.seat };
  const held = descend(grids, load, run, afresh, from, true);
  if (held === 'pushedOff') throw new Error('a held journal cannot be pushed off');
  return held;
}

function descend(
  grids: Grids,
  load: Load,
  run: SpindleRun,
  start: Start,
  from: Pose,
  held: boolean,
): Equilibrium | 'pushedOff' {
  const task: Task = {
    grids,
    load,
    run,
    held,
    caught: closingSide(grids.seats) === 'both',
    close: start.close ?? CLOSE,
  };
  let first = from;
  if (start.coarse && !start.near) {
    const coarse = settle({ ...task, grids: start.coarse, close: COARSE_CLOSE }, from, null);
    if (coarse.status === 'pushedOff') return 'pushedOff';
    if (coarse.status === 'solved') first = coarse.pose;
  }
  let settled = settle(task, first, start.near?.coefficients ?? null);
  if (!held && (settled.status === 'notConverged' || (settled.status === 'contact' && task.caught)))
    settled = searchPosition(task, from);
  if (settled.status === 'pushedOff') return 'pushedOff';
  return balanceOf(settled, held && settled.status === 'solved' ? -(settled.total.force[2] + load[2]) : 0);
}

const balanceOf = (settled: Exclude<DescentEnd, { status: 'pushedOff' }>, stop: number): Equilibrium =>
  settled.status === 'solved' ? { ...settled, stop } : settled;

/**
 * A pose to start from: at the position given if there is film there, else at the nearest where there is; off the axis
 * by some of the least film, the way the load pushes and the oil turns it.
 */
function room(seats: readonly FilmSeat[], run: SpindleRun, position: Metres, load: Load): Pose | { seat: number } {
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
