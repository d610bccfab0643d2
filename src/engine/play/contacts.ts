/**
 * The contacts of a spindle that is pushed: where each bears, and its share of the push.
 *
 * Contact programmes are degenerate by nature: a true cone pushed home touches all round, and at both its ends,
 * and statics alone does not say which place carries what. Where the shares are not decided, the places that
 * touch are taken for equal springs: of all ways to carry the push, the one with the least Σ share²,
 *
 *   share = max(0, n·w)   with   Σ share·n = F
 *
 * n normal of a place as a vector of the body · w found by Newton's method, for the places that press.
 * A station that touches all round stands for a tripod of three places at 90°, 210° and 330°.
 */
import type { Metres, Radians } from '../../design/dimension.ts';
import { dot } from '../algebra/dot.ts';
import { stillSolved } from '../algebra/elimination.ts';
import { stationAt } from '../contact/film.ts';
import { filmAt } from '../spindle/height.ts';
import { greatestAngles, type Worst } from '../spindle/lobes.ts';
import type { Pose, Push } from '../spindle/pose.ts';
import { bushStation } from '../spindle/rigid.ts';
import { type Body, type Constraint, constraintAt, freeDirections, pressedIn, scaledPush, unscaled } from './body.ts';
import type { Held } from './push.ts';

export interface SeatContact {
  seat: string;
  /** bush station (m) */
  station: Metres;
  /** rad from x toward y, in [0, 2π) */
  angle: Radians;
  /** normal force (N) on the journal */
  share: number;
  /** stations (m) of the journal at that place */
  journalStation: Metres;
  /** film there (m): nothing, to rounding */
  film: Metres;
  /** the seat touches all round at this station, and this is one place of many */
  ring: boolean;
}

export interface Bearing {
  contacts: SeatContact[];
  /** the shares are one way of several: more places touch than the push decides between */
  shared: boolean;
}

/** Films (m) below this are a touch when places that could carry are looked for. */
const TOUCHES = 5e-13;
/** What of the push (of its size) the shares of springs may leave. */
const NEARLY = 5e-10;
/** A share less than this of the whole push is none. */
const NONE = 1e-12;
/** Two angles (rad) nearer than twice this are one place. */
const ONE = 1e-3;
const TRIPOD = [Math.PI / 2, (7 * Math.PI) / 6, (11 * Math.PI) / 6];

/** @param v where the push has driven the spindle, a vector of the body */
export function bearingOf(body: Body, v: Float64Array, push: Push, held: readonly Held[]): Bearing {
  const touching = touchingPlaces(body, v, held);
  const spread = touching.shared ? springShares(body, touching.cuts, push) : null;
  const pose = unscaled(body, v);
  const places =
    spread ?? held.map(({ station, angle, share }) => ({ cut: constraintAt(body, station, angle), share }));
  const order = body.spindle.seats.map(({ name }) => name);
  const most = places.reduce((sum, { share }) => Math.max(sum, share), 0);
  const contacts = places
    .filter(({ share }) => share > NONE * most)
    .map(({ cut, share }) => seatContact(body, pose, cut, share, touching.rings.has(cut.station)));
  return {
    contacts: contacts.sort(
      (a, b) => order.indexOf(a.seat) - order.indexOf(b.seat) || a.station - b.station || a.angle - b.angle,
    ),
    shared: touching.shared,
  };
}

/** Every place that touches at v, with the stations that touch all round. */
function touchingPlaces(
  body: Body,
  v: Float64Array,
  held: readonly Held[],
): { cuts: Constraint[]; rings: Set<number>; shared: boolean } {
  const cuts: Constraint[] = [];
  const rings = new Set<number>();
  let others = false;
  for (let station = 0; station < body.stations.count; station++) {
    const bearing = held.filter((h) => h.station === station);
    const worst: Worst = { value: 0, angle: 0 };
    if (-pressedIn(body, station, v, false, worst) * body.scale > TOUCHES) continue;
    if (isRing(body, station, v)) {
      rings.add(station);
      for (const angle of TRIPOD) cuts.push(constraintAt(body, station, angle));
      continue;
    }
    const angles = bearing.map(({ angle }) => angle);
    for (const angle of otherAngles(body, station, v, worst)) {
      if (angles.some((known) => Math.abs(Math.sin((known - angle) / 2)) < ONE)) continue;
      others = true;
      angles.push(angle);
    }
    for (const angle of angles) cuts.push(constraintAt(body, station, angle));
  }
  return { cuts, rings, shared: rings.size > 0 || others };
}

