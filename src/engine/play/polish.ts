/**
 * The contacts of a push made exact, from a search that knows them roughly.
 *
 * Cuts close in on a curved contact from both sides. Once the contacts are known, their angles, the pose and the
 * shares are found together by Newton's method on
 *
 *   Σ λ·n(φ) = f        b(φ) - n(φ)·v = 0        ∂/∂φ [ b(φ) - n(φ)·v ] = 0
 *
 * with the angles done away with: a contact whose film has the curvature κ along φ, and whose normal turns by
 * n′ = dn/dφ, adds λ·n′·n′ᵀ/κ to the curvature of the whole, and the step (δ, λ) solves
 *
 *   ( H   N ) ( δ )   ( f )
 *   ( Nᵀ  0 ) ( λ ) = ( b - Nᵀ·v )        H = Σ λ·n′·n′ᵀ/κ + FIRM·1
 *
 * FIRM keeps the pose where it is in the motions that nothing decides. The zero of the corner is -SOFT, and SOFT·λ
 * of the step before is taken off the right side, which keeps the shares as they are where more places touch than
 * decide them. Neither enters what is solved.
 * Gives up, and leaves it to the cuts, where the contacts turn out to be others, or to press nowhere (a ring).
 */

import type { Metres, Radians } from '../../design/dimension.ts';
import { dot } from '../algebra/dot.ts';
import { eliminated } from '../algebra/elimination.ts';
import { lobesBend, type Worst } from '../spindle/lobes.ts';
import { type Body, type Constraint, constraintAt, cutOff, pressedIn, TOUCH } from './body.ts';
import type { Nearest } from './nearest.ts';

interface Polished {
  v: Float64Array;
  active: Constraint[];
  /** shares of a push of size 1 */
  multipliers: number[];
}

const FIRM = 1e-6;
const SOFT = 1e-8;
const STEPS = 12;
/** Film of the contacts (in clearances) and imbalance (of the push) at which it is done. */
const STILL = 1e-12;
/** Two angles (rad) nearer than this are one contact. */
const ONE = 1e-4;

export function polished(
  body: Body,
  directions: readonly Float64Array[],
  f: Float64Array,
  rough: Nearest,
  far: number,
): Polished | null {
  if (rough.status !== 'solved') return null;
  const v = rough.v.slice();
  let contacts = gathered(body, v, rough.active, rough.multipliers, far);
  for (let step = 0; contacts && step < STEPS; step++) {
    const shares = newton(body, directions, f, v, contacts);
    if (!shares) return null;
    contacts = followed(body, v, shares, contacts);
    if (!contacts) return null;
    if (carried(directions, f, contacts) <= STILL && resting(v, contacts) <= STILL) return certified(body, v, contacts);
  }
  return null;
}

interface Contact {
  cut: Constraint;
  share: number;
}

/** The angle of the least film near `angle` at v by Newton's method; null where the film is level there. */
function settledAngle(body: Body, station: Metres, v: Float64Array, angle: Radians): number | null {
  const { seats } = body.spindle;
  const seat = seats[body.stations.seat[station]!]!;
  if (seat.round.samples.length === 0) {
    const worst: Worst = { value: 0, angle };
    pressedIn(body, station, v, false, worst);
    return worst.angle;
  }
  let at = angle;
  for (let i = 0; i < 12; i++) {
    const { slope, bend } = along(body, station, v, at);
    if (!(bend > 0)) return null;
    const move = -slope / bend;
    if (Math.abs(move) > 0.5) return null;
    at += move;
    if (Math.abs(move) < 1e-12) break;
  }
  return at;
}

/** First and second derivative of the scaled film at v along the angle. */
function along(body: Body, station: Metres, v: Float64Array, angle: Radians): { slope: number; bend: number } {
  const { seats } = body.spindle;
  const seat = seats[body.stations.seat[station]!]!;
  const { round } = seat;
  const zeta = (body.stations.zn[station]! - body.middle) / body.reach;
  const x = seat.cos * (v[0]! + zeta * v[4]!) + round.pushX / body.scale;
  const y = seat.cos * (v[1]! - zeta * v[3]!) + round.pushY / body.scale;
  let slope = x * Math.sin(angle) - y * Math.cos(angle);
  for (let i = 0; i < round.count.length; i++) {
    const n = round.count[i]!;
    slope -= (n * (round.sin[i]! * Math.cos(n * angle) - round.cos[i]! * Math.sin(n * angle))) / body.scale;
  }
  return { slope, bend: x * Math.cos(angle) + y * Math.sin(angle) - lobesBend(round, angle) / body.scale };
}

