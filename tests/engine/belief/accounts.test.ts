/** How far what is believed may lie off: of a normal variable its ellipsoid, in closed form, and within bounds. */
import { expect, it } from 'vitest';
import { dot } from '../../../src/engine/algebra/dot.ts';
import { beginning, endOf, withBounds } from '../../../src/engine/belief/accounts.ts';

const UM = 1e-6;
const covariance = [
  [4, 1.2],
  [1.2, 9],
].map((row) => row.map((v) => v * UM ** 2));
const mean = [3 * UM, -2 * UM];
const gains = [1, -0.5];
const believed = beginning({ mean, covariance, errors: [] });

it.each([1, -1] as const)(
  'without bounds, side %i: m + side·k·P·g/√(g·P·g), and that is where it has its value',
  (side) => {
    const along = covariance.map((row) => dot(row, gains));
    const sigma = Math.sqrt(dot(gains, along));
    const { value, films } = endOf([believed], gains, side, 2.5);
    expect(value / UM).toBeCloseTo((dot(gains, mean) + side * 2.5 * sigma) / UM, 6);
    for (const [i, film] of films.entries())
      expect(film / UM).toBeCloseTo((mean[i]! + (side * 2.5 * along[i]!) / sigma) / UM, 6);
  },
);

it.each([1, -1] as const)(
  'within a bound, side %i: the films there have its value, keep the bound, and cost no more',
  (side) => {
    const bound = { normal: [0.3, 1], limit: -1.8 * UM };
    const account = withBounds(believed, [{ gains: bound.normal, limit: bound.limit }]);
    const { value, films } = endOf([account], gains, side, 2);
    expect(dot(gains, films) / UM).toBeCloseTo(value / UM, 6);
    expect(dot(bound.normal, films)).toBeLessThanOrEqual(bound.limit + 1e-4 * UM);
    const off = films.map((film, i) => film - mean[i]!);
    const [[a, b], [, d]] = covariance as [[number, number], [number, number]];
    const cost = (d * off[0]! ** 2 - 2 * b * off[0]! * off[1]! + a * off[1]! ** 2) / (a * d - b * b);
    expect(cost).toBeCloseTo(2 ** 2 + account.mode.cost, 3);
  },
);
