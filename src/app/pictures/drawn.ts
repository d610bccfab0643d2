/**
 * What is drawn: the half sections of journal and bush with one factor on every gap, deviation and
 * displacement, and true lengths and diameters. Both pictures, section and scene, draw these chains.
 *
 * Each seat is drawn by a one-to-one map (drawnMap.ts), the same for both parts, so they touch, cross or stand clear on
 * the screen exactly where they do in the solver, at every factor; square to the line the gap is factor·film. The
 * journal's outline is one rigid body: moved by p, all of it moves factor·p along the axis.
 *
 * Where the journal lies aside or tilted, or a part is lobed, every half section has a v of its own (leaning.ts),
 * drawn by the same map: to take hold of the nose changes nothing on the screen, and each line leans as the rigid
 * journal does.
 */

import type { Metres, Radians } from '../../design/dimension.ts';
import { type FilmChain, filmAlong, type SeatLines, type Wanted } from '../../report/inFrame.ts';
import { type Ground, groundOf, heightAt, place, type SeatMap, slid } from './drawnMap.ts';
import { factorFor } from './factor.ts';
import type { Leaning } from './leaning.ts';

/** z along the axis, r from the axis, m. */
export type Point = readonly [z: Metres, r: Metres];

export interface DrawnSeat {
  name: string;
  bush: Point[];
  journal: Point[];
  /** Where the points stand along each line, in its own coordinate (m). */
  along: { bush: ArrayLike<number>; journal: ArrayLike<number> };
  /** Along the overlap, rear to nose: the drawn places of both surfaces and the true film (m) between them. */
  film: FilmPlace[];
  /** What of it the drawn journal, moved so much further than the true one, faces on the screen. */
  oil: FilmPlace[];
  /** the film (m) it is to have */
  wanted: Wanted | null;
}

export interface FilmPlace {
  bush: Point;
  journal: Point;
  film: Metres;
  /** m along the bush's line, and how far the bush stands in from the straight line through its proudest place, true */
  along: Metres;
  edge: Metres;
}

/** The place at a share of the way from one to the next. */
export function betweenPlaces(a: FilmPlace, b: FilmPlace, share: number): FilmPlace {
  const between = (from: number, to: number) => from + (to - from) * share;
  const point = (from: Point, to: Point): Point => [between(from[0], to[0]), between(from[1], to[1])];
  return {
    bush: point(a.bush, b.bush),
    journal: point(a.journal, b.journal),
    film: between(a.film, b.film),
    along: between(a.along, b.along),
    edge: between(a.edge, b.edge),
  };
}

/** A force of a seat on the journal, where it acts. */
export interface DrawnForce {
  seat: string;
  /** rad, from x toward y */
  angle: Radians;
  /** of the pull, square to the face: what of it is across the axis comes to the pull */
  share: number;
  at: Point;
  /** out of the bush's metal there, toward the axis */
  way: Point;
}

export interface Drawn {
  /** The factor drawn. */
  factor: number;
  /** m, drawn: how far noseward the journal stands of where its first seat touches */
  moved: number;
  /** The half section at 90°, upward. */
  seats: DrawnSeat[];
  /** The half section at 270°, downward: the same object where both parts are round and on one axis. */
  below: DrawnSeat[];
  /** The half section at any angle (rad, from x toward y); null where all are the same. */
  at: ((angle: Radians) => DrawnSeat[]) | null;
  /** Whether the journal lies aside or tilted. */
  pulled: boolean;
  /** What holds a journal that is pulled aside. */
  forces: DrawnForce[];
  /** How far (m, drawn) the journal's axis is displaced toward an angle where it passes a station (m). */
  aside(station: Metres, angle: Radians): number;
  /** How far (m, drawn) the tilt takes a point of the journal noseward, at a radius (m) and an angle. */
  endwise(radius: Metres, angle: Radians): number;
}

const UP = Math.PI / 2;
const DOWN = 1.5 * Math.PI;

/** Drawn with the greatest factor that the picture holds. */
export const drawnPair = (
  seats: readonly SeatLines[],
  position: Metres,
  asked: number,
  leaning: Leaning | null = null,
  ground: Ground = groundOf(seats),
): Drawn => drawnAt(seats, position, factorFor(seats, position, asked, leaning, [], ground), leaning, ground);

/** Drawn with this very factor. */
export function drawnAt(
  seats: readonly SeatLines[],
  position: Metres,
  drawn: number,
  leaning: Leaning | null = null,
  ground: Ground = groundOf(seats),
): Drawn {
  const { home } = ground;
  const films = seats.map((seat) => filmAlong(seat.gap, position));
  const known = new Map<number, DrawnSeat[]>();
  const halfSection = (angle: Radians): DrawnSeat[] => {
    const found =
      known.get(angle) ??
      seats.map((seat, i) => drawnSeat(seat, i, ground.maps[i]!, home, films[i]!, position, drawn, leaning, angle));
    known.set(angle, found);
    return found;
  };
  const upper = halfSection(UP);
  return {
    factor: drawn,
    moved: drawn * (position - home),
    seats: upper,
    below: leaning ? halfSection(DOWN) : upper,
    at: leaning && halfSection,
    pulled: leaning?.pulled ?? false,
    forces: (leaning?.contacts ?? []).map(({ seat, station, angle, share }) => {
      const line = halfSection(angle).find(({ name }) => name === seat)!.bush;
      const at = pointAt(line, station);
      return { seat, angle, share, at, way: squareTo(line, at[0]) };
    }),
    aside: (station, angle) => (leaning ? drawn * leaning.aside(station, angle) : 0),
    endwise: (radius, angle) => (leaning ? drawn * leaning.endwise(radius, angle) : 0),
  };
}

