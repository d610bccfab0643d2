/** Changes of a design that concern a seat as a whole: whatever names the seat follows. */
import type { Design, Surface } from './definition.ts';

/** Every list of the design whose entries name a seat, passed through `change`; null drops the entry. */
function references(design: Design, change: (seat: string) => string | null): Design {
  const follow = <T extends object>(entries: readonly T[]): T[] =>
    entries.flatMap((entry) => {
      if (!('seat' in entry) || typeof entry.seat !== 'string') return [entry];
      const seat = change(entry.seat);
      return seat === null ? [] : [{ ...entry, seat }];
    });
  const { readings, priors, cut, odds, run } = design;
  return {
    ...design,
    ...(readings && { readings: follow(readings) }),
    ...(priors && { priors: follow(priors) }),
    ...(cut && { cut: cutReferences(cut, change, follow) }),
    ...(odds && { odds: { ...odds, spread: follow(odds.spread) } }),
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
  const trials = cut.trials?.map((trial) => ({
    ...trial,
    ...(trial.taken && { taken: follow(trial.taken) }),
    ...(trial.blue && { blue: follow(trial.blue) }),
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

/** Another seat like one of them, behind all others: by a tenth of the whole length. */
export function withSeatCopied(design: Design, index: number): Design {
  const seat = design.seats[index]!;
  const taken = new Set(design.seats.map(({ name }) => name));
  let number = 2;
  while (taken.has(`${seat.name} ${number}`)) number++;
  const ends = design.seats.flatMap(({ bush, journal }) => [bush.from, bush.to, journal.from, journal.to]);
  const [rear, nose] = [Math.min(...ends), Math.max(...ends)];
  const by = rear - 0.1 * (nose - rear) - Math.max(seat.bush.to, seat.journal.to);
  const behind = (surface: Surface): Surface => ({
    ...surface,
    station: surface.station + by,
    from: surface.from + by,
    to: surface.to + by,
    ...(surface.profile && { profile: surface.profile.map(([z, d]): [number, number] => [z + by, d]) }),
  });
  return {
    ...design,
    seats: [
      ...design.seats,
      { ...seat, name: `${seat.name} ${number}`, journal: behind(seat.journal), bush: behind(seat.bush) },
    ],
  };
}

export function withoutSeat(design: Design, index: number): Design {
  const gone = design.seats[index]!.name;
  return references({ ...design, seats: design.seats.filter((_, i) => i !== index) }, (seat) =>
    seat === gone ? null : seat,
  );
}
