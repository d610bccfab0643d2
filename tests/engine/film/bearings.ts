/** Bearings for the tests of the film: made short, and solved short. */
import type { SeatInput } from '../../../src/engine/contact/fit.ts';
import type { FilmSeat } from '../../../src/engine/film/films.ts';
import { type FilmRun, type FilmSpace, newFilmSpace } from '../../../src/engine/film/reynolds.ts';
import { type SeatFilm, seatFilm } from '../../../src/engine/film/seatFilm.ts';
import type { Lobe, Part } from '../../../src/engine/parts/line.ts';
import { AT_HOME, asPose, type Five, type Pose } from '../../../src/engine/spindle/pose.ts';
import { type RigidSeat, rigidSeat } from '../../../src/engine/spindle/rigid.ts';

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
export function coneMetal(cone: Cone, name = 'cone'): SeatInput {
  const { halfAngle, radius, from, to, film, journalLobes = [], bushLobes = [] } = cone;
  const bush = { halfAngle, radius, station: 0, from, to, profile: cone.bushProfile ?? [], lobes: bushLobes };
  const journal = {
    halfAngle,
    radius: radius - film / Math.cos(halfAngle),
    station: 0,
    from: from - 0.001,
    to: to + 0.001,
    profile: cone.journalProfile ?? [],
    lobes: journalLobes,
  };
  return { name, bush, journal };
}

export const coneShape = (cone: Cone): RigidSeat => rigidSeat(coneMetal(cone));

export const coneSeat = (cone: Cone, name = 'cone', grooves: FilmSeat['grooves'] = []): FilmSeat => ({
  ...rigidSeat(coneMetal(cone, name)),
  grooves,
});

/** The same seat with these lobes on one part. */
export function lobed<S extends RigidSeat>(seat: S, lobes: readonly Lobe[], of: Part): S {
  return { ...seat, ...rigidSeat({ ...seat.parts, [of]: { ...seat.parts[of], lobes } }) };
}

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
export function solved(space: FilmSpace, shape: RigidSeat, pose: Pose, run: FilmRun): SeatFilm {
  const result = seatFilm(space, shape, pose, run);
  if (result.status !== 'solved') throw new Error(`not solved: ${JSON.stringify(result)}`);
  if (!result.solution.converged) throw new Error(`not converged: ${JSON.stringify(result.solution)}`);
  return result;
}

export const solvedOn = (rows: number, columns: number, shape: RigidSeat, pose: Pose, run: FilmRun): SeatFilm =>
  solved(newFilmSpace(rows, columns), shape, pose, run);

/** The force with one coordinate of the pose moved. */
export function forceAt(space: FilmSpace, shape: RigidSeat, q: Five, run: FilmRun, coordinate = 0, by = 0): Five {
  const moved = [...q] as Five;
  moved[coordinate]! += by;
  return solved(space, shape, asPose(moved), run).force;
}
