/**
 * What is assumed goes on following what it was assumed by, for as long as nobody types it: by the change alone, so
 * that a design need not say how each number came about.
 *
 *   a bore        the journal that runs in it, and the film wanted:  D ← D + Δd(at its station) + Δ(2·film/cos a)
 *   a journal     the bore, where that is known:                     d ← d + ΔD(at its station) - Δ(2·film/cos a)
 *   ends, station and half angle of the one part                     those of the other
 *   the tolerance of a film                                          the film, in proportion
 *   both diameters of a seat                                         the seats that are known, in proportion
 *
 * Lengths and places along the axis do not follow the diameters: a design does not tell a length that was typed, of a
 * seat whose place nobody knows, from one that was not.
 */
import type { Design, Part, Seat, Surface } from './definition.ts';
import { radians } from './dimension.ts';
import { pathAfter } from './follow.ts';
import { exact, fine, proportional, tidy } from './rounded.ts';
import type { System } from './units.ts';

/** A seat before and after a change, and which of its numbers were assumed and still are. */
interface Pair {
  index: number;
  was: Seat;
  is: Seat;
  assumed(key: string): boolean;
}

/** @param after with what is assumed of it (assumedAfter) */
export function withFollowing(before: Design, after: Design, system: System): Design {
  if (before.assumed === undefined || after.assumed === undefined || before.seats === after.seats) return after;
  const pairs = pairsOf(before, after);
  const scale = proportion(pairs);
  const seats = [...after.seats];
  for (const pair of pairs) seats[pair.index] = followed(pair, scale, system);
  return seats.every((seat, i) => seat === after.seats[i]) ? after : { ...after, seats };
}

function pairsOf(before: Design, after: Design): Pair[] {
  return before.seats.flatMap((was, i) => {
    const path = pathAfter(`seats[${i}]`, before, after);
    const index = path === null ? -1 : Number(/\d+/.exec(path)![0]);
    const is = after.seats[index];
    if (!is) return [];
    const [from, to] = [new Set(before.assumed), new Set(after.assumed)];
    return [{ index, was, is, assumed: (key) => from.has(`seats[${i}].${key}`) && to.has(`${path}.${key}`) }];
  });
}

const isGuessed = ({ assumed }: Pair) => assumed('journal.diameter') && assumed('bush.diameter');

/** How much larger the seats that are known became, on the whole. */
function proportion(pairs: readonly Pair[]): number {
  const ratios = pairs
    .filter((pair) => !isGuessed(pair))
    .map(({ was, is, assumed }) => {
      const part: Part = assumed('journal.diameter') ? 'bush' : 'journal';
      return is[part].diameter / was[part].diameter;
    });
  return ratios.length === 0 ? 1 : Math.exp(ratios.reduce((sum, ratio) => sum + Math.log(ratio), 0) / ratios.length);
}

function followed(pair: Pair, scale: number, system: System): Seat {
  const { was, assumed } = pair;
  let seat = pair.is;
  if (isGuessed(pair)) seat = with_(seat, 'journal', 'diameter', scaled(seat.journal.diameter, scale, system));
  for (const key of ['halfAngle', 'station', 'from', 'to'] as const) seat = alongside(pair, seat, key);
  if (assumed('bush.diameter')) seat = opened(was, seat, 'bush', 'journal', 1, system);
  else if (assumed('journal.diameter')) seat = opened(was, seat, 'journal', 'bush', -1, system);
  const { film } = seat;
  if (film?.tolerance !== undefined && was.film?.tolerance && assumed('film.tolerance')) {
    const tolerance = proportional((was.film.tolerance * film.target) / was.film.target);
    if (tolerance !== film.tolerance) seat = { ...seat, film: { ...film, tolerance } };
  }
  return seat;
}

/** A hair more or less is no other size of a drawing. */
function scaled(diameter: number, scale: number, system: System): number {
  const now = tidy(diameter * scale, system);
  return now === tidy(diameter, system) ? diameter : now;
}

/** The one part's number moves with the other's. */
function alongside({ was, assumed }: Pair, seat: Seat, key: 'halfAngle' | 'station' | 'from' | 'to'): Seat {
  const part: Part | null = assumed(`bush.${key}`) ? 'bush' : assumed(`journal.${key}`) ? 'journal' : null;
  if (part === null) return seat;
  const other = otherOf(part);
  const by = seat[other][key] - was[other][key];
  return by === 0 ? seat : with_(seat, part, key, exact(was[part][key] + by));
}

/** A diameter that stands off the other part by as much as before, and by what the film wanted changed. */
function opened(was: Seat, seat: Seat, part: Part, other: Part, sign: 1 | -1, system: System): Seat {
  const facing = (of: Seat) =>
    diameterAt(of[other], of[part].station) + (sign * 2 * (of.film?.target ?? 0)) / cosine(of[other].halfAngle);
  const by = facing(seat) - facing(was);
  return Math.abs(by) < NOTHING ? seat : with_(seat, part, 'diameter', fine(was[part].diameter + by, system));
}

/** mm: rounding of the numbers. */
const NOTHING = 1e-7;

const otherOf = (part: Part): Part => (part === 'bush' ? 'journal' : 'bush');
const with_ = (seat: Seat, part: Part, key: keyof Surface, value: number): Seat =>
  seat[part][key] === value ? seat : { ...seat, [part]: { ...seat[part], [key]: value } };

const cosine = (degrees: number) => Math.cos(radians(degrees));
/** Of the base line at a station, mm. */
export const diameterAt = ({ diameter, station, halfAngle }: Surface, at: number): number =>
  diameter + 2 * (at - station) * Math.tan(radians(halfAngle));
