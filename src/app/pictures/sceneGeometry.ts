/**
 * The solids of the scene from the drawn half sections: journal, bush, film and the rings where they touch, swept about
 * the axis (revolve.ts).
 */
import { SAME } from '../../engine/contact/film.ts';
import { betweenPlaces, type Drawn, type DrawnSeat, type FilmPlace, type Point, relieved } from './drawn.ts';
import { filmColour, INTERFERENCE, linear } from './filmColour.ts';
import { cutFaces, type Frame, joined, type Mesh, revolved, wallAngles } from './revolve.ts';
import { fromChord, thinned } from './thinned.ts';

/** The outside of the bush to the largest radius. */
const WALL = 1.35;
/** Most points of one solid's profile; a measured profile may have thousands, more than a screen shows. */
const MOST_POINTS = 120;
/** Half thickness of a touching ring to the largest radius. */
const RING = 0.012;
const MOST_RINGS = 8;

const middle = (points: readonly Point[]) => (points[0]![0] + points[points.length - 1]![0]) / 2;
/** Seats from the rear to the nose; by the bush, which does not move. */
const inOrder = (drawn: Drawn): DrawnSeat[] =>
  drawn.seats
    .filter((seat) => seat.bush.length > 1 && seat.journal.length > 1)
    .sort((a, b) => middle(a.bush) - middle(b.bush));

export function frameOf(drawn: Drawn): Frame {
  const points = inOrder(drawn).flatMap((seat) => seat.bush);
  if (points.length === 0) return { centre: 0, scale: 1, outside: 1, overhang: 0, halfLength: 1, halfHeight: 1 };
  const [low, high] = extent(points.map(([z]) => z));
  const [, largest] = extent(points.map(([, r]) => r));
  const outside = WALL * largest;
  const overhang = 0.4 * largest;
  const halfLength = (high - low) / 2 + overhang;
  const scale = 1 / Math.max(halfLength, outside);
  return {
    centre: (low + high) / 2,
    scale,
    outside,
    overhang,
    halfLength: halfLength * scale,
    halfHeight: outside * scale,
  };
}

/** One half section of the parts, thinned to what a screen shows; the same points at every angle. */
interface HalfSection {
  seats: DrawnSeat[];
  /** of the journal's axis toward that angle, at a station */
  aside(station: number): number;
}

/**
 * The half section at an angle θ of the scene. Angles of the design run from x, to the right seen from in front
 * of the nose, toward y, upward; so φ = π - θ. Which points are kept is decided once, upward.
 */
function halfSections(drawn: Drawn): { first: HalfSection; at: (theta: number) => HalfSection; round: boolean } {
  const order = drawn.seats
    .map((_, i) => i)
    .filter((i) => drawn.seats[i]!.bush.length > 1 && drawn.seats[i]!.journal.length > 1);
  order.sort((a, b) => middle(drawn.seats[a]!.bush) - middle(drawn.seats[b]!.bush));
  const most = MOST_POINTS / Math.max(1, order.length);
  const kept = order.map((i) => {
    const { bush, journal } = drawn.seats[i]!;
    return { bush: keptOf(bush, most), journal: keptOf(journal, most) };
  });
  const section = (seats: readonly DrawnSeat[], angle: number): HalfSection => ({
    seats: order.map((i, k) => {
      const seat = seats[i]!;
      return {
        ...seat,
        bush: kept[k]!.bush.map((at) => seat.bush[at]!),
        journal: kept[k]!.journal.map((at) => seat.journal[at]!),
      };
    }),
    aside: (station) => drawn.aside(station, angle),
  });
  const first = section(drawn.seats, Math.PI / 2);
  const { at } = drawn;
  return { first, at: at ? (theta) => section(at(Math.PI - theta), Math.PI - theta) : () => first, round: at === null };
}

const keptOf = (points: readonly Point[], most: number) =>
  thinned(
    points.map((_, i) => i),
    most,
    (i) => fromChord(points)(points[i]!),
  );

/** The journal's half section, from the axis at its rear to the axis at its nose. */
export function journalProfile(drawn: Drawn, frame: Frame): Point[] {
  const { first } = halfSections(drawn);
  return journalLine(first, first, frame);
}

