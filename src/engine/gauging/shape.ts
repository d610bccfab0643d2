/**
 * The shape that is sought: which numbers of which surfaces are unknown, how a value that follows a surface
 * follows those numbers, and the parts with other numbers put in.
 *
 *   r(z) = R + (z - s)·tan a ± d(z)/cos a        + for a journal, - for a bush
 *   ∂r/∂R = 1     ∂r/∂a = (z - s)/cos²a ± d(z)·tan a/cos a     ∂r/∂d_k = ±hat_k(z)/cos a
 *
 * R radius at the station s (m) · a half angle (rad) · d deviation proud of the line (m), linear between its
 * points, with hat_k the function that is 1 at point k and 0 at the others. A surface whose straightness was
 * read gets a profile with one point at every station read and 0 at both ends: straightness is told from the
 * end-to-end line, so half angle and radius then are those of that line. A surface drawn straight stays straight: its
 * half angle is no unknown, unless asked for (taper.ts).
 */
import type { SeatInput } from '../contact/fit.ts';
import {
  deviationAt,
  type Line,
  lineOf,
  outward,
  type Part,
  pieceAt,
  radiusOf,
  type Surface,
  shareIn,
} from '../parts/line.ts';
import { type CutBetween, cutsOf, movedBetween, rateOf } from './cutsBetween.ts';
import type { Influence, On, Reading } from './reading.ts';

export interface Unknown extends On {
  /** `stock`: the error of an amount that came off between readings (cutsBetween.ts) */
  of: 'halfAngle' | 'radius' | 'deviation' | 'stock';
  /** of a deviation: its station (m) */
  station?: number;
}

/** Of the shape itself. */
export type ShapeUnknown = Unknown & { of: Exclude<Unknown['of'], 'stock'> };
export const isOfShape = (unknown: Unknown): unknown is ShapeUnknown => unknown.of !== 'stock';

/** The unknowns of one surface, by their places in the list of all. */
interface Places {
  /** null where it is held straight */
  halfAngle: number | null;
  radius: number;
  /** point of the profile → place; only points that are unknown */
  deviations: Map<number, number>;
}

export interface Unknowns {
  list: Unknown[];
  places: Map<string, Places>;
  /** places in the list of those that one row tells alone: deviations, and errors of stock */
  points: number[];
  /** place of the error of each amount */
  stock: Map<CutBetween, number>;
}

const keyOf = ({ seat, part }: On) => `${seat} ${part}`;

/**
 * The parts as they are taken to be before any reading, and what is unknown of them: half angle and radius of
 * every surface named, and the deviations of those whose straightness was read. `isHeld`: of which the half angle is
 * none, since they are straight; those drawn so where nothing else is said.
 */
export function startingShape(
  nominal: readonly SeatInput[],
  surfaces: readonly On[],
  readings: readonly Reading[],
  isHeld: (on: On) => boolean = (on) => isStraight(nominal, on),
): { seats: SeatInput[]; unknowns: Unknowns } {
  const seats = nominal.map((seat) => ({ ...seat }));
  const unknowns: Unknowns = { list: [], places: new Map(), points: [], stock: new Map() };
  for (const on of [...surfaces].sort((a, b) => a.seat - b.seat || (a.part < b.part ? 1 : -1))) {
    if (unknowns.places.has(keyOf(on))) continue;
    const stations = readings.flatMap((r) =>
      r.kind === 'straightness' && r.seat === on.seat && r.part === on.part ? [r.station - movedBetween(r, on)] : [],
    );
    const surface =
      stations.length > 0 ? endToEnd(seats[on.seat]![on.part], stations, on.part) : seats[on.seat]![on.part];
    seats[on.seat]![on.part] = surface;
    const deviations = new Map<number, number>();
    const places = {
      radius: unknowns.list.push({ ...on, of: 'radius' }) - 1,
      halfAngle: isHeld(on) ? null : unknowns.list.push({ ...on, of: 'halfAngle' }) - 1,
      deviations,
    };
    if (stations.length > 0) {
      for (let k = 1; k < surface.profile.length - 1; k++)
        deviations.set(k, unknowns.list.push({ ...on, of: 'deviation', station: surface.profile[k]![0] }) - 1);
    }
    unknowns.places.set(keyOf(on), places);
  }
  for (const cut of cutsOf(readings))
    unknowns.stock.set(
      cut,
      unknowns.list.push({ seat: cut.of === 'face' ? cut.seats[0]! : cut.seat, part: cut.part, of: 'stock' }) - 1,
    );
  unknowns.points = unknowns.list.flatMap(({ of }, j) => (of === 'deviation' || of === 'stock' ? [j] : []));
  return { seats, unknowns };
}

/** m: stations nearer than this to an end, or to each other, are the same place. */
export const NOWHERE = 1e-9;
/** Whether a surface is drawn straight: a half angle of nothing, to the last digit. */
export const isStraight = (seats: readonly SeatInput[], { seat, part }: On): boolean =>
  seats[seat]![part].halfAngle === 0;

