/**
 * One descent of the journal on one grid, to where the oil carries the load. Method and sources: equilibrium.ts.
 */

import type { Metres } from '../../design/dimension.ts';
import { solveSmall } from '../algebra/elimination.ts';
import type { LeastFilm } from '../spindle/height.ts';
import { asFive, asPose, type Five, type Pose } from '../spindle/pose.ts';
import { isSpent } from './effort.ts';
import {
  type FilmSeat,
  type Grids,
  leastFilmIn,
  type SpindleRun,
  type Sum,
  solveFilms,
  summedCoefficients,
} from './films.ts';
import type { SeatFilm } from './seatFilm.ts';
import type { Coefficients } from './stiffness.ts';

export interface Task {
  grids: Grids;
  /** N and N·m about the bush datum */
  load: Readonly<Five>;
  run: SpindleRun;
  /** z stays where it is */
  held: boolean;
  /** seats that close both ways catch it: it cannot be pushed off */
  caught: boolean;
  /** of the load: what may be left of the balance */
  close: number;
}

export type DescentEnd =
  | {
      status: 'solved';
      pose: Pose;
      seats: SeatFilm[];
      total: Sum;
      coefficients: Coefficients | null;
      residual: number;
      iterations: number;
    }
  | { status: 'contact'; seat: number; least: LeastFilm; pose: Pose }
  | { status: 'notConverged'; residual: number; pose: Pose }
  /** the effort of the run is spent */
  | { status: 'givenUp'; pose: Pose }
  | { status: 'pushedOff' };

/** m: below this no oil film is a film (a few hundredths of the finest lapping; the search stops there). */
export const FLOOR = 2e-9;
/** of the load: balanced as finely as the report tells it */
export const CLOSE = 1e-6;
/** of the slow step: shorter ones are not tried */
const CRAWL = 1e-6;
/** of what is dragged */
const FINE_PRESSURE = 1e-10;
/** of the film: a move that changes nothing */
const ROUND_OFF = 1e-11;
const MAX_STEPS = 120;
/** Steps between two looks whether Newton's own step would do already: a light load can circle for long. */
const LOOK = 6;
/** of the film it started with */
const SINKING = 0.05;
/** A journal pushed this many of its least films off its seats is not coming back. */
const FAR = 40;
/** of the load: from here on Newton's own steps are tried */
const NEWTON = 0.3;

/** Where the journal stands, with the films there solved. */
interface Stand {
  q: Five;
  seats: SeatFilm[];
  total: Sum;
  /** what is left of the balance, as a part of the load */
  size: number;
}

/**
 * K and B are made anew only where the last ones no longer bring R down tenfold; `known` are those of a pose close by.
 * Over 60 lines and left whole: one loop, every turn of which decides over step, slope and pose together.
 */
export function settle(task: Task, from: Pose, known: Coefficients | null): DescentEnd {
  const { grids, run } = task;
  if (isSpent(run.effort)) return { status: 'givenUp', pose: from };
  const scale = scales(task, from);
  const slow = 2 / Math.max(Math.abs(run.omega), 1);
  let stand = standAt(task, scale, asFive(from));
  if (typeof stand === 'string') return { status: 'notConverged', residual: Number.POSITIVE_INFINITY, pose: from };
  let close = task.close;
  let step = stand.size < NEWTON ? Number.POSITIVE_INFINITY : slow;
  let slope = known;
  for (let iterations = 0; iterations < MAX_STEPS; iterations++) {
    if (stand.size <= close)
      return {
        status: 'solved',
        pose: asPose(stand.q),
        seats: stand.seats,
        total: stand.total,
        coefficients: slope,
        residual: stand.size,
        iterations,
      };
    if (isSpent(run.effort)) return { status: 'givenUp', pose: asPose(stand.q) };
    slope ??= summedCoefficients(grids, run, 1e-3);
    const looking = step !== Number.POSITIVE_INFINITY && iterations % LOOK === LOOK - 1;
    const move = moveBy(task, slope, stand, looking ? Number.POSITIVE_INFINITY : step);
    const part =
      move === null
        ? 0
        : Math.min(
            allowed(grids.seats, run, stand.q, move),
            (FAR * scale.film) / scale.greatestSine / lengthOf(move, scale),
          );
    if (looking && (move === null || part < 1)) continue;
    if (move === null || part < 1e-4) {
      step = Math.min(step, slow) / 8;
      if (step < 1e-12 * slow) break;
      continue;
    }
    // So stiff that what is left of the balance is round-off of the films: there is no better pose.
    if (step === Number.POSITIVE_INFINITY && stand.size < 1 && lengthOf(move, scale) < ROUND_OFF * scale.film)
      close = stand.size;
    const after = standAt(task, scale, stand.q.map((value, i) => value + part * move[i]!) as Five);
    if (after === 'apart') return { status: 'pushedOff' };
    if (after === 'contact') break;
    if (looking && after.size > 0.5 * stand.size) {
      standAt(task, scale, stand.q);
      continue;
    }
    if (after.size > 2 * stand.size && step > CRAWL * slow && part > 0.5) {
      // Too far: back to where it was, with a shorter step, or with K and B of its own if they were another pose's.
      standAt(task, scale, stand.q);
      const borrowed: boolean = slope === known;
      step = borrowed ? (stand.size < NEWTON ? Number.POSITIVE_INFINITY : slow) : Math.min(step, 10 * slow) / 5;
      if (borrowed) [slope, known] = [null, null];
      continue;
    }
    const gain = stand.size / after.size;
    step = gain > 3 && after.size < NEWTON ? Number.POSITIVE_INFINITY : step * Math.min(10, Math.max(1.5, gain));
    if (gain < 10) slope = null;
    stand = after;
    const end = ended(task, scale, from, stand.q, FLOOR);
    if (end) return end;
  }
  // Still sinking, by less and less as the film gets thin: it comes to rest on metal.
  return (
    ended(task, scale, from, stand.q, SINKING * scale.film) ?? {
      status: 'notConverged',
      residual: stand.size,
      pose: asPose(stand.q),
    }
  );
}

