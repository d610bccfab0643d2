/**
 * The numbers of the parts that are not known for sure: which they are, how a value that follows a surface follows
 * them, and the parts with other numbers put in.
 *
 *   r(z) = R + (z - s)·tan a ± d(z)/cos a        + for a journal, - for a bush
 *   ∂r/∂R = 1     ∂r/∂a = (z - s)/cos²a ± d(z)·tan a/cos a     ∂r/∂d_k = ±hat_k(z)/cos a
 *
 * R radius at the station s (m) · a half angle (rad) · d deviation proud of the line (m), linear between its
 * points, with hat_k the function that is 1 at point k and 0 at the others.
 */
import { type Metres, type Radians, radians } from '../../design/dimension.ts';
import type { SeatInput } from '../contact/fit.ts';
import {
  deviationAt,
  type Line,
  lineOf,
  metalOf,
  outward,
  type Part,
  profilePieceAt,
  type Surface,
  shareIn,
} from '../parts/line.ts';

/** One surface of the pair. */
export interface On {
  /** index of the seat */
  seat: number;
  part: Part;
}

/**
 * How a value follows the shape of one surface: it changes by `rate` for every unit by which
 *   radius     the radius of the surface's line at `station` grows (m/m)
 *   halfAngle  its half angle itself grows, beyond what that does to radii (m/rad)
 *   deviation  its deviation at `station` grows (m/m)
 */
export interface Influence extends On {
  by: 'radius' | 'halfAngle' | 'deviation';
  station: Metres;
  rate: number;
}

/** One of the places or seats of which the greatest decides the value. */
export interface Branch {
  value: number;
  influences: Influence[];
}

export interface Unknown extends On {
  /** `stock`: the error of an amount that came off between readings (gauging/cutsBetween.ts) */
  of: 'halfAngle' | 'radius' | 'deviation' | 'stock';
  /** of a deviation: its station (m) */
  station?: Metres;
}

/** Of the shape itself. */
export type ShapeUnknown = Unknown & { of: Exclude<Unknown['of'], 'stock'> };
export const isOfShape = (unknown: Unknown): unknown is ShapeUnknown => unknown.of !== 'stock';

/** The unknowns of one surface, by their places in the list of all. */
interface Places {
  /** null where it is held straight */
  halfAngle: Radians | null;
  radius: Metres;
  /** point of the profile → place; only points that are unknown */
  deviations: Map<number, number>;
}

/** Metal that came off between readings, known by its identity: what its uncertainty (m) is the same for all. */
interface Amount {
  of: 'surface' | 'face';
  sigma: number;
}

export interface Unknowns {
  list: Unknown[];
  places: Map<string, Places>;
  /** places in the list of those that one row tells alone: deviations, and errors of stock */
  points: number[];
  /** place of the error of each amount of metal, by its identity */
  stock: Map<Amount, number>;
}

export const keyOf = ({ seat, part }: On) => `${seat} ${part}`;

/** Whether a surface is drawn straight: a half angle of nothing, to the last digit. */
export const isStraight = (seats: readonly SeatInput[], { seat, part }: On): boolean =>
  seats[seat]![part].halfAngle === 0;

const lines = new WeakMap<Surface, Line>();

/** The line of a surface; worked out once, since several readings ask for that of the same shape. */
export function lineOn(surface: Surface, part: Part): Line {
  const known = lines.get(surface);
  if (known) return known;
  const line = lineOf(surface, metalOf(part));
  lines.set(surface, line);
  return line;
}

/** The points of a profile that tell at a station, each with its share. */
function hats(profile: Surface['profile'], z: number): [point: number, share: number][] {
  const last = profile.length - 1;
  if (last < 0) return [];
  if (z <= profile[0]![0]) return [[0, 1]];
  if (z >= profile[last]![0]) return [[last, 1]];
  const k = profilePieceAt(profile, z);
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

function addDeviations(gradient: Float64Array, places: Places, surface: Surface, station: Metres, rate: number): void {
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
export const STEEPEST = radians(89);
