/**
 * The film of every seat of a rigid spindle, moved a little in any way.
 *
 * Pose q = (x, y, z, tiltX, tiltY): the axis of the journal stands at (x + tiltY·S, y - tiltX·S) where it
 * passes the station S of the bush, and the journal is at the position z. At the place u along a bush line
 * (film.ts) and the angle φ
 *
 *   h as in height.ts, its g exact at every position
 *   Zn = u/cos a = Z + r·tan a   the station (m) at which the normal of the bush meets the axis
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
import { filmThere, nearing } from './height.ts';
import { type Lobe, proudAt, type Round, roundOf } from './lobes.ts';
import type { Motion, Pose } from './pose.ts';

export interface PlaySeat extends SeatInput {
  journalLobes: readonly Lobe[];
  bushLobes: readonly Lobe[];
}

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
  return {
    name: seat.name,
    closes: lines.closes,
    lines,
    round: roundOf(seat.journalLobes, seat.bushLobes, turned),
    cos: Math.cos(halfAngle),
    sin: Math.sin(halfAngle),
  };
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
  const stations: Stations = {
    position,
    count,
    seat: new Int32Array(count),
    u: new Float64Array(count),
    zn: new Float64Array(count),
    film: new Float64Array(count),
  };
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
    while (top > 1 && film[top - 1]! - interpolate(u[top - 2]!, film[top - 2]!, u[i]!, film[i]!, u[top - 1]!) > -1e-17)
      top--;
    if (top === 1 && u[i] === u[0] && film[i]! >= film[0]!) continue;
    u[top] = u[i]!;
    film[top++] = film[i]!;
  }
  chain.count = top;
  return chain;
}

const interpolate = (u0: number, f0: number, u1: number, f1: number, u: number) =>
  u1 === u0 ? f0 : f0 + ((f1 - f0) * (u - u0)) / (u1 - u0);

/**
 * Film (m) of one seat at the place u (m) along its bush line, whose centred film at the pose's position is `centred`
 * (m), at the angle φ (rad).
 */
export const filmAt = (seat: RigidSeat, centred: number, u: number, angle: number, pose: Pose): number =>
  filmThere(centred - proudAt(seat.round, angle), nearing(pose, seat.cos, u), angle);

/** Bush station (m) of a place u (m) of a seat. */
export const bushStation = (seat: RigidSeat, u: number) => stationAt(seat.lines.gap.bush, u);
