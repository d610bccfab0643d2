/**
 * The drawing of a job that stands already: its seats as an arrangement, its sizes as they are written there, and the
 * design with one of them typed.
 */
import { isAssumed, withKnown } from '../../../design/assumed.ts';
import type { Design, Seat, Surface } from '../../../design/definition.ts';
import { diameterAt, withFollowing } from '../../../design/following.ts';
import { exact } from '../../../design/rounded.ts';
import { shifted } from '../../../design/seats.ts';
import type { System } from '../../../design/units.ts';
import { radians } from '../../../report/convert.ts';
import type { Lengths } from '../../state/typedLengths.ts';
import type { Arrangement, SeatPlan } from './arrangements.ts';
import { idOf, type Size, stationsTold } from './newDesign.ts';

export interface JobSketch {
  plan: Arrangement;
  /** where in the design each seat that is drawn stands, from the rear to the nose */
  order: readonly number[];
}

/** More than these have no room on it. */
const MOST = 5;
/** In the drawing. */
const LEFT = 165;
const RIGHT = 825;
const LEAST_SEAT = 60;
const NEAR = 64;
const FAR = 130;
const FACING = 140;
const RADIUS = { least: 36, most: 92, taper: 12 };
/** mm: nearer is the same place */
const SAME = 1e-6;

/** Null where the seats do not stand one behind the other, or are too many for a drawing. */
export function sketchOf(design: Design): JobSketch | null {
  const order = design.seats.map((_, i) => i).sort((a, b) => journalOf(design, a).from - journalOf(design, b).from);
  const seats = order.map((i) => design.seats[i]!);
  const apart = seats.map(({ journal }, i) => (i === 0 ? 0 : journal.from - seats[i - 1]!.journal.to));
  if (seats.length > MOST || apart.some((gap) => gap < -SAME)) return null;
  const places = placesOf(seats, apart);
  if (places === null) return null;
  const told = seats.map(({ journal }) => diameterAt(journal, toldAt(journal)));
  const [least, most] = [Math.min(...told), Math.max(...told)];
  // The radius at the nose end of the seat before.
  let behind = 0;
  const plans = seats.map((seat, i): SeatPlan => {
    const { journal } = seat;
    const big =
      RADIUS.least + RADIUS.taper + share(told[i]!, least, most) * (RADIUS.most - RADIUS.least - RADIUS.taper);
    const taper = journal.halfAngle === 0 ? 0 : RADIUS.taper + Math.min(30, 0.6 * Math.abs(journal.halfAngle));
    // A cone on from another one's large end begins no thinner than that, where there is room.
    const small = journal.halfAngle > 0 ? Math.min(big - 8, Math.max(big - taper, behind)) : big - taper;
    behind = journal.halfAngle > 0 ? big + 4 : 0;
    return {
      name: seat.name,
      title: titleOf(seat),
      halfAngle: journal.halfAngle,
      diameter: told[i]!,
      length: journal.to - journal.from,
      ...(i > 0 && { behind: Math.max(0, apart[i]!) }),
      x: places[i]!,
      r: journal.halfAngle < 0 ? [big, small] : [small, big],
    };
  });
  return { plan: { id: 'job', title: design.title ?? '', seats: plans, zero: zeroOf(seats, plans) }, order };
}

const journalOf = (design: Design, i: number): Surface => design.seats[i]!.journal;
const share = (value: number, least: number, most: number) => (most > least ? (value - least) / (most - least) : 0.5);
/** The large end, where a diameter is told; of a straight one the nose end. */
const toldAt = ({ halfAngle, from, to }: Surface) => (halfAngle < 0 ? from : to);
const titleOf = ({ name, journal }: Seat) =>
  /(cone|bearing|seat)$/i.test(name) ? name : `${name} ${journal.halfAngle === 0 ? 'bearing' : 'cone'}`;

