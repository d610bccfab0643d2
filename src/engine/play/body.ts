/**
 * The poses a spindle can take at one linearisation: a convex body in up to six unknowns, told by a few constraints
 * at a time and by an oracle that finds the one a wanted pose violates most (a cut).
 *
 * Everything is scaled, so that one tolerance serves every size of machine: lengths by the clearance s, tilts
 * by s/L with L the reach of the stations to either side of their middle Zm. In
 *
 *   v = ( x + tiltY·Zm,  y - tiltX·Zm,  z - z₀,  L·tiltX,  L·tiltY,  e ) / s
 *
 * a contact of station i at the angle φ is the constraint n·v ≤ b with ζ = (Zn - Zm)/L and
 *
 *   n = ( cos a·cos φ, cos a·sin φ, -sin a, -ζ·cos a·sin φ, ζ·cos a·cos φ, -1 )      b = (g - d(φ))/s
 *
 * e (m) is a film given to every seat on top of its own; it is nothing except where the least interference is
 * sought. The length of v does not depend on where the datum lies, nor on how the part is turned: of several
 * poses equally good the one nearest to the axis can be chosen, whoever measured the parts.
 */

import type { Metres, Radians } from '../../design/dimension.ts';
import { dot } from '../algebra/dot.ts';
import { lobesAt, type Worst, worstAngle } from '../spindle/lobes.ts';
import type { Pose, Push } from '../spindle/pose.ts';
import { type RigidSeat, type Spindle, type Stations, stationsAt } from '../spindle/rigid.ts';

/** Unknowns of v. */
export const SIZE = 6;
/** A film (m) less negative than this is no interference: fifty times finer than the 1e-9 mm promised. */
export const TOUCH = 2e-14;
/** The clearance is never taken for less (m), so that perfect fits are scaled too. */
const LEAST_SCALE = 1e-7;
/** of a radius: stations within it are a single one */
const SINGLE = 1e-3;

export interface Constraint {
  station: Metres;
  angle: Radians;
  b: number;
  n: Float64Array;
}

export interface Body {
  spindle: Spindle;
  stations: Stations;
  /** m */
  scale: number;
  middle: number;
  reach: number;
  /** those known, for every question asked of this body */
  cuts: Constraint[];
}

/** The body with the journal's lines where they stand at `position` (m). */
export function bodyAt(spindle: Spindle, position: Metres): Body {
  const stations = stationsAt(spindle, position);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const zn of stations.zn) {
    low = Math.min(low, zn);
    high = Math.max(high, zn);
  }
  const any = stations.count > 0;
  const radius = spindle.seats.reduce((most, seat) => Math.max(most, seat.bush.r[0]!), 0);
  return {
    spindle,
    stations,
    scale: clearanceScale(spindle.seats, stations),
    middle: any ? (low + high) / 2 : 0,
    // A single station has no reach of its own.
    reach: any && high - low > SINGLE * radius ? (high - low) / 2 : radius,
    cuts: [],
  };
}

/** The greatest of the seats' least films and lobes (m). */
function clearanceScale(seats: readonly RigidSeat[], stations: Stations): number {
  let scale = LEAST_SCALE;
  seats.forEach((seat, i) => {
    let least = Number.POSITIVE_INFINITY;
    for (let k = 0; k < stations.count; k++)
      if (stations.seat[k] === i) least = Math.min(least, Math.abs(stations.film[k]!));
    if (least < Number.POSITIVE_INFINITY) scale = Math.max(scale, least, seat.round.height);
  });
  return scale;
}

/** v of a pose. */
export function scaled({ scale: s, middle, reach, stations }: Body, pose: Pose): Float64Array {
  return Float64Array.of(
    (pose.x + pose.tiltY * middle) / s,
    (pose.y - pose.tiltX * middle) / s,
    (pose.z - stations.position) / s,
    (reach * pose.tiltX) / s,
    (reach * pose.tiltY) / s,
    0,
  );
}

/** The pose of v. */
export function unscaled({ scale: s, middle, reach, stations }: Body, v: Float64Array): Pose {
  const tiltX = (s * v[3]!) / reach;
  const tiltY = (s * v[4]!) / reach;
  return {
    x: s * v[0]! - tiltY * middle,
    y: s * v[1]! + tiltX * middle,
    z: stations.position + s * v[2]!,
    tiltX,
    tiltY,
  };
}

/** What a push does per unit of each of v, over s (N). */
export function scaledPush({ middle, reach }: Body, push: Push): Float64Array {
  return Float64Array.of(
    push.x,
    push.y,
    push.z,
    (push.tiltX + push.y * middle) / reach,
    (push.tiltY - push.x * middle) / reach,
    0,
  );
}