/** `first` decides what is relieved and how large the ends are; they are displaced as the axis is there. */
function journalLine({ seats: here, aside }: HalfSection, { seats }: HalfSection, { overhang }: Frame): Point[] {
  const bores = seats.map((seat) => seat.bush);
  const body = relieved(
    seats.map((seat) => seat.journal),
    bores,
    'inside',
  );
  const rear = body[0];
  const nose = body[body.length - 1];
  if (!rear || !nose) return [];
  // Clear of the bush wherever it reaches past the journal.
  const clear = (beyond: (z: number) => boolean) =>
    0.9 *
    seats
      .flatMap((seat) => seat.bush)
      .reduce((least, [z, r]) => (beyond(z) ? Math.min(least, r) : least), Number.POSITIVE_INFINITY);
  const stub = Math.min(
    0.8 * rear[1],
    clear((z) => z < rear[0]),
  );
  const end = Math.min(
    0.95 * nose[1],
    clear((z) => z > nose[0]),
  );
  const from = rear[0] - overhang;
  const to = nose[0] + overhang;
  const line = relieved(
    here.map((seat) => seat.journal),
    bores,
    'inside',
  );
  return [
    [from, 0],
    [from, stub + aside(from)],
    [rear[0], stub + aside(rear[0])],
    ...line,
    [nose[0], end + aside(nose[0])],
    [to, end + aside(to)],
    [to, 0],
  ];
}

/** The bush's wall, once round: bore from nose to rear, rear face, outside, nose face. */
export function bushProfile(drawn: Drawn, frame: Frame): Point[] {
  const { first } = halfSections(drawn);
  return bushLine(first, first, frame);
}

function bushLine(here: HalfSection, first: HalfSection, { outside }: Frame): Point[] {
  const bore = boreOf(here, first);
  const rear = bore[0];
  const nose = bore[bore.length - 1];
  if (!rear || !nose) return [];
  return [...bore.toReversed(), [rear[0], outside], [nose[0], outside], nose];
}

function boreOf(here: HalfSection, first: HalfSection): Point[] {
  return relieved(
    here.seats.map((seat) => seat.bush),
    first.seats.map((seat) => seat.bush),
    'outside',
  );
}

export function journalMesh(drawn: Drawn, frame: Frame): Mesh {
  const { first, at } = halfSections(drawn);
  return revolved((theta) => ({ points: journalLine(at(theta), first, frame) }), frame, 0, 2 * Math.PI);
}

/** The bush, open by `sector` degrees. */
export function bushMesh(drawn: Drawn, frame: Frame, sector: number): Mesh {
  const { first, at } = halfSections(drawn);
  return revolved((theta) => ({ points: bushLine(at(theta), first, frame) }), frame, ...wallAngles(sector));
}

/** The two faces where the bush is cut open; none where it is closed. */
export function bushCutMesh(drawn: Drawn, frame: Frame, sector: number): Mesh {
  const { first, at } = halfSections(drawn);
  return cutFaces(
    (theta) => ({ pairs: boreOf(at(theta), first).map((point) => [point, [point[0], frame.outside]]) }),
    frame,
    sector,
  );
}

/** The film's skin right round: half way between the two surfaces; on the journal's where it is pressed in. */
export function filmMesh(drawn: Drawn, seat: number, frame: Frame, max: number): Mesh {
  return revolved(
    (theta) => {
      const places = placesAt(drawn, seat, theta);
      return {
        points: places.map(
          ({ bush, journal, film }): Point =>
            film < 0 ? journal : [(bush[0] + journal[0]) / 2, (bush[1] + journal[1]) / 2],
        ),
        colours: filmColours(places, max),
      };
    },
    frame,
    0,
    2 * Math.PI,
  );
}

/** The film in section on the two cut faces. */
export function filmCutMesh(drawn: Drawn, seat: number, frame: Frame, sector: number, max: number): Mesh {
  return cutFaces(
    (theta) => {
      const places = placesAt(drawn, seat, theta);
      return { pairs: places.map(({ bush, journal }) => [journal, bush]), colours: filmColours(places, max) };
    },
    frame,
    sector,
  );
}

/** Places of one seat's film at an angle of the scene; as many at every angle. */
function placesAt(drawn: Drawn, seat: number, theta: number): FilmPlace[] {
  const film = (drawn.at ? drawn.at(Math.PI - theta) : drawn.seats)[seat]?.film ?? [];
  return finePlaces(film, drawn.at === null);
}

/** Rings where the two surfaces touch; a stretch that touches is a band. None where they do not touch all round. */
export function touchMesh(drawn: Drawn, seat: number, frame: Frame): Mesh {
  const size = (RING * frame.outside) / WALL;
  const places = drawn.at || !drawn.seats[seat] ? [] : touches(drawn.seats[seat]);
  return joined(
    places.map(([from, to]) => revolved(constant({ points: around(from, to, size) }), frame, 0, 2 * Math.PI)),
  );
}

const constant =
  <T>(value: T) =>
  () =>
    value;

