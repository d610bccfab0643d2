/**
 * Reynolds' equation on the unrolled seat by finite volumes.
 *
 *   (1/r)∂/∂l(r h³/(12 µ) ∂p/∂l) + (1/r²)∂/∂φ(h³/(12 µ) ∂p/∂φ) = (ω/2) ∂h/∂φ + ∂h/∂t
 *
 * p pressure above that at the ends (Pa) · h film (m) > 0 · µ dynamic viscosity (Pa·s) · ω speed of the journal (rad/s)
 * · l slant length (m) · r local radius (m). What turns with the journal has ∂h/∂t = -ω ∂h/∂φ, so its share of the
 * wedge is -ω/2. Multiplied by r dl dφ and summed over a cell, with the film taken at the faces,
 *
 *   links  along r h³/(12 µ)·dφ/dl, around h³/(12 µ)·dl/(r dφ)        inflow b = -(ω/2) r dl [h_b - h_j] - r dl dφ
 *   ∂h/∂t
 *
 * [ ] the difference over the cell between its two faces around, h_j the journal's lobes, h_b all the rest. What leaves
 * one cell enters the next, so oil is kept to round-off, whatever the grid. Second order in dl and dφ for smooth films.
 * Holds for: rigid parts, laminar, Newtonian, one viscosity in a seat, film far smaller than the radius, oil at hand
 * wherever the film opens.
 * @source Reynolds1886; derived (in cone coordinates)
 */

import type { Metres, Radians } from '../../design/dimension.ts';
import { filmPerPose, leastFilmOf, UNGROWN } from '../spindle/height.ts';
import type { Five, Pose } from '../spindle/pose.ts';
import type { RigidSeat } from '../spindle/rigid.ts';
import { newPressureSolver, type PressureSolver, type Solution, solvePressure } from './complementarity.ts';
import { type Groove, holdGrooves } from './grooves.ts';
import { type Film, layFilm, newFilm } from './layFilm.ts';
import { columnStep, newUnrolled, rowStep, type Unrolled } from './unrolled.ts';

export interface FilmRun {
  /** Pa·s */
  viscosity: number;
  /** rad/s */
  omega: number;
  grooves?: readonly Groove[];
  /** rates of the pose (m/s, rad/s): a journal that moves as it turns */
  velocity?: Readonly<Five>;
  /** m, what warm parts add to the film; nothing when left out */
  growth?: number;
  /** rad, how far the journal's lobes have turned */
  turned?: number;
  /** ends through which no oil passes: rear, nose */
  sealed?: readonly [boolean, boolean];
  /** what may be left of the balance of oil, as a part of all that is dragged; 1e-8 when left out */
  tolerance?: number;
}

/** Everything one seat needs on one grid; made once, used over and over. */
export interface FilmSpace {
  grid: Unrolled;
  film: Film;
  solver: PressureSolver;
  /** Pa, the result: with the grooves' own pressure put in */
  pressure: Float64Array;
  /** given pressure of groove cells */
  given: Float64Array;
}

type FilmVerdict =
  | { status: 'solved'; solution: Solution }
  /** the film is nothing or less somewhere: metal touches. film (m) ≤ 0 at u (m) and angle (rad) */
  | { status: 'contact'; film: Metres; u: number; angle: Radians }
  | { status: 'apart' };

export const TOLERANCE = 1e-8;

/**
 * Space for rows × columns cells; columns a power of two times a small number (halving it is what makes the solver
 * fast).
 */
export function newFilmSpace(rows: number, columns: number): FilmSpace {
  const grid = newUnrolled(rows, columns);
  return {
    grid,
    film: newFilm(grid),
    solver: newPressureSolver(rows, columns),
    pressure: new Float64Array(rows * columns),
    given: new Float64Array(rows * columns),
  };
}

/** m: an atom's width. Below it metal touches, whatever the lines say, and pressures have no number. */
const METAL = 1e-10;

