/**
 * How the oil force changes with the pose and with its rate: stiffness K = -∂Q/∂q and damping B = -∂Q/∂(dq/dt).
 *
 * The full cells stay full under a small change, so the perturbed equation A δp = δb - δA p has the same matrix and the
 * same factors. As A is symmetric, one solution per coordinate serves all columns,
 *
 *   A λ_i = ∂h/∂q_i r dl dφ        B_ij = ∫ λ_i ∂h/∂q_j dA        K_ij = Σ over links 3 (g/h) ∂h/∂q_j Δp Δλ_i + (ω/2) Σ
 *   λ_i r dl [∂h/∂q_j]
 *
 * Exact for the equations as discretised, but for the ends of the overlap, which move with z where the journal ends
 * inside the bush: that adds in the order of film/length. Units: N/m, N/rad, N·m/m, N·m/rad, and the same times s.
 * @source LundThomsen1978 (perturbed equation); derived (adjoint form)
 */

import type { Five } from '../spindle/pose.ts';
import { solveLinear } from './complementarity.ts';
import type { FilmRun, FilmSpace } from './reynolds.ts';
import { columnStep, rowStep } from './unrolled.ts';

/** Row i: force; column j: coordinate. */
export type Matrix5 = Five[];

export interface Coefficients {
  stiffness: Matrix5;
  damping: Matrix5;
}

const zeros = (): Matrix5 => Array.from({ length: 5 }, () => [0, 0, 0, 0, 0] as Five);
const LINEAR_TOLERANCE = 1e-7;

/** K and B of the film that stands solved in `space`; `scratch` is kept from call to call. */
export function coefficients(
  space: FilmSpace,
  run: FilmRun,
  scratch: Adjoints,
  tolerance = LINEAR_TOLERANCE,
): Coefficients {
  solveAdjoints(space, scratch, tolerance);
  const stiffness = zeros();
  addLinksAround(space, scratch, stiffness);
  addLinksAlong(space, scratch, stiffness);
  addWedge(space, run, scratch, stiffness);
  return { stiffness, damping: damping(space, scratch) };
}

/** λ of the five coordinates, and a right-hand side. */
export interface Adjoints {
  lambda: Float64Array[];
  b: Float64Array;
}

export const newAdjoints = ({ pressure }: FilmSpace): Adjoints => ({
  lambda: Array.from({ length: 5 }, () => new Float64Array(pressure.length)),
  b: new Float64Array(pressure.length),
});

/** ∂h/∂q_i is this factor of the column times 1, ∂h/∂z or u of the row. */
const columnFactor = (i: number, cosA: number, cos: number, sin: number) =>
  i === 0 ? -cosA * cos : i === 1 ? -cosA * sin : i === 2 ? 1 : i === 3 ? sin : -cos;

function solveAdjoints({ grid, film, solver }: FilmSpace, { lambda, b }: Adjoints, tolerance: number): void {
  const { rows, columns, radius, centre } = grid;
  const cell = rowStep(grid) * columnStep(grid);
  const cosA = Math.cos(grid.halfAngle);
  for (let q = 0; q < 5; q++) {
    const byRow = radius.map((r, i) => r * cell * (q < 2 ? 1 : q === 2 ? film.zRate[i]! : centre[i]!));
    for (let j = 0; j < columns; j++) {
      const factor = columnFactor(q, cosA, grid.cos[j]!, grid.sin[j]!);
      for (let i = 0; i < rows; i++) b[j * rows + i] = factor * byRow[i]!;
    }
    // From where the last pose left it; cells that broke since hold nothing.
    for (let k = 0; k < b.length; k++) if (solver.held[0]![k] !== 0) lambda[q]![k] = 0;
    solveLinear(solver, b, lambda[q]!, tolerance, true);
  }
}

function damping({ grid, film }: FilmSpace, { lambda }: Adjoints): Matrix5 {
  const { rows, columns, radius, centre } = grid;
  const cell = rowStep(grid) * columnStep(grid);
  const cosA = Math.cos(grid.halfAngle);
  const result = zeros();
  for (let q = 0; q < 5; q++) {
    for (let j = 0; j < columns; j++) {
      let even = 0;
      let byU = 0;
      let byZ = 0;
      for (let i = 0; i < rows; i++) {
        const l = lambda[q]![j * rows + i]! * radius[i]!;
        even += l;
        byU += l * centre[i]!;
        byZ += l * film.zRate[i]!;
      }
      addColumn(result[q]!, cell, cosA, grid.cos[j]!, grid.sin[j]!, even, byZ, byU);
    }
  }
  return result;
}

