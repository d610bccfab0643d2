/**
 * The pose at which the oil of all seats carries the load:  R(q) = Q(q) + load = 0, five unknowns, rigid spindle.
 *
 * Found as the journal would find it, sinking through its oil (damping B) until it rests, in implicit steps that grow into
 * Newton's own:
 *
 *   (K + B/Δt) δq = R        Δt from 2/ω upward as R falls; no step takes more than 4/5 of the least film of any seat
 *
 * K, B exact (stiffness.ts), so the end converges as Newton does. First on a coarse grid, then on the one asked for.
 * Where the seats cannot hold the journal axially (nothing but straight seats; or cones that all close the same way, whose
 * oil pushes it off them faster than any load brings it back), a stop holds it at the position given and its force is told.
 * Quasi-static: the load and the pose stand still; a journal with lobes is taken as it stands drawn.
 * @source pseudo-transient continuation: C. T. Kelley, D. E. Keyes, SIAM J. Numer. Anal. 35 (1998) 508 (from memory).
 */
import { type LeastFilm, leastFilmOf } from './height.ts';
import { asPose, type Five, type Pose } from './pose.ts';
import type { SeatFilm } from './seatFilm.ts';
import { solveSmall } from './smallSystem.ts';
import { type FilmSeat, type Spindle, type SpindleRun, type Sum, solveSpindle, spindleCoefficients } from './spindle.ts';
import type { Matrix5 } from './stiffness.ts';

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
  coefficients: { stiffness: Matrix5; damping: Matrix5 } | null;
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

/** m: below this no oil film is a film (a few hundredths of the finest lapping; the search stops there). */
export const FLOOR = 2e-9;
/** of the load */
const CLOSE = 1e-6;
const COARSE_CLOSE = 1e-2;
/** of the film: a move that changes nothing */
const ROUND_OFF = 1e-11;
/** of what is dragged */
const FINE_PRESSURE = 1e-10;
const MAX_STEPS = 80;
/** of the film it started with */
const SINKING = 0.05;
/** A journal pushed this many of its least films off its seats is not coming back. */
const FAR = 40;

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
  let first = from;
  if (start.coarse && !start.near) {
    const coarse = settle(start.coarse, load, run, from, held, COARSE_CLOSE);
    if (coarse === 'pushedOff') return coarse;
    if (coarse.status === 'solved') first = coarse.pose;
  }
  return settle(spindle, load, run, first, held, start.close ?? CLOSE, start.near?.coefficients ?? null);
}

/** One descent on one grid. K and B are made anew only where the last ones no longer bring R down tenfold. */
function settle(spindle: Spindle, load: Load, run: SpindleRun, from: Pose, held: boolean, wanted: number, known: Balance['coefficients'] = null): Equilibrium | 'pushedOff' {
  const { seats } = spindle;
  let close = wanted;
  const scale = scales(seats, run, from, load);
  const far = (FAR * scale.film) / scale.greatestSine;
  const slow = 2 / Math.max(Math.abs(run.omega), 1);
  let q: Five = [from.x, from.y, from.z, from.tiltX, from.tiltY];
  // Seats may push against each other with far more than the load: their pressures have to be that much better.
  const tolerance = wanted <= CLOSE ? FINE_PRESSURE : undefined;
  let state = solveSpindle(spindle, q, run, tolerance);
  if (state.status !== 'solved') return { status: 'notConverged', residual: Number.POSITIVE_INFINITY, pose: from };
  let size = sizeOf(residualOf(state.total.force, load, held), scale);
  let step = size < 0.3 ? Number.POSITIVE_INFINITY : slow;
  let slope = known;
  for (let iterations = 0; iterations < MAX_STEPS; iterations++) {
    if (size <= close) {
      const stop = held ? -(state.total.force[2] + load[2]) : 0;
      return { status: 'solved', pose: asPose(q), seats: state.seats, total: state.total, stop, coefficients: slope, residual: size, iterations };
    }
    slope ??= spindleCoefficients(spindle, run, 1e-3);
    const move = moveBy(slope.stiffness, slope.damping, residualOf(state.total.force, load, held), step, held);
    const part = move === null ? 0 : allowed(seats, run, q, move);
    // So stiff that what is left of the balance is round-off of the films: there is no better pose.
    if (move !== null && step === Number.POSITIVE_INFINITY && size < 1 && Math.hypot(move[0]!, move[1]!, move[2]!, move[3]! * scale.length, move[4]! * scale.length) < ROUND_OFF * scale.film) close = size;
    if (move === null || part < 1e-4) {
      step = Math.min(step, slow) / 8;
      if (step < 1e-12 * slow) return { status: 'notConverged', residual: size, pose: asPose(q) };
      continue;
    }
    const next = q.map((value, i) => value + part * move[i]!) as Five;
    const after = solveSpindle(spindle, next, run, tolerance);
    if (after.status !== 'solved') return after.status === 'apart' ? 'pushedOff' : { status: 'notConverged', residual: size, pose: asPose(q) };
    const left = sizeOf(residualOf(after.total.force, load, held), scale);
    if (left > 2 * size && step > 1e-6 * slow && part > 0.5) {
      step = Math.min(step, 10 * slow) / 5;
      slope = iterations === 0 && known !== null ? null : slope;
      if (slope === null) step = size < 0.3 ? Number.POSITIVE_INFINITY : slow;
      else solveSpindle(spindle, q, run, tolerance);
      continue;
    }
    const gain = size / left;
    step = gain > 3 && left < 0.3 ? Number.POSITIVE_INFINITY : step * Math.min(10, Math.max(1.5, gain));
    if (gain < 10) slope = null;
    [q, state, size] = [next, after, left];
    const thin = thinnest(seats, run, q)!;
    if (thin.least.film < FLOOR) return { status: 'contact', ...thin, pose: asPose(q) };
    if (!held && Math.abs(q[2] - from.z) > far) return 'pushedOff';
  }
  const thin = thinnest(seats, run, q)!;
  // Still sinking, by less and less as the film gets thin: it comes to rest on metal.
  if (thin.least.film < SINKING * scale.film) return { status: 'contact', ...thin, pose: asPose(q) };
  return { status: 'notConverged', residual: size, pose: asPose(q) };
}

