/**
 * The pair cut square to its axis, as seen from in front of the nose, so that what lies aside is seen: journal, oil and
 * bush at one station, and in steps outward every wider seat that lies nearer the nose, each at a station of its own.
 */
import type { Drawn, Point } from '../drawn.ts';
import { FAR, type Frame, joined, type Mesh } from '../revolve.ts';
import { linesAt } from '../sceneGeometry.ts';
import { colourOf, placesAt } from './filmGeometry.ts';

const AROUND = 96;
const NOTHING: Mesh = joined([]);

/** The seat that is cut: the least steep, which holds the spindle sideways; of equals the one at the nose. */
export function cutSeat({ seats }: Drawn): number {
  const slope = (line: readonly Point[]) => {
    const [a, b] = [line[0]!, line[line.length - 1]!];
    return Math.abs((b[1] - a[1]) / (b[0] - a[0] || 1e-12));
  };
  let best = -1;
  seats.forEach((seat, i) => {
    if (seat.bush.length < 2 || seat.journal.length < 2) return;
    const other = seats[best];
    const better = other && slope(seat.bush) - slope(other.bush);
    if (better === undefined || better < -1e-3 || (better <= 1e-3 && seat.bush[0]![0] > other!.bush[0]![0])) best = i;
  });
  return best;
}

/** Where along that seat, from its rear: near the nose, for a journal that tilts lies aside there. */
const SHARE = 0.85;

/** Station (m) of the cut; of the bush's line, which does not move. */
export function cutStation(drawn: Drawn): number {
  const seat = drawn.seats[cutSeat(drawn)];
  if (!seat) return 0;
  const [rear, nose] = [seat.bush[0]![0], seat.bush[seat.bush.length - 1]![0]];
  return rear + SHARE * (nose - rear);
}

/** A step of the cut: this seat at this station (m), from this radius (m) outward to the next. */
export interface Step {
  seat: number;
  station: number;
  from: number;
}

/** A wider seat is cut where half of it lies on either side. */
const MIDDLE = 0.5;
/** Times as wide as the seat before, for the ring of it to have room; of the room between, what the one before has. */
const WIDER = 1.08;
const WALL = 0.3;

/** All steps of the cut, outward; of the bush's lines, which do not move. */
export function stepsOf(drawn: Drawn): Step[] {
  const first = cutSeat(drawn);
  if (first < 0) return [];
  const station = cutStation(drawn);
  const wide = (seat: number, at: number) => radiusAt(drawn.seats[seat]!.bush, at) ?? 0;
  const others = drawn.seats
    .map(({ bush }, seat) => {
      const [rear, nose] = [bush[0]![0], bush[bush.length - 1]![0]];
      const at = rear + MIDDLE * (nose - rear);
      return { seat, station: at, radius: wide(seat, at) };
    })
    .filter((one) => one.seat !== first && one.station > station)
    .sort((a, b) => a.radius - b.radius);
  const steps: Step[] = [{ seat: first, station, from: 0 }];
  let last = wide(first, station);
  for (const { radius, ...one } of others) {
    if (radius < WIDER * last) continue;
    steps.push({ ...one, from: last + WALL * (radius - last) });
    last = radius;
  }
  return steps;
}

/** Radius of a line at a station; null where it does not reach there. */
export function radiusAt(line: readonly Point[], station: number): number | null {
  for (let i = 0; i + 1 < line.length; i++) {
    const from = line[i]!;
    const to = line[i + 1]!;
    const z0 = from[0];
    const z1 = to[0];
    if (z0 === z1 || station < Math.min(z0, z1) || station > Math.max(z0, z1)) continue;
    return from[1] + ((station - z0) / (z1 - z0)) * (to[1] - from[1]);
  }
  return null;
}

