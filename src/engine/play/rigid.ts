/**
 * The film of every seat of a rigid spindle, moved a little in any way.
 *
 * Pose q = (x, y, z, tiltX, tiltY): the axis of the journal stands at (x + tiltY·S, y - tiltX·S) where it
 * passes the station S of the bush, and the journal is at the position z. At the place u along a bush line
 * (film.ts) and the angle φ
 *
 *   h = g(u; z) - d(φ) - cos a·[ (x + tiltY·Zn)·cos φ + (y - tiltX·Zn)·sin φ ]
 *
 *   g(u; z)  film of the two lines with the journal centred (m), exact at every position: engine/contact/film.ts
 *   d(φ)     what the lobes of journal and bush stand proud (m): round.ts
 *   Zn = u/cos a = Z + r·tan a   the station (m) at which the normal of the bush meets the axis
 *   a half angle of the bush (rad)
 *
 * g gains sin a per axial travel; beyond that the two lines slide along each other by z·cos a, which moves
 * their breakpoints. A linear programme sees the lines where they stand at one position z₀, with
 * g(u; z) = g(u; z₀) + (z - z₀)·sin a, and is solved again at the position it finds until that stays
 * (seating.ts): the answer is exact in z, however far it lies from where the search began, and to first
 * order in the sideways motions and the tilts, whose squares over the radius are far below a nanometre.
 * The force of a contact points along the normal of the bush line.
 *
 * Stations. At a fixed φ, d is a number and Zn is linear in u, so h differs from the chain g by a linear
 * function of u: its least value stands at a breakpoint of g, and for every motion whatever at one on the
 * lower convex hull of g. Those few are the only stations that can ever touch.
 */

import { filmAlong, stationAt } from '../contact/film.ts';
import { type Closes, type SeatInput, type SeatLines, seatLines } from '../contact/fit.ts';
import { type Lobe, proudAt, type Round, roundOf } from './round.ts';

export interface PlaySeat extends SeatInput {
  journalLobes: readonly Lobe[];
  bushLobes: readonly Lobe[];
}

/** m, tilts rad */
export interface Pose {
  x: number;
  y: number;
  z: number;
  tiltX: number;
  tiltY: number;
}

export type Motion = keyof Pose;
export const MOTIONS: readonly Motion[] = ['x', 'y', 'z', 'tiltX', 'tiltY'];

/** Force (N) and moment (N·m) on the journal about the datum of the bush; each does work on the motion of its name. */
export type Push = Pose;

/** A force (N) that acts at a station (m) of the bush axis, as a push about the datum: its moment about y is S·Fx, about x -S·Fy. */
export function pushAt(station: number, force: { x?: number; y?: number; z?: number }): Push {
  const { x = 0, y = 0, z = 0 } = force;
  return { x, y, z, tiltX: -station * y, tiltY: station * x };
}

/** Where the axis of a journal stands (m) as it passes a station (m). */
export const axisAt = (pose: Pose, station: number) => ({ x: pose.x + pose.tiltY * station, y: pose.y - pose.tiltX * station });

export interface RigidSeat {
  name: string;
  closes: Closes;
  lines: SeatLines;
  round: Round;
  cos: number;
  sin: number;
}

export interface Spindle {
  seats: readonly RigidSeat[];
  /** which of the five motions are free; the others stay at nothing */
  free: ReadonlySet<Motion>;
}

/** The spindle ready for questions; `turned` (rad) is how far the journal has been turned in its bush. */
export function spindleOf(seats: readonly PlaySeat[], free: Iterable<Motion>, turned = 0): Spindle {
  return { seats: seats.map((seat) => rigidSeat(seat, turned)), free: new Set(free) };
}

function rigidSeat(seat: PlaySeat, turned: number): RigidSeat {
  const lines = seatLines(seat);
  const { halfAngle } = seat.bush;
  return { name: seat.name, closes: lines.closes, lines, round: roundOf(seat.journalLobes, seat.bushLobes, turned), cos: Math.cos(halfAngle), sin: Math.sin(halfAngle) };
}

/** The stations of a spindle that can touch, with the journal at one position. */
export interface Stations {
  /** m */
  position: number;
  count: number;
  /** which seat */
  seat: Int32Array;
  /** place along the bush line (m) */
  u: Float64Array;
  /** where the normal meets the axis (m) */
  zn: Float64Array;
  /** film there of the true rounds, centred (m) */
  film: Float64Array;
}

export function stationsAt({ seats }: Spindle, position: number): Stations {
  const parts = seats.map(({ lines }) => lowerHull(filmAlong(lines.gap, position)));
  const count = parts.reduce((sum, part) => sum + part.count, 0);
  const stations: Stations = { position, count, seat: new Int32Array(count), u: new Float64Array(count), zn: new Float64Array(count), film: new Float64Array(count) };
  let k = 0;
  parts.forEach((part, i) => {
    for (let j = 0; j < part.count; j++, k++) {
      stations.seat[k] = i;
      stations.u[k] = part.u[j]!;
      stations.zn[k] = part.u[j]! / seats[i]!.cos;
      stations.film[k] = part.film[j]!;
    }
  });
  return stations;
}

/** The lower convex hull of a chain, in place: Andrew's scan over places that already rise. */
function lowerHull(chain: { count: number; u: Float64Array; film: Float64Array }) {
  const { u, film } = chain;
  let top = 0;
  for (let i = 0; i < chain.count; i++) {
    // A rounding's worth of film below the straight line is no corner.
    while (top > 1 && film[top - 1]! - interpolate(u[top - 2]!, film[top - 2]!, u[i]!, film[i]!, u[top - 1]!) > -1e-17) top--;
    if (top === 1 && u[i] === u[0] && film[i]! >= film[0]!) continue;
    u[top] = u[i]!;
    film[top++] = film[i]!;
  }
  chain.count = top;
  return chain;
}

const interpolate = (u0: number, f0: number, u1: number, f1: number, u: number) => (u1 === u0 ? f0 : f0 + ((f1 - f0) * (u - u0)) / (u1 - u0));

/** Film (m) of one seat at the place u (m) along its bush line, whose centred film at the pose's position is `centred` (m), at the angle φ (rad). */
export function filmAt(seat: RigidSeat, centred: number, u: number, angle: number, pose: Pose): number {
  const axis = axisAt(pose, u / seat.cos);
  return centred - proudAt(seat.round, angle) - seat.cos * (axis.x * Math.cos(angle) + axis.y * Math.sin(angle));
}

/** Bush station (m) of a place u (m) of a seat. */
export const bushStation = (seat: RigidSeat, u: number) => stationAt(seat.lines.gap.bush, u);