const residualOf = (force: Readonly<Five>, load: Load, held: boolean) => force.map((value, i) => (held && i === 2 ? 0 : value + load[i]!));

interface Scales {
  film: number;
  force: number;
  length: number;
  greatestSine: number;
}

/** What R and q are measured against, so that a millinewton is not taken for nothing. */
function scales(seats: readonly FilmSeat[], run: SpindleRun, pose: Pose, load: Load): Scales {
  const film = Math.max(FLOOR, ...seats.map(({ shape }, i) => leastFilmOf(shape, { ...pose, x: 0, y: 0, tiltX: 0, tiltY: 0 }, run.growth[i])?.film ?? 0));
  const length = Math.max(...seats.flatMap(({ shape: { gap } }) => Array.from(gap.bush.u, Math.abs)));
  const sines = seats.map(({ shape: { gap } }) => Math.abs(Math.sin(gap.halfAngle))).filter((sine) => sine > 1e-9);
  const force = Math.max(Math.hypot(load[0], load[1], load[2]), Math.hypot(load[3], load[4]) / length, 1e-3);
  return { film, force, length, greatestSine: sines.length === 0 ? 1 : Math.max(...sines) };
}

const sizeOf = (r: readonly number[], { force, length }: Scales) => Math.hypot(r[0]!, r[1]!, r[2]!, r[3]! / length, r[4]! / length) / force;

function moveBy(stiffness: Matrix5, damping: Matrix5, r: readonly number[], step: number, held: boolean): number[] | null {
  const free = held ? [0, 1, 3, 4] : [0, 1, 2, 3, 4];
  const matrix = free.map((i) => free.map((j) => stiffness[i]![j]! + (step === Number.POSITIVE_INFINITY ? 0 : damping[i]![j]! / step)));
  const x = solveSmall(
    matrix,
    free.map((i) => r[i]!),
  );
  if (x === null) return null;
  const move = [0, 0, 0, 0, 0];
  free.forEach((i, k) => {
    move[i] = x[k]!;
  });
  return move;
}

/** The part of a move that leaves at least a fifth of the least film of every seat. */
function allowed(seats: readonly FilmSeat[], run: SpindleRun, q: Readonly<Five>, move: readonly number[]): number {
  let part = 1;
  seats.forEach(({ shape }, i) => {
    const now = leastFilmOf(shape, asPose(q), run.growth[i])!.film;
    const at = (p: number) => leastFilmOf(shape, asPose(q.map((value, c) => value + p * move[c]!) as Five), run.growth[i])?.film ?? now;
    while (at(part) < 0.2 * now && part > 1e-9) part *= 0.7;
  });
  return part;
}

/** The seat with the least film of all, and where. */
export function thinnest(seats: readonly FilmSeat[], run: SpindleRun, q: Readonly<Five>): { seat: number; least: LeastFilm } | null {
  let worst: { seat: number; least: LeastFilm } | null = null;
  seats.forEach(({ shape }, seat) => {
    const least = leastFilmOf(shape, asPose(q), run.growth[seat]);
    if (least && (worst === null || least.film < worst.least.film)) worst = { seat, least };
  });
  return worst;
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
