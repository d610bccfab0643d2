/**
 * The shape that is sought from readings: which numbers of which surfaces are unknown (belief/unknowns.ts), and how a
 * reading follows them.
 *
 * A surface of which a reading seeks the profile (`profileAt` of its kind, as of straightness) gets one with a point at
 * every such station and 0 at both ends: it is told from the end-to-end line, so half angle and radius then are those
 * of that line. A surface drawn straight stays straight: its half angle is no unknown, unless asked for (taper.ts).
 */
import { gradientOf, type Influence, isStraight, keyOf, type On, type Unknowns } from '../belief/unknowns.ts';
import type { SeatInput } from '../contact/fit.ts';
import { outward, type Part, radiusOf, type Surface } from '../parts/line.ts';
import { cutsOf, movedBetween, rateOf } from './cutsBetween.ts';
import { NOWHERE, type Reading } from './reading.ts';
import { profileAt } from './readings/index.ts';

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
      'seat' in r && r.seat === on.seat && r.part === on.part
        ? profileAt(r).map((station) => station - movedBetween(r, on))
        : [],
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