/** Adds scale·Σ over a column of something times ∂h/∂q, given its sums with 1, ∂h/∂z and u. */
function addColumn(
  into: Five,
  scale: number,
  cosA: number,
  cos: number,
  sin: number,
  even: number,
  byZ: number,
  byU: number,
): void {
  into[0] -= scale * cosA * cos * even;
  into[1] -= scale * cosA * sin * even;
  into[2] += scale * byZ;
  into[3] += scale * sin * byU;
  into[4] -= scale * cos * byU;
}

function addLinksAround({ grid, film, solver, pressure }: FilmSpace, { lambda }: Adjoints, into: Matrix5): void {
  const { rows, columns, centre } = grid;
  const { around } = solver.levels[0]!;
  const cosA = Math.cos(grid.halfAngle);
  const pull = new Float64Array(rows);
  for (let j = 0; j < columns; j++) {
    const at = j * rows;
    const next = (j === columns - 1 ? 0 : j + 1) * rows;
    for (let i = 0; i < rows; i++)
      pull[i] = (3 * around[at + i]! * (pressure[at + i]! - pressure[next + i]!)) / film.around[at + i]!;
    for (let q = 0; q < 5; q++) {
      const l = lambda[q]!;
      let even = 0;
      let byU = 0;
      let byZ = 0;
      for (let i = 0; i < rows; i++) {
        const one = pull[i]! * (l[at + i]! - l[next + i]!);
        even += one;
        byU += one * centre[i]!;
        byZ += one * film.zRate[i]!;
      }
      addColumn(into[q]!, 1, cosA, grid.faceCos[j]!, grid.faceSin[j]!, even, byZ, byU);
    }
  }
}

function addLinksAlong({ grid, film, solver, pressure }: FilmSpace, { lambda }: Adjoints, into: Matrix5): void {
  const { rows, columns, link, linkRadius } = grid;
  const { along, edge } = solver.levels[0]!;
  const cosA = Math.cos(grid.halfAngle);
  const pull = new Float64Array(rows + 1);
  for (let j = 0; j < columns; j++) {
    const at = j * rows;
    const last = at + rows - 1;
    const h = j * (rows + 1);
    for (let i = 1; i < rows; i++)
      pull[i] = (3 * along[at + i - 1]! * (pressure[at + i - 1]! - pressure[at + i]!)) / film.along[h + i]!;
    // A seat of one row has both ends in one edge: each then carries its own share.
    const [rear, nose] =
      rows === 1 ? shareOfEnds(linkRadius, film.along[h]!, film.along[h + 1]!, edge[at]!) : [edge[at]!, edge[last]!];
    pull[0] = (-3 * rear * pressure[at]!) / film.along[h]!;
    pull[rows] = (3 * nose * pressure[last]!) / film.along[h + rows]!;
    for (let q = 0; q < 5; q++) {
      const l = lambda[q]!;
      let even = 0;
      let byU = 0;
      let byZ = 0;
      for (let i = 0; i <= rows; i++) {
        const one = pull[i]! * ((i === 0 ? 0 : l[at + i - 1]!) - (i === rows ? 0 : l[at + i]!));
        even += one;
        byU += one * link[i]!;
        byZ += one * film.zRateLink[i]!;
      }
      addColumn(into[q]!, 1, cosA, grid.cos[j]!, grid.sin[j]!, even, byZ, byU);
    }
  }
}

/** As r h³ of each end. */
const shareOfEnds = (radius: Float64Array, rear: number, nose: number, both: number): [number, number] => {
  const [a, b] = [radius[0]! * rear ** 3, radius[1]! * nose ** 3];
  return [(both * a) / (a + b), (both * b) / (a + b)];
};

/** (ω/2) Σ λ r dl [∂h/∂q], the difference over the cell around; ∂h/∂z has none. */
function addWedge({ grid }: FilmSpace, { omega }: FilmRun, { lambda }: Adjoints, into: Matrix5): void {
  const { rows, columns, radius, centre } = grid;
  const scale = (omega / 2) * rowStep(grid);
  const cosA = Math.cos(grid.halfAngle);
  for (let q = 0; q < 5; q++) {
    for (let j = 0; j < columns; j++) {
      const before = j === 0 ? columns - 1 : j - 1;
      let even = 0;
      let byU = 0;
      for (let i = 0; i < rows; i++) {
        const one = lambda[q]![j * rows + i]! * radius[i]!;
        even += one;
        byU += one * centre[i]!;
      }
      addColumn(
        into[q]!,
        scale,
        cosA,
        grid.faceCos[j]! - grid.faceCos[before]!,
        grid.faceSin[j]! - grid.faceSin[before]!,
        even,
        0,
        byU,
      );
    }
  }
}
