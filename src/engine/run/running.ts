/** What is asked of a running spindle, and on which grids and with how much work it is answered. */
import type { Metres } from '../../design/dimension.ts';
import { effortOf } from '../film/effort.ts';
import type { Load } from '../film/equilibrium.ts';
import { type FilmSeat, type GridSize, newGrids, placesFor, type SpindleRun } from '../film/films.ts';
import type { Oil } from '../film/oil.ts';
import type { Rotor } from '../film/whirl.ts';
import type { ThermalBody, Warming } from '../heat/warmFilm.ts';
import type { Pose } from '../spindle/pose.ts';

export const FINE: GridSize = { rows: 64, columns: 256 };
export const HALF: GridSize = { rows: 32, columns: 128 };
/** Rows matter most: a cone that stands tilted is held by how its pressure falls off toward its ends. */
export const WARM: GridSize = { rows: 64, columns: 64 };
export const QUICK: GridSize = { rows: 24, columns: 64 };
export const COARSE: GridSize = { rows: 8, columns: 32 };

/**
 * Visits to cells (film/effort.ts) that are spent on each question of one spindle: a minute's work in all. Round
 * spindles of two or three seats take a tenth of it; what is not reached is told.
 */
export type MostEffort = Record<'pose' | 'whirl' | 'warmUp' | 'steady' | 'backOff', number>;
export const MOST_EFFORT: MostEffort = { pose: 2e8, whirl: 1e8, warmUp: 2e8, steady: 1e8, backOff: 1e8 };

export interface Running {
  seats: readonly FilmSeat[];
  /** about the bush datum; null where the pose is held by hand */
  load: Load | null;
  /** held by hand, or where a search begins */
  pose: Pose;
  /** m, axial position the journal is set to */
  position: Metres;
  /** an adjuster keeps the journal from coming off its seats */
  adjusted: boolean;
  /** cold: everything at the room's temperature */
  run: SpindleRun;
  oil: Oil;
  journal: ThermalBody;
  bush: ThermalBody;
  rotor: Rotor;
  /** °C */
  ambient: number;
  /** s that the warm-up is followed */
  duration: number;
  /** Rq of both surfaces (m) */
  roughness: { journal: number; bush: number };
  /** m: the film that keeps the metals apart */
  needed: number;
  /** m: where the stiffness of the nose is asked for */
  nose: number;
  most: MostEffort;
}

/**
 * The films of a cold spindle. A pose held by hand is looked at as drawn; under a load the journal stands where a whole
 * turn balances.
 */
export function coldRun(
  seats: readonly FilmSeat[],
  load: Load | null,
  omega: number,
  viscosity: number,
  most: number,
): SpindleRun {
  const places = load === null ? undefined : placesFor(seats);
  return {
    omega,
    viscosity: seats.map(() => viscosity),
    growth: seats.map(() => 0),
    effort: effortOf(most),
    ...(places !== undefined && { places }),
  };
}

/** The warming spindle, on a grid for many states. */
export const warmingOf = ({
  seats,
  load,
  pose,
  position,
  adjusted,
  run,
  oil,
  journal,
  bush,
  ambient,
}: Running): Warming => ({
  grids: newGrids(seats, WARM),
  coarse: newGrids(seats, COARSE),
  stand: load === null ? { pose } : { load, position, adjusted },
  omega: run.omega,
  oil,
  journal,
  bush,
  ambient,
});
