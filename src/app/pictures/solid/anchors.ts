/** What the labels of the solid picture name, and where in the scene that is. */
import { fineText, type System } from '../../../design/units.ts';
import { millimetres } from '../../../report/convert.ts';
import { SAME } from '../../../report/inFrame.ts';
import type { Drawn, DrawnSeat, Point } from '../drawn.ts';
import { holdOf } from '../holding.ts';
import type { Frame } from '../revolve.ts';
import { leastFilm, placesAt } from './filmGeometry.ts';
import { isSeen, metalOf } from './inSight.ts';
import { ringAt, type Step, stepsOf } from './noseCut.ts';
import type { Opening } from './staged.ts';

export interface Anchor {
  key: string;
  name: string;
  film: string;
  /** scene */
  at: readonly [number, number, number];
  /** metal stands between it and the eye, wherever it is looked for */
  hidden?: boolean;
}

/** The camera, from the middle of the scene. */
export type Eye = readonly [x: number, y: number, z: number];

/** Of the half opening: where the film is looked for when it is not seen where the eye is nearest. */
const ELSEWHERE = [0, 0.85, -0.85];

/** Of the half opening: so far to the side of its middle an anchor may go after the eye. */
const INTO = 0.55;
const ROUND = 96;

const inScene = (frame: Frame, [z, r]: Point, theta: number): [number, number, number] => [
  frame.scale * (z - frame.centre),
  frame.scale * r * Math.sin(theta),
  frame.scale * r * Math.cos(theta),
];

/**
 * Every seat where its film is open to the eye, hidden where it is nowhere, or where it holds a journal pulled aside;
 * in a cut from the nose the seats that are cut (`inSteps`: more than one), where their films are least, and of a
 * single one most.
 */
export function anchorsOf(
  drawn: Drawn,
  frame: Frame,
  { clip, sector }: Opening,
  eye: Eye,
  system: System,
  inSteps = true,
): Anchor[] {
  if (Number.isFinite(clip)) {
    const steps = stepsOf(drawn).slice(0, inSteps ? undefined : 1);
    return steps.flatMap((step) => cutAnchors(drawn, frame, step, system, steps.length > 1));
  }
  const half = (sector * Math.PI) / 360;
  const toward = Math.max(-INTO * half, Math.min(INTO * half, Math.atan2(eye[1], eye[2])));
  // After the eye first; else wherever in the opening something of the film is seen.
  const turns = [toward, ...ELSEWHERE.map((share) => share * half)];
  const metal = metalOf(drawn, frame, half);
  return drawn.seats.map((seat, i): Anchor => {
    const own = { key: seat.name, name: seat.name, film: filmTold(drawn, i, system) };
    const held = holdOf(drawn, seat.name);
    if (held) {
      const at = inScene(frame, held.at, Math.PI - held.angle);
      return { ...own, at, hidden: !isSeen(metal, at, eye) };
    }
    const spots = turns.map((theta) => spotAt(seat, i, theta));
    const seen = spots.find((at) => isSeen(metal, at, eye));
    return { ...own, at: seen ?? spots[0]!, hidden: seen === undefined };
  });
  function spotAt(seat: DrawnSeat, i: number, theta: number) {
    const places = placesAt(drawn, i, theta);
    const ends = [places[0], places[places.length - 1]].map((place) => place && mid(place.bush, place.journal));
    const bush = mid(seat.bush[0]!, seat.bush[seat.bush.length - 1]!);
    return inScene(frame, ends[0] && ends[1] ? mid(ends[0], ends[1]) : bush, theta);
  }
}

const mid = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** Least film of a seat in words; round a journal that leans the least anywhere. */
function filmTold(drawn: Drawn, seat: number, system: System): string {
  const name = drawn.seats[seat]!.name;
  const least = drawn.forces.some((force) => force.seat === name) ? 0 : leastFilm(drawn, seat);
  return filmText(least, system);
}

/** Touching is said: a film of nothing and one too thin to tell look the same in figures. */
export const filmText = (film: number | null, system: System): string =>
  film === null ? 'apart' : Math.abs(film) <= SAME ? 'touches' : fineText(millimetres(film), system);

/** A wider ring is named elsewhere round than the one within it. */
const FIRST_AT = Math.PI / 4;
const OTHERS_AT = -Math.PI / 4;

function cutAnchors(drawn: Drawn, frame: Frame, step: Step, system: System, several: boolean): Anchor[] {
  const { seat: index, station, from } = step;
  const seat = drawn.seats[index]!;
  const rings = Array.from({ length: drawn.at ? ROUND : 1 }, (_, j) => {
    const theta = (2 * Math.PI * j) / ROUND;
    return { theta, ring: ringAt(drawn, theta, station, step) };
  }).filter(({ ring }) => ring !== null);
  if (rings.length === 0) return [];
  // All of them lie in the plane of the first, as they are drawn.
  const plane = stepsOf(drawn)[0]!.station;
  const at = ({ theta, ring }: (typeof rings)[number], turned = theta) =>
    inScene(frame, [plane, (Math.max(from, ring!.inner) + ring!.outer) / 2], turned);
  const anchor = (name: string, one: (typeof rings)[number], turned?: number): Anchor => ({
    key: name,
    name,
    film: filmText(one.ring!.film, system),
    at: at(one, turned),
  });
  if (!drawn.at) return [anchor(seat.name, rings[0]!, from === 0 ? FIRST_AT : OTHERS_AT)];
  const by = rings.toSorted((a, b) => a.ring!.film - b.ring!.film);
  const least = anchor(`${seat.name}, least`, by[0]!);
  return several ? [least] : [least, anchor('most', by[by.length - 1]!)];
}

/** The axis past both ends of the journal. */
export const axisEnds = ({ halfLength }: Frame): [rear: number, nose: number] => [-1.1 * halfLength, 1.1 * halfLength];

/** All that the picture says, in a sentence. */
export function toldOf(drawn: Drawn, system: System): string {
  return `${drawn.seats.map((seat, i) => `${seat.name} ${filmTold(drawn, i, system)}`).join(', ')}.`;
}
