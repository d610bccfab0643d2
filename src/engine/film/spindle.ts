/** The whole spindle on its films: every seat solved at one pose, and summed. */
import type { FilmShape } from './height.ts';
import { asPose, type Five } from './pose.ts';
import { type FilmRun, type FilmSpace, type Groove, newFilmSpace } from './reynolds.ts';
import { type SeatFilm, seatFilm } from './seatFilm.ts';
import { type Adjoints, coefficients, type Matrix5, newAdjoints } from './stiffness.ts';

export interface FilmSeat {
  name: string;
  shape: FilmShape;
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
}

export interface GridSize {
  rows: number;
  columns: number;
}

/** One grid a seat, kept from solve to solve. */
export interface Spindle {
  seats: readonly FilmSeat[];
  size: GridSize;
  spaces: FilmSpace[];
  adjoints: Adjoints[];
}

export interface Sum {
  force: Five;
  torque: number;
  power: number;
}

export type SpindleVerdict =
  | { status: 'solved'; seats: SeatFilm[]; total: Sum }
  /** metal touches: film (m) ≤ 0 in the seat */
  | { status: 'contact'; seat: number; film: number; u: number; angle: number }
  | { status: 'apart'; seat: number };

export function newSpindle(seats: readonly FilmSeat[], size: GridSize): Spindle {
  const spaces = seats.map(() => newFilmSpace(size.rows, size.columns));
  return { seats, size, spaces, adjoints: spaces.map(newAdjoints) };
}

export const runOf = (seat: FilmSeat, run: SpindleRun, index: number): FilmRun => ({ viscosity: run.viscosity[index]!, growth: run.growth[index]!, omega: run.omega, grooves: seat.grooves, turned: run.turned ?? 0 });

/** Solves every seat with the journal at q; the first that touches or does not overlap ends it. */
export function solveSpindle({ seats, spaces }: Spindle, q: Readonly<Five>, run: SpindleRun, tolerance?: number): SpindleVerdict {
  const found: SeatFilm[] = [];
  const total: Sum = { force: [0, 0, 0, 0, 0], torque: 0, power: 0 };
  for (let i = 0; i < seats.length; i++) {
    const own = runOf(seats[i]!, run, i);
    const film = seatFilm(spaces[i]!, seats[i]!.shape, asPose(q), tolerance === undefined ? own : { ...own, tolerance });
    if (film.status !== 'solved') return { ...film, seat: i };
    found.push(film);
    for (let c = 0; c < 5; c++) total.force[c]! += film.force[c]!;
    total.torque += film.torque;
    total.power += film.power;
  }
  return { status: 'solved', seats: found, total };
}

/** K and B of the whole, of the films that stand solved. */
export function spindleCoefficients({ seats, spaces, adjoints }: Spindle, run: SpindleRun, tolerance?: number): { stiffness: Matrix5; damping: Matrix5 } {
  const all = spaces.map((space, i) => coefficients(space, runOf(seats[i]!, run, i), adjoints[i]!, tolerance));
  const sum = (of: 'stiffness' | 'damping') => Array.from({ length: 5 }, (_, i) => Array.from({ length: 5 }, (_, j) => all.reduce((s, one) => s + one[of][i]![j]!, 0)) as Five);
  return { stiffness: sum('stiffness'), damping: sum('damping') };
}

export interface OverTurn {
  /** N and N·m: least and greatest of each force over a turn of the journal, its pose held */
  least: Five;
  greatest: Five;
  /** m, of all seats over the turn */
  leastFilm: number;
}

/** What a journal with lobes does in a turn, its pose held, at `places` angles; null where it touches on the way. */
export function overTurn(spindle: Spindle, q: Readonly<Five>, run: SpindleRun, places: number): OverTurn | null {
  const result: OverTurn = { least: [0, 0, 0, 0, 0].map(() => Number.POSITIVE_INFINITY) as Five, greatest: [0, 0, 0, 0, 0].map(() => Number.NEGATIVE_INFINITY) as Five, leastFilm: Number.POSITIVE_INFINITY };
  for (let place = 0; place < places; place++) {
    const found = solveSpindle(spindle, q, { ...run, turned: (2 * Math.PI * place) / places });
    if (found.status !== 'solved') return null;
    result.least = result.least.map((value, i) => Math.min(value, found.total.force[i]!)) as Five;
    result.greatest = result.greatest.map((value, i) => Math.max(value, found.total.force[i]!)) as Five;
    result.leastFilm = Math.min(result.leastFilm, ...found.seats.map(({ least }) => least.film));
  }
  return result;
}
