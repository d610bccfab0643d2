/** Changes of a design that concern a seat as a whole: whatever names the seat follows. */
import { numbersUnder, withAssumed } from './assumed.ts';
import type { Design, Seat, Surface } from './definition.ts';
import { radians } from './dimension.ts';
import { exact, fine, tidy } from './rounded.ts';
import { references } from './seatNames.ts';
import type { System } from './units.ts';

/** A name that no seat has: one with the next number after it. */
function numbered(design: Design, name: string): string {
  const taken = new Set(design.seats.map((seat) => seat.name));
  let number = 2;
  while (taken.has(`${name} ${number}`)) number++;
  return `${name} ${number}`;
}

const ends = (design: Design) => {
  const all = design.seats.flatMap(({ bush, journal }) => [bush.from, bush.to, journal.from, journal.to]);
  return { rear: Math.min(...all), nose: Math.max(...all) };
};

/** A seat more behind all others; nobody has read or drawn it yet. */
function withLast(design: Design, seat: Seat): Design {
  const more = { ...design, seats: [...design.seats, seat] };
  return withAssumed(more, numbersUnder(more, `seats[${design.seats.length}]`));
}

/** A surface moved along the axis, mm. */
export function shifted(surface: Surface, by: number): Surface {
  const { profile } = surface;
  return {
    ...surface,
    station: exact(surface.station + by),
    from: exact(surface.from + by),
    to: exact(surface.to + by),
    ...(profile && { profile: profile.map(([z, d]): [number, number] => [exact(z + by), d]) }),
  };
}

/** Another seat like one of them, behind all others: by a tenth of the whole length. */
export function withSeatCopied(design: Design, index: number, system: System): Design {
  const seat = design.seats[index]!;
  const { rear, nose } = ends(design);
  const by = tidy(rear - 0.1 * (nose - rear), system) - Math.max(seat.bush.to, seat.journal.to);
  const behind = (surface: Surface) => shifted(surface, by);
  const name = numbered(design, seat.name);
  return withLast(design, { ...seat, name, journal: behind(seat.journal), bush: behind(seat.bush) });
}

/** What a seat can begin as, and its half angle (degrees). */
export const NEW_SEATS = { straight: 0, shallow: 3, steep: 45, opposed: -45 } as const;
export type NewSeat = keyof typeof NEW_SEATS;

/** Shares of the least diameter there is: the diameter of a new seat, and its length along the axis, steep or not. */
const NEW_DIAMETER = 0.9;
const NEW_LENGTH = 0.8;
const NEW_STEEP = 0.15;

/** A seat of a kind behind all others, in proportion to the least of them, with the film of the first. */
export function withSeatAdded(design: Design, kind: NewSeat, system: System): Design {
  const halfAngle = NEW_SEATS[kind];
  const least = Math.min(...design.seats.map(({ journal }) => journal.diameter));
  const diameter = tidy(NEW_DIAMETER * least, system);
  const length = tidy((Math.abs(halfAngle) > 20 ? NEW_STEEP : NEW_LENGTH) * least, system);
  const { rear, nose } = ends(design);
  const to = tidy(rear - Math.max(0.1 * (nose - rear), 0.2 * length), system);
  const from = exact(to - length);
  const film = design.seats.find((seat) => seat.film)?.film;
  // The large end is where the diameter is told.
  const station = halfAngle < 0 ? from : to;
  const journal: Surface = { halfAngle, diameter, station, from, to };
  const bore = diameter + (2 * (film?.target ?? 0)) / Math.cos(radians(halfAngle));
  const bush: Surface = { ...journal, diameter: fine(bore, system) };
  const name = design.seats.some((seat) => seat.name === kind) ? numbered(design, kind) : kind;
  return withLast(design, { name, journal, bush, ...(film && { film }) });
}

/** One seat among the others, by one place; everything names it, so nothing else changes. */
export function withSeatMoved(design: Design, index: number, by: 1 | -1): Design {
  const seats = [...design.seats];
  const to = index + by;
  if (!seats[index] || !seats[to]) return design;
  [seats[index], seats[to]] = [seats[to]!, seats[index]!];
  return { ...design, seats };
}

export function withoutSeat(design: Design, index: number): Design {
  const gone = design.seats[index]!.name;
  return references({ ...design, seats: design.seats.filter((_, i) => i !== index) }, (seat) =>
    seat === gone ? null : seat,
  );
}

/** What goes with a seat, in words; none where nothing names it. */
export function goesWithSeat(design: Design, index: number): string[] {
  const left = withoutSeat(design, index);
  const count = (of: (design: Design) => readonly unknown[] | undefined, one: string, more: string) => {
    const gone = (of(design)?.length ?? 0) - (of(left)?.length ?? 0);
    return gone === 0 ? [] : [gone === 1 ? `1 ${one}` : `${gone} ${more}`];
  };
  const entries = (design: Design, key: 'taken' | 'blue' | 'faces') =>
    design.cut?.trials?.flatMap((trial) => (trial[key] ?? []) as readonly unknown[]);
  return [
    ...count((d) => d.readings, 'reading', 'readings'),
    ...count((d) => d.priors, 'size known beforehand', 'sizes known beforehand'),
    ...count((d) => d.cut?.allow, 'surface that may be cut', 'surfaces that may be cut'),
    ...count((d) => d.cut?.faces, 'face or spacer', 'faces or spacers'),
    ...count((d) => entries(d, 'taken'), 'entry of metal taken', 'entries of metal taken'),
    ...count((d) => entries(d, 'faces'), 'entry of metal off a face', 'entries of metal off a face'),
    ...count((d) => entries(d, 'blue'), 'blue print read', 'blue prints read'),
    ...count((d) => d.run?.supply, 'groove', 'grooves'),
    ...count((d) => d.odds?.spread, 'spread of the odds', 'spreads of the odds'),
    ...count((d) => d.odds?.processes?.flatMap(({ spread }) => spread), 'spread of a process', 'spreads of processes'),
  ];
}