function placesOf(seats: readonly Seat[], apart: readonly number[]): [number, number][] | null {
  const wanted = seats.slice(1).map(({ journal }, i) => {
    const behind = seats[i]!.journal;
    if (behind.halfAngle >= 0 && journal.halfAngle < 0) return FACING;
    return apart[i + 1]! > 0.5 * Math.min(journal.to - journal.from, behind.to - behind.from) ? FAR : NEAR;
  });
  const room = RIGHT - LEFT - LEAST_SEAT * seats.length;
  const shrink = Math.min(1, room / wanted.reduce((sum, gap) => sum + gap, 0));
  // Two diameters told at ends that face each other need all of it.
  if (shrink < 1 && wanted.includes(FACING)) return null;
  const gaps = wanted.map((gap) => gap * shrink);
  const between = gaps.reduce((sum, gap) => sum + gap, 0);
  const width = Math.min(240, (RIGHT - LEFT - between) / seats.length);
  let x = (LEFT + RIGHT - between - width * seats.length) / 2;
  return seats.map((_, i): [number, number] => {
    if (i > 0) x += gaps[i - 1]!;
    const from = x;
    x += width;
    return [from, x];
  });
}

/** Where stations are counted from: an end of a seat where it is one, else drawn in proportion between them. */
function zeroOf(seats: readonly Seat[], plans: readonly SeatPlan[]): Arrangement['zero'] {
  for (const [seat, { journal }] of seats.entries())
    for (const end of ['rear', 'nose'] as const)
      if (Math.abs(end === 'rear' ? journal.from : journal.to) < SAME) {
        const large = (end === 'nose') === journal.halfAngle > 0;
        const which = journal.halfAngle === 0 ? `${end} end` : `${large ? 'large' : 'small'} end`;
        return { seat, end, words: `the ${which} of the ${plans[seat]!.title}` };
      }
  const marks = seats.flatMap(({ journal }, i) => [
    { z: journal.from, x: plans[i]!.x[0] },
    { z: journal.to, x: plans[i]!.x[1] },
  ]);
  const after = marks.findIndex(({ z }) => z > 0);
  const [a, b] = [marks[after - 1], marks[after]];
  const x = a && b ? a.x + ((b.x - a.x) * -a.z) / (b.z - a.z) : b ? b.x - 30 : marks.at(-1)!.x + 30;
  return { seat: 0, end: 'nose', x, words: 'the datum of the drawing' };
}

/** Every size on the drawing, as it stands in the design; degrees are positive here. */
export function jobSizes(design: Design, { plan, order }: JobSketch): Record<string, number> {
  return Object.fromEntries(
    plan.seats.flatMap((seat, i) => {
      const { journal, bush } = design.seats[order[i]!]!;
      const at = toldAt(journal);
      return [
        [idOf(seat, 'diameter'), exact(seat.diameter)],
        [idOf(seat, 'bore'), exact(diameterAt(bush, at))],
        ...(journal.halfAngle === 0 ? [] : [[idOf(seat, 'angle'), Math.abs(journal.halfAngle)]]),
        [idOf(seat, 'length'), exact(seat.length)],
        ...(seat.behind === undefined ? [] : [[idOf(seat, 'behind'), exact(seat.behind)]]),
      ];
    }),
  );
}

/** Whether a person told a size: none of the numbers that make it is assumed. */
export function isTold(design: Design, { order }: JobSketch, { seat, ask, id }: Size, lengths: Lengths): boolean {
  const path = (i: number) => `seats[${order[i]!}]`;
  const of = (...keys: string[]) => !keys.some((key) => isAssumed(design, key));
  switch (ask) {
    case 'diameter':
      return of(`${path(seat)}.journal.diameter`);
    case 'bore':
      return of(`${path(seat)}.bush.diameter`);
    case 'angle':
      return of(`${path(seat)}.journal.halfAngle`);
    case 'length':
      return id in lengths || of(`${path(seat)}.journal.from`, `${path(seat)}.journal.to`);
    case 'behind':
      return id in lengths || of(`${path(seat)}.journal.from`, `${path(seat - 1)}.journal.to`);
  }
}

export type Written = { ok: true; design: Design; lengths: Lengths } | { ok: false; why: string };

