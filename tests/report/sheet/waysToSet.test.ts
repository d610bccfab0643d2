/** The way that is printed is fine enough wherever one is. */
import { expect, test } from 'vitest';
import { type Way, waysToSet } from '../../../src/report/sheet/waysToSet.ts';

const way = (name: Way['way'], film: number, enough: boolean | null, reading = 1): Way => ({
  way: name,
  reading,
  error: film,
  film,
  enough,
});

test('the recommended way, then others that will do, then those that are too coarse', () => {
  const { by, also, coarse } = waysToSet({
    ways: [
      way('sineBar', 0.9, false),
      way('alongBar', 0.1, true),
      way('alongSlide', 0.2, true),
      way('scale', 2, false),
    ],
    recommended: 'alongBar',
  });
  expect(by.way).toBe('alongBar');
  expect(also.map((w) => w.way)).toEqual(['alongSlide']);
  expect(coarse.map((w) => w.way)).toEqual(['sineBar', 'scale']);
});

test('where none is fine enough, the finest, which is known to be too coarse', () => {
  const { by, also, coarse } = waysToSet({
    ways: [way('sineBar', 0.9, false), way('alongSlide', 0.2, false), way('scale', 2, false)],
    recommended: null,
  });
  expect(by).toMatchObject({ way: 'alongSlide', enough: false });
  expect(also).toEqual([]);
  expect(coarse.map((w) => w.way)).toEqual(['sineBar', 'scale']);
});

test('an indicator is not asked to read farther than one does, unless there is nothing else', () => {
  const table = way('table', 0.01, true, 300);
  expect(waysToSet({ ways: [way('alongBar', 0.1, true), table], recommended: 'alongBar' }).also).toEqual([]);
  expect(waysToSet({ ways: [table], recommended: null }).by).toBe(table);
});
