/** The names of seats, and whatever of a design names one. */
import type { Design } from './definition.ts';

/** Every list of the design whose entries name a seat, passed through `change`; null drops the entry. */
export function references(design: Design, change: (seat: string) => string | null): Design {
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
    ...(odds && { odds: oddsReferences(odds, follow) }),
    ...(run?.supply && { run: { ...run, supply: follow(run.supply) } }),
  };
}

type Cut = NonNullable<Design['cut']>;
type Follow = <T extends object>(entries: readonly T[]) => T[];

const oddsReferences = (odds: NonNullable<Design['odds']>, follow: Follow): NonNullable<Design['odds']> => ({
  ...odds,
  ...(odds.spread && { spread: follow(odds.spread) }),
  ...(odds.processes && { processes: odds.processes.map((one) => ({ ...one, spread: follow(one.spread) })) }),
});

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

/** Several seats at once, as two may exchange their names. */
export function withSeatsRenamed(design: Design, names: ReadonlyMap<number, string>): Design {
  const seats = design.seats.map((seat, i) => ({ ...seat, name: names.get(i)?.trim() ?? seat.name }));
  if (seats.every(({ name }, i) => name === design.seats[i]!.name)) return design;
  const renamed = { ...design, seats: seats.map((seat, i) => (names.has(i) ? seat : design.seats[i]!)) };
  // A name that is taken already is refused by the rules; until then nothing may follow it.
  if (new Set(seats.map(({ name }) => name)).size < seats.length) return renamed;
  const to = new Map(design.seats.map(({ name }, i) => [name, seats[i]!.name]));
  return references(renamed, (seat) => to.get(seat) ?? seat);
}