/** The pressure of one seat with the journal at a pose, into `space`. */
export function solveFilm(space: FilmSpace, seat: RigidSeat, pose: Pose, run: FilmRun): FilmVerdict {
  const growth = run.growth ?? UNGROWN;
  const least = leastFilmOf(seat, pose, growth, run.turned);
  if (least === null || !layFilm(space.film, seat, pose, growth, run.turned)) return { status: 'apart' };
  if (!(least.film > METAL)) return { status: 'contact', film: least.film, u: least.u, angle: least.angle };
  return { status: 'solved', solution: solveLaidFilm(space, run) };
}

/** The same for a film already laid in `space` (every value above 0). */
export function solveLaidFilm(space: FilmSpace, run: FilmRun): Solution {
  linkCells(space, run);
  flowIn(space, run);
  holdGrooves(space.grid, space.solver, space.given, run.grooves ?? []);
  const solution = solvePressure(space.solver, run.tolerance ?? TOLERANCE);
  const { p } = space.solver.levels[0]!;
  for (let k = 0; k < p.length; k++) space.pressure[k] = p[k]! + space.given[k]!;
  return solution;
}

function linkCells({ grid, film, solver }: FilmSpace, { viscosity, sealed }: FilmRun): void {
  const { rows, columns, radius, linkRadius } = grid;
  const { along, around, edge } = solver.levels[0]!;
  const dl = rowStep(grid);
  const dphi = columnStep(grid);
  const mobility = 1 / (12 * viscosity);
  const alongScale = linkRadius.map((r, i) => ((mobility * r * dphi) / dl) * (i === 0 || i === rows ? 2 : 1));
  if (sealed?.[0]) alongScale[0] = 0;
  if (sealed?.[1]) alongScale[rows] = 0;
  const aroundScale = radius.map((r) => (mobility * dl) / (r * dphi));
  for (let j = 0; j < columns; j++) {
    const at = j * rows;
    const links = j * (rows + 1);
    for (let i = 0; i < rows; i++) {
      const h = film.around[at + i]!;
      around[at + i] = aroundScale[i]! * h * h * h;
      const up = film.along[links + i + 1]!;
      along[at + i] = alongScale[i + 1]! * up * up * up;
      edge[at + i] = 0;
    }
    const rear = film.along[links]!;
    edge[at] = alongScale[0]! * rear * rear * rear;
    // The last link leads out of the nose end, not to a cell.
    edge[at + rows - 1]! += along[at + rows - 1]!;
    along[at + rows - 1] = 0;
  }
}

function flowIn({ grid, film, solver }: FilmSpace, { omega, velocity }: FilmRun): void {
  const { rows, columns, radius } = grid;
  const { b } = solver.levels[0]!;
  const dl = rowStep(grid);
  const drag = radius.map((r) => -(omega / 2) * r * dl);
  for (let j = 0; j < columns; j++) {
    const at = j * rows;
    const before = (j === 0 ? columns - 1 : j - 1) * rows;
    // h holds the journal's lobes with a minus: h_b - h_j = h + 2·turning
    const turning = 2 * (film.turning[j]! - film.turning[j === 0 ? columns - 1 : j - 1]!);
    for (let i = 0; i < rows; i++) b[at + i] = drag[i]! * (film.around[at + i]! - film.around[before + i]! + turning);
  }
  if (velocity) squeeze(grid, film, velocity, b);
}

/** Takes r dl dφ ∂h/∂t off the inflow. */
function squeeze(grid: Unrolled, film: Film, velocity: Readonly<Five>, b: Float64Array): void {
  const { rows, columns, radius, centre } = grid;
  const area = rowStep(grid) * columnStep(grid);
  const rate: Five = [0, 0, 0, 0, 0];
  const cosA = Math.cos(grid.halfAngle);
  for (let j = 0; j < columns; j++) {
    for (let i = 0; i < rows; i++) {
      filmPerPose(rate, cosA, centre[i]!, film.zRate[i]!, grid.cos[j]!, grid.sin[j]!);
      let v = 0;
      for (let q = 0; q < 5; q++) v += rate[q]! * velocity[q]!;
      b[j * rows + i]! -= area * radius[i]! * v;
    }
  }
}
