/**
 * Safe speeds, cold clearances and cold positions of a design, in the units of the report. Long: each comes point by
 * point.
 */

import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import { SMALL_MOTOR } from '../../engine/heat/guidance.ts';
import type { Warming } from '../../engine/heat/warmFilm.ts';
import { type ColdPosition, coldPositionFor } from '../../engine/run/coldPosition.ts';
import {
  aimWithin,
  atSpeed,
  type Condition,
  type Needs,
  overCuts,
  overSpeeds,
  type SteadyCut,
  type SteadyPoint,
  steadyCut,
  withClearance,
  withFilm,
  workingStretch,
} from '../../engine/run/limits.ts';
import { warmingOf } from '../../engine/run/running.ts';
import { metres, millimetres as mm, radPerSecond, revPerMinute } from '../convert.ts';
import { type Run, toRunning } from './toSpindle.ts';

export type { Condition };

/** `at` in rev/min, or as of a `CutPoint`. */
export interface LimitPoint extends Omit<SteadyPoint, 'leastFilm'> {
  leastFilm: Millimetres | null;
  /** W, before anything has warmed */
  coldPower: number | null;
}

/** `at` in mm: of film added to every seat, or of the film itself. Judged cold too. */
export interface CutPoint extends LimitPoint {
  /** before anything has warmed */
  coldFilm: Millimetres | null;
}

export interface Stretch {
  from: number;
  to: number;
  /** whether it may go on beyond what was looked at */
  openBelow: boolean;
  openAbove: boolean;
}

interface Prepared {
  warming: Warming;
  needs: Needs;
}

function prepare(design: Design & { run: Run }): Prepared {
  const running = toRunning(design);
  return { warming: warmingOf(running), needs: { film: running.needed, power: SMALL_MOTOR, rotor: running.rotor } };
}

const reportOf = (point: SteadyCut, scale: (at: number) => number): LimitPoint => ({
  ...point,
  at: scale(point.at),
  leastFilm: point.leastFilm === null ? null : mm(point.leastFilm),
});

const reportOfCut = (point: SteadyCut): CutPoint => ({
  ...reportOf(point, mm),
  coldFilm: point.coldFilm === null ? null : mm(point.coldFilm),
});

/**
 * Film, temperature and power against speed (rev/min), and the stretch of speeds that is safe, cold and warm; each
 * point is told as it is found.
 */
export function* speedWork(
  design: Design & { run: Run },
  speeds: readonly number[],
): Generator<LimitPoint, Stretch | null> {
  const { warming, needs } = prepare(design);
  const points: SteadyCut[] = [];
  for (const point of overSpeeds(warming, speeds.map(radPerSecond), needs)) {
    points.push(point);
    yield reportOf(point, revPerMinute);
  }
  const stretch = workingStretch(
    points,
    warming.omega,
    (omega) => steadyCut(omega, atSpeed(warming, omega), needs).point.condition,
  );
  return stretch && { ...stretch, from: revPerMinute(stretch.from), to: revPerMinute(stretch.to) };
}

/** The same against cold clearance: mm of film added to every seat (taken away where negative). */
export function* clearanceWork(
  design: Design & { run: Run },
  extras: readonly number[],
): Generator<CutPoint, Stretch | null> {
  const { warming, needs } = prepare(design);
  const { stretch } = yield* cutWork((extra) => withClearance(warming, extra), extras, 0, needs);
  return stretch;
}

/** What works of the films that a seat may be cut to, and which to aim for; all in mm. */
export interface AimReport {
  stretch: Stretch | null;
  aim: { film: Millimetres; tolerance: Millimetres } | null;
  /** the seats that are cut to it */
  seats: string[];
}

/** Which seats a film is aimed for in: those that want one; where none does, all that an axial move closes, or all. */
export function aimedSeats({ seats }: Design): boolean[] {
  const wants = seats.map(({ film }) => film !== undefined);
  const closes = seats.map(({ bush }) => bush.halfAngle !== 0);
  const some = (which: boolean[]) => which.some(Boolean);
  return some(wants) ? wants : some(closes) ? closes : seats.map(() => true);
}

/** The same against the film itself (mm), as though every seat aimed at had just that one cold. */
export function* filmWork(design: Design & { run: Run }, films: readonly number[]): Generator<CutPoint, AimReport> {
  const { warming, needs } = prepare(design);
  const aimed = aimedSeats(design);
  const now = metres(Math.min(...design.seats.flatMap(({ film }) => film?.target ?? [])));
  const from = Number.isFinite(now) ? now : metres(films[Math.floor(films.length / 2)] ?? 0);
  const { stretch, points } = yield* cutWork((film) => withFilm(warming, film, aimed), films, from, needs);
  const aim = stretch && aimWithin(points, { from: metres(stretch.from), to: metres(stretch.to) });
  return {
    stretch,
    aim: aim && { film: mm(aim.film), tolerance: mm(aim.tolerance) },
    seats: design.seats.flatMap(({ name }, i) => (aimed[i] ? [name] : [])),
  };
}

/** `from`: of several stretches that work the one nearest to this (m) is told. */
function* cutWork(
  cut: (at: number) => Warming,
  values: readonly number[],
  from: number,
  needs: Needs,
): Generator<CutPoint, { stretch: Stretch | null; points: SteadyCut[] }> {
  const points: SteadyCut[] = [];
  for (const point of overCuts(cut, values.map(metres), needs)) {
    points.push(point);
    yield reportOfCut(point);
  }
  const stretch = workingStretch(points, from, (at) => steadyCut(at, cut(at), needs).point.condition);
  return { stretch: stretch && { ...stretch, from: mm(stretch.from), to: mm(stretch.to) }, points };
}

export interface ColdSetting {
  seat: string;
  /**
   * notSet: the position does not set this film; pressed: the load presses the journal closer; notFound: no position
   * gives it
   */
  status: 'found' | 'notSet' | 'pressed' | 'notFound';
  /** mm: the position to set cold, and the move there from the position now */
  position: number | null;
  move: number | null;
  /** mm: where none was found, the nearest warm film there is */
  nearest: number | null;
  /** the seat in the way where this one would have its film, shut there even cold or not; null unless none was found */
  inTheWay: { seat: string; shut: boolean } | null;
  /** mm: set so, the thinnest film of all as it runs warm */
  leastFilm: number | null;
}

function nearestOf(found: ColdPosition): number | null {
  if (found.status === 'pressed') return mm(found.film);
  return found.status === 'notFound' && found.nearest !== null ? mm(found.nearest) : null;
}

/**
 * For every seat with a film wanted: where to set the journal cold so that this film stands, journal centred, when all
 * is warm.
 */
export function* coldSettings(design: Design & { run: Run }): Generator<ColdSetting, void> {
  const { warming } = prepare(design);
  for (const [i, seat] of design.seats.entries()) {
    if (!seat.film) continue;
    const found = coldPositionFor(warming, i, metres(seat.film.target));
    const position = found.status === 'found' ? mm(found.position) : null;
    yield {
      seat: seat.name,
      status: found.status,
      position,
      move: position === null ? null : position - (design.run.pose?.z ?? design.position ?? 0),
      nearest: nearestOf(found),
      inTheWay:
        found.status === 'notFound' && found.inTheWay !== null
          ? { ...found.inTheWay, seat: design.seats[found.inTheWay.seat]!.name }
          : null,
      leastFilm: found.status === 'found' ? mm(Math.min(...found.state.seats.map(({ least }) => least.film))) : null,
    };
  }
}