/** Pieces of a seat's bush line that touch, each from a place to a place; the same twice for a single place. */
export function touches({ film }: DrawnSeat): [Point, Point][] {
  const runs: Point[][] = [];
  film.forEach((place, i) => {
    if (Math.abs(place.film) > SAME) return;
    if (i > 0 && Math.abs(film[i - 1]!.film) <= SAME) runs[runs.length - 1]!.push(place.bush);
    else runs.push([place.bush]);
  });
  return runs.slice(0, MOST_RINGS).flatMap((run): [Point, Point][] => {
    const [first, ...rest] = thinned(run, 6, fromChord(run));
    return rest.length === 0 ? [[first!, first!]] : rest.map((point, i) => [i === 0 ? first! : rest[i - 1]!, point]);
  });
}

/** Greatest film drawn (m), 0 at least. */
export const greatestFilm = (drawn: Drawn) =>
  [...drawn.seats, ...drawn.below].reduce(
    (most, seat) => seat.film.reduce((m, { film }) => Math.max(m, film), most),
    0,
  );

/** The next of 1, 2, 2.5, 5 · 10ⁿ at or above a value, for the far end of a scale. */
export function roundAbove(value: number): number {
  if (!(value > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(value));
  return ([1, 2, 2.5, 5].find((step) => step * power >= value * (1 - 1e-9)) ?? 10) * power;
}

/**
 * Distance of a camera from the middle at which the pair just fills the view, looked at along `toward`
 * (unit vector to the camera; the picture's upright is y). Angles in radians, tangents of half the view.
 */
export function fillingDistance(
  { halfLength, halfHeight }: Frame,
  toward: readonly [number, number, number],
  tanUp: number,
  tanAcross: number,
): number {
  const [x, y, z] = toward;
  const flat = Math.hypot(x, z) || 1;
  const right = [z / flat, 0, -x / flat] as const;
  const up = [y * right[2], z * right[0] - x * right[2], -y * right[0]] as const;
  let distance = 0;
  for (const end of [-halfLength, halfLength]) {
    for (let k = 0; k < 16; k++) {
      const corner = [end, halfHeight * Math.sin((k * Math.PI) / 8), halfHeight * Math.cos((k * Math.PI) / 8)] as const;
      const along = (axis: readonly [number, number, number]) =>
        corner[0] * axis[0] + corner[1] * axis[1] + corner[2] * axis[2];
      distance = Math.max(
        distance,
        along(toward) + Math.max(Math.abs(along(right)) / tanAcross, Math.abs(along(up)) / tanUp),
      );
    }
  }
  return distance;
}

/**
 * Places close enough that the colour between two is theirs; with `zeros` also where the film passes through nothing.
 */
function finePlaces(film: readonly FilmPlace[], zeros: boolean): FilmPlace[] {
  const kept = thinned(film, MOST_POINTS / 2, (place) => place.film);
  const pieces = Math.max(1, Math.min(12, Math.floor(MOST_POINTS / Math.max(1, kept.length - 1))));
  return kept.flatMap((place, i) => {
    const next = kept[i + 1];
    if (!next) return [place];
    const shares = Array.from({ length: pieces }, (_, k) => k / pieces);
    if (!zeros || place.film * next.film >= 0) return shares.map((t) => between(place, next, t));
    // Twice, so that each side keeps its own colour: just above and just below nothing.
    const zero = place.film / (place.film - next.film);
    const least = (sign: number): FilmPlace => ({ ...between(place, next, zero), film: sign * Number.MIN_VALUE });
    const sides = [least(Math.sign(place.film)), least(Math.sign(next.film))];
    return [
      ...shares.filter((t) => t < zero).map((t) => between(place, next, t)),
      ...sides,
      ...shares.filter((t) => t > zero).map((t) => between(place, next, t)),
    ];
  });
}

function between(a: FilmPlace, b: FilmPlace, t: number): FilmPlace {
  return t === 0 ? a : betweenPlaces(a, b, t);
}

const filmColours = (places: readonly FilmPlace[], max: number) =>
  places.map(({ film }) =>
    linear(film < -SAME || film === -Number.MIN_VALUE ? INTERFERENCE : filmColour(Math.max(0, film), max)),
  );

/** The outline of everything within `size` of a straight piece, its solid on the right. */
function around(from: Point, to: Point, size: number): Point[] {
  const turn = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const half = (middlePoint: Point, start: number): Point[] =>
    Array.from({ length: 7 }, (_, k) => {
      const angle = turn + start - (k * Math.PI) / 6;
      return [middlePoint[0] + size * Math.cos(angle), middlePoint[1] + size * Math.sin(angle)];
    });
  const outline = [...half(to, Math.PI / 2), ...half(from, -Math.PI / 2)];
  return [...outline, outline[0]!];
}

function extent(values: readonly number[]): [least: number, greatest: number] {
  return values.reduce<[number, number]>(
    ([least, greatest], value) => [Math.min(least, value), Math.max(greatest, value)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
}
