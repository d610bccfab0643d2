/**
 * The fit of a spindle in its bush, all seats on one axis: which seat touches first as the journal goes
 * home, the film of every seat at any position, the position that gives a wanted film, and how far the two
 * cones of the pair are from the one axial relation that gives both their film at once.
 *
 * Everything is in closed form over the breakpoints of the lines (firstTouch.ts, film.ts). SI units.
 */
import type { Metres } from '../../design/dimension.ts';
import { type Line, lineOf, mirrored, type Surface } from '../parts/line.ts';
import { type FilmChain, filmAlong, filmPerTravel, type Gap, gapOf, leastFilm, SAME, stationAt } from './film.ts';
import { firstTouch } from './firstTouch.ts';
import { permittedOf, type Relation, relationsOf, toleratedOf } from './relation.ts';

export type Closes = 'rearward' | 'noseward' | 'never';
type ContactEnd = 'small' | 'large' | 'middle' | 'whole';

export interface SeatInput {
  name: string;
  journal: Surface;
  bush: Surface;
  /** m */
  target?: Metres;
  /** m */
  tolerance?: number;
}

/** A seat made ready for questions: its lines, and which way it closes. */
export interface SeatLines {
  name: string;
  closes: Closes;
  bush: Line;
  journal: Line;
  gap: Gap;
  wanted: Wanted | null;
}

/** The film (m) a seat is to have, and how far it may be off. */
export interface Wanted {
  target: Metres;
  tolerance: number;
}

/** From the rear to the nose: stations of the bush, or positions of the journal (m). */
export interface Stretch {
  from: number;
  to: number;
}

export interface Contact {
  /** bush station (m) of the touch; of its small end where it is a stretch */
  station: Metres;
  /** m */
  radius: Metres;
  end: ContactEnd;
  /** every stretch that touches at that position, the small end's first */
  stretches: Stretch[];
}

export interface SeatFit {
  name: string;
  closes: Closes;
  seatPosition: Metres | null;
  contact: Contact | null;
  leastFilm: Metres | null;
  leastFilmStation: number | null;
  greatestFilm: Metres | null;
  sensitivity: number | null;
  positionForTarget: number | null;
  /** least film of every seat (m) with the journal at that position */
  filmsAtTarget: (number | null)[] | null;
  /**
   * positions (m) at which this seat's own film is within its tolerance; null where no move gives it or none is wanted
   */
  tolerated: Stretch | null;
}

export interface Fit {
  seats: SeatFit[];
  first: string | null;
  /** seats that touch together with the first (and the first itself) */
  together: string[];
  firstPosition: number | null;
  filmsAtFirst: (number | null)[];
  /** less than nothing where the two stops overlap */
  endPlay: number | null;
  /** of every pair of seats that have a position for their film, in their order */
  relations: Relation[];
  /** that of the first two of them */
  relation: Relation | null;
  /**
   * positions (m) at which every film wanted is within its tolerance and no metal in metal; null when there are none
   */
  permitted: Stretch | null;
}

/**
 * A seat closes rearward when it widens toward the nose. The bush decides; where it is straight, the
 * journal; where the two lean opposite ways (a straight bearing as measured), the one that leans more.
 */
function closingOf(bush: number, journal: number): Closes {
  const lean = bush * journal > 0 ? bush : bush + journal;
  return lean > 0 ? 'rearward' : lean < 0 ? 'noseward' : 'never';
}

export function seatLines(seat: SeatInput): SeatLines {
  const bush = lineOf(seat.bush, 'outside');
  const journal = lineOf(seat.journal, 'inside');
  return {
    name: seat.name,
    closes: closingOf(bush.halfAngle, journal.halfAngle),
    bush,
    journal,
    gap: gapOf(bush, journal),
    wanted: seat.target === undefined ? null : { target: seat.target, tolerance: seat.tolerance ?? 0 },
  };
}

/** Position (m) at which the least film of this seat alone is `film` (m); 0 is its first touch. Null: at none. */
export function positionForFilm(seat: SeatLines, film: Metres): number | null {
  if (seat.closes === 'never') return null;
  if (seat.closes === 'rearward') return firstTouch(seat.bush, seat.journal, film);
  const position = firstTouch(mirrored(seat.bush), mirrored(seat.journal), film);
  return position === null ? null : -position;
}