/** The same line, told by its end-to-end line and its deviations from that at the given stations. */
function endToEnd(surface: Surface, stations: readonly number[], part: Part): Surface {
  const { from, to, station } = surface;
  const [rear, nose] = [radiusOf(surface, part, from), radiusOf(surface, part, to)];
  const slope = (nose - rear) / (to - from);
  const halfAngle = Math.atan(slope);
  const inside = [...stations].sort((a, b) => a - b).filter((z) => z - from >= NOWHERE && to - z >= NOWHERE);
  const apart = inside.filter((z, k) => k === 0 || z - inside[k - 1]! >= NOWHERE);
  const profile = apart.map(
    (z) => [z, outward(part) * Math.cos(halfAngle) * (radiusOf(surface, part, z) - rear - (z - from) * slope)] as const,
  );
  return { ...surface, halfAngle, radius: rear + (station - from) * slope, profile: [[from, 0], ...profile, [to, 0]] };
}

/** +1 where metal that stands proud makes the radius larger. */
const lines = new WeakMap<Surface, Line>();

/** The line of a surface; worked out once, since several readings ask for that of the same shape. */
export function lineOn(surface: Surface, part: Part): Line {
  const known = lines.get(surface);
  if (known) return known;
  const line = lineOf(surface, part === 'journal' ? 'inside' : 'outside');
  lines.set(surface, line);
  return line;
}

/** The points of a profile that tell at a station, each with its share. */
function hats(profile: Surface['profile'], z: number): [point: number, share: number][] {
  const last = profile.length - 1;
  if (last < 0) return [];
  if (z <= profile[0]![0]) return [[0, 1]];
  if (z >= profile[last]![0]) return [[last, 1]];
  const k = pieceAt(profile, z);
  const t = shareIn(profile, k, z);
  return [
    [k, 1 - t],
    [k + 1, t],
  ];
}

/** The derivative of a value by every unknown, from its influences on the shape `seats`. */
export function gradientOf(
  influences: readonly Influence[],
  seats: readonly SeatInput[],
  unknowns: Unknowns,
): Float64Array {
  const gradient = new Float64Array(unknowns.list.length);
  for (const { seat, part, by, station, rate } of influences) {
    const places = unknowns.places.get(keyOf({ seat, part }));
    if (!places) continue;
    const surface = seats[seat]![part];
    const add = (place: number | null, by: number) => {
      if (place !== null) gradient[place]! += by;
    };
    if (by === 'halfAngle') add(places.halfAngle, rate);
    else if (by === 'deviation') addDeviations(gradient, places, surface, station, rate);
    else {
      const cos = Math.cos(surface.halfAngle);
      const tan = Math.tan(surface.halfAngle);
      gradient[places.radius]! += rate;
      add(
        places.halfAngle,
        rate *
          ((station - surface.station) / (cos * cos) +
            (outward(part) * deviationAt(surface.profile, station) * tan) / cos),
      );
      addDeviations(gradient, places, surface, station, (rate * outward(part)) / cos);
    }
  }
  return gradient;
}

/** The same of a reading, whose influences are those on the shape it saw. */
export function gradientSeen(
  { since = [] }: Pick<Reading, 'since'>,
  influences: readonly Influence[],
  seen: readonly SeatInput[],
  unknowns: Unknowns,
): Float64Array {
  const gradient = gradientOf(influences, seen, unknowns);
  for (const each of since) {
    const place = unknowns.stock.get(each.cut);
    if (place !== undefined) gradient[place]! += rateOf(each, influences, seen);
  }
  return gradient;
}

function addDeviations(gradient: Float64Array, places: Places, surface: Surface, station: number, rate: number): void {
  if (places.deviations.size === 0) return;
  for (const [point, share] of hats(surface.profile, station)) {
    const place = places.deviations.get(point);
    if (place !== undefined) gradient[place]! += rate * share;
  }
}

/** The numbers of the unknowns as they are in a shape. */
export function numbersOf(seats: readonly SeatInput[], { list, places }: Unknowns): Float64Array {
  const numbers = new Float64Array(list.length);
  for (const [key, { halfAngle, radius, deviations }] of places) {
    const surface = surfaceOf(seats, key);
    if (halfAngle !== null) numbers[halfAngle] = surface.halfAngle;
    numbers[radius] = surface.radius;
    for (const [point, place] of deviations) numbers[place] = surface.profile[point]![1];
  }
  return numbers;
}

function surfaceOf(seats: readonly SeatInput[], key: string): Surface {
  const [seat, part] = key.split(' ');
  return seats[Number(seat)]![part as Part];
}

/** A shape with other numbers put in. */
export function withNumbers(seats: readonly SeatInput[], { places }: Unknowns, numbers: Float64Array): SeatInput[] {
  const shaped = seats.map((seat) => ({ ...seat }));
  for (const [key, { halfAngle, radius, deviations }] of places) {
    const surface = surfaceOf(seats, key);
    const profile =
      deviations.size === 0
        ? surface.profile
        : surface.profile.map(([z, d], k) => [z, deviations.has(k) ? numbers[deviations.get(k)!]! : d] as const);
    const [seat, part] = key.split(' ');
    shaped[Number(seat)]![part as Part] = {
      ...surface,
      halfAngle: halfAngle === null ? surface.halfAngle : numbers[halfAngle]!,
      radius: numbers[radius]!,
      profile,
    };
  }
  return shaped;
}

/** Whether the numbers make a surface at all: half angles below 89°, radii above 0 along every line. */
export function isShape(seats: readonly SeatInput[]): boolean {
  return seats.every((seat) =>
    (['journal', 'bush'] as const).every((part) => {
      const surface = seat[part];
      return Math.abs(surface.halfAngle) < STEEPEST && lineOn(surface, part).r.every((r) => r > 0);
    }),
  );
}

/** rad; the design file's own bound on half angles */
const STEEPEST = (89 * Math.PI) / 180;
