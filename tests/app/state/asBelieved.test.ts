/** The pair as it is believed, drawn in place of that of the design: one for all that shows it, one to change. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { asBelieved } from '../../../src/app/state/asBelieved.ts';
import { createWork } from '../../../src/app/state/store.ts';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { beliefSection } from '../../../src/report/belief/section.ts';
import { fitOf } from '../../../src/report/fit/fitOf.ts';

const parsed = parseDesign(
  readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
if (!parsed.ok) throw new Error('demo');
const blue = [{ seat: 'steep', prints: true }];
const tried: Design = {
  ...parsed.design,
  cut: {
    ...parsed.design.cut!,
    trials: [
      { standOff: { value: -0.006, sigma: 0.001 }, blue },
      {
        taken: [{ seat: 'steep', part: 'journal', normal: 0.02 }],
        standOff: { value: -0.031, sigma: 0.001 },
        blue,
      },
    ],
  },
};
const belief = beliefSection(tried)!;
const seats = tried.seats.map((seat, i) => {
  const { journal, bush } = belief.stands![i]!;
  return { ...seat, journal, bush };
});

test('the parts as believed have the films that are told as most likely, wherever the journal stands', () => {
  for (const position of [0.02, 0, 0.06]) {
    const there = { ...tried, position };
    const told = beliefSection(there)!;
    const stands = there.seats.map((seat, i) => ({ ...seat, ...told.stands![i]!, name: seat.name }));
    for (const { name, leastFilm } of fitOf({ ...there, seats: stands }).seats)
      expect(leastFilm).toBeCloseTo(told.films[name]!.likely!, 9);
  }
});

test('what shows the pair sees one and the same, what changes it changes the design', () => {
  const work = createWork(tried);
  const shown = asBelieved(work, { of: tried, seats });
  const { design } = shown.store.getState();
  expect(design.seats).toBe(seats);
  expect(shown.store.getState().design).toBe(design);
  const told: (Design | undefined)[] = [];
  shown.store.subscribe(({ design: now }) => told.push(now));
  shown.dragStart();
  shown.moveTo(0.01);
  expect(shown.takenHold()!.seats).toBe(shown.store.getState().design.seats);
  expect(told.at(-1)).toBe(shown.store.getState().design);
  expect(told.at(-1)).toMatchObject({ position: 0.01, seats });
  expect(work.store.getState().design.seats).toBe(tried.seats);
  // Let go of by Escape: what was shown comes back as the design that it was.
  shown.store.setState({ design });
  expect(work.store.getState().design).toBe(tried);
  shown.dragEnd();
  shown.change((now) => ({ ...now, title: `${now.seats === tried.seats}` }));
  expect(work.store.getState().design).toMatchObject({ title: 'true', seats: tried.seats });
});

test('of parts that are changed nothing is believed yet', () => {
  const work = createWork(tried);
  const shown = asBelieved(work, { of: tried, seats });
  const wider = (now: Design): Design => ({
    ...now,
    seats: now.seats.map((seat, i) =>
      i === 0 ? { ...seat, bush: { ...seat.bush, diameter: seat.bush.diameter + 0.001 } } : seat,
    ),
  });
  expect(work.change(wider)).toEqual([]);
  expect(shown.store.getState().design).toBe(work.store.getState().design);
  work.undo();
  expect(shown.store.getState().design.seats).toBe(seats);
  work.change((now) => ({ ...now, cut: { ...now.cut!, trials: now.cut!.trials!.slice(0, 1) } }));
  expect(shown.store.getState().design).toBe(work.store.getState().design);
});
