/** Typing is never refused in an order: what does not go together yet waits, and is taken as one step. */
import { describe, expect, test } from 'vitest';
import { draftsOf, leave, typeAt, whyHeld } from '../../../src/app/state/draft.ts';
import { createWork } from '../../../src/app/state/store.ts';
import type { Design, Surface } from '../../../src/design/definition.ts';
import { valueAt, withValue } from '../../../src/design/place.ts';
import { withoutSeat } from '../../../src/design/seats.ts';

const straight = (diameter: number, from: number, to: number): Surface => ({
  halfAngle: 0,
  diameter,
  station: 0,
  from,
  to,
});
const pair: Design = {
  conepair: 1,
  seats: [
    { name: 'front', journal: straight(22, -20, 0), bush: straight(22.005, -20, 0) },
    { name: 'rear', journal: straight(18, -80, -60), bush: straight(18.005, -80, -60) },
  ],
};

function started() {
  const work = createWork(pair);
  const design = () => work.store.getState().design;
  const type = (path: string, value: number) => typeAt(work, path, { text: `${value}`, put: { value } });
  const held = () => Object.keys(draftsOf(work.store.getState()));
  const steps = () => work.store.getState().steps.back;
  return { work, design, type, held, steps, at: (path: string) => valueAt(design(), path) };
}
const journal = 'seats[0].journal';

describe('ends that only go together', () => {
  test.each([
    [`${journal}.from`, 30, `${journal}.to`, 50],
    [`${journal}.to`, -70, `${journal}.from`, -90],
  ])('%s first', (first, a, second, b) => {
    const { type, held, at, steps, design, work } = started();
    type(first, a);
    expect(held()).toEqual([first]);
    expect(design()).toEqual(pair);
    expect(steps()).toBe(0);
    type(second, b);
    expect(held()).toEqual([]);
    expect([at(first), at(second)]).toEqual([a, b]);
    // One step to undo takes both back.
    expect(steps()).toBe(1);
    work.undo();
    expect(design()).toEqual(pair);
  });
});

test('every order of the sizes of another cone ends in the same design, with nothing left over', () => {
  const sizes = { diameter: 4, halfAngle: 40, station: 100, from: 99, to: 103 };
  const keys = Object.keys(sizes) as (keyof typeof sizes)[];
  const orders = permutations(keys);
  expect(orders).toHaveLength(120);
  let waited = 0;
  for (const order of orders) {
    const { type, held, design } = started();
    typeBush(type);
    for (const key of order) {
      type(`${journal}.${key}`, sizes[key]);
      waited += held().length;
    }
    expect(held(), order.join()).toEqual([]);
    expect(design().seats[0]!.journal).toEqual(sizes);
  }
  expect(waited).toBeGreaterThan(100);
});

/** The bush may differ by 30 degrees at most. */
function typeBush(type: (path: string, value: number) => void) {
  type('seats[0].bush.diameter', 90);
  type('seats[0].bush.halfAngle', 20);
}

const permutations = <T>(of: readonly T[]): T[][] =>
  of.length === 0 ? [[]] : of.flatMap((one, i) => permutations(of.filter((_, k) => k !== i)).map((r) => [one, ...r]));

test('what stands alone is taken while others wait; another seat is not held up', () => {
  const { type, held, at } = started();
  type(`${journal}.from`, 30);
  type(`${journal}.diameter`, 23);
  expect(at(`${journal}.diameter`)).toBe(23);
  type('seats[1].journal.from', -50);
  type('seats[1].journal.to', -30);
  expect(at('seats[1].journal.from')).toBe(-50);
  expect(held()).toEqual([`${journal}.from`]);
});

test('an edit that is no typing takes what goes with it', () => {
  const { work, type, held, design } = started();
  type(`${journal}.from`, 30);
  work.change((d) => ({
    ...d,
    seats: d.seats.map((seat, i) => (i === 0 ? { ...seat, journal: { ...seat.journal, to: 60 } } : seat)),
  }));
  expect(held()).toEqual([]);
  expect(design().seats[0]!.journal).toMatchObject({ from: 30, to: 60 });
});

test('a draft follows its seat, and goes with it', () => {
  const { work, type, held } = started();
  type('seats[1].journal.from', 0);
  work.change((d) => withoutSeat(d, 0));
  expect(held()).toEqual(['seats[0].journal.from']);
  const other = started();
  other.type('seats[0].journal.from', 30);
  other.work.change((d) => withoutSeat(d, 0));
  expect(other.held()).toEqual([]);
});

test('it says what it does not go with, in the units of the person, and can be put back', () => {
  const { work, type, held, design } = started();
  type(`${journal}.from`, 25.4);
  const why = (system: 'metric' | 'inch') =>
    whyHeld(design(), draftsOf(work.store.getState()), `${journal}.from`, { system });
  expect(why('metric')).toMatch(/^Nose end: found 0\.000 mm, which is not noseward of .* \(25\.400 mm\)$/);
  expect(why('inch')).toMatch(/\(1\.0000 in\)$/);
  typeAt(work, `${journal}.to`, { text: 'twelve', why: 'found "twelve"' });
  expect(why('metric')).toMatch(/noseward/);
  expect(held()).toHaveLength(2);
  leave(work, `${journal}.from`);
  expect(held()).toEqual([`${journal}.to`]);
  leave(work);
  expect(held()).toEqual([]);
  expect(work.store.getState().unfinished).toEqual({});
});

