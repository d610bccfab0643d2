/** A few equations against a general package, with unknowns and equations of very different size. */
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { expect, test } from 'vitest';
import { solveSmall } from '../../../src/engine/algebra/elimination.ts';

const entry = fc.double({ min: -1, max: 1, noNaN: true });
const scale = fc.integer({ min: -9, max: 9 }).map((power) => 10 ** power);
const system = fc.integer({ min: 1, max: 5 }).chain((n) => {
  const row = fc.array(entry, { minLength: n, maxLength: n });
  const scales = fc.array(scale, { minLength: n, maxLength: n });
  return fc.record({ a: fc.array(row, { minLength: n, maxLength: n }), x: row, rows: scales, columns: scales });
});
/** Well off singular, so that both packages keep their digits. */
const heavy = (a: number[][]) =>
  a.map((row, i) => row.map((value, j) => (j === (i + 1) % row.length ? value + 3 * row.length : value)));

test('solves what a general package solves, whatever the units of its equations and unknowns', () => {
  fc.assert(
    fc.property(system, ({ a, x, rows, columns }) => {
      const plain = heavy(a);
      const b = plain.map((row) => row.reduce((sum, value, j) => sum + value * x[j]!, 0));
      const wanted = solve(new Matrix(plain), Matrix.columnVector(b)).to1DArray();
      const found = solveSmall(
        plain.map((row, i) => row.map((value, j) => value * rows[i]! * columns[j]!)),
        b.map((value, i) => value * rows[i]!),
      )!;
      found.forEach((value, j) => {
        expect(Math.abs(value * columns[j]! - wanted[j]!)).toBeLessThan(1e-12);
      });
    }),
    { seed: 2, numRuns: 300 },
  );
});

test.each<[string, number[][]]>([
  [
    'an unknown in no equation',
    [
      [0, 1],
      [0, 2],
    ],
  ],
  [
    'an equation without unknowns',
    [
      [1, 2],
      [0, 0],
    ],
  ],
  [
    'an equation twice, in other units',
    [
      [1, 2, 3],
      [1e6, 2e6, 3e6],
      [0, 1, 1],
    ],
  ],
  [
    'a number that is none',
    [
      [Number.NaN, 1],
      [1, 1],
    ],
  ],
])('%s has no answer', (_, a) => {
  expect(
    solveSmall(
      a,
      a.map(() => 1),
    ),
  ).toBeNull();
  expect(
    solveSmall(
      a.toReversed(),
      a.map(() => 1),
    ),
  ).toBeNull();
});
