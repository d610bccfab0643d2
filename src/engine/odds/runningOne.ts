/**
 * A pair drawn, as it runs: from cold, through the warm-up, to where it stands warm; on grids small enough for
 * thousands of them.
 *
 *   film of a seat    the least of it from cold to warm        hottest    of journal, bush and oil, warm
 *
 * The same equations as the run itself has (heat/warmUp.ts) on fewer cells; what that costs is told by some draws on
 * the grid of the run (running.ts).
 */
import type { Metres } from '../../design/dimension.ts';
import type { SeatInput } from '../contact/fit.ts';
import { effortOf } from '../film/effort.ts';
import { type GridSize, newGrids } from '../film/films.ts';
import { type WarmFilm, type Warming, warmFilm } from '../heat/warmFilm.ts';
import { steadyState, warmUp } from '../heat/warmUp.ts';
import { calm } from '../run/limits.ts';
import { COARSE, type Running, warmingOf } from '../run/running.ts';
import { rigidSeat } from '../spindle/rigid.ts';

/** How a draw ends: it runs, or why not. */
export const ENDS = [
  'runs',
  /** where the journal is set a seat is shut or misses its bush, or no film carries the load */
  'shut',
  /** the films close as it warms */
  'seizes',
  /** it does not turn */
  'standing',
  /** the search did not settle, or takes too much work: not counted */
  'unsettled',
  /** the numbers make no pair: not counted */
  'noShape',
] as const;
export type RunEnd = (typeof ENDS)[number];

export interface RunDrawn {
  end: RunEnd;
  /** m, of each seat; NaN where it does not run, as all that follow */
  films: number[];
  /** °C; W; N along z that a stop takes, warm */
  hottest: number;
  power: number;
  stop: number;
  /** it does not whirl, warm */
  calm: boolean;
}

/** Visits to cells (film/effort.ts) that one draw may take: some hundred times what an ordinary one does. */
const MOST = 1e8;

export function ended(end: RunEnd, seats: number): RunDrawn {
  const films = new Array<number>(seats).fill(Number.NaN);
  return { end, films, hottest: Number.NaN, power: Number.NaN, stop: Number.NaN, calm: false };
}

/** `near`: cold films close by, on the same grid; what the search begins with. */
export function runDrawn(running: Running, grid: GridSize, near: WarmFilm | null = null): RunDrawn {
  const none = (end: RunEnd) => ended(end, running.seats.length);
  if (running.run.omega === 0) return none('standing');
  const warming = warmingOn(running, grid);
  const films = running.seats.map(() => Number.POSITIVE_INFINITY);
  const look = ({ seats }: WarmFilm) => {
    for (const [i, { least }] of seats.entries()) films[i] = Math.min(films[i]!, least.film);
    return true;
  };
  const way = warmUp(warming, running.duration, (_, state) => look(state), near);
  if (way.end === 'contact') return none(way.last === null ? 'shut' : 'seizes');
  if (way.end !== 'time') return none('unsettled');
  const steady = steadyState(warming, way.last);
  if (steady.status !== 'solved') return none(steady.status === 'contact' ? 'seizes' : 'unsettled');
  look(steady);
  return {
    end: 'runs',
    films,
    hottest: Math.max(steady.journal, steady.bush, ...steady.oil),
    power: steady.total.power,
    stop: steady.stop,
    calm: calm(warming, steady, running.rotor),
  };
}

/** Cold films, for others close by to begin with; null where there are none. */
export function coldNear(running: Running, grid: GridSize): WarmFilm | null {
  if (running.run.omega === 0) return null;
  const cold = warmFilm(warmingOn(running, grid), running.ambient, running.ambient, null);
  return cold.status === 'solved' ? cold : null;
}

const warmingOn = (running: Running, grid: GridSize): Warming => ({
  ...warmingOf(running),
  grids: newGrids(running.seats, grid),
  coarse: newGrids(running.seats, COARSE),
  effort: effortOf(MOST),
});

/** The same spindle, as round as it is, with a pair of other numbers, set elsewhere (m). */
export function withPair(running: Running, pair: readonly SeatInput[], position: Metres): Running {
  const { seats, pose } = running;
  return {
    ...running,
    seats: seats.map(({ parts, grooves }, i) => {
      const { journal, bush, ...rest } = pair[i]!;
      return {
        ...rigidSeat({
          ...rest,
          journal: { ...journal, lobes: parts.journal.lobes },
          bush: { ...bush, lobes: parts.bush.lobes },
        }),
        grooves,
      };
    }),
    position,
    pose: { ...pose, z: pose.z + position - running.position },
  };
}
