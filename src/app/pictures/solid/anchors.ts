/** What the labels of the solid picture name, and where in the scene that is. */
import { fineText, type System } from '../../../design/units.ts';
import { millimetres } from '../../../report/convert.ts';
import { SAME } from '../../../report/inFrame.ts';
import type { Drawn, Point } from '../drawn.ts';
import type { Frame } from '../revolve.ts';
import { leastFilm, placesAt } from './filmGeometry.ts';
import { cutSeat, cutStation, ringAt } from './noseCut.ts';
import type { Opening } from './staged.ts';

export interface Anchor {
  key: string;
  name: string;
  film: string;
  /** scene */
  at: readonly [number, number, number];
}

/** Of the half opening: so far to the side of its middle an anchor may go after the eye. */
const INTO = 0.55;
const ROUND = 96;

const inScene = (frame: Frame, [z, r]: Point, theta: number): [number, number, number] => [
  frame.scale * (z - frame.centre),
  frame.scale * r * Math.sin(theta),
  frame.scale * r * Math.cos(theta),
];

/**
 * Every seat where its film is open to the eye (at `eye`, rad round the axis); in a cut from the nose the seat that
 * is cut, where its film is least and most.
 */
export function anchorsOf(drawn: Drawn, frame: Frame, { clip, sector }: Opening, eye: number, system: System) {
  if (Number.isFinite(clip)) return cutAnchors(drawn, frame, system);
  const half = (sector * Math.PI) / 360;
  const theta = Math.max(-INTO * half, Math.min(INTO * half, eye));
  return drawn.seats.map((seat, i): Anchor => {
    const places = placesAt(drawn, i, theta);
    const ends = [places[0], places[places.length - 1]].map((place) => place && mid(place.bush, place.journal));
    const bush = mid(seat.bush[0]!, seat.bush[seat.bush.length - 1]!);
    // Through a closed bush nothing is seen of the film: its outside then.
    const at: Point = sector <= 0 ? [bush[0], frame.outside] : ends[0] && ends[1] ? mid(ends[0], ends[1]) : bush;
    return { key: seat.name, name: seat.name, film: filmTold(drawn, i, system), at: inScene(frame, at, theta) };
  });
}

const mid = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** Least film of a seat in words; round a journal that leans the least anywhere. */
export function filmTold(drawn: Drawn, seat: number, system: System): string {
  const name = drawn.seats[seat]!.name;
  const least = drawn.forces.some((force) => force.seat === name) ? 0 : leastFilm(drawn, seat);
  return filmText(least, system);
}

/** Touching is said: a film of nothing and one too thin to tell look the same in figures. */
export const filmText = (film: number | null, system: System): string =>
  film === null ? 'apart' : Math.abs(film) <= SAME ? 'touches' : fineText(millimetres(film), system);

function cutAnchors(drawn: Drawn, frame: Frame, system: System): Anchor[] {
  const seat = drawn.seats[cutSeat(drawn)];
  if (!seat) return [];
  const station = cutStation(drawn);
  const rings = Array.from({ length: drawn.at ? ROUND : 1 }, (_, j) => {
    const theta = (2 * Math.PI * j) / ROUND;
    return { theta, ring: ringAt(drawn, theta, station) };
  }).filter(({ ring }) => ring !== null);
  if (rings.length === 0) return [];
  const at = ({ theta, ring }: (typeof rings)[number], turned = theta) =>
    inScene(frame, [station, (ring!.inner + ring!.outer) / 2], turned);
  const anchor = (name: string, one: (typeof rings)[number], turned?: number): Anchor => ({
    key: name,
    name,
    film: filmText(one.ring!.film, system),
    at: at(one, turned),
  });
  if (!drawn.at) return [anchor(seat.name, rings[0]!, Math.PI / 4)];
  const by = rings.toSorted((a, b) => a.ring!.film - b.ring!.film);
  return [anchor(`${seat.name}, least`, by[0]!), anchor('most', by[by.length - 1]!)];
}

/** The axis past both ends of the journal. */
export const axisEnds = ({ halfLength }: Frame): [rear: number, nose: number] => [-1.1 * halfLength, 1.1 * halfLength];

/** All that the picture says, in a sentence. */
export function toldOf(drawn: Drawn, system: System): string {
  return `${drawn.seats.map((seat, i) => `${seat.name} ${filmTold(drawn, i, system)}`).join(', ')}.`;
}
