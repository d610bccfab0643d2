/**
 * Where the nose can go: the play map, and the pose that comes nearest to where it is pulled.
 *
 * The points (X, Y) an indicator at the station S can be moved to with the position held are the shadow of the
 * body of poses: convex, and known by its furthest point in every direction (its support), each a linear
 * programme (push.ts). The polygon of those points lies inside the region and touches its edge at every one.
 *
 * A pointer pulls toward (X*, Y*): the pose wanted is
 *
 *   minimise |(X, Y) - (X*, Y*)|² + LIGHT·|v|²
 *
 * |v| the size of the whole motion (body.ts), weighed so lightly that it only chooses between poses that put the
 * nose in one place. It is one nearest-point search (nearest.ts) in directions that carry that weight.
 */

import type { Metres } from '../../design/dimension.ts';
import { dot } from '../algebra/dot.ts';
import { lowerRoot, lowerSolved } from '../algebra/triangular.ts';
import { axisAt, type Pose, pushAt } from '../spindle/pose.ts';
import { type Body, freeDirections, SIZE, TOUCH, unscaled } from './body.ts';
import { type Bearing, bearingOf } from './contacts.ts';
import { nearest } from './nearest.ts';
import { type Held, pushed } from './push.ts';

interface ReachPoint {
  /** m, where the axis stands at the indicator */
  x: number;
  y: number;
}

type PlayMap =
  | { status: 'solved'; polygon: ReachPoint[] }
  | { status: 'unbounded'; motion: Pose }
  | { status: 'infeasible'; interference: Metres; pose: Pose }
  | { status: 'stalled'; pose: Pose };

/** The region the axis can reach at a station (m), in `count` directions; `body` from heldAt (shake.ts). */
export function playMap(body: Body, station: Metres, count = 72): PlayMap {
  const polygon: ReachPoint[] = [];
  for (let k = 0; k < count; k++) {
    const angle = (2 * Math.PI * k) / count;
    const verdict = pushed(body, body.spindle.free, pushAt(station, { x: Math.cos(angle), y: Math.sin(angle) }));
    if (verdict.status !== 'solved') return verdict;
    polygon.push(axisAt(verdict.pose, station));
  }
  return {
    status: 'solved',
    polygon: polygon.filter((point, k) => !sameAs(point, polygon[(k + count - 1) % count]!, body.scale)),
  };
}

/** of the reach: points nearer to each other are one */
const ONE_POINT = 1e-9;

/** Two directions may have one furthest point: a corner of the region. The first of equal points stays. */
const sameAs = (a: ReachPoint, b: ReachPoint, scale: number) =>
  a !== b && Math.hypot(a.x - b.x, a.y - b.y) < ONE_POINT * scale;

type Reach =
  /**
   * `short` how far the nose stops short of where it was pulled (m); shares of a pull of 1 N, none where it stops
   * nowhere
   */
  ({ status: 'solved'; pose: Pose; short: number } & Bearing) | { status: 'infeasible' } | { status: 'stalled' };

const LIGHT = 1e-6;
const ROUNDS = 3;

/**
 * The pose whose axis at a station (m) comes nearest to (x, y) (m); `body` from heldAt, or from bodyAt where z is free
 * too.
 */
export function reachToward(body: Body, station: Metres, x: number, y: number): Reach {
  const directions = freeDirections(body, body.spindle.free, false);
  const zeta = (station - body.middle) / body.reach;
  const across = directions.map((d) => [d[0]! + zeta * d[4]!, d[1]! - zeta * d[3]!] as const);
  const root = lowerRoot(
    across.length,
    (i, k) => across[i]![0] * across[k]![0] + across[i]![1] * across[k]![1] + (i === k ? LIGHT : 0),
  );
  const weighed = weighedDirections(directions, root);
  const wanted = [x / body.scale, y / body.scale] as const;
  let centre = new Float64Array(SIZE);
  let found = null;
  for (let round = 0; round < ROUNDS; round++) {
    const pull = across.map((a, i) => a[0] * wanted[0] + a[1] * wanted[1] + LIGHT * dot(directions[i]!, centre));
    found = nearest(body, { directions: weighed, target: Float64Array.from(lowerSolved(root, pull)) });
    if (found.status === 'empty') return { status: 'infeasible' };
    if (found.status === 'stalled') return { status: 'stalled' };
    centre = found.v as Float64Array<ArrayBuffer>;
    if (found.active.length === 0) break;
  }
  const pose = unscaled(body, centre);
  const at = axisAt(pose, station);
  const [dx, dy] = [x - at.x, y - at.y];
  const short = Math.hypot(dx, dy);
  // A pull that is a rounding long has no direction to speak of.
  if (short < 10 * TOUCH) return { status: 'solved', pose, short: 0, contacts: [], shared: false };
  const held = gathered(
    found!.active.map(({ station: k, angle }, j) => ({
      station: k,
      angle,
      share: (found!.multipliers[j]! * body.scale) / short,
    })),
  );
  return {
    status: 'solved',
    pose,
    short,
    ...bearingOf(body, centre, pushAt(station, { x: dx / short, y: dy / short }), held),
  };
}

/**
 * Contacts nearer to each other round one station than this (rad) are shown as one; their force together is kept to its
 * square.
 */
const ONE = 1e-3;

function gathered(held: readonly Held[]): Held[] {
  const kept: Held[] = [];
  for (const { station, angle, share } of held) {
    const same = kept.find((h) => h.station === station && Math.abs(Math.sin((h.angle - angle) / 2)) < ONE / 2);
    if (!same) kept.push({ station, angle, share });
    else {
      same.angle += (share / (share + same.share)) * Math.asin(Math.sin(angle - same.angle));
      same.share += share;
    }
  }
  return kept;
}

/** Directions whose unknowns y = Lᵀ·w have the weighed length: the columns of Q·L⁻ᵀ. */
function weighedDirections(directions: readonly Float64Array[], root: readonly (readonly number[])[]): Float64Array[] {
  const columns = directions.map(() => new Float64Array(SIZE));
  for (let k = 0; k < SIZE; k++) {
    const row = lowerSolved(
      root,
      directions.map((d) => d[k]!),
    );
    row.forEach((value, i) => {
      columns[i]![k] = value;
    });
  }
  return columns;
}