/** Every angle at which a station touches: one of a true round, several of a lobed one. */
function otherAngles(body: Body, station: Metres, v: Float64Array, worst: Worst): number[] {
  const seat = body.spindle.seats[body.stations.seat[station]!]!;
  if (seat.round.samples.length === 0) return [worst.angle];
  const zeta = (body.stations.zn[station]! - body.middle) / body.reach;
  const push = seat.cos * body.scale;
  const most = body.stations.film[station]! + (seat.sin * v[2]! + v[5]!) * body.scale;
  return greatestAngles(seat.round, push * (v[0]! + zeta * v[4]!), push * (v[1]! - zeta * v[3]!), most, TOUCHES);
}

/** Whether a true round stands so nearly central at a station that it touches all round. */
function isRing(body: Body, station: Metres, v: Float64Array): boolean {
  const seat = body.spindle.seats[body.stations.seat[station]!]!;
  if (seat.round.samples.length > 0) return false;
  const zeta = (body.stations.zn[station]! - body.middle) / body.reach;
  const push = Math.hypot(
    seat.cos * (v[0]! + zeta * v[4]!) + seat.round.pushX / body.scale,
    seat.cos * (v[1]! - zeta * v[3]!) + seat.round.pushY / body.scale,
  );
  return push * body.scale <= TOUCHES;
}

/** The shares of equal springs at the places that touch; null where such springs do not carry the push. */
function springShares(
  body: Body,
  cuts: readonly Constraint[],
  push: Push,
): { cut: Constraint; share: number }[] | null {
  const directions = freeDirections(body, body.spindle.free, false);
  const whole = scaledPush(body, push);
  const force = directions.map((d) => dot(d, whole));
  const size = Math.sqrt(force.reduce((sum, part) => sum + part * part, 0));
  const normals = cuts.map(({ n }) => directions.map((d) => dot(d, n)));
  let pressing = normals.map(() => true);
  for (let step = 0; step < 30; step++) {
    const w = stiffnessSolved(normals, pressing, force);
    const shares = normals.map((n) => n.reduce((sum, part, i) => sum + part * w[i]!, 0));
    const next = shares.map((share) => share > -1e-9 * size);
    if (next.every((presses, j) => presses === pressing[j])) {
      const off = force.map((part, i) =>
        Math.abs(part - normals.reduce((sum, n, j) => sum + (next[j] ? n[i]! * shares[j]! : 0), 0)),
      );
      if (Math.max(...off) > NEARLY * size) return null;
      return cuts.map((cut, j) => ({ cut, share: next[j] ? Math.max(0, shares[j]!) : 0 }));
    }
    pressing = next;
  }
  return null;
}

/** w of (Σ n·nᵀ)·w = F over the places that press; motions nothing presses against stay still. */
function stiffnessSolved(
  normals: readonly number[][],
  pressing: readonly boolean[],
  force: readonly number[],
): number[] {
  const element = (i: number, k: number) =>
    normals.reduce((sum, normal, j) => sum + (pressing[j] ? normal[i]! * normal[k]! : 0), 0);
  return stillSolved(
    force.map((part, i) => [...force.map((_, k) => element(i, k)), part]),
    1e-10,
  );
}

function seatContact(
  body: Body,
  pose: Pose,
  { station, angle }: Constraint,
  share: number,
  ring: boolean,
): SeatContact {
  const seat = body.spindle.seats[body.stations.seat[station]!]!;
  const u = body.stations.u[station]!;
  return {
    seat: seat.name,
    station: bushStation(seat, u),
    angle: ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI),
    share,
    journalStation: stationAt(seat.gap.journal, u - pose.z * seat.cos),
    film: filmAt(seat, body.stations.film[station]! + (pose.z - body.stations.position) * seat.sin, u, angle, pose),
    ring,
  };
}
