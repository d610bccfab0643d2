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

import type { Metres } from '../../design/dimension.ts';
import { filmAlong, stationAt } from '../contact/film.ts';
import { type SeatInput, type SeatLines, seatLines } from '../contact/fit.ts';
import { type Round, roundOf } from './lobes.ts';
import type { Motion } from './pose.ts';

/** A seat ready for questions at any pose: bare metal to play/, the walls of a film to film/. */
export interface RigidSeat extends SeatLines {
  /** as its parts stand */
  parts: SeatInput;
  /** of both parts, the journal not turned */
  round: Round;
  /** of the half angle of the bush */
  cos: number;
  sin: number;
}

export interface Spindle {
  seats: readonly RigidSeat[];
  /** which of the five motions are free; the others stay at nothing */
  free: ReadonlySet<Motion>;
}

export function rigidSeat(parts: SeatInput): RigidSeat {
  const lines = seatLines(parts);
  const { halfAngle } = lines.gap;
  const round = roundOf(parts.journal.lobes, parts.bush.lobes);
  return { ...lines, parts, round, cos: Math.cos(halfAngle), sin: Math.sin(halfAngle) };
}

/** The round of a seat whose journal is turned (rad) in its bush. */
export const turnedRound = ({ parts: { journal, bush }, round }: RigidSeat, turned: number): Round =>
  turned === 0 ? round : roundOf(journal.lobes, bush.lobes, turned);

export const spindleOf = (seats: readonly SeatInput[], free: Iterable<Motion>): Spindle => ({
  seats: seats.map(rigidSeat),
  free: new Set(free),
});

/** The same with its journal turned (rad) in its bush. */
export const turnedBy = ({ seats, free }: Spindle, turned: number): Spindle => ({
  seats: seats.map((seat) => ({ ...seat, round: turnedRound(seat, turned) })),
  free,
});

/** The stations of a spindle that can touch, with the journal at one position. */
export interface Stations {
  /** m */
  position: Metres;
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

export function stationsAt({ seats }: Spindle, position: Metres): Stations {
  const parts = seats.map(({ gap }) => lowerHull(filmAlong(gap, position)));
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

/** Bush station (m) of a place u (m) of a seat. */
export const bushStation = (seat: RigidSeat, u: number) => stationAt(seat.gap.bush, u);
