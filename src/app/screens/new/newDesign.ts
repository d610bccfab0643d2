/**
 * A design from nothing: the sizes a person typed on the drawing, and all others in proportion to them, which the
 * design names as assumed.
 */
import { numbersUnder, withAssumed } from '../../../design/assumed.ts';
import type { Design, Quantity, Seat, Surface } from '../../../design/definition.ts';
import { type Bound, type QuantityAt, quantityAt } from '../../../design/place.ts';
import { exact, fine, proportional, tidy } from '../../../design/rounded.ts';
import { type System, TENTH } from '../../../design/units.ts';
import { radians } from '../../../report/convert.ts';
import type { Arrangement, SeatPlan } from './arrangements.ts';

/** What is asked of a seat; `behind`: how far the next one behind stands. */
export type Ask = 'bore' | 'angle' | 'diameter' | 'length' | 'behind';

export interface Size {
  /** `shallow diameter` */
  id: string;
  seat: number;
  ask: Ask;
  title: string;
  at: QuantityAt;
}

/** Sizes typed, by their ids; mm, degrees (of either side as a positive angle). */
export type Typed = Readonly<Record<string, number>>;

const POSITIVE: Bound = { side: 'least', value: 0, inclusive: false };
const asked = (
  quantity: Quantity,
  title: string,
  description: string,
  most: number,
  least: Bound = POSITIVE,
): QuantityAt => ({
  title,
  description,
  quantity,
  unit: '',
  bounds: [least, { side: 'greatest', value: most, inclusive: quantity !== 'angle' }],
  optional: true,
});

const WORDS: Record<Ask, (seat: SeatPlan, next: SeatPlan | undefined) => QuantityAt> = {
  bore: ({ title, halfAngle }) =>
    asked('length', `Bore of the ${title}`, `Of the bush, at the ${endOf(halfAngle)} of the ${title}`, 5000),
  angle: ({ title }) => asked('angle', `Angle of the ${title}`, 'As you say angles, or 6 incl, 1:20, 0.6 in/ft', 89),
  diameter: ({ title, halfAngle }) =>
    asked('length', `Diameter of the ${title}`, `Of the journal, at its ${endOf(halfAngle)}`, 5000),
  length: ({ title }) =>
    asked(
      'length',
      `Length of the ${title}`,
      'Of the journal, along the axis; the bush is taken a little shorter at both ends',
      5000,
    ),
  behind: ({ title }, next) =>
    asked(
      'length',
      `From the ${title} back to the ${next?.title}`,
      'Along the axis, from the one journal’s end to the other’s; 0 where they meet',
      5000,
      { ...POSITIVE, inclusive: true },
    ),
};

const endOf = (halfAngle: number) => (halfAngle === 0 ? 'nose end' : 'large end');

/** Every field on the drawing, in the order in which they are typed: a seat at a time, from the nose. */
export function sizesOf({ seats }: Arrangement): Size[] {
  return seats
    .map((seat, i) => ({ seat, i }))
    .reverse()
    .flatMap(({ seat, i }) => {
      const asks: Ask[] = [
        'diameter',
        'bore',
        ...(seat.halfAngle === 0 ? [] : (['angle'] as const)),
        'length',
        ...(seat.behind === undefined ? [] : (['behind'] as const)),
      ];
      return asks.map((ask) => {
        const at = WORDS[ask](seat, seats[i - 1]);
        return { id: idOf(seat, ask), seat: i, ask, title: at.title, at };
      });
    });
}

export const idOf = ({ name }: SeatPlan, ask: Ask) => `${name} ${ask}`;

/** The film a new pair is opened to, mm: common practice, no source. A fifth of it either way is its tolerance. */
export const USUAL_FILM: Record<System, number> = { metric: 0.0025, inch: TENTH };
const TOLERANCE = 0.2;
const INSET = 0.04;
/** How far the ends of a bush stand within those of its journal, mm: a share of the length. */
export const insetOf = (length: number, system: System) => Math.min(tidy(INSET * length, system), exact(length / 10));

/** How much larger than the one to go by the person's spindle is: by its nearest size known, else by all known. */
function ratioOf(plan: Arrangement, typed: Typed, seat: number): number {
  const of = (i: number) => {
    const size = plan.seats[i]!;
    const known = typed[idOf(size, 'diameter')] ?? typed[idOf(size, 'bore')];
    return known === undefined ? null : known / size.diameter;
  };
  const own = of(seat);
  if (own !== null) return own;
  const diameters = plan.seats.flatMap((_, i) => of(i) ?? []);
  const lengths = plan.seats.flatMap((size) =>
    (['length', 'behind'] as const).flatMap((ask) => {
      const known = typed[idOf(size, ask)];
      // Cones that meet tell no size.
      return known ? [known / size[ask]!] : [];
    }),
  );
  const all = diameters.length > 0 ? diameters : lengths;
  return all.length === 0 ? 1 : Math.exp(all.reduce((sum, ratio) => sum + Math.log(ratio), 0) / all.length);
}

