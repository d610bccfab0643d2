/**
 * The films of all seats of a spindle: each solved at one pose, and summed.
 *
 * A journal with lobes or run-out turns under its pose, and a spindle too heavy to follow within a turn stands where
 * the mean over the turn balances: with `places` the forces, torque, flow, K and B are means over as many angles, the
 * least film the least of them all.
 */

import type { Metres, Radians } from '../../design/dimension.ts';
import { type LeastFilm, leastFilmOf } from '../spindle/height.ts';
import { roundOf, type Worst, worstAngle } from '../spindle/lobes.ts';
import { asPose, type Five, type Pose } from '../spindle/pose.ts';
import type { RigidSeat } from '../spindle/rigid.ts';
import { type Effort, spendOnCoefficients, spendOnPressure } from './effort.ts';
import type { Groove } from './grooves.ts';
import { type FilmRun, type FilmSpace, newFilmSpace } from './reynolds.ts';
import { type SeatFilm, type SeatFilmVerdict, seatFilm } from './seatFilm.ts';
import { type Adjoints, type Coefficients, coefficients, newAdjoints } from './stiffness.ts';

/** A seat with the grooves that feed it. */
export interface FilmSeat extends RigidSeat {
  grooves: readonly Groove[];
}

export interface SpindleRun {
  /** rad/s */
  omega: number;
  /** Pa·s, of each seat */
  viscosity: readonly number[];
  /** m, what warm parts add to each seat's film */
  growth: readonly number[];
  /** rad, how far the journal's lobes have turned; 0 when left out: as drawn */
  turned?: number;
  /** angles of a turn over which is averaged where the journal has lobes; left out: as drawn only */
  places?: number;
  /** what the work is counted in, and how much of it may be done; left out: as much as it takes */
  effort?: Effort;
}

export interface GridSize {
  rows: number;
  columns: number;
}

/** One grid a seat, kept from solve to solve. */
export interface Grids {
  seats: readonly FilmSeat[];
  size: GridSize;
  spaces: FilmSpace[];
  adjoints: Adjoints[];
  /** the pose last solved, to which K and B belong */
  last: Five;
}

export interface Sum {
  force: Five;
  torque: number;
  power: number;
}

type FilmsVerdict =
  | { status: 'solved'; seats: SeatFilm[]; total: Sum }
  /** metal touches: no film (m) wider than an atom in the seat */
  | { status: 'contact'; seat: number; film: Metres; u: number; angle: Radians }
  | { status: 'apart'; seat: number };

export function newGrids(seats: readonly FilmSeat[], size: GridSize): Grids {
  const spaces = seats.map(() => newFilmSpace(size.rows, size.columns));
  return { seats, size, spaces, adjoints: spaces.map(newAdjoints), last: [0, 0, 0, 0, 0] };
}

export const runOf = (seat: FilmSeat, run: SpindleRun, index: number): FilmRun => ({
  viscosity: run.viscosity[index]!,
  growth: run.growth[index]!,
  omega: run.omega,
  grooves: seat.grooves,
  turned: run.turned ?? 0,
});

/** How many angles a seat is solved at. */
const placesOf = (seat: FilmSeat, { places = 1 }: SpindleRun) => (turningLobes(seat).length > 0 ? places : 1);

/** What turns with the journal. */
export const turningLobes = ({ parts: { journal } }: FilmSeat) =>
  (journal.lobes ?? []).filter(({ amplitude }) => amplitude !== 0);

/**
 * Angles enough for these seats: eight a turn, or two for every lobe and two more; undefined where the journal is
 * round.
 */
export function placesFor(seats: readonly FilmSeat[]): number | undefined {
  const counts = seats.flatMap((seat) => turningLobes(seat).map(({ count }) => count));
  return counts.length === 0 ? undefined : Math.min(24, Math.max(8, 2 * Math.max(...counts) + 2));
}

/**
 * The least film of a seat: as drawn, or over the turn, when the proudest place of the journal comes past every angle.
 */
export function leastFilmIn(seat: FilmSeat, pose: Pose, run: SpindleRun, index: number): LeastFilm | null {
  if (placesOf(seat, run) === 1) return leastFilmOf(seat, pose, run.growth[index], run.turned);
  const { journal, bush } = seat.parts;
  const still = leastFilmOf({ ...seat, round: roundOf([], bush.lobes) }, pose, run.growth[index]);
  if (still === null) return null;
  const proudest: Worst = { value: 0, angle: 0 };
  worstAngle(roundOf(journal.lobes), 0, 0, true, proudest);
  return { ...still, film: still.film - proudest.value };
}

