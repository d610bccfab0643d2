/**
 * How far a push drives a spindle before its contacts hold it: a linear programme at one linearisation.
 *
 *   maximise F·q   subject to   h ≥ 0 everywhere
 *
 * q the free motions · F force and moment (N, N·m). At the greatest, the contacts carry the push,
 * F = Σ share·n with share ≥ 0 (N) normal to the bush, and only where h = 0: their forces are the multipliers.
 *
 * It is solved as the pose nearest to a point FAR out along F from the centre (nearest.ts), and again from the
 * pose so found until it no longer moves: the proximal point method, which ends at a pose of the greatest F·q
 * and, of several, at the one nearest to where it began. Between, the contacts are polished (polish.ts).
 *
 * Nothing restrains a motion d when F·d > 0 and n·d ≤ 0 for every contact whatever; such a d is what is left
 * of F when its nearest point in the cone of free directions is not nothing (Moreau's two cones), and that cone
 * is known in closed form: cos a·hypot(d sideways at Zn) ≤ d axial·sin a.
 * @source Rockafellar1976 theorem 3 (ends after finitely many steps for a linear programme)
 */

import type { Metres, Radians } from '../../design/dimension.ts';
import { dot } from '../algebra/dot.ts';
import type { Motion, Pose, Push } from '../spindle/pose.ts';
import { type Body, type Constraint, freeDirections, SIZE, scaledPush, TOUCH, unscaled } from './body.ts';
import { type Nearest, nearest } from './nearest.ts';
import { polished } from './polish.ts';

/** One contact of a solved push. */
export interface Held {
  station: Metres;
  /** rad, from x toward y */
  angle: Radians;
  /** normal force (N) on the journal */
  share: number;
}

type PushVerdict =
  | { status: 'solved'; pose: Pose; held: Held[]; v: Float64Array }
  /** nothing restrains this motion; its greatest part has the size 1 (m, rad) */
  | { status: 'unbounded'; motion: Pose }
  /** every pose presses the journal in somewhere, the best by this much (m) */
  | { status: 'infeasible'; interference: Metres; pose: Pose }
  /** the search did not settle */
  | { status: 'stalled'; pose: Pose };

/** An interference (m) of no more than this is a touch on all sides. */
const PERFECT = 5e-13;
/** How far out the wanted point stands, in clearances. */
const FAR = 1e5;
/** From here on (in clearances) it is asked whether anything restrains the motion at all. */
const SUSPECT = 1e3;
/** Rounds of the proximal method; two or three do. */
const ROUNDS = 40;
/** Where the contacts fall short of carrying the push by more than this (of the push), the search goes on. */
const BALANCED = 1e-11;
/**
 * The same after several rounds, where a film so level along a motion that no cut can place it leaves a trifle of the
 * push.
 */
const NEARLY = 5e-10;

/** @param start a vector of the body to begin at, the centre when left out */
export function pushed(body: Body, free: ReadonlySet<Motion>, push: Push, start?: Float64Array): PushVerdict {
  const verdict = drive(body, free, push, start);
  if (verdict.status !== 'infeasible' || verdict.interference > PERFECT) return verdict;
  // A perfect fit has one pose, which rounding has lost: every film is let off by what was lost.
  const film = body.stations.film.map((value) => value + verdict.interference + TOUCH);
  const eased = drive({ ...body, stations: { ...body.stations, film }, cuts: [] }, free, push, start);
  return eased.status === 'infeasible' ? { status: 'stalled', pose: eased.pose } : eased;
}