/** The piece of a line that a station lies on, or its nearest end piece. */
function pieceAt(line: readonly Point[], station: number): [Point, Point] {
  let k = 0;
  while (k < line.length - 2 && line[k + 1]![0] < station) k++;
  return [line[k]!, line[k + 1]!];
}

/** Out of the bush's metal at a station, toward the axis. */
export function squareTo(line: readonly Point[], station: number): Point {
  const [[z0, r0], [z1, r1]] = pieceAt(line, station);
  const length = Math.hypot(z1 - z0, r1 - r0) || 1;
  return [(r1 - r0) / length, -(z1 - z0) / length];
}

/** The place of a line nearest along the axis to a station (m). */
function pointAt(line: readonly Point[], station: Metres): Point {
  const [[z0, r0], [z1, r1]] = pieceAt(line, station);
  const t = z1 === z0 ? 0 : Math.min(1, Math.max(0, (station - z0) / (z1 - z0)));
  return [z0 + t * (z1 - z0), r0 + t * (r1 - r0)];
}

function drawnSeat(
  seat: SeatLines,
  index: number,
  map: SeatMap,
  home: Metres,
  { count, u, film }: FilmChain,
  position: Metres,
  factor: number,
  leaning: Leaning | null,
  angle: Radians,
): DrawnSeat {
  const { bush, journal } = seat.gap;
  const outward = leaning ? (u: number) => leaning.journal(index, u, angle) : () => 0;
  const inward = leaning ? leaning.bush(index, angle) : 0;
  const onBush = (u: number, v: number) => place(map, u, v - inward, factor);
  const onJournal = (u: number, v: number) => place(map, u, v + outward(u), factor);
  const line = slid(map, journal, position, home, factor);
  const places = Array.from({ length: count }, (_, i): FilmPlace => {
    const v = heightAt(bush, u[i]!);
    return {
      bush: onBush(u[i]!, v),
      journal: onJournal(u[i]!, v - film[i]!),
      film: film[i]! - inward - outward(u[i]!),
      along: u[i]!,
      edge: map.bush.v0 - v + inward,
    };
  });
  return {
    name: seat.name,
    wanted: seat.wanted,
    bush: Array.from(bush.u, (at, i) => onBush(at, bush.v[i]!)),
    journal: line.u.map((at, i) => onJournal(at, line.v[i]!)),
    along: { bush: bush.u, journal: line.own },
    film: places,
    oil: within(places, line.u[0]!, line.u[line.u.length - 1]!),
  };
}

/** The places from one to another along the bush's line, with those at both ends. */
function within(places: FilmPlace[], from: number, to: number): FilmPlace[] {
  if (places.length === 0 || (places[0]!.along >= from && places[places.length - 1]!.along <= to)) return places;
  const cut = places.flatMap((next, i) => {
    const before = places[i - 1];
    const ends = [from, to].flatMap((end) =>
      before && before.along < end && end < next.along
        ? [betweenPlaces(before, next, (end - before.along) / (next.along - before.along))]
        : [],
    );
    return next.along < from || next.along > to ? ends : [...ends, next];
  });
  // A place between two is as near its end as rounding lets it.
  return cut.length < 2 ? [] : cut;
}

/** A space between two seats of the bush longer than this share of the whole is drawn relieved, in both parts. */
const LONG = 0.1;

/**
 * The chains of neighbouring seats joined to one line: straight across a short space, relieved across a long
 * one, so that nothing seems to touch where there is no seat. `bush` are the bush chains of the same seats.
 */
export function relieved(
  lines: readonly (readonly Point[])[],
  bush: readonly (readonly Point[])[],
  metal: 'inside' | 'outside',
): Point[] {
  const start = (chain: readonly Point[] | undefined) => chain?.[0]?.[0] ?? 0;
  const end = (chain: readonly Point[] | undefined) => chain?.[chain.length - 1]?.[0] ?? 0;
  const length = end(bush[bush.length - 1]) - start(bush[0]);
  const chains = metal === 'inside' ? parted(lines) : lines;
  return chains.flatMap((chain, i) => {
    const next = chains[i + 1]?.[0];
    const last = chain[chain.length - 1];
    if (!next || !last || start(bush[i + 1]) - end(bush[i]) < LONG * length) return [...chain];
    const deep = next[0] > last[0] ? 0.9 : 1;
    const r = metal === 'inside' ? deep * Math.min(last[1], next[1]) : 1.07 * Math.max(last[1], next[1]);
    return [...chain, [last[0], r] as const, [next[0], r] as const];
  });
}

/**
 * Seats of a leaning journal that run past one another, for a gap of one is drawn along the axis and of another along
 * the radius: the lower line ends, as many points as before, where it comes into the metal under the other.
 */
function parted(lines: readonly (readonly Point[])[]): (readonly Point[])[] {
  const chains = [...lines];
  for (let i = 1; i < chains.length; i++) {
    const [a, b] = [chains[i - 1]!, chains[i]!];
    const [from, to] = [b[0]![0], a[a.length - 1]![0]];
    if (from >= to) continue;
    const [under, above] = [pointAt(a, from), pointAt(b, to)];
    if (under[1] < b[0]![1]) chains[i - 1] = a.map((point) => (point[0] > from ? under : point));
    else chains[i] = b.map((point) => (point[0] < to ? above : point));
  }
  return chains;
}