/** The cuts of a search, those of one contact together. */
function gathered(
  body: Body,
  v: Float64Array,
  active: readonly Constraint[],
  multipliers: readonly number[],
  far: number,
): Contact[] | null {
  const contacts: Contact[] = [];
  for (let j = 0; j < active.length; j++) {
    const { station } = active[j]!;
    const share = multipliers[j]! / far;
    if (share <= 0) continue;
    const angle = settledAngle(body, station, v, active[j]!.angle);
    if (angle === null) return null;
    const same = contacts.find((c) => c.cut.station === station && Math.abs(Math.sin((c.cut.angle - angle) / 2)) < ONE);
    if (same) same.share += share;
    else contacts.push({ cut: constraintAt(body, station, angle), share });
  }
  return contacts;
}

/** The same contacts at their angles now, without those that no longer press; null where an angle is lost. */
function followed(
  body: Body,
  v: Float64Array,
  shares: readonly number[],
  contacts: readonly Contact[],
): Contact[] | null {
  const next: Contact[] = [];
  for (let j = 0; j < contacts.length; j++) {
    const { station, angle } = contacts[j]!.cut;
    // One that would have to pull is no contact.
    if (shares[j]! <= 0) continue;
    const settled = settledAngle(body, station, v, angle);
    if (settled === null) return null;
    next.push({ cut: constraintAt(body, station, settled), share: shares[j]! });
  }
  return next.length === 0 ? null : next;
}

/** One step: v is moved, the new shares are given back. */
function newton(
  body: Body,
  directions: readonly Float64Array[],
  f: Float64Array,
  v: Float64Array,
  contacts: readonly Contact[],
): number[] | null {
  const n = directions.length;
  const m = contacts.length;
  const rows: number[][] = Array.from({ length: n + m }, () => new Array<number>(n + m + 1).fill(0));
  for (let i = 0; i < n; i++) {
    rows[i]![i] = FIRM;
    rows[i]![n + m] = f[i]!;
  }
  for (let j = 0; j < m; j++) {
    const { cut, share } = contacts[j]!;
    const { bend } = along(body, cut.station, v, cut.angle);
    if (!(bend > 0)) return null;
    const turned = turning(cut);
    for (let i = 0; i < n; i++) {
      const normal = dot(directions[i]!, cut.n);
      const one = dot(directions[i]!, turned);
      rows[i]![n + j] = normal;
      rows[n + j]![i] = normal;
      for (let k = 0; k < n; k++) rows[i]![k]! += (share * one * dot(directions[k]!, turned)) / bend;
    }
    rows[n + j]![n + j] = -SOFT;
    rows[n + j]![n + m] = cut.b - dot(cut.n, v) - SOFT * share;
  }
  const solution = eliminated(rows, SINGULAR);
  if (!solution) return null;
  for (let i = 0; i < n; i++) for (let k = 0; k < v.length; k++) v[k]! += solution[i]! * directions[i]![k]!;
  return solution.slice(n);
}

/** A pivot (of the scaled system, which is of the size of 1) of no more than this is none. */
const SINGULAR = 1e-13;

/** dn/dφ of a cut. */
function turning({ n }: Constraint): Float64Array {
  const lever = n[0]! * n[0]! > n[1]! * n[1]! ? n[4]! / n[0]! : -n[3]! / n[1]!;
  return Float64Array.of(-n[1]!, n[0]!, 0, -lever * n[0]!, -lever * n[1]!, 0);
}

/** The greatest part of the push (of its size) that the contacts do not carry. */
function carried(directions: readonly Float64Array[], f: Float64Array, contacts: readonly Contact[]): number {
  let most = 0;
  for (let i = 0; i < directions.length; i++) {
    let rest = f[i]!;
    for (const { cut, share } of contacts) rest -= share * dot(directions[i]!, cut.n);
    most = Math.max(most, Math.abs(rest));
  }
  return most;
}

/** The greatest film or interference of the contacts themselves (in clearances). */
const resting = (v: Float64Array, contacts: readonly Contact[]) =>
  contacts.reduce((most, { cut }) => Math.max(most, Math.abs(cut.b - dot(cut.n, v))), 0);

/** What is polished is only taken when nothing is pressed in anywhere; what is, is known as a cut from then on. */
function certified(body: Body, v: Float64Array, contacts: readonly Contact[]): Polished | null {
  if (cutOff(body, v, TOUCH / body.scale, true) > TOUCH / body.scale) return null;
  return { v, active: contacts.map(({ cut }) => cut), multipliers: contacts.map(({ share }) => share) };
}