function drive(body: Body, free: ReadonlySet<Motion>, push: Push, start?: Float64Array): PushVerdict {
  const directions = freeDirections(body, free, false);
  const whole = scaledPush(body, push);
  const force = Float64Array.from(directions, (d) => dot(d, whole));
  const size = Math.sqrt(dot(force, force));
  const f = size === 0 ? force : force.map((part) => part / size);
  const toward = (v: Float64Array, far: number) => Float64Array.from(directions, (d, i) => dot(d, v) + far * f[i]!);

  let centre = start ?? new Float64Array(SIZE);
  for (let round = 0; round < ROUNDS; round++) {
    const far = size === 0 ? 0 : FAR;
    for (const allowed of far > 0 && round === 0 ? ROUGH : []) {
      const rough = nearest(body, { directions, target: toward(centre, far), allowed, certain: false });
      if (rough.status === 'empty') return mostCentral(body, free);
      if (dot(rough.v, rough.v) > SUSPECT * SUSPECT) {
        const motion = unrestrained(body, directions, f);
        if (motion) return { status: 'unbounded', motion };
      }
      const fine = polished(body, directions, f, rough, far);
      if (fine)
        return {
          status: 'solved',
          pose: unscaled(body, fine.v),
          v: fine.v,
          held: heldBy(fine.active, fine.multipliers, size),
        };
    }
    const found = nearest(body, { directions, target: toward(centre, far) });
    if (found.status === 'empty') return mostCentral(body, free);
    if (found.status === 'stalled') return { status: 'stalled', pose: unscaled(body, found.v) };
    if (far === 0) return { status: 'solved', pose: unscaled(body, found.v), v: found.v, held: [] };
    const off = imbalance(directions, found, f, far);
    // A journal pinched on all sides may need large forces against each other to carry a small push.
    if (off <= (round < 3 ? BALANCED : NEARLY) * Math.max(1, most(found.multipliers) / far))
      return {
        status: 'solved',
        pose: unscaled(body, found.v),
        v: found.v,
        held: heldBy(found.active, found.multipliers, size / far),
      };
    if (round > 0 && off > DRIFTING) {
      const motion = unrestrained(body, directions, f);
      if (motion) return { status: 'unbounded', motion };
    }
    centre = found.v;
  }
  return { status: 'stalled', pose: unscaled(body, centre) };
}

const most = (values: readonly number[]) => values.reduce((greatest, value) => Math.max(greatest, value), 0);

/** What the first searches let pass, in clearances: enough to know the contacts, not yet their places. */
const ROUGH = [1e-2, 1e-4, 1e-6];

/** A push (of its size) that is still not carried in the second round may be one that nothing restrains. */
const DRIFTING = 1e-7;

/** Parts of a push (of its size) that the contacts do not carry. */
function imbalance(
  directions: readonly Float64Array[],
  { active, multipliers }: Nearest,
  f: Float64Array,
  far: number,
): number {
  let worst = 0;
  for (let i = 0; i < directions.length; i++) {
    let carried = 0;
    for (let j = 0; j < active.length; j++) carried += (multipliers[j]! / far) * dot(directions[i]!, active[j]!.n);
    worst = Math.max(worst, Math.abs(f[i]! - carried));
  }
  return worst;
}

function heldBy(active: readonly Constraint[], multipliers: readonly number[], size: number): Held[] {
  const held: Held[] = [];
  active.forEach((cut, j) => {
    const share = multipliers[j]! * size;
    if (multipliers[j]! > 0) held.push({ station: cut.station, angle: cut.angle, share });
  });
  return held;
}

/** A motion that F drives and nothing restrains, or null. */
function unrestrained(body: Body, directions: readonly Float64Array[], f: Float64Array): Pose | null {
  const seats = body.spindle.seats.map((seat) => ({
    ...seat,
    round: {
      ...seat.round,
      pushX: 0,
      pushY: 0,
      samples: new Float64Array(0),
      count: new Float64Array(0),
      height: 0,
      bend: 0,
    },
  }));
  const stations = { ...body.stations, film: new Float64Array(body.stations.count), position: 0 };
  const cone: Body = { ...body, spindle: { ...body.spindle, seats }, stations, cuts: [] };
  const { status, v } = nearest(cone, { directions, target: f, allowed: 1e-11 });
  if (status !== 'solved' || dot(v, v) < 1e-10) return null;
  const motion = unscaled(cone, v);
  const greatest = Math.max(...Object.values(motion).map(Math.abs));
  return {
    x: motion.x / greatest,
    y: motion.y / greatest,
    z: motion.z / greatest,
    tiltX: motion.tiltX / greatest,
    tiltY: motion.tiltY / greatest,
  };
}

/**
 * The pose whose least film anywhere is greatest, where none is clear: the least interference needed. The
 * film e added to every seat is the sixth unknown, and is pushed down as far as it goes.
 */
function mostCentral(body: Body, free: ReadonlySet<Motion>): PushVerdict {
  const directions = freeDirections(body, free, true);
  let centre = new Float64Array(SIZE);
  for (let round = 0; round < ROUNDS; round++) {
    const target = Float64Array.from(directions, (d) => dot(d, centre) - FAR * d[5]!);
    const found = nearest(body, { directions, target });
    const before = centre[5]!;
    centre = found.v as Float64Array<ArrayBuffer>;
    if (found.status !== 'solved') break;
    if (round > 0 && Math.abs(centre[5]! - before) <= (0.1 * TOUCH) / body.scale) break;
  }
  const pose = unscaled(body, centre);
  return { status: 'infeasible', interference: Math.max(0, body.scale * centre[5]!), pose };
}
