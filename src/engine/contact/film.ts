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
import type { Line } from '../geometry/line.ts';

/** Below this (m) two films, or two places, are the same: a thousandth of the accuracy asked of a result. */
export const SAME = 1e-12;

/** One chain in the coordinates (u, v) of a bush line, with the station of each breakpoint. */
export interface Chain {
  u: Float64Array;
  v: Float64Array;
  z: Float64Array;
}

export interface Gap {
  /** Half angle of the bush line (rad). */
  halfAngle: number;
  bush: Chain;
  journal: Chain;
}

/** The film along the overlap at one position; breakpoints from the rear to the nose. Empty: no overlap. */
export interface FilmChain {
  count: number;
  u: Float64Array;
  /** bush station (m) */
  station: Float64Array;
  /** m */
  film: Float64Array;
}

export function gapOf(bush: Line, journal: Line): Gap {
  const chain = (line: Line): Chain => {
    const cos = Math.cos(bush.halfAngle);
    const sin = Math.sin(bush.halfAngle);
    return { u: line.z.map((z, i) => z * cos + line.r[i]! * sin), v: line.r.map((r, i) => r * cos - line.z[i]! * sin), z: line.z };
  };
  return { halfAngle: bush.halfAngle, bush: chain(bush), journal: chain(journal) };
}

/** The film along the whole overlap with the journal at `position` (m). */
export function filmAlong(gap: Gap, position: number): FilmChain {
  const { bush, journal } = gap;
  const du = position * Math.cos(gap.halfAngle);
  const dv = position * Math.sin(gap.halfAngle);
  const nb = bush.u.length;
  const nj = journal.u.length;
  const low = Math.max(bush.u[0]!, journal.u[0]! + du);
  const high = Math.min(bush.u[nb - 1]!, journal.u[nj - 1]! + du);
  const size = low > high ? 0 : nb + nj;
  const out: FilmChain = { count: 0, u: new Float64Array(size), station: new Float64Array(size), film: new Float64Array(size) };
  if (size === 0) return out;

  let b = 0;
  let j = 0;
  for (let u = low; ; ) {
    while (b < nb - 2 && bush.u[b + 1]! <= u) b++;
    while (j < nj - 2 && journal.u[j + 1]! + du <= u) j++;
    const tb = (u - bush.u[b]!) / (bush.u[b + 1]! - bush.u[b]!);
    const tj = (u - du - journal.u[j]!) / (journal.u[j + 1]! - journal.u[j]!);
    out.u[out.count] = u;
    out.station[out.count] = bush.z[b]! + tb * (bush.z[b + 1]! - bush.z[b]!);
    out.film[out.count] = bush.v[b]! + tb * (bush.v[b + 1]! - bush.v[b]!) - (journal.v[j]! + tj * (journal.v[j + 1]! - journal.v[j]!)) + dv;
    out.count++;
    if (u >= high) return out;
    // The next breakpoint of either chain; the last pieces end beyond or at the end of the overlap.
    let next = high;
    if (bush.u[b + 1]! > u) next = Math.min(next, bush.u[b + 1]!);
    if (journal.u[j + 1]! + du > u) next = Math.min(next, journal.u[j + 1]! + du);
    u = next;
  }
}

/** Least film (m) over the overlap at `position` (m); null where the two do not overlap. */
export function leastFilm(gap: Gap, position: number): number | null {
  const { film, count } = filmAlong(gap, position);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count; i++) least = Math.min(least, film[i]!);
  return count === 0 ? null : least;
}

/**
 * Film gained per axial travel (dimensionless) at the place of breakpoint coordinate u, as the journal moves
 * in the sense `opening` (1 toward the nose, -1 toward the rear). Where a breakpoint of the bush is the
 * nearest place, the journal slides past it: sin a + cos a·dv_journal/du. Where one of the journal is, it
 * slides past the bush: sin a + cos a·dv_bush/du. The smaller of the two is the one that stays the least.
 */
export function filmPerTravel(gap: Gap, position: number, u: number, opening: 1 | -1): number {
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
  return (chain.v[k + 1]! - chain.v[k]!) / (chain.u[k + 1]! - chain.u[k]!);
}
