/** What is assumed follows what it was assumed by, by the rule a new job is made by, and only while it is assumed. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ARRANGEMENTS } from '../../src/app/screens/new/arrangements.ts';
import { newDesign } from '../../src/app/screens/new/newDesign.ts';
import { assumedAfter, isAssumed } from '../../src/design/assumed.ts';
import type { Design } from '../../src/design/definition.ts';
import { diameterAt, withFollowing } from '../../src/design/following.ts';
import { valueAt, withValue } from '../../src/design/place.ts';
import { withoutSeat, withSeatMoved } from '../../src/design/seats.ts';
import { validateDesign } from '../../src/design/validate.ts';
import { fitSection } from '../../src/report/fit/section.ts';

const begun = (typed = {}, system: 'metric' | 'inch' = 'metric') =>
  newDesign(ARRANGEMENTS[0]!, { typed, film: null, pitch: null, title: '' }, system);
const put = (before: Design, path: string, value: number, system: 'metric' | 'inch' = 'metric') =>
  withFollowing(before, assumedAfter(before, withValue(before, path, value)), system);
const at = (design: Design, path: string) => valueAt(design, path) as number;

describe('a bore that nobody measured', () => {
  test('follows its journal: the pair has the film it was opened to, whatever is typed of the journal', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 26, noNaN: true }),
        fc.double({ min: 2, max: 5, noNaN: true }),
        fc.constantFrom('metric' as const, 'inch' as const),
        (diameter, halfAngle, system) => {
          const one = put(begun({}, system), 'seats[1].journal.diameter', diameter, system);
          const both = put(one, 'seats[1].journal.halfAngle', halfAngle, system);
          const { leastFilm } = fitSection(both).seats[1]!;
          expect(Math.abs(leastFilm! - both.seats[1]!.film!.target)).toBeLessThan(1.5e-4);
          expect(both.seats[1]!.bush.halfAngle).toBeCloseTo(halfAngle, 6);
          expect(isAssumed(both, 'seats[1].bush.diameter')).toBe(true);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('follows the film wanted, by what that opens the seat: 2·film/cos a on diameter', () => {
    const before = begun();
    const wide = put(before, 'seats[2].film.target', 0.01);
    const by = at(wide, 'seats[2].bush.diameter') - at(before, 'seats[2].bush.diameter');
    expect(Math.abs(by - (2 * 0.0075) / Math.cos(Math.PI / 4))).toBeLessThan(1e-4);
    // The tolerance keeps its share of the film; other seats are as they were.
    expect(at(wide, 'seats[2].film.tolerance')).toBe(0.002);
    expect(wide.seats[1]).toEqual(before.seats[1]);
  });

  test('the tolerance keeps its share of the film, however thin the film was in between', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-10, max: 0.02, noNaN: true }), (film) => {
        const before = begun();
        const share = at(before, 'seats[1].film.tolerance') / at(before, 'seats[1].film.target');
        const between = put(before, 'seats[1].film.target', film);
        expect(at(between, 'seats[1].film.tolerance') / film).toBeCloseTo(share, 3);
        expect(at(put(between, 'seats[1].film.target', 0.003), 'seats[1].film.tolerance') / 0.003).toBeCloseTo(
          share,
          3,
        );
      }),
      { examples: [[2.54e-9]] },
    );
  });

  test('stays where it is once it is typed', () => {
    const typed = put(begun(), 'seats[1].bush.diameter', 22.02);
    const moved = put(typed, 'seats[1].journal.diameter', 22.01);
    expect(at(moved, 'seats[1].bush.diameter')).toBe(22.02);
  });
});

test('a journal that nobody measured follows the bore that somebody did, and its ends those of the bush', () => {
  const before = begun();
  const typed = put(before, 'seats[0].bush.diameter', 20.5);
  expect(at(typed, 'seats[0].journal.diameter')).toBeCloseTo(20.495, 9);
  const ended = put(typed, 'seats[0].bush.from', at(typed, 'seats[0].bush.from') - 3);
  expect(at(ended, 'seats[0].journal.from')).toBe(at(before, 'seats[0].journal.from') - 3);
});

test('a bore that stands at another station goes by the line of its journal there', () => {
  const before = begun({ 'shallow bore': 22.005 });
  const freed: Design = { ...before, assumed: [...before.assumed!, 'seats[1].bush.diameter'] };
  const apart = withValue(freed, 'seats[1].bush.station', -10);
  const known = { ...apart, assumed: freed.assumed!.filter((path) => path !== 'seats[1].bush.station') };
  const steeper = put(known, 'seats[1].journal.halfAngle', 4);
  const gap = (design: Design) => at(design, 'seats[1].bush.diameter') - diameterAt(design.seats[1]!.journal, -10);
  expect(Math.abs(gap(steeper) - gap(known))).toBeLessThan(1.5e-4);
});

test('seats nobody knows anything of keep their proportion to the ones that are known; lengths stay', () => {
  const before = begun();
  const typed = put(before, 'seats[1].journal.diameter', 44);
  expect(at(typed, 'seats[2].journal.diameter')).toBe(60);
  expect(at(typed, 'seats[0].journal.diameter')).toBe(36);
  expect(at(typed, 'seats[2].bush.diameter')).toBeCloseTo(60.0071, 9);
  expect(typed.seats.map(({ journal: { from, to } }) => [from, to])).toEqual(
    before.seats.map(({ journal: { from, to } }) => [from, to]),
  );
  // The same, to its last digit, as a job begun with that size.
  const anew = begun({ 'shallow diameter': 44 });
  expect(typed.seats.map(({ journal }) => journal.diameter)).toEqual(anew.seats.map(({ journal }) => journal.diameter));
  // A hair is no other size of a drawing.
  expect(at(put(before, 'seats[1].journal.diameter', 21.9981), 'seats[2].journal.diameter')).toBe(30);
  // One that is known is no more to be moved.
  const both = put(put(before, 'seats[2].journal.diameter', 31), 'seats[1].journal.diameter', 44);
  expect(at(both, 'seats[2].journal.diameter')).toBe(31);
});

test('seats moved in the list, or taken out, change no size', () => {
  const before = begun();
  for (const edit of [(d: Design) => withSeatMoved(d, 2, -1), (d: Design) => withoutSeat(d, 1)]) {
    const plain = assumedAfter(before, edit(before));
    expect(withFollowing(before, plain, 'metric').seats).toEqual(plain.seats);
  }
  const { assumed: _, ...known } = before;
  expect(withFollowing(known, withValue(known, 'seats[1].journal.diameter', 30), 'metric').seats[2]).toBe(
    known.seats[2],
  );
});

test('whatever is typed, what follows leaves a design behind', () => {
  const keys = ['journal.diameter', 'journal.from', 'journal.to', 'bush.diameter', 'journal.halfAngle'];
  fc.assert(
    fc.property(fc.nat(2), fc.constantFrom(...keys), fc.double({ min: 0.9, max: 1.1, noNaN: true }), (i, key, by) => {
      const before = begun();
      const path = `seats[${i}].${key}`;
      const plain = assumedAfter(before, withValue(before, path, at(before, path) * by));
      if (validateDesign(plain).ok) expect(validateDesign(withFollowing(before, plain, 'metric')).ok).toBe(true);
    }),
  );
});