/** The whole fit with the journal at `position` (m). */
export function fit(inputs: readonly SeatInput[], position: Metres): Fit {
  const lines = inputs.map(seatLines);
  const seats = lines.map((seat, i) => seatFit(seat, position, inputs[i]!, lines));

  let first: SeatFit | null = null;
  for (const seat of seats) {
    if (
      seat.closes === 'rearward' &&
      seat.seatPosition !== null &&
      (first?.seatPosition == null || seat.seatPosition > first.seatPosition)
    )
      first = seat;
  }
  const rear = first?.seatPosition ?? null;
  const together =
    rear === null
      ? []
      : seats.filter(
          (s) => s.closes === 'rearward' && s.seatPosition !== null && Math.abs(s.seatPosition - rear) <= SAME,
        );
  const nose = seats.reduce<number | null>(
    (least, s) =>
      s.closes === 'noseward' && s.seatPosition !== null ? Math.min(least ?? s.seatPosition, s.seatPosition) : least,
    null,
  );
  const relations = relationsOf(inputs, seats);
  return {
    seats,
    first: together[0]?.name ?? null,
    together: together.map((s) => s.name),
    firstPosition: rear,
    filmsAtFirst: rear === null ? [] : lines.map((seat) => zeroed(leastFilm(seat.gap, rear))),
    endPlay: rear === null || nose === null ? null : nose - rear,
    relations,
    relation: relations[0] ?? null,
    permitted: permittedOf(inputs, lines, seats),
  };
}

function seatFit(seat: SeatLines, position: Metres, input: SeatInput, all: readonly SeatLines[]): SeatFit {
  const { target } = input;
  const positionForTarget = target === undefined ? null : positionForFilm(seat, target);
  const seatPosition = positionForFilm(seat, 0);
  const chain = filmAlong(seat.gap, position);
  const { least, greatest, at } = extremes(chain, seat.closes);
  return {
    name: seat.name,
    closes: seat.closes,
    seatPosition,
    contact: seatPosition === null ? null : contactAt(seat, seatPosition),
    leastFilm: chain.count === 0 ? null : least,
    leastFilmStation: chain.count === 0 ? null : stationAt(seat.gap.bush, chain.u[at]!),
    greatestFilm: chain.count === 0 ? null : greatest,
    sensitivity:
      chain.count === 0 ? null : filmPerTravel(seat.gap, position, chain.u[at]!, seat.closes === 'noseward' ? -1 : 1),
    positionForTarget,
    filmsAtTarget:
      positionForTarget === null
        ? null
        : all.map((other) => (other === seat ? target! : zeroed(leastFilm(other.gap, positionForTarget)))),
    tolerated: toleratedOf(seat, input, positionForTarget),
  };
}

/** Least and greatest film, and the breakpoint of the least; of several, the one nearest the small end. */
function extremes(chain: FilmChain, closes: Closes): { least: number; greatest: number; at: number } {
  let least = Number.POSITIVE_INFINITY;
  let greatest = Number.NEGATIVE_INFINITY;
  const { film, count } = chain;
  for (let i = 0; i < count; i++) {
    const here = film[i]!;
    if (here < least) least = here;
    if (here > greatest) greatest = here;
  }
  const fromNose = closes === 'noseward';
  const same = least + SAME;
  let at = fromNose ? count - 1 : 0;
  while (film[at]! > same) at += fromNose ? -1 : 1;
  return { least, greatest, at };
}

/** Where a seat touches at its own seat position. */
function contactAt(seat: SeatLines, position: Metres): Contact | null {
  const chain = filmAlong(seat.gap, position);
  if (chain.count === 0) return null;
  const { least } = extremes(chain, seat.closes);
  const last = chain.count - 1;
  const same = least + SAME;
  const runs: [number, number][] = [];
  for (let i = 0; i <= last; i++) {
    if (chain.film[i]! > same) continue;
    const run = runs[runs.length - 1];
    if (run && run[1] === i - 1) run[1] = i;
    else runs.push([i, i]);
  }
  const smallAtNose = seat.closes === 'noseward';
  if (smallAtNose) runs.reverse();
  const [start, stop] = runs[0]!;
  const reaches = (i: number, end: number) => Math.abs(chain.u[i]! - chain.u[end]!) <= SAME;
  const rear = reaches(start, 0);
  const nose = reaches(stop, last);
  const end: ContactEnd =
    rear && nose
      ? 'whole'
      : rear
        ? smallAtNose
          ? 'large'
          : 'small'
        : nose
          ? smallAtNose
            ? 'small'
            : 'large'
          : 'middle';
  const stationOf = (i: number) => stationAt(seat.gap.bush, chain.u[i]!);
  const station = stationOf(smallAtNose ? stop : start);
  return {
    station,
    radius: radiusAt(seat.bush, station),
    end,
    stretches: runs.map(([i, k]) => ({ from: stationOf(i), to: stationOf(k) })),
  };
}

/** Radius (m) of a line at a station (m) on it. */
export function radiusAt(line: Line, station: Metres): number {
  let k = 0;
  while (k < line.z.length - 2 && line.z[k + 1]! < station) k++;
  return line.r[k]! + ((line.r[k + 1]! - line.r[k]!) * (station - line.z[k]!)) / (line.z[k + 1]! - line.z[k]!);
}

/** A film within rounding of nothing is a touch. */
const zeroed = (film: Metres | null) => (film !== null && Math.abs(film) <= SAME ? 0 : film);
