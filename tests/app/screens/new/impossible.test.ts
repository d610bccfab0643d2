/** Sizes that no spindle has together are told at the fields they stand in; whatever is assumed never makes any. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ARRANGEMENTS, type Arrangement } from '../../../../src/app/screens/new/arrangements.ts';
import { faultAt, faultsOf } from '../../../../src/app/screens/new/faults.ts';
import { impossibleIn } from '../../../../src/app/screens/new/impossible.ts';
import { allSizes, newDesign, sizesOf, type Typed } from '../../../../src/app/screens/new/newDesign.ts';
import { sketchOf } from '../../../../src/app/screens/new/sketchOfJob.ts';
import { typedQuantity } from '../../../../src/design/quantity.ts';
import { validateDesign } from '../../../../src/design/validate.ts';

const [doubleRear, double, opposed, straight] = ARRANGEMENTS as [Arrangement, Arrangement, Arrangement, Arrangement];
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

test('a steep cone thinner than what it follows on: told in figures, at every field that could mend it', () => {
  const typed = { 'shallow diameter': 22, 'shallow bore': 22.005, 'steep diameter': 24, 'steep length': 3 };
  const [fault, ...more] = found(doubleRear, typed);
  expect(more).toEqual([]);
  expect(fault!.text).toBe(
    'Steep cone: 18.000 mm at its small end, thinner than the shallow cone behind it, 22.000 mm at its large end. Shorten it to 1.000 mm, or make its large end 28.000 mm.',
  );
  expect(fault!.stops).toBe(true);
  expect([...fault!.ids].sort()).toEqual(['shallow diameter', 'steep angle', 'steep diameter', 'steep length'].sort());
  expect(found(doubleRear, { ...typed, 'steep length': 1 })).toEqual([]);
  expect(found(doubleRear, { ...typed, 'steep diameter': 28 })).toEqual([]);
});

test('a sketch in inches of cones that meet at one diameter, with no gap, is taken as it is drawn', () => {
  const inch = (inches: number) => inches * 25.4;
  const typed = {
    'shallow diameter': inch(1.25),
    'shallow angle': 3,
    'shallow length': inch(1.5),
    'steep diameter': inch(1.75),
    'steep angle': 45,
    'steep length': inch(0.25),
  };
  for (const behind of [0, 0.001]) {
    const all = { ...typed, 'steep behind': inch(behind) };
    expect(impossibleIn(double, allSizes(double, all, 0.00254, 'inch'), 'inch')).toEqual([]);
    const design = newDesign(double, { typed: all, film: null, pitch: null, title: '' }, 'inch');
    expect(validateDesign(design).ok).toBe(true);
    expect(design.seats[1]!.journal.from).toBeCloseTo(design.seats[0]!.journal.to + inch(behind), 6);
    expect(sketchOf(design)!.plan.seats[1]!.behind).toBeCloseTo(inch(behind), 6);
  }
  const behind = sizesOf(double).find(({ ask }) => ask === 'behind')!;
  expect(typedQuantity(behind.at, '0', 'inch')).toEqual({ ok: true, value: 0 });
  expect(typedQuantity(behind.at, '-.001', 'inch').ok).toBe(false);
});

test('any two cones that meet at one diameter go together; drawn longer they are told what to type, and that does', () => {
  const cone = fc.record({
    large: fc.double({ min: 15, max: 60, noNaN: true }),
    wider: fc.double({ min: 1.05, max: 1.6, noNaN: true }),
    shallow: fc.double({ min: 1, max: 8, noNaN: true }),
    steep: fc.double({ min: 25, max: 60, noNaN: true }),
    longer: fc.double({ min: 1.001, max: 1.8, noNaN: true }),
    film: fc.constantFrom(0.0025, 0.006),
    system: fc.constantFrom('metric' as const, 'inch' as const),
  });
  fc.assert(
    fc.property(cone, ({ large, wider, shallow, steep, longer, film, system }) => {
      const slope = Math.tan((steep * Math.PI) / 180);
      const meets = (large * (wider - 1)) / 2 / slope;
      const sizes = (length: number) => {
        const typed = {
          'shallow diameter': large,
          'shallow angle': shallow,
          'steep diameter': large * wider,
          'steep angle': steep,
          'steep length': length,
          'steep behind': 0,
        };
        return allSizes(double, typed, film, system);
      };
      const of = (length: number) => impossibleIn(double, sizes(length), system);
      expect(of(meets)).toEqual([]);
      // A length that would come to a point is told so, and not how to mend a step.
      if (large * wider - 2 * meets * longer * slope <= 0.1) return;
      const [fault] = of(meets * longer);
      // A bush ends at most a tenth within its journal; the film makes it so much wider.
      const bears = meets * longer * 0.9 - (sizes(meets * longer)['steep bore']! - large * wider) / 2 / slope;
      if (bears > meets) expect(fault?.stops).toBe(true);
      const [, figure, unit] = /Shorten it to ([\d.]+) (mm|in),/.exec(fault!.text) ?? [];
      if (figure === undefined) return;
      expect(of(Number(figure) * (unit === 'in' ? 25.4 : 1))).toEqual([]);
    }),
    {
      numRuns: 200,
      examples: [[{ large: 15, wider: 1.05, shallow: 1, steep: 25, longer: 1.12, film: 0.006, system: 'inch' }]],
    },
  );
});

test('a bore that opens again behind the front bush is told, with the bore that would do', () => {
  const typed = { 'shallow diameter': 22, 'shallow bore': 23, 'steep diameter': 28, 'steep length': 3 };
  const [fault] = found(double, typed);
  expect(fault).toMatchObject({ stops: true });
  expect(fault!.ids).toContain('shallow bore');
  const bore = Number(/Make that bore ([\d.]+) mm at most/.exec(fault!.text)![1]);
  expect(found(double, { ...typed, 'shallow bore': bore })).toEqual([]);
  expect(found(double, { ...typed, 'shallow bore': bore + 0.002 })).toHaveLength(1);
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
    /21\.000 mm does not pass through the shallow cone in front of it, 19\.38\d* mm at its small end/,
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

test('a straight bore that is its journal’s size but for rounding takes no journal', () => {
  const sizes = allSizes(straight, { 'rear diameter': 19.05, 'rear bore': 19.05 + 4e-15 }, 0.0025, 'inch');
  expect(impossibleIn(straight, sizes, 'inch').some(({ stops }) => stops)).toBe(true);
});
