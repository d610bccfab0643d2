/** A design from nothing: whole whatever is typed, in proportion, and honest about what nobody told. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ARRANGEMENTS, type Arrangement } from '../../../../src/app/screens/new/arrangements.ts';
import { allSizes, newDesign, sizesOf, type Typed } from '../../../../src/app/screens/new/newDesign.ts';
import type { Design } from '../../../../src/design/definition.ts';
import { validateDesign } from '../../../../src/design/validate.ts';
import { fitSection } from '../../../../src/report/fit/section.ts';

const made = (plan: Arrangement, typed: Typed, film: number | null = null, system: 'metric' | 'inch' = 'metric') =>
  newDesign(plan, { typed, film, pitch: null, title: '' }, system);
const [doubleRear, double, opposed] = ARRANGEMENTS as [Arrangement, Arrangement, Arrangement];

describe.each(ARRANGEMENTS.map((plan) => [plan.id, plan] as const))('%s', (_, plan) => {
  test('from nothing at all it is whole, every seat has its film, and nothing of a demo is in it', () => {
    for (const system of ['metric', 'inch'] as const) {
      const design = made(plan, {}, null, system);
      expect(validateDesign(design)).toMatchObject({ ok: true });
      for (const { leastFilm, name } of fitSection(design).seats)
        expect(Math.abs(leastFilm! - design.seats[0]!.film!.target), name).toBeLessThan(0.0002);
      expect(Object.keys(design).sort()).toEqual(['assumed', 'conepair', 'seats']);
    }
  });

  test('twice the spindle has twice the sizes', () => {
    const nominal = plan.seats.at(-1)!;
    const [one, two] = [1, 2].map((times) =>
      allSizes(plan, { [`${nominal.name} diameter`]: times * nominal.diameter }, 0.0025, 'metric'),
    );
    for (const [id, value] of Object.entries(one!)) {
      if (id.endsWith('angle')) expect(two![id]).toBe(value);
      else expect(Math.abs(two![id]! / value - 2), id).toBeLessThan(0.25);
    }
  });

  test('what is typed stands in it as typed, and is not assumed; all else is', () => {
    const ids = sizesOf(plan);
    fc.assert(
      fc.property(
        fc.subarray(ids),
        fc.double({ min: 0.6, max: 1.6, noNaN: true }),
        fc.constantFrom('metric' as const, 'inch' as const),
        (known, times, system) => {
          const usual = allSizes(plan, {}, 0.0025, system);
          const typed = Object.fromEntries(
            known.map(({ id, ask }) => [id, ask === 'angle' ? usual[id]! : times * usual[id]!]),
          );
          const sizes = allSizes(plan, typed, 0.0025, system);
          for (const { id } of known) expect(sizes[id]).toBe(typed[id]);
          const design = made(plan, typed, null, system);
          for (const { seat, ask } of ids) {
            const place = { diameter: 'journal.diameter', bore: 'bush.diameter', angle: 'journal.halfAngle' }[
              ask as string
            ];
            if (place === undefined) continue;
            const isKnown = known.some((k) => k.seat === seat && k.ask === ask);
            expect(design.assumed!.includes(`seats[${seat}].${place}`), `${seat} ${ask}`).toBe(!isKnown);
          }
          const result = validateDesign(design);
          if (!result.ok)
            // Of sizes typed against each other; the list of what is assumed is sound in any case.
            expect(result.errors.filter(({ path }) => path.startsWith('assumed'))).toEqual([]);
        },
      ),
      { numRuns: 60 },
    );
  });
});

const stations = ({ seats }: Design) => seats.map(({ journal: { from, to } }) => [from, to]);

test('a dimensioned sketch becomes the stations it means, counted from where nought is drawn', () => {
  const typed = {
    'steep diameter': 30,
    'steep length': 3,
    'steep behind': 1.2,
    'shallow diameter': 22,
    'shallow length': 26,
    'shallow behind': 92,
    'rear diameter': 18,
    'rear length': 22,
  };
  const design = made(doubleRear, typed);
  expect(stations(design)).toEqual([
    [-140, -118],
    [-26, 0],
    [1.2, 4.2],
  ]);
  expect(design.seats.map(({ journal }) => journal.station)).toEqual([-118, 0, 4.2]);
  // All ends are told; the bushes are not.
  expect(design.assumed!.filter((path) => /journal\.(from|to|station)/.test(path))).toEqual([]);
  expect(design.assumed).toContain('seats[1].bush.from');
  // Without how far the rear bearing stands, neither of its ends is known.
  const { 'shallow behind': _, ...less } = typed;
  expect(made(doubleRear, less).assumed).toEqual(
    expect.arrayContaining(['seats[0].journal.from', 'seats[0].journal.to', 'seats[0].journal.station']),
  );
  expect(stations(made(double, typed))).toEqual([
    [-26, 0],
    [1.2, 4.2],
  ]);
});

test('a cone that faces the rear has its large end there, and its angle below nought', () => {
  const design = made(opposed, { 'rear angle': 20, 'rear diameter': 20, 'rear length': 5, 'front behind': 60 });
  expect(design.seats[0]!.journal).toEqual({ halfAngle: -20, diameter: 20, station: -65, from: -65, to: -60 });
  expect(fitSection(design).seats[0]!.closes).toBe('noseward');
});

test('a bore that is known makes the journal that runs in it, by the film', () => {
  const design = made(doubleRear, { 'rear bore': 20 }, 0.004);
  expect(design.seats[0]!.journal.diameter).toBeCloseTo(19.992, 9);
  expect(design.seats[0]!.film).toEqual({ target: 0.004, tolerance: 0.0008 });
  expect(design.assumed).not.toContain('seats[0].film.target');
  expect(design.assumed).toContain('seats[0].film.tolerance');
});

test('a film of next to nothing leaves a tolerance that is its share, and no bore that its journal does not go into', () => {
  const design = made(doubleRear, {}, 2.54e-9);
  for (const { film } of design.seats) expect(film!.tolerance! / film!.target).toBeCloseTo(0.2, 6);
});
