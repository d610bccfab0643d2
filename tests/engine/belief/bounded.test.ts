/** The most likely point within bounds: its conditions, and the projection that is known in closed form. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { dot } from '../../../src/engine/algebra/dot.ts';
import { modeWithin, times } from '../../../src/engine/belief/bounded.ts';

const UM = 1e-6;

it('a mean within its bounds stays, whatever they are', () => {
  expect(
    modeWithin(
      {
        mean: [1 * UM, 0],
        covariance: [
          [25 * UM ** 2, 0],
          [0, 9 * UM ** 2],
        ],
      },
      [{ normal: [1, 0], limit: UM }],
    ),
  ).toEqual({ point: [1 * UM, 0], cost: 0 });
});

it('one bound: m - P·g·(g·m - h)/(g·P·g), at its distance in standard deviations squared', () => {
  const covariance = [
    [4 * UM ** 2, 1 * UM ** 2],
    [1 * UM ** 2, 9 * UM ** 2],
  ];
  const { point, cost } = modeWithin({ mean: [3 * UM, 0], covariance }, [{ normal: [1, 0], limit: UM }]);
  expect(point[0]! / UM).toBeCloseTo(1, 6);
  expect(point[1]! / UM).toBeCloseTo(-0.5, 6);
  expect(cost).toBeCloseTo(1, 6);
});

it('a bound told a hundred times is one bound', () => {
  const normal = { mean: [3 * UM], covariance: [[4 * UM ** 2]] };
  const bound = { normal: [1], limit: UM };
  const often = modeWithin(
    normal,
    Array.from({ length: 100 }, () => bound),
  );
  expect(often.point[0]! / UM).toBeCloseTo(1, 5);
  expect(often.cost).toBeCloseTo(1, 5);
});

it('bounds that cannot both hold cost more than anything that was read', () => {
  const clash = [
    { normal: [1], limit: -UM },
    { normal: [-1], limit: -UM },
  ];
  expect(modeWithin({ mean: [0], covariance: [[25 * UM ** 2]] }, clash).cost).toBeGreaterThan(1e6);
});

it('a bound that another makes needless is let go, though it was overstepped the most', () => {
  // 0.8 µm along a normal half as long lies deeper than 1 µm, and beyond the first bound: the projection on the second
  const short = [0.45, Math.sqrt(0.25 - 0.45 ** 2)] as const;
  const { point, cost } = modeWithin(
    {
      mean: [0, 0],
      covariance: [
        [UM ** 2, 0],
        [0, UM ** 2],
      ],
    },
    [
      { normal: [1, 0], limit: -UM },
      { normal: [...short], limit: -0.8 * UM },
    ],
  );
  expect(point[0]! / UM).toBeCloseTo(-short[0] * 3.2, 6);
  expect(point[1]! / UM).toBeCloseTo(-short[1] * 3.2, 6);
  expect(cost).toBeCloseTo(2.56, 6);
});

it('any bounds: all kept, and no nearer point that keeps them', () => {
  const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const vector = fc.array(real(-1, 1), { minLength: 3, maxLength: 3 });
  fc.assert(
    fc.property(
      fc.array(vector, { minLength: 3, maxLength: 3 }),
      vector,
      fc.array(fc.tuple(vector, real(0.01, 1)), { minLength: 1, maxLength: 6 }),
      fc.array(vector, { minLength: 20, maxLength: 20 }),
      (root, mean, walls, others) => {
        // a positive covariance, and bounds that all leave the origin free
        const covariance = root.map((a, i) => root.map((b, j) => UM ** 2 * (dot(a, b) + (i === j ? 0.1 : 0))));
        const bounds = walls.map(([normal, limit]) => ({ normal, limit: limit * UM }));
        const centre = mean.map((x) => 5 * x * UM);
        const { point, cost } = modeWithin({ mean: centre, covariance }, bounds);
        for (const { normal, limit } of bounds) expect(dot(normal, point) - limit).toBeLessThan(1e-4 * UM);
        // of a convex programme: every allowed direction from its least leads up
        const gradient = (x: readonly number[]) =>
          solve(
            covariance,
            x.map((v, i) => v - centre[i]!),
          );
        expect(
          dot(
            gradient(point),
            point.map((v, i) => v - centre[i]!),
          ),
        ).toBeCloseTo(cost, 2);
        for (const other of [[0, 0, 0], ...others.map((o) => o.map((v) => v * UM))]) {
          if (bounds.some(({ normal, limit }) => dot(normal, other) > limit)) continue;
          expect(
            dot(
              gradient(point),
              other.map((v, i) => v - point[i]!),
            ),
          ).toBeGreaterThan(-1e-3 * (1 + cost));
        }
      },
    ),
    { seed: 4, numRuns: 200 },
  );
});

/** Cramer's rule, apart from what is tested. */
function solve(m: number[][], y: number[]): number[] {
  const det = ([a, b, c]: number[][]) =>
    a![0]! * (b![1]! * c![2]! - b![2]! * c![1]!) -
    a![1]! * (b![0]! * c![2]! - b![2]! * c![0]!) +
    a![2]! * (b![0]! * c![1]! - b![1]! * c![0]!);
  const whole = det(m);
  const x = y.map((_, k) => det(m.map((row, i) => row.map((v, j) => (j === k ? y[i]! : v)))) / whole);
  expect(times(m, x)[0]! / UM).toBeCloseTo(y[0]! / UM, 3);
  return x;
}
