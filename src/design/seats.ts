/** Changes of a design that concern a seat as a whole: whatever names the seat follows. */
import { numbersUnder, withAssumed } from './assumed.ts';
import type { Design, Seat, Surface } from './definition.ts';

/** Every list of the design whose entries name a seat, passed through `change`; null drops the entry. */
function references(design: Design, change: (seat: string) => string | null): Design {
  const follow = <T extends object>(entries: readonly T[]): T[] =>
    entries.flatMap((entry) => {
      if (!('seat' in entry) || typeof entry.seat !== 'string') return [entry];
      const seat = change(entry.seat);
      // What stays as it is stays the same entry, so that it can be followed (follow.ts).
      return seat === null ? [] : seat === entry.seat ? [entry] : [{ ...entry, seat }];
    });
  const { readings, priors, cut, odds, run } = design;
  return {
    ...design,
    ...(readings && { readings: follow(readings) }),
    ...(priors && { priors: follow(priors) }),
    ...(cut && { cut: cutReferences(cut, change, follow) }),
    ...(odds?.spread && { odds: { ...odds, spread: follow(odds.spread) } }),
    ...(run?.supply && { run: { ...run, supply: follow(run.supply) } }),
  };
}

type Cut = NonNullable<Design['cut']>;
type Follow = <T extends object>(entries: readonly T[]) => T[];

function cutReferences(cut: Cut, change: (seat: string) => string | null, follow: Follow): Cut {
  const faces = cut.faces?.flatMap((face) => {
    const seats = face.seats.flatMap((seat) => change(seat) ?? []);
    return seats.length === 0 ? [] : [{ ...face, seats }];
  });
  const left = new Set(faces?.map(({ name }) => name));
  const trials = cut.trials?.map((trial) => ({
    ...trial,
    ...(trial.taken && { taken: follow(trial.taken) }),
    ...(trial.blue && { blue: follow(trial.blue) }),
    // Metal off a face that moved no other seat is told no more.
    ...(trial.faces && { faces: trial.faces.filter(({ name }) => left.has(name)) }),
  }));
  return { ...cut, allow: follow(cut.allow), ...(faces && { faces }), ...(trials && { trials }) };
}

export function withSeatRenamed(design: Design, index: number, name: string): Design {
  const old = design.seats[index]!.name;
  const seats = design.seats.map((seat, i) => (i === index ? { ...seat, name } : seat));
  // A name that is taken already is refused by the rules; until then nothing may follow it.
  return seats.filter((seat) => seat.name === name).length > 1
    ? { ...design, seats }
    : references({ ...design, seats }, (seat) => (seat === old ? name : seat));
}

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

/** Another seat like one of them, behind all others: by a tenth of the whole length. */
export function withSeatCopied(design: Design, index: number): Design {
  const seat = design.seats[index]!;
  const { rear, nose } = ends(design);
  const by = rear - 0.1 * (nose - rear) - Math.max(seat.bush.to, seat.journal.to);
  const behind = (surface: Surface): Surface => ({
    ...surface,
    station: surface.station + by,
    from: surface.from + by,
    to: surface.to + by,
    ...(surface.profile && { profile: surface.profile.map(([z, d]): [number, number] => [z + by, d]) }),
  });
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
export function withSeatAdded(design: Design, kind: NewSeat): Design {
  const halfAngle = NEW_SEATS[kind];
  const least = Math.min(...design.seats.map(({ journal }) => journal.diameter));
  const diameter = tidy(NEW_DIAMETER * least);
  const length = tidy((Math.abs(halfAngle) > 20 ? NEW_STEEP : NEW_LENGTH) * least);
  const { rear, nose } = ends(design);
  const to = tidy(rear - Math.max(0.1 * (nose - rear), 0.2 * length));
  const from = tidy(to - length);
  const film = design.seats.find((seat) => seat.film)?.film;
  // The large end is where the diameter is told.
  const station = halfAngle < 0 ? from : to;
  const journal: Surface = { halfAngle, diameter, station, from, to };
  const bore = diameter + (2 * (film?.target ?? 0)) / Math.cos((halfAngle * Math.PI) / 180);
  const bush: Surface = { ...journal, diameter: Number(bore.toFixed(6)) };
  const name = design.seats.some((seat) => seat.name === kind) ? numbered(design, kind) : kind;
  return withLast(design, { name, journal, bush, ...(film && { film }) });
}

/** To a tenth of a millimetre. */
const tidy = (mm: number) => Number(mm.toFixed(1));

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
  ];
}