/**
 * Every size on the drawing: as typed, or in proportion. Degrees are positive here. What is typed stays: a size that is
 * only assumed gives way to it where the two do not go together.
 * @param gave told the id of each that does
 */
export function allSizes(
  plan: Arrangement,
  typed: Typed,
  film: number,
  system: System,
  gave: (id: string) => void = () => {},
): Record<string, number> {
  const all: Record<string, number> = {};
  plan.seats.forEach((seat, i) => {
    const ratio = ratioOf(plan, typed, i);
    const one = (ask: Ask, otherwise: () => number) => {
      const id = idOf(seat, ask);
      all[id] = typed[id] ?? otherwise();
      return all[id];
    };
    /** In proportion where that goes with the rest, else as near as it does. */
    const giving = (ask: Ask, usual: number, { least = 0, most = Number.POSITIVE_INFINITY }: Within) => {
      if (usual > least && usual < most) return usual;
      gave(idOf(seat, ask));
      return usual < most ? tidy(least * ROOM, system) : exact(Math.min(usual, tidy(most / ROOM, system)));
    };
    const angle = seat.halfAngle === 0 ? 0 : one('angle', () => Math.abs(seat.halfAngle));
    const opened = (2 * film) / Math.cos(radians(angle));
    const bore = typed[idOf(seat, 'bore')];
    const behind = leastBehind(plan, all, i);
    const slope = 2 * Math.tan(radians(angle));
    const diameter = one('diameter', () => {
      if (bore !== undefined) return fine(bore - opened, system);
      const long = typed[idOf(seat, 'length')];
      const tapered = long === undefined ? 0 : slope * long;
      const least = long === undefined ? 0 : Math.max((behind ?? 0) + tapered, tapered / (1 - POINTED));
      return giving('diameter', tidy(ratio * seat.diameter, system), { least, most: mostInFront(plan, typed, i) });
    });
    one('bore', () => fine(diameter + opened, system));
    one('length', () => {
      const usual = tidy(ratio * seat.length, system);
      // Behind a bore that is larger than this cone no length would do.
      const room = behind !== null && behind < diameter ? diameter - behind : (1 - POINTED) * diameter;
      return giving('length', usual, slope === 0 ? {} : { most: room / slope });
    });
    if (seat.behind !== undefined) one('behind', () => tidy(ratio * seat.behind!, system));
  });
  return all;
}

interface Within {
  least?: number;
  most?: number;
}

/** What is assumed of a cone leaves it at least so much of its large end at the small one. */
const POINTED = 0.1;

/** The small end of the cone in front where all of it is typed: no bore behind it is larger. */
function mostInFront({ seats }: Arrangement, typed: Typed, i: number): number {
  const [seat, front] = [seats[i]!, seats[i + 1]];
  if (!front || seat.halfAngle <= 0 || front.halfAngle <= 0) return Number.POSITIVE_INFINITY;
  const large = typed[idOf(front, 'diameter')] ?? typed[idOf(front, 'bore')];
  const length = typed[idOf(front, 'length')];
  if (large === undefined || length === undefined) return Number.POSITIVE_INFINITY;
  const angle = typed[idOf(front, 'angle')] ?? front.halfAngle;
  const small = large - 2 * length * Math.tan(radians(angle));
  return small > 0 ? small : Number.POSITIVE_INFINITY;
}

/** What is assumed of a cone leaves so much more than the bore behind it needs. */
const ROOM = 1.05;

/** The bore of a cone behind this one, which its small end is no thinner than; null where there is none. */
function leastBehind({ seats }: Arrangement, all: Readonly<Record<string, number>>, i: number): number | null {
  const behind = seats[i - 1];
  return behind && behind.halfAngle > 0 && seats[i]!.halfAngle > 0 ? all[idOf(behind, 'bore')]! : null;
}

export interface Given {
  typed: Typed;
  /** mm; null: not said */
  film: number | null;
  /** mm a turn; null: not known */
  pitch: number | null;
  title: string;
}

