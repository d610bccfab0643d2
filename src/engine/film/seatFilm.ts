/**
 * What the oil of one seat does to the journal, from the pressure that stands in a FilmSpace.
 *
 *   Q_i = ∫ p ∂h/∂q_i dA     force on the journal along each coordinate of its pose: x, y, z (N), tiltX, tiltY (N·m
 *   about the bush datum)
 *   T = ∫ (µ ω r/h + (h/2r) ∂p/∂φ) r dA + ∫ p ∂h_j/∂φ dA        torque that brakes the journal (N·m); h_j the journal's
 *   lobes
 *
 * The shear of the first term runs over the whole seat, broken film included, but not over grooves, which are deep. The
 * rest is summed as -½ Σ p r dl [h_b - h_j], the same sum the pressure equation has on its right: so T·ω is to
 * round-off what is sheared away, ∫ µ(ω r)²/h dA, and what is lost to the flow under pressure, ∫ h³/(12 µ) |∇p|² dA,
 * less what pumps bring in.
 * @source derived (forces by virtual work); PinkusSternlicht (friction)
 */

import type { Metres, Radians } from '../../design/dimension.ts';
import { filmPerPose, type LeastFilm, leastFilmOf, UNGROWN } from '../spindle/height.ts';
import type { Five, Pose } from '../spindle/pose.ts';
import type { RigidSeat } from '../spindle/rigid.ts';
import { GIVEN, type Solution } from './complementarity.ts';
import { type FilmRun, type FilmSpace, solveFilm } from './reynolds.ts';
import { columnStep, rowStep } from './unrolled.ts';

export interface SeatFilm {
  /** N and N·m on the journal, about the bush datum: x, y, z, about x, about y */
  force: Five;
  /** N·m, braking */
  torque: number;
  /** W */
  power: number;
  /** m³/s out of the rear and the nose end */
  flow: { rear: number; nose: number };
  /** m³/s out of the grooves */
  supplied: number;
  /** Pa, and where: m along the slant, rad */
  peak: { pressure: number; u: number; angle: Radians };
  /** m */
  least: LeastFilm;
  /** m² under pressure, of the whole */
  wetted: { area: number; of: number };
  solution: Solution;
}

export type SeatFilmVerdict =
  | ({ status: 'solved' } & SeatFilm)
  | { status: 'contact'; film: Metres; u: number; angle: Radians }
  | { status: 'apart' };

/** Solves one seat at a pose and sums up. The fields stay in `space`. */
export function seatFilm(space: FilmSpace, seat: RigidSeat, pose: Pose, run: FilmRun): SeatFilmVerdict {
  const verdict = solveFilm(space, seat, pose, run);
  if (verdict.status !== 'solved') return verdict;
  const least = leastFilmOf(seat, pose, run.growth ?? UNGROWN, run.turned)!;
  return { status: 'solved', ...sumUp(space, run, verdict.solution, least) };
}

function sumUp(space: FilmSpace, run: FilmRun, solution: Solution, least: LeastFilm): SeatFilm {
  const force = oilForce(space);
  const torque = brakingTorque(space, run);
  const flow = endFlow(space);
  return {
    force,
    torque,
    power: torque * run.omega,
    flow,
    supplied: grooveFlow(space),
    peak: peakOf(space),
    least,
    wetted: wettedArea(space),
    solution,
  };
}

/** Q_i (N, N·m). */
export function oilForce({ grid, film, pressure }: FilmSpace): Five {
  const { rows, columns, centre, radius } = grid;
  const area = rowStep(grid) * columnStep(grid);
  const cosA = Math.cos(grid.halfAngle);
  const total: Five = [0, 0, 0, 0, 0];
  const rate: Five = [0, 0, 0, 0, 0];
  for (let j = 0; j < columns; j++) {
    // Over a column only u and ∂h/∂z change.
    let even = 0;
    let byU = 0;
    let byZ = 0;
    for (let i = 0; i < rows; i++) {
      const push = pressure[j * rows + i]! * radius[i]!;
      even += push;
      byU += push * centre[i]!;
      byZ += push * film.zRate[i]!;
    }
    filmPerPose(rate, cosA, 1, 1, grid.cos[j]!, grid.sin[j]!);
    total[0] += even * rate[0];
    total[1] += even * rate[1];
    total[2] += byZ;
    total[3] += byU * rate[3];
    total[4] += byU * rate[4];
  }
  return total.map((q) => q * area) as Five;
}

/** T (N·m), with the sign of ω. */
export function brakingTorque({ grid, film, solver, pressure }: FilmSpace, { viscosity, omega }: FilmRun): number {
  const { rows, columns, radius } = grid;
  const dl = rowStep(grid);
  const area = dl * columnStep(grid);
  const held = solver.held[0]!;
  let shear = 0;
  let flow = 0;
  for (let j = 0; j < columns; j++) {
    const before = (j === 0 ? columns - 1 : j - 1) * rows;
    const turning = 2 * (film.turning[j]! - film.turning[j === 0 ? columns - 1 : j - 1]!);
    for (let i = 0; i < rows; i++) {
      const k = j * rows + i;
      const r = radius[i]!;
      if (held[k] !== GIVEN) shear += (r * r * r) / film.centre[k]!;
      flow -= pressure[k]! * r * (film.around[k]! - film.around[before + i]! + turning);
    }
  }
  return viscosity * omega * area * shear + (dl / 2) * flow;
}

/** m³/s leaving the two ends. */
function endFlow({ grid, solver, pressure }: FilmSpace): { rear: number; nose: number } {
  const { rows, columns } = grid;
  const { edge } = solver.levels[0]!;
  let rear = 0;
  let nose = 0;
  for (let j = 0; j < columns; j++) {
    rear += edge[j * rows]! * pressure[j * rows]!;
    nose += edge[j * rows + rows - 1]! * pressure[j * rows + rows - 1]!;
  }
  return { rear, nose };
}

/** m³/s pressed out of the grooves into the film beside them (what the journal drags out of them comes on top). */
function grooveFlow({ grid, solver, pressure }: FilmSpace): number {
  const { rows, columns } = grid;
  const held = solver.held[0]!;
  const { along, around } = solver.levels[0]!;
  let flow = 0;
  for (let j = 0; j < columns; j++) {
    const next = (j === columns - 1 ? 0 : j + 1) * rows;
    for (let i = 0; i < rows; i++) {
      const k = j * rows + i;
      const here = held[k] === GIVEN;
      if (here !== (held[next + i] === GIVEN))
        flow += (here ? 1 : -1) * around[k]! * (pressure[k]! - pressure[next + i]!);
      if (i < rows - 1 && here !== (held[k + 1] === GIVEN))
        flow += (here ? 1 : -1) * along[k]! * (pressure[k]! - pressure[k + 1]!);
    }
  }
  return flow;
}

function peakOf({ grid, pressure }: FilmSpace): SeatFilm['peak'] {
  let at = 0;
  for (let k = 1; k < pressure.length; k++) if (pressure[k]! > pressure[at]!) at = k;
  const row = at % grid.rows;
  return { pressure: pressure[at]!, u: grid.centre[row]!, angle: ((at - row) / grid.rows) * columnStep(grid) };
}

function wettedArea({ grid, pressure }: FilmSpace): { area: number; of: number } {
  const cell = rowStep(grid) * columnStep(grid);
  let area = 0;
  let of = 0;
  for (let k = 0; k < pressure.length; k++) {
    const own = cell * grid.radius[k % grid.rows]!;
    of += own;
    if (pressure[k]! > 0) area += own;
  }
  return { area, of };
}
