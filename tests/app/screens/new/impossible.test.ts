/** Sizes that no spindle has together are told at the fields they stand in; whatever is assumed never makes any. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ARRANGEMENTS, type Arrangement } from '../../../../src/app/screens/new/arrangements.ts';
import { faultAt, faultsOf } from '../../../../src/app/screens/new/faults.ts';
import { impossibleIn } from '../../../../src/app/screens/new/impossible.ts';
import { allSizes, newDesign, sizesOf, type Typed } from '../../../../src/app/screens/new/newDesign.ts';
import { validateDesign } from '../../../../src/design/validate.ts';

const [doubleRear, , opposed, straight] = ARRANGEMENTS as [Arrangement, Arrangement, Arrangement, Arrangement];
const found = (plan: Arrangement, typed: Typed) => {
  const sizes = allSizes(plan, typed, 0.0025, 'metric');
  return impossibleIn(plan, sizes, 'metric');
};

describe.each(ARRANGEMENTS.map((plan) => [plan.id, plan] as const))('%s', (_, plan) => {
  test('nothing at all, and any one size typed within reason, is possible', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...sizesOf(plan).filter(({ ask }) => ask !== 'behind')),
        fc.double({ min: 0.6, max: 1.6, noNaN: true }),
        fc.constantFrom('metric' as const, 'inch' as const),
        ({ id, ask }, times, system) => {
          const usual = allSizes(plan, {}, 0.0025, system);
          const by = ask === 'angle' ? 1 + (times - 1) / 2 : times;
          const sizes = allSizes(plan, { [id]: usual[id]! * by }, 0.0025, system);
          expect(impossibleIn(plan, sizes, system).filter(({ stops }) => stops)).toEqual([]);
        },
      ),
      { numRuns: 80 },
    );
  });
});

test('a nose thinner than the bore behind it: told in figures, at every field that could mend it', () => {
  const [fault, ...more] = found(doubleRear, {
    'shallow diameter': 22,
    'shallow bore': 22.005,
    'steep diameter': 24,
    'steep length': 3,
  });
  expect(more).toEqual([]);
  expect(fault!.text).toBe(
    'Steep cone: 18.000 mm at its small end, thinner than the bore of 22.005 mm of the shallow cone behind it. It must be larger there, or the bore smaller.',
  );
  expect(fault!.stops).toBe(true);
  expect([...fault!.ids].sort()).toEqual(
    ['shallow bore', 'shallow diameter', 'steep angle', 'steep diameter', 'steep length'].sort(),
  );
  // As thick as the bore, to the last digit, it may be.
  const edge = { 'shallow diameter': 22, 'shallow bore': 22.005, 'steep length': 3, 'steep angle': 45 };
  const just = 22.005 + 6 * Math.tan(Math.PI / 4);
  expect(found(doubleRear, { ...edge, 'steep diameter': just + 1e-9 })).toEqual([]);
  expect(found(doubleRear, { ...edge, 'steep diameter': just - 1e-6 })).toHaveLength(1);
});

test('a shallow cone as steep as the steep one, or steeper, is told at both angles', () => {
  const both = (typed: Typed) => found(doubleRear, typed).find(({ ids }) => ids[0] === 'shallow angle');
  const fault = both({ 'shallow angle': 46.5, 'steep angle': 45, 'shallow length': 3 });
  expect(fault).toMatchObject({ stops: true, ids: ['shallow angle', 'steep angle'] });
  expect(fault!.text).toMatch(/^Shallow cone: no shallower than the steep cone in front of it/);
  expect(both({ 'shallow angle': 45, 'shallow length': 3 })?.ids).toEqual(['shallow angle', 'steep angle']);
  expect(both({ 'shallow angle': 5, 'steep angle': 45 })).toBeUndefined();
});

test.each([
  [
    'a straight journal larger than its bore',
    straight,
    { 'rear diameter': 18, 'rear bore': 17.999 },
    /18\.000 mm does not go into a bore of 17\.999 mm/,
    true,
  ],
  [
    'a bore that is another seat’s',
    straight,
    { 'rear diameter': 18, 'rear bore': 22 },
    /none that a journal of 18\.000 mm runs in/,
    true,
  ],
  [
    'a cone that comes to a point',
    opposed,
    { 'front diameter': 6, 'front length': 4 },
    /^Front cone: 6\.000 mm at its large end, it comes to a point within its length of 4\.000 mm/,
    true,
  ],
  [
    'cones that never meet',
    doubleRear,
    { 'shallow diameter': 22, 'shallow bore': 30, 'steep diameter': 60 },
    /would stand 76\.3\d+ mm apart along the axis, more than the seat is long \(26\.000 mm\)/,
    true,
  ],
  [
    'a rear journal that does not pass',
    doubleRear,
    { 'shallow diameter': 22, 'rear diameter': 21 },
    /21\.000 mm does not pass through the shallow cone in front of it, 19\.27\d* mm at its small end/,
    false,
  ],
] as const)('%s', (_, plan, typed, text, stops) => {
  const faults = found(plan, typed);
  expect(faults.map((fault) => fault.text).join()).toMatch(text);
  expect(faults[0]!.stops).toBe(stops);
});

test('a cone facing the rear bounds nothing in front of it, two straight seats go in either way', () => {
  expect(found(opposed, { 'rear diameter': 60, 'front diameter': 32 })).toEqual([]);
  expect(found(straight, { 'rear diameter': 40, 'front diameter': 20 })).toEqual([]);
});

test('what the file’s rules refuse is told at its fields too, once', () => {
  const typed = { 'shallow diameter': 22, 'rear length': 1e-7 };
  const design = newDesign(doubleRear, { typed, film: null, pitch: null, title: '' }, 'metric');
  const result = validateDesign(design);
  if (result.ok) throw new Error('a surface of no length');
  const sizes = allSizes(doubleRear, typed, 0.0025, 'metric');
  const faults = faultsOf(doubleRear, sizes, { errors: result.errors, design }, 'metric');
  expect(faultAt(faults, 'rear length')).toMatch(/noseward/);
  expect(faultAt(faults, 'shallow length')).toBeUndefined();
  expect(new Set(faults.map(({ text }) => text)).size).toBe(faults.length);
});
