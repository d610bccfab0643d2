/**
 * The metal of the scene from the drawn half sections: journal and bushes, swept about the axis (revolve.ts). The oil
 * between them is in solid/filmGeometry.ts.
 */
import { type Drawn, type DrawnSeat, type Point, relieved } from './drawn.ts';
import { cutFaces, type Frame, joined, type Mesh, revolved, wallAngles } from './revolve.ts';
import { fromChord, thinned } from './thinned.ts';

/** The outside of the bush to the largest radius. */
export const WALL = 1.35;
/** Most points of one solid's profile; a measured profile may have thousands, more than a screen shows. */
const MOST_POINTS = 120;

const middle = (points: readonly Point[]) => (points[0]![0] + points[points.length - 1]![0]) / 2;

/** Seats that can be drawn, by their places in the design, from the rear to the nose: by the bush, which stays. */
const order = onceEach((drawn) =>
  drawn.seats
    .map((_, i) => i)
    .filter((i) => drawn.seats[i]!.bush.length > 1 && drawn.seats[i]!.journal.length > 1)
    .sort((a, b) => middle(drawn.seats[a]!.bush) - middle(drawn.seats[b]!.bush)),
);

/** Seats further from each other than the bush is wide are in bushes of their own. */
const bushes = onceEach((drawn) => {
  const groups: number[][] = [];
  const widest = 2 * Math.max(0, ...drawn.seats.flatMap(({ bush }) => bush.map(([, r]) => r)));
  for (const i of order(drawn)) {
    const last = groups.at(-1);
    const before = last && drawn.seats[last.at(-1)!]!.bush.at(-1)!;
    if (before && drawn.seats[i]!.bush[0]![0] - before[0] <= widest) last.push(i);
    else groups.push([i]);
  }
  return groups;
});

/** Stations (m) of the faces of every bush, rear to nose. */
export const facesOf = (drawn: Drawn): [rear: number, nose: number][] =>
  bushes(drawn).map((group) => [drawn.seats[group[0]!]!.bush[0]![0], drawn.seats[group.at(-1)!]!.bush.at(-1)![0]]);

/** Stations of the faces of the bush that a seat lies in, where `seats` are drawn. */
export function bushEnds(drawn: Drawn, seats: readonly DrawnSeat[], seat: number): [rear: number, nose: number] {
  const group = bushes(drawn).find((one) => one.includes(seat)) ?? [seat];
  return [seats[group[0]!]!.bush[0]![0], seats[group.at(-1)!]!.bush.at(-1)![0]];
}

/** Of a drawing, asked for by several of its solids: worked out once. */
function onceEach<T>(of: (drawn: Drawn) => T): (drawn: Drawn) => T {
  const known = new WeakMap<Drawn, { value: T }>();
  return (drawn) => {
    const found = known.get(drawn) ?? { value: of(drawn) };
    known.set(drawn, found);
    return found.value;
  };
}

export function frameOf(drawn: Drawn): Frame {
  const points = order(drawn).flatMap((i) => drawn.seats[i]!.bush);
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
  /** of the journal's axis toward that angle, at a station; of its tilt along the axis, at a radius */
  aside(station: number): number;
  endwise(radius: number): number;
}

interface HalfSections {
  first: HalfSection;
  /** what decides what is relieved, and how large the journal's ends are */
  upright: HalfSection;
  at(theta: number): HalfSection;
}

/**
 * The half section at an angle θ of the scene. Angles of the design run from x, to the right seen from in front
 * of the nose, toward y, upward; so φ = π - θ. Which points are kept is decided once, upward.
 */
const halfSections = onceEach((drawn: Drawn): HalfSections => {
  const seen = order(drawn);
  const most = MOST_POINTS / Math.max(1, seen.length);
  const kept = seen.map((i) => {
    const { bush, journal } = drawn.seats[i]!;
    return { bush: keptOf(bush, most), journal: keptOf(journal, most) };
  });
  const section = (seats: readonly DrawnSeat[], angle: number): HalfSection => ({
    seats: seen.map((i, k) => {
      const seat = seats[i]!;
      return {
        ...seat,
        bush: kept[k]!.bush.map((at) => seat.bush[at]!),
        journal: kept[k]!.journal.map((at) => seat.journal[at]!),
      };
    }),
    aside: (station) => drawn.aside(station, angle),
    endwise: (radius) => drawn.endwise(radius, angle),
  });
  const first = section(drawn.seats, Math.PI / 2);
  const { at } = drawn;
  const upright = at ? meanOf(first, section(drawn.below, 1.5 * Math.PI)) : first;
  return { first, upright, at: at ? (theta) => section(at(Math.PI - theta), Math.PI - theta) : () => first };
});

/** The journal between two opposite half sections: as it would stand, were it not pulled aside. */
function meanOf(one: HalfSection, other: HalfSection): HalfSection {
  const seats = one.seats.map((seat, i) => ({
    ...seat,
    journal: seat.journal.map(([z, r], k): Point => {
      const [z2, r2] = other.seats[i]!.journal[k]!;
      return [(z + z2) / 2, (r + r2) / 2];
    }),
  }));
  return { seats, aside: () => 0, endwise: () => 0 };
}

const keptOf = (points: readonly Point[], most: number) =>
  thinned(
    points.map((_, i) => i),
    most,
    (i) => fromChord(points)(points[i]!),
  );

/** The journal's half section, from the axis at its rear to the axis at its nose. */
export function journalProfile(drawn: Drawn, frame: Frame): Point[] {
  const { first, upright } = halfSections(drawn);
  return journalLine(first, upright, frame);
}