/** The same; past its ends as its outermost pieces go on. */
function radiusOn(line: readonly Point[], station: number): number | null {
  const [first, last] = [line[0], line[line.length - 1]];
  if (!first || !last || line.length < 2) return null;
  const past = station < Math.min(first[0], last[0]) === first[0] < last[0] ? line.slice(0, 2) : line.slice(-2);
  const [[z0, r0], [z1, r1]] = past as [Point, Point];
  return radiusAt(line, station) ?? (z0 === z1 ? null : r0 + ((station - z0) / (z1 - z0)) * (r1 - r0));
}

export interface NoseCut {
  journal: Mesh;
  bush: Mesh;
  film: Mesh;
}

/** At a station (scene lengths). The bush is open by `sector` degrees. `inSteps`: wider seats are cut too. */
export function noseCutMeshes(
  drawn: Drawn,
  frame: Frame,
  clip: number,
  sector: number,
  max: number,
  inSteps = true,
): NoseCut {
  if (!Number.isFinite(clip)) return { journal: NOTHING, bush: NOTHING, film: NOTHING };
  const [first, ...others] = stepsOf(drawn);
  const station = clip / frame.scale + frame.centre;
  // On its way to where it is cut there is one step.
  const steps = inSteps && first && Math.abs(station - first.station) < ON_THE_WAY ? others : [];
  const inner = innermost(drawn, frame, clip, sector, max, steps[0]?.from ?? Number.POSITIVE_INFINITY);
  const rings = steps.map((step, i) =>
    stepMeshes(drawn, frame, clip, max, step, steps[i + 1]?.from ?? Number.POSITIVE_INFINITY),
  );
  const all = (part: keyof NoseCut) =>
    joined([inner, ...rings].map((one) => one[part]).filter((mesh) => mesh.indices.length > 0));
  return { journal: all('journal'), bush: all('bush'), film: all('film') };
}

/** m */
const ON_THE_WAY = 1e-7;

/** One step beyond the first, from its radius to the next: laid in the plane of the first, as it is looked at. */
function stepMeshes(drawn: Drawn, frame: Frame, clip: number, max: number, step: Step, to: number): NoseCut {
  const { seat, station, from } = step;
  const { wanted } = drawn.seats[seat]!;
  const within = (r: number, outer: number) => Math.min(outer, Math.max(from, r));
  const spokes = Array.from({ length: AROUND + 1 }, (_, j) => {
    const theta = (2 * Math.PI * j) / AROUND;
    const oil = ringAt(drawn, theta, station, step);
    const { bushes } = linesAt(drawn, frame, theta);
    const wall = bushes.find(({ bore }) => radiusAt(bore, station) !== null);
    return { theta, oil, outer: Math.min(to, wall?.outside ?? 0) };
  });
  if (spokes.some(({ oil }) => oil === null)) return { journal: NOTHING, bush: NOTHING, film: NOTHING };
  const faces = (of: (spoke: (typeof spokes)[number]) => [number, number], colours?: Colour[]) =>
    ring(
      spokes.map((spoke): Spoke => [spoke.theta, ...of(spoke)]),
      clip,
      frame.scale,
      colours,
    );
  return {
    journal: faces(({ oil, outer }) => [from, within(oil!.journal, outer)]),
    bush: faces(({ oil, outer }) => [within(oil!.outer, outer), outer]),
    film: faces(
      ({ oil, outer }) => [within(oil!.inner, outer), within(oil!.outer, outer)],
      spokes.map(({ oil }) => colourOf(oil!.film, wanted, max)),
    ),
  };
}

type Colour = ReturnType<typeof colourOf>;

