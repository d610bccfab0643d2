/** Whether the spindle whirls as it runs, and from what speed on. */
import { radPerSecond } from '../../design/dimension.ts';
import { effortOf, isSpent } from '../film/effort.ts';
import { equilibrium, type Near } from '../film/equilibrium.ts';
import { type Grids, newGrids, type SpindleRun, solveFilms, summedCoefficients } from '../film/films.ts';
import type { SeatFilm } from '../film/seatFilm.ts';
import type { Coefficients } from '../film/stiffness.ts';
import { rotorWhirl, type Whirl, whirlThreshold } from '../film/whirl.ts';
import { asFive, type Pose } from '../spindle/pose.ts';
import { COARSE, QUICK, type Running } from './running.ts';
import { type Solved, thinnestOf } from './solveRun.ts';

/** of the film: how far aside a journal that nothing presses is nudged to see whether it comes back */
const NUDGE = 1e-2;

/** N: less is round-off */
const UNPRESSED = 1e-6;
const unpressed = (seats: readonly SeatFilm[]) =>
  seats.every(({ force }) => Math.hypot(force[0], force[1], force[2]) < UNPRESSED);

/**
 * Stiffness and damping where a spindle runs; of one that runs true, without pressure anywhere, those a hair beside it.
 */
function coefficientsAt(grids: Grids, pose: Pose, seats: readonly SeatFilm[], run: SpindleRun): Coefficients {
  if (!unpressed(seats)) return summedCoefficients(grids, run, 1e-5);
  const aside = NUDGE * thinnestOf(seats);
  solveFilms(grids, asFive({ ...pose, x: pose.x + aside }), run);
  return summedCoefficients(grids, run, 1e-5);
}

/** rad/s beyond which no speed is looked at: 200 000 a minute, the greatest a design may have */
const MOST = radPerSecond(200_000);

export interface Whirling {
  now: Whirl | null;
  /** rad/s; 0: at every speed looked at */
  threshold: number | null;
  /** not every speed was looked at */
  givenUp: boolean;
}

/** Null where it does not turn. */
export function whirlOf(
  { seats, rotor, load, position, adjusted, run, most }: Running,
  solved: Solved,
): Whirling | null {
  if (run.omega === 0) return null;
  const still = unpressed(solved.seats);
  const held = solved.status !== 'found' || still;
  const quick = newGrids(seats, QUICK);
  const coarse = newGrids(seats, COARSE);
  const now = rotorWhirl(
    rotor,
    run.omega,
    still ? coefficientsAt(quick, solved.pose, solved.seats, run) : solved.coefficients,
    held,
  );
  if (load === null) return { now, threshold: null, givenUp: false };
  let near: Near | undefined;
  const effort = effortOf(most.whirl);
  const low = Math.abs(run.omega) / 8;
  const threshold = whirlThreshold(low, Math.min(MOST, Math.abs(run.omega) * 16), (omega) => {
    const turning = { ...run, effort, omega: omega * Math.sign(run.omega) };
    const state = equilibrium(quick, load, turning, { position, adjusted, coarse, close: 1e-4, ...(near && { near }) });
    if (state.status !== 'solved') return null;
    near = { pose: state.pose, coefficients: null, stop: state.stop };
    return rotorWhirl(rotor, turning.omega, coefficientsAt(quick, state.pose, state.seats, turning), held);
  });
  return { now, threshold: threshold === low ? 0 : threshold, givenUp: isSpent(effort) };
}