/** The design that the drawing shows. */
export function newDesign(plan: Arrangement, { typed, film, pitch, title }: Given, system: System): Design {
  const target = film ?? USUAL_FILM[system];
  const sizes = allSizes(plan, typed, target, system);
  const ends = endsOf(plan, sizes);
  const seats = plan.seats.map((seat, i): Seat => {
    const journal = journalOf(seat, sizes, ends[i]!);
    const length = journal.to - journal.from;
    const inset = insetOf(length, system);
    const bush: Surface = {
      ...journal,
      diameter: sizes[idOf(seat, 'bore')]!,
      from: exact(journal.from + inset),
      to: exact(journal.to - inset),
    };
    return { name: seat.name, journal, bush, film: { target, tolerance: proportional(TOLERANCE * target) } };
  });
  const design: Design = {
    conepair: 1,
    ...(title.trim() !== '' && { title: title.trim() }),
    seats,
    ...(pitch !== null && { adjuster: { pitch } }),
  };
  const known = knownPlaces(plan, typed, film);
  return withAssumed(
    design,
    numbersUnder(design, 'seats').filter((path) => !known.has(path)),
  );
}

function journalOf(seat: SeatPlan, sizes: Record<string, number>, [from, to]: readonly [number, number]): Surface {
  const angle = sizes[idOf(seat, 'angle')] ?? 0;
  // The large end is where the diameter is told.
  const station = seat.halfAngle < 0 ? from : to;
  return { halfAngle: Math.sign(seat.halfAngle) * angle, diameter: sizes[idOf(seat, 'diameter')]!, station, from, to };
}

/** Rear and nose end of every seat as stations, from the seat they are counted from both ways. */
function endsOf(plan: Arrangement, sizes: Record<string, number>): [number, number][] {
  const length = (i: number) => sizes[idOf(plan.seats[i]!, 'length')]!;
  // From the rear end of the rearmost on, then moved to where nought is.
  let at = 0;
  const ends = plan.seats.map((seat, i): [number, number] => {
    const from = i === 0 ? 0 : at + sizes[idOf(seat, 'behind')]!;
    at = from + length(i);
    return [from, at];
  });
  const { seat, end } = plan.zero;
  const nought = ends[seat]![end === 'rear' ? 0 : 1];
  return ends.map(([from, to]) => [exact(from - nought), exact(to - nought)]);
}

/** Places of the design that a person has told: what was typed, and what follows from that alone. */
function knownPlaces(plan: Arrangement, typed: Typed, film: number | null): Set<string> {
  const known = new Set<string>();
  const told = (seat: SeatPlan, ask: Ask) => typed[idOf(seat, ask)] !== undefined;
  const nought = plan.seats.map((_, i) => ({
    rear: i === plan.zero.seat && plan.zero.end === 'rear',
    nose: i === plan.zero.seat && plan.zero.end === 'nose',
  }));
  const stations = stationsTold(plan, nought, told);
  plan.seats.forEach((seat, i) => {
    const path = `seats[${i}]`;
    const ends = stations[i]!;
    if (told(seat, 'diameter')) known.add(`${path}.journal.diameter`);
    if (told(seat, 'bore')) known.add(`${path}.bush.diameter`);
    // Straight is what was chosen.
    if (seat.halfAngle === 0) known.add(`${path}.bush.halfAngle`);
    if (seat.halfAngle === 0 || told(seat, 'angle')) known.add(`${path}.journal.halfAngle`);
    if (ends.rear) known.add(`${path}.journal.from`);
    if (ends.nose) known.add(`${path}.journal.to`);
    if (seat.halfAngle < 0 ? ends.rear : ends.nose) known.add(`${path}.journal.station`);
    if (film !== null) known.add(`${path}.film.target`);
  });
  return known;
}

interface Ends {
  rear: boolean;
  nose: boolean;
}

/** Which ends are told: from those that are on, as far as lengths and distances were typed without a break. */
export function stationsTold(
  plan: Arrangement,
  from: readonly Ends[],
  told: (seat: SeatPlan, ask: Ask) => boolean,
): Ends[] {
  const ends = from.map((end) => ({ ...end }));
  for (let round = 0; round < 2 * plan.seats.length; round++)
    plan.seats.forEach((one, i) => {
      const here = ends[i]!;
      if (told(one, 'length')) here.rear = here.nose = here.rear || here.nose;
      const behind = ends[i - 1];
      if (behind && told(one, 'behind')) here.rear = behind.nose = here.rear || behind.nose;
    });
  return ends;
}

/** Bounds of what is asked beside the drawing. */
export const FILM: QuantityAt = {
  ...quantityAt('seats[0].film.target'),
  title: 'Film wanted in every seat',
  description: 'Film each seat should have where it is least; Fit has one for each',
};
export const PITCH = quantityAt('adjuster.pitch');
