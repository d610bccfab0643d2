/** The drawing of a job that stands: its sizes are those it was begun with; what is typed on it changes the job so. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ARRANGEMENTS, type Arrangement } from '../../../../src/app/screens/new/arrangements.ts';
import { allSizes, newDesign, sizesOf, type Typed, USUAL_FILM } from '../../../../src/app/screens/new/newDesign.ts';
import { isTold, jobSizes, sketchOf, withSize } from '../../../../src/app/screens/new/sketchOfJob.ts';
import { DEMOS } from '../../../../src/app/state/demos.ts';
import type { Lengths } from '../../../../src/app/state/typedLengths.ts';
import type { Design } from '../../../../src/design/definition.ts';
import { shifted } from '../../../../src/design/seats.ts';
import { validateDesign } from '../../../../src/design/validate.ts';

const made = (plan: Arrangement, typed: Typed) =>
  newDesign(plan, { typed, film: null, pitch: null, title: '' }, 'metric');
const sizeOf = (design: Design, id: string) => {
  const sketch = sketchOf(design)!;
  const size = sizesOf(sketch.plan).find((one) => one.id === id)!;
  return { sketch, size };
};
function typed(design: Design, id: string, value: number, lengths: Lengths = {}) {
  const { sketch, size } = sizeOf(design, id);
  const written = withSize(design, sketch, size, value, { lengths, system: 'metric' });
  if (!written.ok) throw new Error(written.why);
  return written;
}

describe.each(ARRANGEMENTS.map((plan) => [plan.id, plan] as const))('%s', (_, plan) => {
  test('reads back every size it was begun with, and which of them were told', () => {
    fc.assert(
      fc.property(fc.subarray(sizesOf(plan)), (known) => {
        const usual = allSizes(plan, {}, USUAL_FILM.metric, 'metric');
        const given = Object.fromEntries(known.map(({ id }) => [id, usual[id]!]));
        const design = made(plan, given);
        const sketch = sketchOf(design)!;
        const sizes = jobSizes(design, sketch);
        expect(Object.keys(sizes).sort()).toEqual(Object.keys(usual).sort());
        for (const [id, mm] of Object.entries(usual)) expect(sizes[id], id).toBeCloseTo(mm, 6);
        const lengths = Object.fromEntries(Object.entries(given).filter(([id]) => /length|behind/.test(id)));
        // Two ends told by what stands between them and nought tell the rest, and no more.
        for (const size of sizesOf(sketch.plan))
          if (size.id in given) expect(isTold(design, sketch, size, lengths), size.id).toBe(true);
          else if (!/length|behind/.test(size.id)) expect(isTold(design, sketch, size, lengths), size.id).toBe(false);
      }),
      { numRuns: 40 },
    );
  });

  test('all sizes typed on it, in any order, make the design that they make on the page of a new job', () => {
    const usual = allSizes(plan, {}, USUAL_FILM.metric, 'metric');
    const wanted = Object.fromEntries(
      sizesOf(plan).map(({ id, ask }, i) => [id, ask === 'angle' ? usual[id]! : usual[id]! + 0.01 * (i + 1)]),
    );
    const end = made(plan, wanted);
    fc.assert(
      fc.property(fc.shuffledSubarray(Object.keys(wanted), { minLength: Object.keys(wanted).length }), (order) => {
        let design = made(plan, {});
        let lengths: Lengths = {};
        for (const id of order) ({ design, lengths } = typed(design, id, wanted[id]!, lengths));
        const sketch = sketchOf(design)!;
        for (const size of sizesOf(sketch.plan)) expect(isTold(design, sketch, size, lengths), size.id).toBe(true);
        for (const [i, seat] of design.seats.entries())
          for (const key of ['halfAngle', 'diameter', 'station', 'from', 'to'] as const) {
            expect(seat.journal[key], `${seat.name} ${key}`).toBeCloseTo(end.seats[i]!.journal[key], 6);
            if (key === 'diameter') expect(seat.bush.diameter).toBeCloseTo(end.seats[i]!.bush.diameter, 6);
          }
        // No journal is assumed in anything, as there.
        expect(design.assumed!.filter((path) => path.includes('journal'))).toEqual(
          end.assumed!.filter((path) => path.includes('journal')),
        );
        expect(validateDesign(design).ok).toBe(true);
      }),
      { numRuns: 25 },
    );
  });
});

test('a length moves the side away from nought, and every seat beyond with it, both parts', () => {
  const before = made(ARRANGEMENTS[0]!, {});
  const [rear, shallow, steep] = before.seats;
  const longer = typed(before, 'shallow length', 30).design;
  expect(longer.seats[1]!.journal).toEqual({ ...shallow!.journal, from: -30 });
  expect(longer.seats[0]).toEqual({ ...rear, journal: shifted(rear!.journal, -4), bush: shifted(rear!.bush, -4) });
  expect(longer.seats[2]).toEqual(steep);
  // The bush, assumed, ends where it did within the journal.
  expect(longer.seats[1]!.bush.from).toBe(shallow!.bush.from - 4);
  const farther = typed(before, 'steep behind', 2).design;
  expect(farther.seats[2]).toEqual({
    ...steep,
    journal: shifted(steep!.journal, 0.8),
    bush: shifted(steep!.bush, 0.8),
  });
  expect(farther.seats.slice(0, 2)).toEqual(before.seats.slice(0, 2));
  // The large end of the steep cone, where its diameter is told, goes with its length.
  expect(typed(before, 'steep length', 4).design.seats[2]!.journal).toMatchObject({ from: 1.2, to: 5.2, station: 5.2 });
});

test('an angle turns about the end where the diameter is told, wherever that of the design is told', () => {
  const [shallow] = made(ARRANGEMENTS[1]!, {}).seats;
  const told = { ...shallow!.journal, station: -26, diameter: 22 - 52 * Math.tan((3 * Math.PI) / 180) };
  const design = { ...made(ARRANGEMENTS[1]!, {}), assumed: [] as string[] };
  const moved: Design = { ...design, seats: [{ ...shallow!, journal: told }, design.seats[1]!] };
  const steeper = typed(moved, 'shallow angle', 4).design;
  expect(jobSizes(steeper, sketchOf(steeper)!)['shallow diameter']).toBeCloseTo(22, 5);
  expect(typed(steeper, 'shallow diameter', 23).design.seats[0]!.journal.diameter).toBeCloseTo(
    23 - 52 * Math.tan((4 * Math.PI) / 180),
    5,
  );
});

test('a seat that readings or grooves stand along is not moved from under them', () => {
  const design: Design = {
    ...made(ARRANGEMENTS[0]!, {}),
    readings: [{ kind: 'diameter', seat: 'rear', part: 'journal', value: 18, sigma: 0.001, station: -130 }],
  };
  const { sketch, size } = sizeOf(design, 'shallow length');
  expect(withSize(design, sketch, size, 30, { lengths: {}, system: 'metric' })).toMatchObject({
    ok: false,
    why: expect.stringMatching(/^the rear seat would move/),
  });
  // That it is so moves nothing.
  expect(withSize(design, sketch, size, 26, { lengths: {}, system: 'metric' }).ok).toBe(true);
});

test('every demo has a drawing with room for each field; seats within each other, or six of them, have none', () => {
  for (const { file, design } of DEMOS) {
    const sketch = sketchOf(design);
    expect(sketch, file).not.toBeNull();
    const { seats, zero } = sketch!.plan;
    const marks = seats.map(({ x, halfAngle }) => (halfAngle < 0 ? x[0] : x[1]));
    for (const [i, x] of marks.entries()) if (i > 0) expect(x - marks[i - 1]!, file).toBeGreaterThan(139);
    for (const { x, r } of seats) {
      expect(x[0]).toBeGreaterThan(100);
      expect(x[1]).toBeLessThan(900);
      expect(Math.max(...r)).toBeLessThanOrEqual(92);
      expect(Math.min(...r)).toBeGreaterThan(10);
    }
    expect(zero.words).not.toBe('');
  }
  const one = made(ARRANGEMENTS[1]!, {});
  const within: Design = { ...one, seats: [one.seats[0]!, { ...one.seats[0]!, name: 'same' }] };
  expect(sketchOf(within)).toBeNull();
  const many = Array.from({ length: 6 }, (_, i) => ({
    name: `s${i}`,
    journal: shifted(one.seats[0]!.journal, 40 * i),
    bush: shifted(one.seats[0]!.bush, 40 * i),
  }));
  expect(sketchOf({ ...one, seats: many })).toBeNull();
  expect(sketchOf({ ...one, seats: many.slice(0, 5) })).not.toBeNull();
});
