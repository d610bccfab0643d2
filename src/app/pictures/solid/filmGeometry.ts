/**
 * The oil as closed shells round the journal, one a seat, its section where the bush is cut open, and where the parts
 * touch: all from the drawn chains (drawn.ts). A shell ends where the bush does.
 */
import { SAME, type Wanted } from '../../../report/inFrame.ts';
import { betweenPlaces, type Drawn, type DrawnSeat, type FilmPlace, type Point } from '../drawn.ts';
import { bandOf } from '../filmClass.ts';
import { INTERFERENCE, linear, type Rgb, touchColour, wantedColour } from '../filmColour.ts';
import { cutFaces, type Frame, joined, type Mesh, revolved } from '../revolve.ts';
import { bushEnds, WALL } from '../sceneGeometry.ts';
import { fromChord, thinned } from '../thinned.ts';

/** Most places of one film along a line. */
const MOST_PLACES = 120;
/** Half thickness of a touching ring to the largest radius, and of the glow round it. */
const RING = 0.012;
export const GLOW = 3.2;
const MOST_RINGS = 8;
/** Half of the arc that glows where a journal that lies aside touches, rad. */
const ARC = 0.22;

/** The shell: the bush's side outward, the journal's inward; the other way round where they are pressed in. */
export function filmMesh(drawn: Drawn, seat: number, frame: Frame, max: number, last?: Mesh | null): Mesh {
  const half = (theta: number) => {
    const places = placesAt(drawn, seat, theta, max);
    const tints = filmColours(places, drawn, seat, max);
    const outer = places.map(({ bush, journal, film }) => (film < 0 ? journal : bush));
    const inner = places.map(({ bush, journal, film }) => (film < 0 ? bush : journal));
    return {
      points: [...outer, ...inner.toReversed(), ...outer.slice(0, 1)],
      colours: [...tints, ...tints.toReversed(), ...tints.slice(0, 1)],
    };
  };
  return revolved(drawn.at ? half : constant(half(0)), frame, 0, 2 * Math.PI, last);
}

/** The film in section on the two cut faces. */
export function filmCutMesh(drawn: Drawn, seat: number, frame: Frame, sector: number, max: number): Mesh {
  return cutFaces(
    (theta) => {
      const places = placesAt(drawn, seat, theta, max);
      return {
        pairs: places.map(({ bush, journal }) => [journal, bush]),
        colours: filmColours(places, drawn, seat, max),
      };
    },
    frame,
    sector,
  );
}

/**
 * Places of one seat's film at an angle of the scene; as many at every angle, and close enough for a colour scale that
 * ends at `max`. None reaches past its bush.
 */
export function placesAt(drawn: Drawn, seat: number, theta: number, max = 0): FilmPlace[] {
  const seats = drawn.at ? drawn.at(Math.PI - theta) : drawn.seats;
  const film = seats[seat]?.oil ?? [];
  if (film.length === 0) return [];
  const [rear, nose] = bushEnds(drawn, seats, seat);
  const round = drawn.at === null;
  const fine = finePlaces(film, round, max, seats[seat]!.wanted);
  return (round ? crossed(crossed(fine, rear), nose) : fine).map((place) => kept(place, rear, nose));
}

/** With a place more wherever the journal's line passes a station. */
const crossed = (places: readonly FilmPlace[], station: number): FilmPlace[] =>
  places.flatMap((place, i) => {
    const next = places[i + 1];
    if (!next) return [place];
    const [a, b] = [place.journal[0] - station, next.journal[0] - station];
    return a * b < 0 ? [place, between(place, next, a / (a - b))] : [place];
  });

/** The oil of a place as far as the bush's faces; its film stays what it is. */
function kept(place: FilmPlace, rear: number, nose: number): FilmPlace {
  const { bush, journal } = place;
  const end = journal[0] > nose ? nose : journal[0] < rear ? rear : null;
  if (end === null || journal[0] === bush[0]) return place;
  const t = Math.min(1, Math.max(0, (end - bush[0]) / (journal[0] - bush[0])));
  return { ...place, journal: mix(bush, journal, t) };
}

/** Solid rings where the surfaces touch, a stretch that touches a band; or short arcs where a leaning journal does. */
export function touchMesh(drawn: Drawn, seat: number, frame: Frame, times = 1): Mesh {
  const size = (times * RING * frame.outside) / WALL;
  const here = drawn.seats[seat];
  if (!here) return NO_RING;
  const ring = ([from, to]: readonly [Point, Point], start = 0, end = 2 * Math.PI) =>
    revolved(constant({ points: around(from, to, size) }), frame, start, end);
  if (!drawn.at) return rings(touches(here).map((run) => ring(run)));
  const arcs = drawn.forces.filter((force) => force.seat === here.name).slice(0, MOST_RINGS);
  return rings(arcs.map(({ at, angle }) => ring([at, at], Math.PI - angle - ARC, Math.PI - angle + ARC)));
}

