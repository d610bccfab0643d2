/**
 * How the film of a seat, and the position that gives a film, follow the shape of its two surfaces.
 *
 * The least film stands at a breakpoint of one of the lines (contact/film.ts). With h the film there, a the half
 * angle of the bush, p the position, and primes for slopes dr/dz:
 *
 *   at a breakpoint of the bush (Z, R)      r_j(Z + h·sin a - p) = R - h·cos a
 *     dh·(cos a + r_j'·sin a) = dR_b - dr_j + h·(sin a - r_j'·cos a)·da + r_j'·dp
 *   at a breakpoint of the journal (z, r)   r_b(z + p - h·sin a) = r + h·cos a
 *     dh·(cos a + r_b'·sin a) = dr_b - dr_j + h·(sin a - r_b'·cos a)·da + r_b'·dp
 *
 * dr_b, dr_j changes of the radii at those stations of bush and journal (m). Holding h instead gives dp. Where
 * several breakpoints share the least film (lines that touch all along) it has no one derivative; the mean over
 * them is given, and `Breakpoint` tells each.
 * @source derived (checked against finite differences)
 */
import type { Metres } from '../../design/dimension.ts';
import { filmAlong, type Gap, SAME, stationAt } from '../contact/film.ts';
import { positionForFilm, type SeatLines } from '../contact/fit.ts';
import type { Line, Part } from '../parts/line.ts';
import type { Branch, Influence } from './unknowns.ts';

/** One place where the film is known as a function of shape and position. */
export interface Breakpoint {
  /** whose breakpoint it is */
  of: Part;
  film: Metres;
  /** dh/dp */
  perPosition: number;
  influences: Influence[];
}

/** Every breakpoint at `position` (m) whose film is within `above` (m) of the least. Empty: no overlap. */
function breakpoints(seat: SeatLines, index: number, position: Metres, above: number): Breakpoint[] {
  const { gap } = seat;
  const chain = filmAlong(gap, position);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < chain.count; i++) least = Math.min(least, chain.film[i]!);
  const found: Breakpoint[] = [];
  for (let i = 0; i < chain.count; i++)
    if (chain.film[i]! <= least + above)
      found.push(...breakpointsAt(seat, index, position, chain.u[i]!, chain.film[i]!));
  return found;
}

/** The breakpoints at one place u (m) of the bush line, where the film is `film` (m): one, or two that meet there. */
export function breakpointsAt(seat: SeatLines, index: number, position: Metres, u: number, film: Metres): Breakpoint[] {
  const { gap } = seat;
  const uJournal = u - position * Math.cos(gap.halfAngle);
  const bushStation = stationAt(gap.bush, u);
  const journalStation = stationAt(gap.journal, uJournal);
  const make = (of: Part, slope: number): Breakpoint => {
    const [sin, cos] = [Math.sin(gap.halfAngle), Math.cos(gap.halfAngle)];
    const along = cos + slope * sin;
    return {
      of,
      film,
      perPosition: slope / along,
      influences: [
        { seat: index, part: 'bush', by: 'radius', station: bushStation, rate: 1 / along },
        { seat: index, part: 'journal', by: 'radius', station: journalStation, rate: -1 / along },
        {
          seat: index,
          part: 'bush',
          by: 'halfAngle',
          station: bushStation,
          rate: (film * (sin - slope * cos)) / along,
        },
      ],
    };
  };
  const found: Breakpoint[] = [];
  if (isBreakpoint(gap.bush, u)) found.push(make('bush', slopeAt(seat.journal, journalStation)));
  if (isBreakpoint(gap.journal, uJournal)) found.push(make('journal', slopeAt(seat.bush, bushStation)));
  return found;
}

function isBreakpoint({ u: us }: Gap['bush'], u: number): boolean {
  const k = firstFrom(us, u - SAME);
  return k < us.length && us[k]! <= u + SAME;
}

/** The first place of a rising list that is not below `value`; its length where all are. */
function firstFrom(rising: Float64Array, value: number): number {
  let [low, high] = [0, rising.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rising[middle]! < value) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Slope dr/dz of a line at a station (m), its end pieces carried on. */
function slopeAt({ z, r }: Line, station: Metres): number {
  const k = Math.min(Math.max(firstFrom(z, station) - 1, 0), z.length - 2);
  return (r[k + 1]! - r[k]!) / (z[k + 1]! - z[k]!);
}

export interface Followed {
  /** m */
  value: number;
  influences: Influence[];
}

/** Least film (m) of a seat at `position` (m) and how it follows the shape; null where there is no overlap. */
export function leastFilmFollowed(seat: SeatLines, index: number, position: Metres): Followed | null {
  const points = breakpoints(seat, index, position, SAME);
  if (points.length === 0) return null;
  return { value: Math.min(...points.map((p) => p.film)), influences: mean(points.map((p) => p.influences)) };
}

/**
 * The film (m) of a seat at each of its breakpoints, in their order along the line, and how it follows the shape: the
 * least of them is the seat's own.
 */
export const filmBranches = (seat: SeatLines, index: number, position: Metres): Branch[] =>
  breakpoints(seat, index, position, Number.POSITIVE_INFINITY).map(({ film, influences }) => ({
    value: film,
    influences,
  }));

/** Change of a seat's least film (m) by the position itself (m/m). */
export function filmPerPosition(seat: SeatLines, position: Metres): number | null {
  const points = breakpoints(seat, 0, position, SAME);
  return points.length === 0 ? null : points.reduce((sum, p) => sum + p.perPosition, 0) / points.length;
}

/** Position (m) at which a seat's least film is `film` (m) and how it follows the shape; null where there is none. */
export function positionFollowed(seat: SeatLines, index: number, film: Metres): Followed | null {
  const value = positionForFilm(seat, film);
  if (value === null) return null;
  const branches = positionBranches(seat, index, value, film, SAME);
  return branches.length === 0 ? null : { value, influences: mean(branches.map((b) => b.influences)) };
}

/**
 * The positions at which each breakpoint near the touch would reach `film` by itself, of which the greatest (the
 * least, for a seat that closes noseward) is the seat's own; those whose film is within `above` (m) of the least.
 */
export function positionBranches(
  seat: SeatLines,
  index: number,
  position: Metres,
  film: Metres,
  above: number,
): Branch[] {
  return breakpoints(seat, index, position, above)
    .filter((p) => p.perPosition !== 0)
    .map((p) => ({
      value: position + (film - p.film) / p.perPosition,
      influences: p.influences.map((i) => ({ ...i, rate: -i.rate / p.perPosition })),
    }));
}

/** The mean of several sets of influences: each with its share. */
function mean(sets: readonly Influence[][]): Influence[] {
  return sets.flatMap((set) => set.map((influence) => ({ ...influence, rate: influence.rate / sets.length })));
}
