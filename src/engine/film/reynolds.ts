/**
 * Reynolds' equation on the unrolled seat by finite volumes.
 *
 *   (1/r)∂/∂l(r h³/(12 µ) ∂p/∂l) + (1/r²)∂/∂φ(h³/(12 µ) ∂p/∂φ) = (ω/2) ∂h/∂φ + ∂h/∂t
 *
 * p pressure above that at the ends (Pa) · h film (m) > 0 · µ dynamic viscosity (Pa·s) · ω speed of the journal (rad/s) · l slant
 * length (m) · r local radius (m). What turns with the journal has ∂h/∂t = -ω ∂h/∂φ, so its share of the wedge is -ω/2.
 * Multiplied by r dl dφ and summed over a cell, with the film taken at the faces,
 *
 *   links  along r h³/(12 µ)·dφ/dl, around h³/(12 µ)·dl/(r dφ)        inflow b = -(ω/2) r dl [h_b - h_j] - r dl dφ ∂h/∂t
 *
 * [ ] the difference over the cell between its two faces around, h_j the journal's lobes, h_b all the rest. What leaves
 * one cell enters the next, so oil is kept to round-off, whatever the grid. Second order in dl and dφ for smooth films.
 * Holds for: rigid parts, laminar, Newtonian, one viscosity in a seat, film far smaller than the radius, oil at hand wherever the film opens.
 * @source O. Reynolds, Phil. Trans. R. Soc. 177 (1886) 157; in cone coordinates as in the project's design notes.
 */
import { GIVEN, newPressureSolver, type PressureSolver, type Solution, solvePressure } from './complementarity.ts';
import { type Film, type FilmShape, filmPerPose, layFilm, leastFilmOf, newFilm } from './height.ts';
import type { Five, Pose } from './pose.ts';
import { columnStep, newUnrolled, rowStep, type Unrolled } from './unrolled.ts';

/** An axial groove, or a hole, in the bush: oil at a pressure (Pa ≥ 0) from u to u along the slant (m), `width` (m) along the arc about `angle` (rad). */
export interface Groove {
  angle: number;
  from: number;
  to: number;
  width: number;
  pressure: number;
}

export interface FilmRun {
  /** Pa·s */
  viscosity: number;
  /** rad/s */
  omega: number;
  grooves?: readonly Groove[];
  /** rates of the pose (m/s, rad/s): a journal that moves as it turns */
  velocity?: Readonly<Five>;
  /** m, what warm parts add to the film */
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

export type FilmVerdict =
  | { status: 'solved'; solution: Solution }
  /** the film is nothing or less somewhere: metal touches. film (m) ≤ 0 at u (m) and angle (rad) */
  | { status: 'contact'; film: number; u: number; angle: number }
  | { status: 'apart' };

export const TOLERANCE = 1e-8;

/** Space for rows × columns cells; columns a power of two times a small number (halving it is what makes the solver fast). */
export function newFilmSpace(rows: number, columns: number): FilmSpace {
  const grid = newUnrolled(rows, columns);
  return { grid, film: newFilm(grid), solver: newPressureSolver(rows, columns), pressure: new Float64Array(rows * columns), given: new Float64Array(rows * columns) };
}

/** The pressure of one seat with the journal at a pose, into `space`. */
export function solveFilm(space: FilmSpace, shape: FilmShape, pose: Pose, run: FilmRun): FilmVerdict {
  const least = leastFilmOf(shape, pose, run.growth, run.turned);
  if (least === null || !layFilm(space.film, shape, pose, run.growth, run.turned)) return { status: 'apart' };
  if (!(least.film > 0)) return { status: 'contact', film: least.film, u: least.u, angle: least.angle };
  return { status: 'solved', solution: solveLaidFilm(space, run) };
}

/** The same for a film already laid in `space` (every value above 0). */
export function solveLaidFilm(space: FilmSpace, run: FilmRun): Solution {
  linkCells(space, run);
  flowIn(space, run);
  holdGrooves(space, run.grooves ?? []);
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

/** Marks the cells of grooves and lets them feed their neighbours. */
function holdGrooves({ grid, solver, given }: FilmSpace, grooves: readonly Groove[]): void {
  const held = solver.held[0]!;
  held.fill(0);
  given.fill(0);
  if (grooves.length === 0) return;
  const { rows, columns, radius } = grid;
  for (const groove of grooves) {
    const [firstRow, lastRow] = rowsOf(grid, groove);
    for (let i = firstRow; i <= lastRow; i++) {
      const half = Math.min(Math.PI, groove.width / 2 / radius[i]!) / columnStep(grid);
      const middle = groove.angle / columnStep(grid);
      // at least the nearest column, however narrow the groove
      const first = Math.min(Math.ceil(middle - half), Math.round(middle));
      const last = Math.min(Math.max(Math.floor(middle + half), Math.round(middle)), first + columns - 1);
      for (let j = first; j <= last; j++) {
        const k = (((j % columns) + columns) % columns) * rows + i;
        held[k] = GIVEN;
        given[k] = groove.pressure;
      }
    }
  }
  feed(solver, given, held);
}

/** Rows whose centres lie in a groove; at least the nearest one where it reaches the seat at all: a small hole is one cell. */
function rowsOf(grid: Unrolled, { from, to }: Groove): [number, number] {
  const row = (u: number) => (u - grid.from) / rowStep(grid) - 0.5;
  if (to < grid.from || from > grid.to) return [0, -1];
  const nearest = Math.round(row((Math.max(from, grid.from) + Math.min(to, grid.to)) / 2));
  const [first, last] = [Math.min(Math.ceil(row(from)), nearest), Math.max(Math.floor(row(to)), nearest)];
  return [Math.max(0, Math.min(grid.rows - 1, first)), Math.min(grid.rows - 1, Math.max(0, last))];
}

function feed({ levels }: PressureSolver, given: Float64Array, held: Uint8Array): void {
  const { rows, columns, along, around, b } = levels[0]!;
  for (let k = 0; k < held.length; k++) {
    if (held[k] !== GIVEN || given[k] === 0) continue;
    const row = k % rows;
    const column = (k - row) / rows;
    const before = (column === 0 ? columns - 1 : column - 1) * rows + row;
    const after = (column === columns - 1 ? 0 : column + 1) * rows + row;
    if (row > 0) b[k - 1]! += along[k - 1]! * given[k]!;
    if (row < rows - 1) b[k + 1]! += along[k]! * given[k]!;
    b[before]! += around[before]! * given[k]!;
    b[after]! += around[k]! * given[k]!;
  }
}