/** Solves every seat with the journal at q; the first that touches or does not overlap ends it. */
export function solveFilms(grids: Grids, q: Readonly<Five>, run: SpindleRun, tolerance?: number): FilmsVerdict {
  const { seats } = grids;
  grids.last = [...q] as Five;
  const found: SeatFilm[] = [];
  const total: Sum = { force: [0, 0, 0, 0, 0], torque: 0, power: 0 };
  for (let i = 0; i < seats.length; i++) {
    const film = solveSeat(grids, i, q, run, tolerance);
    if (film.status !== 'solved') return { ...film, seat: i };
    found.push(film);
    for (let c = 0; c < 5; c++) total.force[c]! += film.force[c]!;
    total.torque += film.torque;
    total.power += film.power;
  }
  return { status: 'solved', seats: found, total };
}

/** One seat, over the turn where its journal has lobes; the angle drawn is solved last and stays in its space. */
function solveSeat(
  { seats, spaces }: Grids,
  i: number,
  q: Readonly<Five>,
  run: SpindleRun,
  tolerance?: number,
): SeatFilmVerdict {
  const own = { ...runOf(seats[i]!, run, i), ...(tolerance !== undefined && { tolerance }) };
  const places = placesOf(seats[i]!, run);
  const all: SeatFilm[] = [];
  for (let place = places - 1; place >= 0; place--) {
    const film = seatFilm(spaces[i]!, seats[i]!, asPose(q), {
      ...own,
      turned: own.turned! + (2 * Math.PI * place) / places,
    });
    if (film.status !== 'solved') return film;
    spendOnPressure(run.effort, spaces[i]!.pressure.length, film.solution.cycles);
    all.push(film);
  }
  if (places === 1) return { status: 'solved', ...all[0]! };
  return { status: 'solved', ...meanOf(all), least: leastFilmIn(seats[i]!, asPose(q), run, i)! };
}

/** Means over a turn; peak the greatest, what is left of the balance the worst. */
function meanOf(all: readonly SeatFilm[]): SeatFilm {
  const mean = (of: (film: SeatFilm) => number) => all.reduce((sum, film) => sum + of(film), 0) / all.length;
  return {
    ...all[all.length - 1]!,
    force: [0, 1, 2, 3, 4].map((c) => mean(({ force }) => force[c]!)) as Five,
    torque: mean(({ torque }) => torque),
    power: mean(({ power }) => power),
    flow: { rear: mean(({ flow }) => flow.rear), nose: mean(({ flow }) => flow.nose) },
    supplied: mean(({ supplied }) => supplied),
    peak: all.reduce((a, b) => (b.peak.pressure > a.peak.pressure ? b : a)).peak,
    wetted: { area: mean(({ wetted }) => wetted.area), of: all[0]!.wetted.of },
    solution: all.reduce((a, b) => (b.solution.imbalance > a.solution.imbalance ? b : a)).solution,
  };
}

/** K and B of the whole, of the films that stand solved. */
export function summedCoefficients(grids: Grids, run: SpindleRun, tolerance?: number): Coefficients {
  const { seats, spaces, adjoints, last } = grids;
  const all: Coefficients[] = [];
  const weights: number[] = [];
  seats.forEach((seat, i) => {
    const own = runOf(seat, run, i);
    const places = placesOf(seat, run);
    for (let place = places - 1; place >= 0; place--) {
      if (places > 1)
        seatFilm(spaces[i]!, seat, asPose(last), {
          ...own,
          turned: own.turned! + (2 * Math.PI * place) / places,
        });
      all.push(coefficients(spaces[i]!, own, adjoints[i]!, tolerance));
      spendOnCoefficients(run.effort, spaces[i]!.pressure.length);
      weights.push(1 / places);
    }
  });
  const sum = (of: 'stiffness' | 'damping') =>
    Array.from(
      { length: 5 },
      (_, i) =>
        Array.from({ length: 5 }, (_, j) => all.reduce((s, one, k) => s + weights[k]! * one[of][i]![j]!, 0)) as Five,
    );
  return { stiffness: sum('stiffness'), damping: sum('damping') };
}

export interface OverTurn {
  /** N and N·m: least and greatest of each force over a turn of the journal, its pose held */
  least: Five;
  greatest: Five;
  /** m, of all seats over the turn */
  leastFilm: Metres;
}

/** What a journal with lobes does in a turn, its pose held, at `places` angles; null where it touches on the way. */
export function overTurn(grids: Grids, q: Readonly<Five>, run: SpindleRun, places: number): OverTurn | null {
  const result: OverTurn = {
    least: [0, 0, 0, 0, 0].map(() => Number.POSITIVE_INFINITY) as Five,
    greatest: [0, 0, 0, 0, 0].map(() => Number.NEGATIVE_INFINITY) as Five,
    leastFilm: Number.POSITIVE_INFINITY,
  };
  for (let place = 0; place < places; place++) {
    const found = solveFilms(grids, q, { ...run, places: 1, turned: (2 * Math.PI * place) / places });
    if (found.status !== 'solved') return null;
    result.least = result.least.map((value, i) => Math.min(value, found.total.force[i]!)) as Five;
    result.greatest = result.greatest.map((value, i) => Math.max(value, found.total.force[i]!)) as Five;
    result.leastFilm = Math.min(result.leastFilm, ...found.seats.map(({ least }) => least.film));
  }
  return result;
}
