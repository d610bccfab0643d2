/**
 * The film for pictures: pressure and film of every seat on its unrolled grid, at the pose held or found, on as coarse
 * a grid as a hand that drags can wait for. In the units of the report; fields as plain typed arrays that a worker can
 * hand over.
 */

import type { Design } from '../../design/definition.ts';
import type { Degrees, Millimetres, Radians } from '../../design/dimension.ts';
import type { Balance, Near } from '../../engine/film/equilibrium.ts';
import { type GridSize, type Grids, newGrids } from '../../engine/film/films.ts';
import { layFilm } from '../../engine/film/layFilm.ts';
import { newFilmSpace } from '../../engine/film/reynolds.ts';
import { stand } from '../../engine/film/stand.ts';
import { COARSE, HALF, type Running } from '../../engine/run/running.ts';
import { standing } from '../../engine/run/solveRun.ts';
import { leastFilmOf, UNGROWN } from '../../engine/spindle/height.ts';
import type { Pose } from '../../engine/spindle/pose.ts';
import { degrees, megapascals, metres, millimetres as mm } from '../convert.ts';
import type { FilmReport } from './definition.ts';
import { poseReport } from './parts.ts';
import { toRunning } from './toSpindle.ts';

export { FINE, QUICK } from '../../engine/run/running.ts';

export interface SeatFields {
  name: string;
  rows: number;
  columns: number;
  /** mm, bush station and radius of each row */
  stations: Float64Array;
  radii: Float64Array;
  /** MPa and mm, cell = column·rows + row; column j at 360·j/columns degrees from x toward y */
  pressure: Float32Array;
  film: Float32Array;
  /** N of the oil on the journal */
  force: { x: number; y: number; z: number };
  /** mm */
  leastFilm: Millimetres;
  /** MPa */
  peakPressure: number;
  /** degrees round which the picture may be unrolled: where the film is least */
  leastAngle: Degrees;
}

export interface RunFields {
  status: 'held' | 'found' | 'stopped' | 'contact' | 'apart' | 'noRoom' | 'standing' | 'notConverged';
  pose: { x: Millimetres; y: Millimetres; z: Millimetres; tiltX: Radians; tiltY: Radians };
  seats: SeatFields[];
  /** W, N·mm, N */
  power: number | null;
  torque: number | null;
  stop: number | null;
}

/** A design being dragged: keeps its grids and the last pose, so that the next frame starts close by. */
interface FieldsFollower {
  fields(design: Design): RunFields | null;
}

/** `size` cells a seat; coarser follows faster. */
export function followFields(size: GridSize = HALF): FieldsFollower {
  let shape = '';
  let grids: Grids | null = null;
  let coarse: Grids | null = null;
  let near: Near | null = null;
  return {
    fields(design) {
      if (!design.run) return null;
      const running = toRunning({ ...design, run: design.run });
      const now = JSON.stringify(design.seats) + JSON.stringify(design.run.supply ?? []);
      if (grids === null || coarse === null || now !== shape) {
        grids = newGrids(running.seats, size);
        coarse = newGrids(running.seats, COARSE);
        near = null;
        shape = now;
      }
      const solved = solve(running, grids, coarse, near);
      near = solved.near;
      return solved.result;
    },
  };
}

/** The same once everything is warm: at the pose, with the oil and the growth of the report's steady state. */
export function warmFields(
  design: Design,
  steady: NonNullable<FilmReport['steady']>,
  size: GridSize,
): RunFields | null {
  if (!design.run) return null;
  const cold = toRunning({ ...design, run: design.run });
  const { x, y, z, tiltX, tiltY } = steady.pose;
  const run = {
    ...cold.run,
    viscosity: steady.seats.map(({ viscosity }) => viscosity),
    growth: steady.seats.map(({ growth }) => metres(growth)),
  };
  const running: Running = {
    ...cold,
    load: null,
    pose: { x: metres(x), y: metres(y), z: metres(z), tiltX, tiltY },
    run,
  };
  return solve(running, newGrids(running.seats, size), newGrids(running.seats, COARSE), null).result;
}

function solve(
  running: Running,
  grids: Grids,
  coarse: Grids,
  near: Near | null,
): { result: RunFields; near: Near | null } {
  const { load, pose, position, adjusted, run } = running;
  const found = stand(grids, load === null ? { pose } : { load, position, adjusted }, run, { coarse, near });
  if (found.status !== 'solved') {
    const stands = found.status === 'standing' ? standing(running).pose : 'pose' in found ? found.pose : pose;
    return {
      result: untouched(found.status === 'givenUp' ? 'notConverged' : found.status, running, stands, grids.size),
      near: null,
    };
  }
  const status = load === null ? 'held' : found.stop === 0 ? 'found' : 'stopped';
  return { result: { status, ...fieldsOf(grids, running, found) }, near: load === null ? null : found };
}

function fieldsOf(
  grids: Grids,
  running: Running,
  { seats, total, pose, stop }: Pick<Balance, 'seats' | 'total' | 'pose' | 'stop'>,
): Omit<RunFields, 'status'> {
  return {
    pose: poseReport(pose),
    power: total.power,
    torque: mm(total.torque),
    stop,
    seats: seats.map(({ force: [x, y, z], least, peak }, i) => ({
      ...gridReport(running, i, grids.spaces[i]!),
      pressure: Float32Array.from(grids.spaces[i]!.pressure, megapascals),
      force: { x, y, z },
      leastFilm: mm(least.film),
      leastAngle: degrees(least.angle),
      peakPressure: megapascals(peak.pressure),
    })),
  };
}

/** Where no oil runs: the films alone, interference negative. */
function untouched(status: RunFields['status'], running: Running, pose: Pose, size: GridSize): RunFields {
  const seats = running.seats.flatMap((seat, i) => {
    const space = newFilmSpace(size.rows, size.columns);
    if (!layFilm(space.film, seat, pose, UNGROWN)) return [];
    const least = leastFilmOf(seat, pose, UNGROWN);
    if (least === null) return [];
    return [
      {
        ...gridReport(running, i, space),
        pressure: new Float32Array(size.rows * size.columns),
        force: { x: 0, y: 0, z: 0 },
        leastFilm: mm(least.film),
        leastAngle: degrees(least.angle),
        peakPressure: 0,
      },
    ];
  });
  return { status, pose: poseReport(pose), seats, power: null, torque: null, stop: null };
}

function gridReport({ seats }: Running, i: number, { grid, film }: Grids['spaces'][number]) {
  const { halfAngle } = seats[i]!.gap;
  // u = z·cos a + r·sin a
  const stations = grid.centre.map((u, row) =>
    mm(Math.abs(Math.cos(halfAngle)) < 1e-9 ? 0 : (u - grid.radius[row]! * Math.sin(halfAngle)) / Math.cos(halfAngle)),
  );
  return {
    name: seats[i]!.name,
    rows: grid.rows,
    columns: grid.columns,
    stations,
    radii: grid.radius.map(mm),
    film: Float32Array.from(film.centre, mm),
  };
}
