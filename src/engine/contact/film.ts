/**
 * The film between a bush line and a journal line, both on one axis, at any axial position of the journal.
 *
 * Film is the distance from the bush to the journal along the normal of the bush line. In coordinates
 * turned to that line,
 *
 *   u = z·cos a + r·sin a   along the bush line        v = r·cos a - z·sin a   square to it, outward
 *
 * both lines are piecewise linear in u, and moving the journal by p shifts it by (p·cos a, -p·sin a):
 *
 *   film(u; p) = v_bush(u) - v_journal(u - p·cos a) + p·sin a
 *
 * a half angle of the bush (rad) · z, r station and radius (m) · p position (m). Negative film is
 * interference. The sum of two chains is a chain, so it is known exactly by its values at the breakpoints
 * of either inside the overlap and at the ends of the overlap. Cost is linear in the number of breakpoints.
 * Holds for a profile no steeper than 1 in 2 and half angles that differ by 30° at most (design/rules.ts).
 */
import type { Metres, Radians } from '../../design/dimension.ts';
import type { Line } from '../parts/line.ts';

/** Below this (m) two films, or two places, are the same: a thousandth of the accuracy asked of a result. */
export const SAME = 1e-12;

/**
 * One chain in the coordinates (u, v) of a bush line: breakpoints, the slope dv/du of the piece after each, the
 * stations.
 */
export interface Chain {
  u: Float64Array;
  v: Float64Array;
  slope: Float64Array;
  z: Float64Array;
}

export interface Gap {
  /** Half angle of the bush line (rad). */
  halfAngle: Radians;
  bush: Chain;
  journal: Chain;
}

/** The film along the overlap at one position; breakpoints from the rear to the nose. Empty: no overlap. */
export interface FilmChain {
  count: number;
  /** m, along the bush line */
  u: Float64Array;
  /** m */
  film: Float64Array;
}

export function gapOf(bush: Line, journal: Line): Gap {
  const cos = Math.cos(bush.halfAngle);
  const sin = Math.sin(bush.halfAngle);
  return { halfAngle: bush.halfAngle, bush: chainOf(bush, cos, sin), journal: chainOf(journal, cos, sin) };
}

function chainOf({ z, r }: Line, cos: number, sin: number): Chain {
  const n = z.length;
  const u = new Float64Array(n);
  const v = new Float64Array(n);
  const slope = new Float64Array(n - 1);
  for (let i = 0; i < n; i++) {
    u[i] = z[i]! * cos + r[i]! * sin;
    v[i] = r[i]! * cos - z[i]! * sin;
    // Two stations a rounding apart may share one place: a piece of no length has no slope.
    if (i > 0) slope[i - 1] = u[i]! > u[i - 1]! ? (v[i]! - v[i - 1]!) / (u[i]! - u[i - 1]!) : 0;
  }
  return { u, v, slope, z };
}

/** The film along the whole overlap with the journal at `position` (m). */
export function filmAlong(gap: Gap, position: Metres): FilmChain {
  const size = gap.bush.u.length + gap.journal.u.length;
  const chain: FilmChain = { count: 0, u: new Float64Array(size), film: new Float64Array(size) };
  walkOverlap(gap, position, chain);
  return chain;
}

/** Least film (m) over the overlap at `position` (m); null where the two do not overlap. */
export function leastFilm(gap: Gap, position: Metres): number | null {
  const least = walkOverlap(gap, position, null);
  return least === Number.POSITIVE_INFINITY ? null : least;
}

/** Walks the merged breakpoints of the overlap, keeps them in `out` when there is one, and returns the least film. */
function walkOverlap({ bush, journal, halfAngle }: Gap, position: Metres, out: FilmChain | null): number {
  const du = position * Math.cos(halfAngle);
  const dv = position * Math.sin(halfAngle);
  const lastB = bush.u.length - 2;
  const lastJ = journal.u.length - 2;
  const high = Math.min(bush.u[lastB + 1]!, journal.u[lastJ + 1]! + du);
  let u = Math.max(bush.u[0]!, journal.u[0]! + du);
  let least = Number.POSITIVE_INFINITY;
  // No overlap; nor is there one at a position that is no number.
  if (!(u <= high)) return least;
  let b = pieceAt(bush.u, u);
  let j = pieceAt(journal.u, u - du);
  for (;;) {
    const film =
      bush.v[b]! +
      bush.slope[b]! * (u - bush.u[b]!) -
      (journal.v[j]! + journal.slope[j]! * (u - du - journal.u[j]!)) +
      dv;
    if (film < least) least = film;
    if (out) {
      out.u[out.count] = u;
      out.film[out.count++] = film;
    }
    if (u >= high) return least;
    // The next breakpoint of either chain; the last pieces end beyond or at the end of the overlap.
    const nextB = bush.u[b + 1]!;
    const nextJ = journal.u[j + 1]! + du;
    u = Math.min(nextB, nextJ, high);
    if (nextB <= u && b < lastB) b++;
    if (nextJ <= u && j < lastJ) j++;
  }
}

/** The piece of a chain of `count` rising places that starts at or before u; the first or last one beyond its ends. */
export function pieceAt(us: Float64Array, u: number, count = us.length): number {
  let low = 0;
  let high = count - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (us[middle]! <= u) low = middle;
    else high = middle;
  }
  return low;
}

/** Station (m) of the bush at the coordinate u (m) on its line. */
export function stationAt({ u: us, z }: Chain, u: number): number {
  const i = pieceAt(us, u);
  return z[i]! + ((z[i + 1]! - z[i]!) * (u - us[i]!)) / (us[i + 1]! - us[i]!);
}

/**
 * Film gained per axial travel (dimensionless) at the place of breakpoint coordinate u, as the journal moves
 * in the sense `opening` (1 toward the nose, -1 toward the rear). Where a breakpoint of the bush is the
 * nearest place, the journal slides past it: sin a + cos a·dv_journal/du. Where one of the journal is, it
 * slides past the bush: sin a + cos a·dv_bush/du. The smaller of the two is the one that stays the least.
 */
export function filmPerTravel(gap: Gap, position: Metres, u: number, opening: 1 | -1): number {
  const du = position * Math.cos(gap.halfAngle);
  const rates: number[] = [];
  const near = (chain: Chain, at: number) => chain.u.some((v) => Math.abs(v - at) <= SAME);
  if (near(gap.bush, u)) rates.push(slopeBeside(gap.journal, u - du, opening === 1 ? -1 : 1));
  if (near(gap.journal, u - du)) rates.push(slopeBeside(gap.bush, u, opening));
  const gains = rates.map((slope) => Math.sin(gap.halfAngle) + Math.cos(gap.halfAngle) * slope);
  return opening === 1 ? Math.min(...gains) : Math.max(...gains);
}

/** Slope dv/du of a chain just beside u on one side, its end pieces carried on beyond the ends. */
function slopeBeside(chain: Chain, u: number, side: 1 | -1): number {
  const last = chain.u.length - 2;
  let k = 0;
  while (k < last && (side === 1 ? chain.u[k + 1]! <= u + SAME : chain.u[k + 1]! < u - SAME)) k++;
  return chain.slope[k]!;
}
