/** Bearings for the tests of the film: made short, and solved short. */
import { seatLines } from '../../../src/engine/contact/fit.ts';
import { type FilmRun, type FilmSpace, newFilmSpace } from '../../../src/engine/film/reynolds.ts';
import { type SeatFilm, seatFilm } from '../../../src/engine/film/seatFilm.ts';
import type { FilmSeat } from '../../../src/engine/film/spindle.ts';
import type { FilmShape } from '../../../src/engine/spindle/height.ts';
import type { Lobe } from '../../../src/engine/spindle/lobes.ts';
import { AT_HOME, asPose, type Five, type Pose } from '../../../src/engine/spindle/pose.ts';
import type { PlaySeat } from '../../../src/engine/spindle/rigid.ts';

export const RAD = Math.PI / 180;

export interface Cone {
  /** rad */
  halfAngle: number;
  /** m, bush radius at station 0 */
  radius: number;
  /** m, of the bush; the journal reaches 1 mm beyond both */
  from: number;
  to: number;
  /** m, normal to the line, with the journal at home */
  film: number;
  journalLobes?: Lobe[];
  bushLobes?: Lobe[];
  bushProfile?: [number, number][];
  journalProfile?: [number, number][];
}

/** The bare metal of a cone. */
export function coneMetal(cone: Cone, name = 'cone'): PlaySeat {
  const { halfAngle, radius, from, to, film, journalLobes = [], bushLobes = [] } = cone;
  const bush = { halfAngle, radius, station: 0, from, to, profile: cone.bushProfile ?? [] };
  const journal = {
    halfAngle,
    radius: radius - film / Math.cos(halfAngle),
    station: 0,
    from: from - 0.001,
    to: to + 0.001,
    profile: cone.journalProfile ?? [],
  };
  return { name, bush, journal, journalLobes, bushLobes };
}

export function coneShape(cone: Cone): FilmShape {
  const metal = coneMetal(cone);
  return { gap: seatLines(metal).gap, journalLobes: metal.journalLobes, bushLobes: metal.bushLobes };
}

export const coneSeat = (cone: Cone, name = 'cone'): FilmSeat => ({ name, shape: coneShape(cone), grooves: [] });

/** A straight bearing of radius R and length L about station 0, with clearance c (all m). */
export const straight = (R: number, L: number, c: number): Cone => ({
  halfAngle: 0,
  radius: R,
  from: -L / 2,
  to: L / 2,
  film: c,
});

export const at = (pose: Partial<Pose>): Pose => ({ ...AT_HOME, ...pose });

/** Solves, and fails the test where there is no solution. */
export function solved(space: FilmSpace, shape: FilmShape, pose: Pose, run: FilmRun): SeatFilm {
  const result = seatFilm(space, shape, pose, run);
  if (result.status !== 'solved') throw new Error(`not solved: ${JSON.stringify(result)}`);
  if (!result.solution.converged) throw new Error(`not converged: ${JSON.stringify(result.solution)}`);
  return result;
}

export const solvedOn = (rows: number, columns: number, shape: FilmShape, pose: Pose, run: FilmRun): SeatFilm =>
  solved(newFilmSpace(rows, columns), shape, pose, run);

/** The force with one coordinate of the pose moved. */
export function forceAt(space: FilmSpace, shape: FilmShape, q: Five, run: FilmRun, coordinate = 0, by = 0): Five {
  const moved = [...q] as Five;
  moved[coordinate]! += by;
  return solved(space, shape, asPose(moved), run).force;
}