function standAt(task: Task, scale: Scales, q: Five): Stand | 'contact' | 'apart' {
  // Seats may push against each other with far more than the load: their pressures have to be that much better.
  const found = solveFilms(task.grids, q, task.run, task.close <= CLOSE ? FINE_PRESSURE : undefined);
  if (found.status !== 'solved') return found.status;
  return { q, seats: found.seats, total: found.total, size: sizeOf(leftOf(task, found.total), scale) };
}

/** Sunk to a film of `floor` (m), or pushed off its seats. */
function ended(
  { grids, run, held, caught }: Task,
  scale: Scales,
  from: Pose,
  q: Five,
  floor: number,
): DescentEnd | null {
  const thin = thinnest(grids.seats, run, q)!;
  if (thin.least.film < floor) return { status: 'contact', ...thin, pose: asPose(q) };
  return !held && !caught && Math.abs(q[2] - from.z) > (FAR * scale.film) / scale.greatestSine
    ? { status: 'pushedOff' }
    : null;
}

/** R: what the load has over the oil. */
const leftOf = ({ load, held }: Task, { force }: Sum) =>
  force.map((value, i) => (held && i === 2 ? 0 : value + load[i]!));

interface Scales {
  /** m, N, m */
  film: Metres;
  force: number;
  length: number;
  greatestSine: number;
}

/** What R and q are measured against, so that a millinewton is not taken for nothing. */
function scales({ grids: { seats }, run, load }: Task, pose: Pose): Scales {
  const film = Math.max(
    FLOOR,
    ...seats.map((seat, i) => leastFilmIn(seat, { ...pose, x: 0, y: 0, tiltX: 0, tiltY: 0 }, run, i)?.film ?? 0),
  );
  const length = Math.max(...seats.flatMap(({ gap }) => Array.from(gap.bush.u, Math.abs)));
  const sines = seats.map(({ sin }) => Math.abs(sin)).filter((sine) => sine > 1e-9);
  const force = Math.max(Math.hypot(load[0], load[1], load[2]), Math.hypot(load[3], load[4]) / length, 1e-3);
  return { film, force, length, greatestSine: sines.length === 0 ? 1 : Math.max(...sines) };
}

const sizeOf = (r: readonly number[], { force, length }: Scales) =>
  Math.hypot(r[0]!, r[1]!, r[2]!, r[3]! / length, r[4]! / length) / force;
const lengthOf = (move: readonly number[], { length }: Scales) =>
  Math.hypot(move[0]!, move[1]!, move[2]!, move[3]! * length, move[4]! * length);

/** (K + B/Δt) δq = R for what is free to move. */
function moveBy(task: Task, { stiffness, damping }: Coefficients, { total }: Stand, step: number): number[] | null {
  const free = task.held ? [0, 1, 3, 4] : [0, 1, 2, 3, 4];
  const r = leftOf(task, total);
  const x = solveSmall(
    free.map((i) =>
      free.map((j) => stiffness[i]![j]! + (step === Number.POSITIVE_INFINITY ? 0 : damping[i]![j]! / step)),
    ),
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
  seats.forEach((seat, i) => {
    const now = leastFilmIn(seat, asPose(q), run, i)!.film;
    const at = (p: number) =>
      leastFilmIn(seat, asPose(q.map((value, c) => value + p * move[c]!) as Five), run, i)?.film ?? now;
    while (at(part) < 0.2 * now && part > 1e-9) part *= 0.7;
  });
  return part;
}

/** The seat with the least film of all, and where. */
export function thinnest(
  seats: readonly FilmSeat[],
  run: SpindleRun,
  q: Readonly<Five>,
): { seat: number; least: LeastFilm } | null {
  let worst: { seat: number; least: LeastFilm } | null = null;
  seats.forEach((own, seat) => {
    const least = leastFilmIn(own, asPose(q), run, seat);
    if (least && (worst === null || least.film < worst.least.film)) worst = { seat, least };
  });
  return worst;
}
