/**
 * Points of profiles taken out of the linear problem: the same as the whole problem tells, and what is left does not
 * grow with them.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  covarianceOf,
  type Decomposition,
  decompose,
  drawOf,
  isTold,
  leveragesOf,
  openParts,
  stepOf,
  toldParts,
  uncertaintyOf,
  unit,
} from '../../../src/engine/belief/decomposition.ts';
import { directionOf } from '../../../src/engine/gauging/direction.ts';
import { between, doubleCone, estimated, noisy, normals, straightnessNotebook, UM } from '../gauging/pairs.ts';

/**
 * A linear problem: `lines` numbers of lines, `points` points told alone (some twice), and readings that lean on lines
 * and on points beside each other.
 */
interface Drawn {
  rows: Float64Array[];
  residuals: number[];
  unknowns: number;
  points: number[];
}

const problem = fc
  .record({
    lines: fc.integer({ min: 1, max: 5 }),
    points: fc.integer({ min: 1, max: 7 }),
    others: fc.integer({ min: 0, max: 9 }),
    flat: fc.boolean(),
    numbers: fc.array(between(-1, 1), { minLength: 300, maxLength: 300 }),
  })
  .map(({ lines, points, others, flat, numbers }): Drawn => {
    let next = 0;
    const draw = () => numbers[next++ % numbers.length]!;
    const unknowns = lines + points;
    const rows: Float64Array[] = [];
    for (let k = 0; k < points; k++) {
      for (let again = 0; again < 1 + (k % 2); again++) {
        const row = new Float64Array(unknowns);
        row[lines + k] = 10 ** (2 * draw());
        rows.push(row);
      }
    }
    for (let i = 0; i < others; i++) {
      const row = new Float64Array(unknowns);
      // Where `flat`, the last number of the lines is told by nothing.
      for (let j = 0; j < (flat ? lines - 1 : lines); j++) row[j] = draw() + 0.1;
      const k = Math.floor(Math.abs(draw()) * points) % points;
      row[lines + k] = 3 * draw();
      if (k > 0 && i % 2 === 0) row[lines + k - 1] = draw();
      rows.push(row);
    }
    return { rows, residuals: rows.map(draw), unknowns, points: Array.from({ length: points }, (_, k) => lines + k) };
  });

const near = (found: ArrayLike<number>, wanted: ArrayLike<number>, within = 1e-9) => {
  const size = Math.max(1, ...Array.from(wanted, Math.abs));
  expect(found.length).toBe(wanted.length);
  for (let i = 0; i < found.length; i++)
    expect(Math.abs(found[i]! - wanted[i]!) / size, `${i}: ${found[i]} is not ${wanted[i]}`).toBeLessThan(within);
};

const wellTold = ({ singular, coreRank }: Decomposition) =>
  coreRank === 0 || singular[coreRank - 1]! > 1e-3 * singular[0]!;

describe('against the whole problem', () => {
  test('step, leverages, uncertainties, covariances and what is open', () => {
    fc.assert(
      fc.property(problem, ({ rows, residuals, unknowns, points }) => {
        const whole = decompose(rows, unknowns, []);
        const parted = decompose(rows, unknowns, points);
        fc.pre(wellTold(whole));
        expect(parted.elimination.points).toEqual(points);
        expect(parted.rank).toBe(whole.rank);
        near(stepOf(parted, residuals), stepOf(whole, residuals));
        near(leveragesOf(parted), leveragesOf(whole));
        const free = Array.from({ length: unknowns }, () => false);
        near(directionOf(rows, residuals, free, points).step, directionOf(rows, residuals, free, []).step);
        for (let j = 0; j < unknowns; j++) {
          const g = unit(unknowns, j);
          expect(isTold(parted, g)).toBe(isTold(whole, g));
          if (!isTold(whole, g)) continue;
          near([uncertaintyOf(parted, g)!], [uncertaintyOf(whole, g)!]);
          for (let k = 0; k < j; k++) {
            const other = unit(unknowns, k);
            const size = uncertaintyOf(whole, g)! * (uncertaintyOf(whole, other) ?? Number.NaN);
            if (isTold(whole, other))
              near([covarianceOf(parted, g, other) / size], [covarianceOf(whole, g, other) / size]);
          }
        }
        near(
          rows.map((row) => Math.hypot(...openParts(parted, row))),
          rows.map((row) => Math.hypot(...openParts(whole, row))),
        );
      }),
      { seed: 71, numRuns: 150 },
    );
  });

  test('a draw for one told direction is the quantity’s part in that direction', () => {
    fc.assert(
      fc.property(problem, ({ rows, unknowns, points }) => {
        const d = decompose(rows, unknowns, points);
        const gradient = Float64Array.from({ length: unknowns }, (_, j) => Math.cos(3 * j));
        const parts = toldParts(d, gradient);
        const drawn = Array.from({ length: d.rank }, (_, k) =>
          drawOf(d, unit(d.rank, k)).reduce((sum, x, j) => sum + x * gradient[j]!, 0),
        );
        near(drawn, parts);
      }),
      { seed: 72, numRuns: 100 },
    );
  });
});

test.each([10, 100, 300])('%i stations: what must be decomposed is as small as without any', (stations) => {
  const { readings } = straightnessNotebook(stations);
  const found = estimated(doubleCone(), noisy(readings, normals(4)));
  const { core, points, leant } = found.decomposition.elimination;
  expect(found.settled).toBe(true);
  expect(core.length).toBe(8);
  expect(points.length).toBe(stations);
  // each of the other readings leans on two points at most
  expect(leant.length).toBeLessThanOrEqual(2 * (readings.length - stations));
});

test('a hundred stations of straightness, read without error, give the profile back', () => {
  const { truth, readings } = straightnessNotebook(100);
  const { seats, chiSquare } = estimated(doubleCone(), readings);
  expect(chiSquare).toBeLessThan(1e-12);
  const { profile, halfAngle, radius } = seats[0]!.journal;
  expect(Math.abs(halfAngle - truth[0]!.journal.halfAngle)).toBeLessThan(1e-11);
  expect(Math.abs(radius - truth[0]!.journal.radius)).toBeLessThan(1e-12);
  profile.forEach(([z, deviation], k) => {
    expect(z).toBeCloseTo(truth[0]!.journal.profile[k]![0], 12);
    expect(Math.abs(deviation - truth[0]!.journal.profile[k]![1])).toBeLessThan(1e-12);
  });
  expect(Math.max(...profile.map(([, d]) => d))).toBeGreaterThan(0.9 * UM);
});

test('an influence too small for any news tells nothing; a small one tells what it tells', () => {
  const rows = (g: number) => [Float64Array.of(1, 0), Float64Array.of(0, g)];
  for (const nothing of [1e-180, -1e-300, 1e-13]) {
    const { rank, ...found } = decompose(rows(nothing), 2, []);
    expect(rank).toBe(1);
    expect(uncertaintyOf({ rank, ...found }, unit(2, 1))).toBeNull();
    expect(uncertaintyOf({ rank, ...found }, unit(2, 0))).toBeCloseTo(1, 12);
  }
  expect(uncertaintyOf(decompose(rows(1e-9), 2, []), unit(2, 1))! / 1e9).toBeCloseTo(1, 9);
});