/** The design with a size as typed on the drawing; what is assumed follows. */
export function withSize(
  design: Design,
  sketch: JobSketch,
  size: Size,
  value: number,
  { lengths, system }: { lengths: Lengths; system: System },
): Written {
  const index = sketch.order[size.seat]!;
  const seat = design.seats[index]!;
  const path = `seats[${index}]`;
  const put = (changed: Seat, known: string): Written => {
    const seats = design.seats.map((one, i) => (i === index ? changed : one));
    const told = withKnown({ ...design, seats }, `${path}.${known}`);
    return { ok: true, design: withFollowing(design, told, system), lengths };
  };
  const at = toldAt(seat.journal);
  switch (size.ask) {
    case 'diameter':
      return put({ ...seat, journal: withDiameter(seat.journal, at, value) }, 'journal.diameter');
    case 'bore':
      return put({ ...seat, bush: withDiameter(seat.bush, at, value) }, 'bush.diameter');
    case 'angle': {
      // About the end where the diameter is told.
      const turned = { ...seat.journal, halfAngle: Math.sign(seat.journal.halfAngle) * value };
      return put({ ...seat, journal: withDiameter(turned, at, diameterAt(seat.journal, at)) }, 'journal.halfAngle');
    }
    default:
      return withLength(design, sketch, size, value, { lengths, system });
  }
}

/** With this diameter at a station, wherever its own is told. */
const withDiameter = (surface: Surface, at: number, diameter: number): Surface => ({
  ...surface,
  diameter: exact(diameter - 2 * (at - surface.station) * Math.tan(radians(surface.halfAngle))),
});

/** A length, or how far apart two seats are: the side away from nought moves, and every seat beyond with it. */
function withLength(
  design: Design,
  sketch: JobSketch,
  size: Size,
  value: number,
  { lengths, system }: { lengths: Lengths; system: System },
): Written {
  const { plan, order } = sketch;
  const at = (i: number) => design.seats[order[i]!]!;
  const { journal } = at(size.seat);
  const isLength = size.ask === 'length';
  const by = value - (isLength ? journal.to - journal.from : plan.seats[size.seat]!.behind!);
  // Noseward of nought the nose side moves, else the rear side.
  const noseward = isLength ? journal.from >= -SAME : journal.from > SAME;
  const moved = plan.seats
    .map((_, i) => i)
    .filter((i) => (noseward ? (isLength ? i > size.seat : i >= size.seat) : i < size.seat));
  const named = Math.abs(by) < SAME ? undefined : moved.map(at).find((seat) => isReadAlong(design, seat.name));
  if (named)
    return {
      ok: false,
      why: `the ${named.name} seat would move, and has readings or grooves at stations; type its ends in the fields below instead`,
    };
  const seats = design.seats.map((seat, index) => {
    const i = order.indexOf(index);
    if (moved.includes(i)) {
      const way = noseward ? by : -by;
      return { ...seat, journal: shifted(seat.journal, way), bush: shifted(seat.bush, way) };
    }
    return isLength && i === size.seat ? { ...seat, journal: lengthened(seat.journal, by, noseward) } : seat;
  });
  const told = { ...lengths, [size.id]: value };
  const known = knownEnds(design, sketch, told);
  const after = known.reduce(withKnown, { ...design, seats });
  return { ok: true, design: withFollowing(design, after, system), lengths: told };
}

/** The diameter goes with the end where it is told. */
function lengthened(surface: Surface, by: number, noseward: boolean): Surface {
  const end = noseward ? 'to' : 'from';
  const to = exact(surface[end] + (noseward ? by : -by));
  const station = Math.abs(surface.station - surface[end]) < SAME ? to : surface.station;
  return { ...surface, station, [end]: to };
}

/** Ends of journals that are told by what is known and the lengths typed, and the stations at them. */
function knownEnds(design: Design, { plan, order }: JobSketch, lengths: Lengths): string[] {
  const path = (i: number) => `seats[${order[i]!}].journal`;
  const ends = plan.seats.map((_, i) => ({
    rear: !isAssumed(design, `${path(i)}.from`),
    nose: !isAssumed(design, `${path(i)}.to`),
  }));
  const told = stationsTold(plan, ends, (seat, ask) => idOf(seat, ask) in lengths);
  return told.flatMap(({ rear, nose }, i) => {
    const { station, from, to } = journalOf(design, order[i]!);
    return [
      ...(rear ? [`${path(i)}.from`] : []),
      ...(nose ? [`${path(i)}.to`] : []),
      ...((rear && Math.abs(station - from) < SAME) || (nose && Math.abs(station - to) < SAME)
        ? [`${path(i)}.station`]
        : []),
    ];
  });
}

/** Whether anything of the design stands at stations of a seat. */
function isReadAlong({ readings = [], run }: Design, name: string): boolean {
  return [...readings, ...(run?.supply ?? [])].some((one) => 'seat' in one && one.seat === name);
}