/** None has all that a ring has: the buffers that are made for none are those of the first touch. */
const NO_RING: Mesh = { ...joined([]), edges: new Float32Array() };
const rings = (meshes: readonly Mesh[]): Mesh => (meshes.length === 0 ? NO_RING : joined(meshes));

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

/** Least film drawn of a seat (m) anywhere round it; null where its surfaces do not face each other. */
export function leastFilm(drawn: Drawn, seat: number): number | null {
  const at = (angle: number) =>
    ((drawn.at?.(angle) ?? drawn.seats)[seat]?.film ?? []).reduce((least, { film }) => Math.min(least, film), Infinity);
  if (!drawn.at) return finite(at(0));
  let [film, angle] = [Infinity, 0];
  for (let i = 0; i < LOOKED; i++) {
    const here = at(i * APART);
    if (here < film) [film, angle] = [here, i * APART];
  }
  // The least one lies beside the least looked at: it is closed in on from both sides.
  let [from, to] = [angle - APART, angle + APART];
  for (let i = 0; i < CLOSER; i++) {
    const [left, right] = [to - GOLDEN * (to - from), from + GOLDEN * (to - from)];
    const [low, high] = [at(left), at(right)];
    film = Math.min(film, low, high);
    if (low < high) to = right;
    else from = left;
  }
  return finite(film);
}
const finite = (film: number) => (film === Infinity ? null : film);
/** Angles looked at, how far they are apart (rad), and how often it is looked closer round the least: to 0.3°. */
const LOOKED = 48;
const APART = (2 * Math.PI) / LOOKED;
const CLOSER = 8;
/** Of what is left, kept each time. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** Steps of the colour scale that pass for one. */
const SHADES = 20;
const MOST_PIECES = 12;
/** Where the film differs round the journal: the same everywhere, however it changes. */
const ANYHOW = 6;

/**
 * Places close enough that the colour between two is theirs; of a round pair also where the film passes through nothing
 * or an edge of what is wanted.
 */
function finePlaces(film: readonly FilmPlace[], round: boolean, max: number, wanted: Wanted | null): FilmPlace[] {
  const few = thinned(film, MOST_PLACES / 3, (place) => place.film);
  const most = Math.max(1, Math.min(MOST_PIECES, Math.floor(MOST_PLACES / Math.max(1, few.length - 1))));
  const piecesTo = (from: FilmPlace, to: FilmPlace) => {
    if (max <= 0) return 1;
    return Math.min(most, round ? Math.max(1, Math.ceil((SHADES * Math.abs(to.film - from.film)) / max)) : ANYHOW);
  };
  const edges = round ? [0, ...(wanted ? bandOf(wanted) : [])] : [];
  return few.flatMap((place, i) => {
    const next = few[i + 1];
    if (!next) return [place];
    const pieces = piecesTo(place, next);
    const even = Array.from({ length: pieces }, (_, k) => ({
      t: k / pieces,
      places: [between(place, next, k / pieces)],
    }));
    // Of a stretch that touches nothing is pressed in, whichever side of nothing its last digit is.
    const touching = Math.max(Math.abs(place.film), Math.abs(next.film)) <= SAME;
    const passed = (touching ? [] : edges).flatMap((edge) => {
      const t = (edge - place.film) / (next.film - place.film);
      return t > 0 && t < 1 ? [{ t, places: bothSides(between(place, next, t), edge, next.film > place.film) }] : [];
    });
    return [...even, ...passed].sort((a, b) => a.t - b.t).flatMap((stop) => stop.places);
  });
}

/** A place on an edge twice, so that each side keeps its own colour: just before and just beyond. */
function bothSides(place: FilmPlace, edge: number, rising: boolean): [FilmPlace, FilmPlace] {
  const below = { ...place, film: edge === 0 ? -Number.MIN_VALUE : edge * (1 - 1e-12) };
  const above = { ...place, film: edge === 0 ? Number.MIN_VALUE : edge * (1 + 1e-12) };
  return rising ? [below, above] : [above, below];
}

const mix = (p: Point, q: Point, t: number): Point => [p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t];

const between = (a: FilmPlace, b: FilmPlace, t: number): FilmPlace => (t === 0 ? a : betweenPlaces(a, b, t));

export const colourOf = (film: number, wanted: Wanted | null, max: number): Rgb =>
  linear(film < -SAME || film === -Number.MIN_VALUE ? INTERFERENCE : wantedColour(Math.max(0, film), wanted, max));

/** Of a shell that touches everywhere: as the touch has it, in the page's own light (OIL in shaders.ts). */
export const TOUCHING = linear(touchColour(false));

function filmColours(places: readonly FilmPlace[], drawn: Drawn, seat: number, max: number): Rgb[] {
  if (!drawn.at && places.every(({ film }) => Math.abs(film) <= SAME)) return places.map(() => TOUCHING);
  return places.map(({ film }) => colourOf(film, drawn.seats[seat]!.wanted, max));
}

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
