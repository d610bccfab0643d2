/** What rounding can make of chi-square, against how chi-square really moves with what is read. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { numbersOf } from '../../../src/engine/belief/unknowns.ts';
import { chiSquareOf, type LeastSquares, linearise } from '../../../src/engine/gauging/linearise.ts';
import type { Reading } from '../../../src/engine/gauging/reading.ts';
import { predict } from '../../../src/engine/gauging/readings/index.ts';
import { startingShape } from '../../../src/engine/gauging/shape.ts';
import { between, doubleCone, MM, UM } from './pairs.ts';

const pair = doubleCone();
const on = { seat: 1, part: 'bush' as const };

/** One reading alone, so many of its standard uncertainties off. */
function problemOf(reading: Reading, off: number): LeastSquares {
  const exact = predict(reading, pair).value!;
  const readings = [{ ...reading, value: exact + off * reading.sigma }];
  const { seats, unknowns } = startingShape(pair, [on], readings);
  return { start: seats, unknowns, startNumbers: numbersOf(seats, unknowns), readings, priors: [] };
}

const diameter = (sigma: number): Reading => ({ ...on, kind: 'diameter', station: 2 * MM, value: 0, sigma });

/** χ² with the value read changed by so much (m). */
const shifted = (problem: LeastSquares, by: number) =>
  chiSquareOf(
    { ...problem, readings: problem.readings.map((r) => ({ ...r, value: r.value + by })) },
    problem.startNumbers,
  );

test('is what four roundings of the diameter and of the value read move it', () => {
  fc.assert(
    fc.property(between(0.05, 5), between(-2000, 2000), (sigma, off) => {
      fc.pre(Math.abs(off) > 1);
      const problem = problemOf(diameter(sigma * UM), off);
      const linear = linearise(problem, problem.startNumbers)!;
      expect(linear.chiSquare).toBeCloseTo(off * off, 4);
      const slope = (shifted(problem, 1e-9) - shifted(problem, -1e-9)) / 2e-9;
      const size = 2 * pair[1]!.bush.radius + Math.abs(problem.readings[0]!.value);
      expect(linear.noise / (Math.abs(slope) * 4 * Number.EPSILON * size)).toBeCloseTo(1, 4);
    }),
    { seed: 5, numRuns: 100 },
  );
});

test('where nothing is off, what is left is the square of a rounding', () => {
  const problem = problemOf(diameter(UM), 0);
  const linear = linearise(problem, problem.startNumbers)!;
  const size = 2 * pair[1]!.bush.radius + Math.abs(problem.readings[0]!.value);
  expect(linear.noise / ((4 * Number.EPSILON * size) / UM) ** 2).toBeCloseTo(1, 4);
});

test('a ball tells a depth, which carries more of it the more slender the cone', () => {
  const noiseOf = (seat: number, ball: number) => {
    const problem = problemOf({ seat, part: 'bush', kind: 'ballDepth', ball, face: 5 * MM, value: 0, sigma: UM }, 1000);
    const { noise } = linearise(problem, problem.startNumbers)!;
    return noise / (2 * pair[seat]!.bush.radius + Math.abs(problem.readings[0]!.value));
  };
  const [shallow, steep] = [noiseOf(0, 21 * MM), noiseOf(1, 33.2 * MM)];
  expect(shallow / steep).toBeCloseTo(Math.tan(Math.PI / 4) / Math.tan(Math.PI / 60), 3);
});

test('chi-square is not summed on once it has reached what it may be', () => {
  const problem = problemOf(diameter(UM), 10);
  expect(chiSquareOf(problem, problem.startNumbers, 200)).toBeCloseTo(100, 6);
  const twice = { ...problem, readings: [...problem.readings, ...problem.readings] };
  expect(chiSquareOf(twice, problem.startNumbers, 99)).toBe(Number.POSITIVE_INFINITY);
});
