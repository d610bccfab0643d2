/**
 * The running spindle as the report has it: cold, everything at the room's temperature, on a fine grid and on one half as fine, whose
 * difference tells the error. Engine units.
 */
import type { Design } from '../../design/definition.ts';
import { effortOf, isSpent } from '../../engine/film/effort.ts';
import { type Equilibrium, equilibrium, type Load, type Near } from '../../engine/film/equilibrium.ts';
import { leastFilmOf } from '../../engine/film/height.ts';
import { asFive, type Pose } from '../../engine/film/pose.ts';
import type { SeatFilm } from '../../engine/film/seatFilm.ts';
import { type FilmSeat, type GridSize, newSpindle, placesFor, type Spindle, type SpindleRun, type Sum, solveSpindle, spindleCoefficients } from '../../engine/film/spindle.ts';
import type { Coefficients } from '../../engine/film/stiffness.ts';
import { rotorMatrices, type Whirl, whirl, whirlThreshold } from '../../engine/film/whirl.ts';
import { metres } from '../toEngine.ts';
import { atRest } from './atRest.ts';
import { AMBIENT, type Run, toFilmSeats, toLoad, toOil, toOmega, toPose, toRotor } from './toSpindle.ts';

export const FINE: GridSize = { rows: 64, columns: 256 };
export const HALF: GridSize = { rows: 32, columns: 128 };
/** Rows matter most: a cone that stands tilted is held by how its pressure falls off toward its ends. */
export const WARM: GridSize = { rows: 64, columns: 64 };
export const QUICK: GridSize = { rows: 24, columns: 64 };
export const COARSE: GridSize = { rows: 8, columns: 32 };

/**
 * Visits to cells (engine/film/effort.ts) that are spent on each question of one design: a minute's work in all. Round spindles of two or three
 * seats take a tenth of it; what is not reached is told (FilmReport.unreached).
 */
export type MostEffort = Record<'pose' | 'whirl' | 'warmUp' | 'steady' | 'backOff', number>;
export const MOST_EFFORT: MostEffort = { pose: 2e8, whirl: 1e8, warmUp: 2e8, steady: 1e8, backOff: 1e8 };

export interface Carried {
  status: 'held' | 'found' | 'stopped';
  pose: Pose;
  seats: SeatFilm[];
  total: Sum;
  stop: number;
}

export interface Solved extends Carried {
  spindle: Spindle;
  coefficients: Coefficients;
  /** on half as fine a grid: the seats at this very pose, and the least film at the pose found there */
  half: { seats: SeatFilm[]; total: Sum; leastFilm: number };
}

export type RunVerdict = Solved | { status: 'contact' | 'apart' | 'noRoom' | 'standing' | 'notConverged' | 'givenUp'; pose: Pose; seat: number | null };

/** What runs, in engine units. */
export interface RunInput {
  design: Design;
  seats: FilmSeat[];
  load: Load | null;
  pose: Pose;
  position: number;
  /** an adjuster keeps the journal from coming off its seats */
  adjusted: boolean;
  run: SpindleRun;
  most: MostEffort;
}

export function toRunInput(design: Design, run: Run, most = MOST_EFFORT): RunInput {
  const seats = toFilmSeats(design);
  const viscosity = toOil(run).viscosity(run.ambient ?? AMBIENT);
  const load = toLoad(run);
  // A pose held by hand is looked at as drawn; under a load the journal stands where a whole turn balances.
  const places = load === null ? undefined : placesFor(seats);
  return {
    design,
    seats,
    load,
    pose: toPose(design),
    position: metres(design.position ?? 0),
    adjusted: design.adjuster !== undefined,
    most,
    run: { omega: toOmega(run.speed), viscosity: seats.map(() => viscosity), growth: seats.map(() => 0), effort: effortOf(most.pose), ...(places !== undefined && { places }) },
  };
}

export function solveRun(input: RunInput): RunVerdict {
  const fine = newSpindle(input.seats, FINE);
  const half = newSpindle(input.seats, HALF);
  const first = input.load === null ? held(half, input) : found(half, input, newSpindle(input.seats, COARSE));
  if (!('seats' in first)) return first;
  const last = input.load === null ? held(fine, input) : found(fine, input, null, first);
  if (!('seats' in last)) return last;
  const same = solveSpindle(half, asFive(last.pose), input.run);
  if (same.status !== 'solved') return { status: same.status, pose: last.pose, seat: same.seat };
  const leastFilm = Math.min(...first.seats.map(({ least }) => least.film));
  return { ...last, spindle: fine, coefficients: spindleCoefficients(fine, input.run), half: { ...same, leastFilm } };
}

type Attempt = (Carried & { near: Near }) | Exclude<RunVerdict, Solved>;