test('drafts belong to their piece of work', () => {
  const { work, type, held } = started();
  type(`${journal}.from`, 30);
  work.open('another', { ok: true, design: pair });
  expect(held()).toEqual([]);
  // What is typed there starts afresh.
  type(`${journal}.to`, 40);
  expect(work.store.getState().design.seats[0]!.journal).toMatchObject({ from: -20, to: 40 });
});

describe('a seat name', () => {
  const withReading: Design = {
    ...pair,
    readings: ['front', 'rear'].map((seat, i) => ({
      kind: 'diameter' as const,
      seat,
      part: 'journal' as const,
      value: [22, 18][i]!,
      sigma: 0.001,
      station: [-10, -70][i]!,
    })),
    assumed: ['seats[0].bush.diameter', 'seats[1].journal.from'],
  };
  const named = () => {
    const work = createWork(withReading);
    const rename = (i: number, name: string) => typeAt(work, `seats[${i}].name`, { text: name, put: { value: name } });
    const design = () => work.store.getState().design;
    return {
      work,
      rename,
      design,
      names: () => design().seats.map(({ name }) => name),
      read: () => design().readings!.map((one) => 'seat' in one && `${one.seat} ${one.value}`),
      held: () => Object.keys(draftsOf(work.store.getState())),
    };
  };

  test('that another seat has is kept in its field, says so, and is taken once that one has another', () => {
    const { work, rename, names, read, held, design } = named();
    rename(0, 'rear');
    expect(names()).toEqual(['front', 'rear']);
    expect(held()).toEqual(['seats[0].name']);
    expect(whyHeld(design(), draftsOf(work.store.getState()), 'seats[0].name', { system: 'metric' })).toMatch(
      /"rear" a second time/,
    );
    // A number of that seat is taken meanwhile.
    typeAt(work, 'seats[0].journal.diameter', { text: '21', put: { value: 21 } });
    expect(design().seats[0]!.journal.diameter).toBe(21);
    rename(1, ' tail ');
    expect(names()).toEqual(['rear', 'tail']);
    expect(held()).toEqual([]);
    expect(read()).toEqual(['rear 22', 'tail 18']);
  });

  test('two are exchanged: what names them follows, what is assumed stays with its seat, in one step', () => {
    const { work, rename, names, read, held, design } = named();
    rename(0, 'rear');
    rename(1, 'front');
    expect(held()).toEqual([]);
    expect(names()).toEqual(['rear', 'front']);
    expect(read()).toEqual(['rear 22', 'front 18']);
    expect(design().assumed).toEqual(withReading.assumed);
    work.undo();
    expect(design()).toEqual(withReading);
  });

  test('that is empty is kept too', () => {
    const { rename, names, held, work, design } = named();
    rename(0, '');
    expect(names()).toEqual(['front', 'rear']);
    expect(held()).toEqual(['seats[0].name']);
    expect(whyHeld(design(), draftsOf(work.store.getState()), 'seats[0].name', { system: 'metric' })).not.toBe('');
  });
});

test('in a window that follows another it does not say that Enter takes it', () => {
  const { work, design } = started();
  work.store.setState({ elsewhere: true });
  typeAt(work, `${journal}.diameter`, { text: '21', put: { value: 21 } });
  const drafts = draftsOf(work.store.getState());
  const why = (elsewhere: boolean) => whyHeld(design(), drafts, `${journal}.diameter`, { system: 'metric', elsewhere });
  expect(why(true)).toBe('another window has this job: take it over here, then Enter takes it');
  expect(why(false)).toBe('it goes with the rest now: Enter takes it');
});

test('what is assumed follows what is typed, in the person’s units, as one step', () => {
  const work = createWork({ ...pair, assumed: ['seats[0].bush.diameter'] });
  work.store.setState({ system: 'inch' });
  typeAt(work, `${journal}.diameter`, { text: '0.87', put: { value: 22.098 } });
  const { design } = work.store.getState();
  // To ten millionths of an inch.
  expect(design.seats[0]!.bush.diameter / 25.4e-5).toBeCloseTo(Math.round(22.103 / 25.4e-5), 6);
  expect(design.assumed).toEqual(['seats[0].bush.diameter']);
  work.undo();
  expect(work.store.getState().design.seats).toEqual(pair.seats);
  // Metal taken off a journal opens the seat; it moves no bore.
  work.change((d) => withValue(d, `${journal}.diameter`, 21.9), { kept: true });
  expect(work.store.getState().design.seats[0]!.bush.diameter).toBe(22.005);
});
