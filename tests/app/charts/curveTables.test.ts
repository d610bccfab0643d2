/** Curves as rows: every place once, what solving leaves of a nought told as nought, nothing else touched. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { curveRows } from '../../../src/app/charts/curveTables.ts';

test('what is less than a thousand-millionth of a curve’s own largest value is nought; each curve by itself', () => {
  const lines = [
    {
      name: 'shake',
      points: [
        [0, 3.17e-12],
        [1, -4e-12],
        [2, 8.5],
      ] as [number, number][],
    },
    {
      name: 'small',
      points: [
        [0, 3.17e-12],
        [1, 6e-12],
      ] as [number, number][],
    },
  ];
  expect(curveRows({ across: 'position, µm', up: 'µm', lines })).toEqual([
    ['position, µm', 'shake: µm', 'small: µm'],
    [0, 0, 3.17e-12],
    [1, 0, 6e-12],
    [2, 8.5, ''],
  ]);
});

test('every value that counts stands in its place as it was', () => {
  const points = fc.uniqueArray(
    fc.tuple(fc.integer({ min: 0, max: 50 }), fc.double({ min: 1e-3, max: 1e3, noNaN: true })),
    {
      selector: ([x]) => x,
      minLength: 1,
    },
  );
  fc.assert(
    fc.property(points, points, (one, other) => {
      const lines = [one, other].map((line, i) => ({ name: `${i}`, points: line as [number, number][] }));
      const [, ...rows] = curveRows({ across: 'x', up: 'y', lines });
      lines.forEach(({ points: line }, k) => {
        const told = rows.flatMap((row) => (row[k + 1] === '' ? [] : [[row[0], row[k + 1]]]));
        expect(told).toEqual([...line].sort(([a], [b]) => a - b));
      });
    }),
  );
});