/** The ends are moved and tilted as the rigid journal is. */
function journalLine(
  { seats: here, aside, endwise }: HalfSection,
  { seats }: HalfSection,
  { overhang }: Frame,
): Point[] {
  const bores = seats.map((seat) => seat.bush);
  const body = relieved(
    seats.map((seat) => seat.journal),
    bores,
    'inside',
  );
  const rear = body[0];
  const nose = body[body.length - 1];
  if (!rear || !nose) return [];
  // One thickness wherever it goes, clear of the faces of the bush.
  const [face, mouth] = [bores[0]![0]!, bores[bores.length - 1]!.at(-1)!];
  const stub = Math.min(0.8 * rear[1], 0.9 * face[1]);
  const end = Math.min(0.95 * nose[1], 0.9 * mouth[1]);
  const from = rear[0] - overhang;
  const to = nose[0] + overhang;
  const line = relieved(
    here.map((seat) => seat.journal),
    bores,
    'inside',
  );
  return [
    [from, 0],
    [from + endwise(stub), stub + aside(from)],
    [line[0]![0], stub + aside(rear[0])],
    ...line,
    [line[line.length - 1]![0], end + aside(nose[0])],
    [to + endwise(end), end + aside(to)],
    [to, 0],
  ];
}

/** The wall of every bush, once round: bore from nose to rear, rear face, outside, nose face. */
export const bushProfiles = (drawn: Drawn): Point[][] => {
  const { first } = halfSections(drawn);
  return groupsOf(drawn).map((group) => bushLine(first, first, group));
};

/** Places of each bush's seats in a half section: rear to nose, the next ones in the next bush. */
const groupsOf = (drawn: Drawn): Group[] => {
  let at = 0;
  return bushes(drawn).map(({ length }): Group => {
    at += length;
    return [at - length, at];
  });
};
type Group = readonly [from: number, to: number];

const outsideOf = ({ seats }: HalfSection, [from, to]: Group) =>
  WALL * Math.max(...seats.slice(from, to).flatMap(({ bush }) => bush.map(([, r]) => r)));

function bushLine(here: HalfSection, first: HalfSection, group: Group): Point[] {
  const bore = boreOf(here, first, group);
  const rear = bore[0];
  const nose = bore[bore.length - 1];
  if (!rear || !nose) return [];
  const outside = outsideOf(first, group);
  return [...bore.toReversed(), [rear[0], outside], [nose[0], outside], nose];
}

const boreOf = (here: HalfSection, first: HalfSection, [from, to]: Group): Point[] =>
  relieved(
    here.seats.slice(from, to).map((seat) => seat.bush),
    first.seats.slice(from, to).map((seat) => seat.bush),
    'outside',
  );

export function journalMesh(drawn: Drawn, frame: Frame, last?: Mesh | null): Mesh {
  const { upright, at } = halfSections(drawn);
  return revolved(
    profilesOf(drawn, (theta) => journalLine(at(theta), upright, frame)),
    frame,
    0,
    2 * Math.PI,
    last,
  );
}

/** The bushes, open by `sector` degrees. */
export function bushMesh(drawn: Drawn, frame: Frame, sector: number): Mesh {
  const { first, at } = halfSections(drawn);
  return joined(
    groupsOf(drawn).map((group) =>
      revolved(
        profilesOf(drawn, (theta) => bushLine(at(theta), first, group)),
        frame,
        ...wallAngles(sector),
      ),
    ),
  );
}

/** The two faces where each bush is cut open; none where it is closed. */
export function bushCutMesh(drawn: Drawn, frame: Frame, sector: number): Mesh {
  const { first, at } = halfSections(drawn);
  return joined(
    groupsOf(drawn).map((group) => {
      const outside = outsideOf(first, group);
      return cutFaces(
        (theta) => ({ pairs: boreOf(at(theta), first, group).map((point) => [point, [point[0], outside]]) }),
        frame,
        sector,
      );
    }),
  );
}

/** The same profile all round where the pair is round: made once. */
function profilesOf(drawn: Drawn, line: (theta: number) => Point[]): (theta: number) => { points: Point[] } {
  if (drawn.at) return (theta) => ({ points: line(theta) });
  const profile = { points: line(0) };
  return () => profile;
}

/** Lines of the parts at an angle of the scene: the journal's, and each bush's bore with its outside (m). */
export function linesAt(drawn: Drawn, frame: Frame, theta: number) {
  const { first, upright, at } = halfSections(drawn);
  const here = at(theta);
  return {
    journal: journalLine(here, upright, frame),
    bushes: groupsOf(drawn).map((group) => ({
      bore: boreOf(here, first, group),
      outside: outsideOf(first, group),
    })),
  };
}

/** Circles between which everything lies: the bushes' faces and the ends of the journal; scene lengths. */
export function discsOf(
  drawn: Drawn,
  frame: Frame,
): { bushes: [x: number, r: number][]; journal: [x: number, r: number][] } {
  const { first, upright } = halfSections(drawn);
  const disc = (z: number, r: number): [number, number] => [frame.scale * (z - frame.centre), frame.scale * r];
  const faces = facesOf(drawn);
  const line = journalLine(first, upright, frame);
  return {
    bushes: groupsOf(drawn).flatMap((group, i) => faces[i]!.map((z) => disc(z, outsideOf(first, group)))),
    journal: line.slice(1, -1).map(([z, r]) => disc(z, r)),
  };
}

/** The next of 1, 2, 2.5, 5 · 10ⁿ at or above a value, for the far end of a scale. */
export function roundAbove(value: number): number {
  if (!(value > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(value));
  return ([1, 2, 2.5, 5].find((step) => step * power >= value * (1 - 1e-9)) ?? 10) * power;
}

function extent(values: readonly number[]): [least: number, greatest: number] {
  return values.reduce<[number, number]>(
    ([least, greatest], value) => [Math.min(least, value), Math.max(greatest, value)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
}