/** The first step, out to where the next begins. */
function innermost(drawn: Drawn, frame: Frame, clip: number, sector: number, max: number, to: number): NoseCut {
  const station = clip / frame.scale + frame.centre;
  const lineAt = (theta: number) => {
    const { journal, bushes } = linesAt(drawn, frame, theta);
    const bush = bushes.map(({ bore, outside }) => ({ bore: radiusAt(bore, station), outside }));
    const oil = ringAt(drawn, theta, station);
    return {
      journal: oil?.journal ?? radiusAt(journal, station),
      bush: bush.find(({ bore }) => bore !== null) ?? null,
      oil,
    };
  };
  // The same all round where the pair is round.
  const once = drawn.at ? null : lineAt(0);
  const lines = Array.from({ length: AROUND + 1 }, (_, j) => {
    const theta = (2 * Math.PI * j) / AROUND;
    return { theta, ...(once ?? lineAt(theta)) };
  });
  const disc = lines.map(({ theta, journal }): Spoke => [theta, 0, journal ?? 0]);
  const half = (sector * Math.PI) / 360;
  const wall = lines.flatMap(({ theta, bush }): Spoke[] =>
    bush && theta >= half - 1e-9 && theta <= 2 * Math.PI - half + 1e-9
      ? [[theta, bush.bore!, Math.max(bush.bore!, Math.min(bush.outside, to))]]
      : [],
  );
  return {
    journal: lines.every(({ journal }) => journal === null) ? NOTHING : ring(disc, clip, frame.scale),
    bush: wall.length < 2 ? NOTHING : ring(wall, clip, frame.scale),
    film: lines.some(({ oil }) => oil === null)
      ? NOTHING
      : ring(
          lines.map(({ theta, oil }): Spoke => [theta, oil!.inner, oil!.outer]),
          clip,
          frame.scale,
          lines.map(({ oil }) => colourOf(oil!.film, drawn.seats[oil!.seat]!.wanted, max)),
        ),
  };
}

/**
 * The oil at a station and an angle of the scene: between which radii, and how thick; of one step, or of any seat
 * there. Of a wider step whole, for its picture ends where the next begins and not with the bush.
 */
export function ringAt(drawn: Drawn, theta: number, station: number, step?: Step) {
  const whole = step !== undefined && step.from > 0;
  const seats = whole && drawn.at ? drawn.at(Math.PI - theta) : drawn.seats;
  for (const seat of step ? [step.seat] : drawn.seats.keys()) {
    const places = whole ? seats[seat]!.film : placesAt(drawn, seat, theta);
    const bush = radiusAt(
      places.map((place) => place.bush),
      station,
    );
    // Drawn along the axis, a journal that lies far aside does not reach everywhere: its line does.
    const journal = radiusOn(
      places.map((place) => place.journal),
      station,
    );
    const film = radiusAt(
      places.map((place): Point => [place.bush[0], place.film]),
      station,
    );
    if (bush !== null && journal !== null && film !== null)
      return { seat, journal, inner: Math.min(bush, journal), outer: Math.max(bush, journal), film };
  }
  return null;
}

type Spoke = readonly [theta: number, inner: number, outer: number];

/** A flat ring between two radii, facing the nose; a line along both of its borders. */
function ring(
  spokes: readonly Spoke[],
  clip: number,
  scale: number,
  colours?: readonly (readonly [number, number, number])[],
): Mesh {
  const corners = spokes.flatMap(([theta, inner, outer]) =>
    [inner, outer].flatMap((r) => [clip, scale * r * Math.sin(theta), scale * r * Math.cos(theta)]),
  );
  const edges = spokes.flatMap(([, inner, outer]) => {
    const across = scale * (outer - inner);
    return [inner > 0 ? 0 : FAR, across, FAR, FAR, inner > 0 ? across : FAR, 0, FAR, FAR];
  });
  return {
    positions: new Float32Array(corners),
    normals: new Float32Array(spokes.flatMap(() => [1, 0, 0, 1, 0, 0])),
    indices: new Uint32Array(
      spokes.slice(1).flatMap((_, j) => [2 * j, 2 * j + 2, 2 * j + 1, 2 * j + 1, 2 * j + 2, 2 * j + 3]),
    ),
    edges: new Float32Array(edges),
    ...(colours ? { colours: new Float32Array(colours.flatMap((colour) => [...colour, ...colour])) } : {}),
  };
}
