/**
 * Where a journal first touches its bush as it is pushed rearward from far in front, both on one axis.
 *
 * A point of the journal at radius r travels along the axis and meets the bush at the station where the
 * bush has that radius. The journal stops at the first such meeting:
 *
 *   position = max over r of [ Z(r) - z(r) ]
 *
 *   Z(r) foremost station at which the bush is no wider than r (m)
 *   z(r) rearmost station at which the journal is at least r wide (m)
 *
 * For lines that widen steadily those are the places of radius r themselves. Where a line goes back on
 * itself (a bell mouth, a ridge) they are its frontier, the part that can be met from the front. Both are
 * piecewise linear in r, so the greatest value stands at one of their breakpoints, corners included: the
 * result is exact, with no sampling and no tolerance. Cost is linear in the number of breakpoints.
 */
import type { Metres } from '../../design/dimension.ts';
import { inset, type Line } from '../parts/line.ts';

/** Radius rising; at a jump (equal radii) the first entry is the frontier's own station. */
interface Frontier {
  count: number;
  r: Float64Array;
  z: Float64Array;
}

/**
 * Position (m) at which the journal first touches, or null when the two have no radius in common: the one
 * passes through the other, or cannot enter it. With a `film` (m) the bush is taken smaller by it all along, moved
 * along its own inner normal: the journal stops where its least film is that one.
 */
export function firstTouch(bush: Line, journal: Line, film = 0): number | null {
  if (widens(bush) && widens(journal)) return touchOfWidening(bush, journal, film);
  const j = frontier(journal, 1);
  const b = frontier(inset(bush, film), -1);
  // b holds the bush turned about the origin, (-r, -z), in rising -r: read backwards it is Z over rising r.
  const low = Math.max(j.r[0]!, -b.r[b.count - 1]!);
  const high = Math.min(j.r[j.count - 1]!, -b.r[0]!);
  // Written so that a film without a number has no touch either: the walk below would never end.
  if (!(low <= high)) return null;

  let best = Number.NEGATIVE_INFINITY;
  let ji = 0;
  let bi = b.count - 1;
  // Walk the merged breakpoints upward; at each radius take the rearmost journal and the foremost bush station.
  for (let r = low; ; ) {
    while (j.r[ji]! < r) ji++;
    while (bi > 0 && -b.r[bi - 1]! <= r) bi--;
    best = Math.max(best, stationOfBush(b, bi, r) - stationOfJournal(j, ji, r));
    if (r >= high) return best;
    let next = high;
    for (let k = ji; k < j.count; k++) {
      if (j.r[k]! > r) {
        next = Math.min(next, j.r[k]!);
        break;
      }
    }
    if (bi > 0) next = Math.min(next, -b.r[bi - 1]!);
    r = next;
  }
}

/**
 * The same for lines that widen all along, which are their own frontiers: each breakpoint of the one against the
 * piece of the other. The bush moved by the film, (dz, -dr), has the station Z(r + dr) + dz at the radius r.
 */
function touchOfWidening(bush: Line, journal: Line, film: Metres): number | null {
  const dz = film * Math.sin(bush.halfAngle);
  const dr = film * Math.cos(bush.halfAngle);
  const low = Math.max(bush.r[0]! - dr, journal.r[0]!);
  const high = Math.min(bush.r[bush.r.length - 1]! - dr, journal.r[journal.r.length - 1]!);
  // Written so that a film without a number has no touch either: the walk below would never end.
  if (!(low <= high)) return null;
  return dz + Math.max(greatestGain(bush, journal, -dr, low, high, 1), greatestGain(journal, bush, dr, low, high, -1));
}
/**
 * Greatest of sign·(z of a breakpoint of `line` - z of `other` at that radius) over the breakpoints whose journal
 * radius lies from low to high; `offset` (m) takes a radius of `line` to that of `other`.
 */
function greatestGain(
  { z, r }: Line,
  { z: oz, r: or }: Line,
  offset: number,
  low: number,
  high: number,
  sign: 1 | -1,
): number {
  // low and high are radii of the journal, which is `line` where the sign is -1.
  const own = sign === 1 ? offset : 0;
  const last = or.length - 2;
  let best = Number.NEGATIVE_INFINITY;
  let k = 0;
  for (let i = 0; i < r.length; i++) {
    if (r[i]! + own < low) continue;
    if (r[i]! + own > high) break;
    const at = r[i]! + offset;
    while (k < last && or[k + 1]! < at) k++;
    // A breakpoint of the other line is met exactly.
    const there =
      or[k + 1]! === at ? oz[k + 1]! : oz[k]! + ((oz[k + 1]! - oz[k]!) * (at - or[k]!)) / (or[k + 1]! - or[k]!);
    const gain = sign * (z[i]! - there);
    if (gain > best) best = gain;
  }
  return best;
}

/** Rearmost journal station with radius r; entry i is the first with radius ≥ r. */
function stationOfJournal(f: Frontier, i: number, r: number): number {
  const r1 = f.r[i]!;
  if (r1 === r) return f.z[i]!;
  const r0 = f.r[i - 1]!;
  return f.z[i - 1]! + ((f.z[i]! - f.z[i - 1]!) * (r - r0)) / (r1 - r0);
}

/** Foremost bush station with radius r; entry i of the turned frontier is the last (foremost) with radius ≤ r. */
function stationOfBush(f: Frontier, i: number, r: number): number {
  const r0 = -f.r[i]!;
  if (r0 === r) return -f.z[i]!;
  const r1 = -f.r[i - 1]!;
  return -f.z[i]! + ((f.z[i]! - f.z[i - 1]!) * (r - r0)) / (r1 - r0);
}

/**
 * The part of a line that sets a new greatest radius as it is followed: from the rear with sign 1, or, with
 * sign -1, of the line turned about the origin, which follows the smallest radius from the front.
 */
function frontier(line: Line, sign: 1 | -1): Frontier {
  const n = line.z.length;
  const r = new Float64Array(2 * n);
  const z = new Float64Array(2 * n);
  let count = 0;
  let beforeR = 0;
  let beforeZ = 0;
  for (let k = 0; k < n; k++) {
    const i = sign === 1 ? k : n - 1 - k;
    const rk = sign * line.r[i]!;
    const zk = sign * line.z[i]!;
    if (count === 0) {
      r[0] = rk;
      z[0] = zk;
      count = 1;
    } else if (rk > r[count - 1]!) {
      const top = r[count - 1]!;
      r[count] = top;
      z[count] = beforeZ + ((zk - beforeZ) * (top - beforeR)) / (rk - beforeR);
      count++;
      r[count] = rk;
      z[count] = zk;
      count++;
    }
    beforeR = rk;
    beforeZ = zk;
  }
  return { count, r, z };
}

function widens({ r }: Line): boolean {
  for (let i = 1; i < r.length; i++) if (r[i]! <= r[i - 1]!) return false;
  return true;
}