/** The constraint of a station at an angle. */
export function constraintAt(body: Body, station: Metres, angle: Radians): Constraint {
  const { spindle, stations, scale, middle, reach } = body;
  const seat = spindle.seats[stations.seat[station]!]!;
  const zeta = (stations.zn[station]! - middle) / reach;
  const x = seat.cos * Math.cos(angle);
  const y = seat.cos * Math.sin(angle);
  const d = (seat.round.pushX * x + seat.round.pushY * y) / seat.cos + lobesAt(seat.round, angle);
  return {
    station,
    angle,
    b: (stations.film[station]! - d) / scale,
    n: Float64Array.of(x, y, -seat.sin, -zeta * y, zeta * x, -1),
  };
}

const worst: Worst = { value: 0, angle: 0 };

/** How far (scaled) a station is pressed in at v at its worst angle, which is left in `at`; below 0 it is clear. */
export function pressedIn(body: Body, station: Metres, v: Float64Array, certain: boolean, at: Worst): number {
  const { spindle, stations, scale, middle, reach } = body;
  const seat = spindle.seats[stations.seat[station]!]!;
  const zeta = (stations.zn[station]! - middle) / reach;
  const push = seat.cos * scale;
  worstAngle(seat.round, push * (v[0]! + zeta * v[4]!), push * (v[1]! - zeta * v[3]!), certain, at);
  at.value = (at.value - stations.film[station]!) / scale - seat.sin * v[2]! - v[5]!;
  return at.value;
}

/**
 * What a station could be pressed in at most at v (scaled), were every lobe at its worst there: cheap, and never too
 * little.
 */
function atMost({ spindle, stations, scale, middle, reach }: Body, station: Metres, v: Float64Array): number {
  const { cos, sin, round } = spindle.seats[stations.seat[station]!]!;
  const zeta = (stations.zn[station]! - middle) / reach;
  const x = cos * (v[0]! + zeta * v[4]!) + round.pushX / scale;
  const y = cos * (v[1]! - zeta * v[3]!) + round.pushY / scale;
  return Math.sqrt(x * x + y * y) + (round.height - stations.film[station]!) / scale - sin * v[2]! - v[5]!;
}

/**
 * Adds the worst cut of every seat that is pressed in at v by more than `allowed` (scaled), and returns the worst of
 * all; nothing greater than `allowed` when there is none.
 */
export function cutOff(body: Body, v: Float64Array, allowed: number, certain: boolean): number {
  const { stations, cuts } = body;
  let most = allowed;
  for (let first = 0, next = 0; first < stations.count; first = next) {
    const seat = stations.seat[first]!;
    let deepest = allowed;
    let found = -1;
    let angle = 0;
    for (next = first; next < stations.count && stations.seat[next] === seat; next++) {
      if (atMost(body, next, v) <= deepest || pressedIn(body, next, v, certain, worst) <= deepest) continue;
      deepest = worst.value;
      angle = worst.angle;
      found = next;
    }
    if (found >= 0) cuts.push(constraintAt(body, found, angle));
    most = Math.max(most, deepest);
  }
  return most;
}

/**
 * The motions left free as perpendicular directions of v, one a column; with `interference` the film e given
 * to every seat is free too.
 */
export function freeDirections(body: Body, free: Iterable<string>, interference: boolean): Float64Array[] {
  const lever = body.middle / body.reach;
  const motion: Record<string, readonly number[]> = {
    x: [1, 0, 0, 0, 0, 0],
    y: [0, 1, 0, 0, 0, 0],
    z: [0, 0, 1, 0, 0, 0],
    tiltX: [0, -lever, 0, 1, 0, 0],
    tiltY: [lever, 0, 0, 0, 1, 0],
  };
  const wanted = new Set(free);
  const columns: Float64Array[] = [];
  for (const name of ['x', 'y', 'z', 'tiltX', 'tiltY'])
    if (wanted.has(name)) columns.push(perpendicular(motion[name]!, columns));
  if (interference) columns.push(Float64Array.of(0, 0, 0, 0, 0, 1));
  return columns;
}

/** A direction less its parts along those already there, of length 1 (Gram and Schmidt, twice for the digits). */
function perpendicular(direction: readonly number[], columns: readonly Float64Array[]): Float64Array {
  const d = Float64Array.from(direction);
  for (let pass = 0; pass < 2; pass++) {
    for (const c of columns) {
      const along = dot(d, c);
      for (let i = 0; i < SIZE; i++) d[i]! -= along * c[i]!;
    }
  }
  const length = Math.sqrt(dot(d, d));
  return d.map((value) => value / length);
}