function held(spindle: Spindle, { pose, run }: RunInput): Attempt {
  const solved = solveSpindle(spindle, asFive(pose), run);
  if (solved.status !== 'solved') return { status: solved.status, pose, seat: solved.seat };
  return { status: 'held', pose, seats: solved.seats, total: solved.total, stop: 0, near: { pose, coefficients: null, stop: 0 } };
}

function found(spindle: Spindle, input: RunInput, coarse: Spindle | null, near: Attempt | null = null): Attempt {
  const { load, position, adjusted, run } = input;
  const start = { position, adjusted, ...(coarse && { coarse }), ...(near && 'near' in near && near.near && { near: near.near }) };
  return attemptOf(equilibrium(spindle, load!, run, start), input);
}

function attemptOf(verdict: Equilibrium, input: RunInput): Attempt {
  const from = input.pose;
  if (verdict.status === 'solved') return { status: verdict.stop === 0 ? 'found' : 'stopped', pose: verdict.pose, seats: verdict.seats, total: verdict.total, stop: verdict.stop, near: verdict };
  if (verdict.status === 'standing') return standing(input);
  if (verdict.status === 'noRoom') return { status: 'noRoom', pose: from, seat: verdict.seat };
  return { status: verdict.status, pose: verdict.pose, seat: verdict.status === 'contact' ? verdict.seat : null };
}

/** At rest on metal; the seat that bears most. */
export function standing(input: RunInput): Exclude<RunVerdict, Solved> {
  const rest = atRest(input);
  if (rest === null) return { status: 'standing', pose: input.pose, seat: null };
  const bearing = rest.contacts.toSorted((a, b) => b.share - a.share)[0];
  const seat = input.seats.findIndex(({ name }) => name === bearing?.seat);
  return { status: 'standing', pose: rest.pose, seat: seat < 0 ? null : seat };
}

/** Least film of every seat at a pose, whether oil flows there or metal touches. */
export const leastFilms = (seats: readonly FilmSeat[], pose: Pose) => seats.map(({ shape }) => leastFilmOf(shape, pose));

/** of the film: how far aside a journal that nothing presses is nudged to see whether it comes back */
const NUDGE = 1e-2;

/** N: less is round-off */
const UNPRESSED = 1e-6;
const unpressed = (seats: readonly SeatFilm[]) => seats.every(({ force }) => Math.hypot(force[0], force[1], force[2]) < UNPRESSED);

/** Stiffness and damping where a spindle runs; of one that runs true, without pressure anywhere, those a hair beside it. */
function coefficientsAt(spindle: Spindle, pose: Pose, seats: readonly SeatFilm[], run: SpindleRun): Coefficients {
  if (!unpressed(seats)) return spindleCoefficients(spindle, run, 1e-5);
  const aside = NUDGE * Math.min(...seats.map(({ least }) => least.film));
  solveSpindle(spindle, asFive({ ...pose, x: pose.x + aside }), run);
  return spindleCoefficients(spindle, run, 1e-5);
}

/** rad/s beyond which no speed is looked at: the greatest a design may have */
const MOST = toOmega(200_000);

/** Whether the spindle whirls as it runs now, and from what speed (rad/s) on it does; 0: at every speed looked at; `givenUp`: not every one was looked at. */
export function whirlOf(design: Design, input: RunInput, solved: Solved): { now: Whirl | null; threshold: number | null; givenUp: boolean } {
  const rotor = toRotor(design);
  const still = unpressed(solved.seats);
  const free = solved.status === 'found' && !still ? [0, 1, 2, 3, 4] : [0, 1, 3, 4];
  const at = (omega: number, { stiffness, damping }: Coefficients) => {
    const { mass, gyro } = rotorMatrices(rotor, omega);
    return whirl(
      mass,
      damping.map((row, i) => row.map((value, j) => value + gyro[i]![j]!)),
      stiffness,
      free,
    );
  };
  const quick = newSpindle(input.seats, QUICK);
  const coarse = newSpindle(input.seats, COARSE);
  const now = at(input.run.omega, still ? coefficientsAt(quick, solved.pose, solved.seats, input.run) : solved.coefficients);
  const { load, position, adjusted, run } = input;
  if (load === null || run.omega === 0) return { now, threshold: null, givenUp: false };
  let near: Near | undefined;
  const effort = effortOf(input.most.whirl);
  const low = Math.abs(run.omega) / 8;
  const threshold = whirlThreshold(low, Math.min(MOST, Math.abs(run.omega) * 16), (omega) => {
    const turning = { ...run, effort, omega: omega * Math.sign(run.omega) };
    const state = equilibrium(quick, load, turning, { position, adjusted, coarse, close: 1e-4, ...(near && { near }) });
    if (state.status !== 'solved') return null;
    near = { pose: state.pose, coefficients: null, stop: state.stop };
    return at(turning.omega, coefficientsAt(quick, state.pose, state.seats, turning));
  });
  return { now, threshold: threshold === low ? 0 : threshold, givenUp: isSpent(effort) };
}
