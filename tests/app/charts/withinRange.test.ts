import fc from 'fast-check';
import { expect, test } from 'vitest';
import { withinRange } from '../../../src/app/charts/withinRange.ts';

const number = fc.double({ min: -1000, max: 1000, noNaN: true });
const height = fc.oneof(number, fc.constant(Number.NaN));

/** The ordinate of a line at x, null where it has none. */
function heightAt(points: readonly (readonly [number, number])[], x: number): number | null {
  for (let i = 1; i < points.length; i++) {
    const [[x0, y0], [x1, y1]] = [points[i - 1]!, points[i]!];
    if (x0 === x1 || x < x0 || x > x1 || Number.isNaN(y0) || Number.isNaN(y1)) continue;
    return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
  }
  return null;
}

test('nothing beyond the range is left, and within it the line is the same at every place', () => {
  fc.assert(
    fc.property(
      fc.array(height, { maxLength: 12 }),
      number,
      fc.double({ min: 1, max: 100, noNaN: true }),
      (ys, low, wide) => {
        const high = low + wide;
        const points = ys.map((y, i) => [i, y] as const);
        const shown = withinRange(points, low, high);
        for (const [, y] of shown)
          if (!Number.isNaN(y)) {
            expect(y).toBeGreaterThanOrEqual(low - 1e-9);
            expect(y).toBeLessThanOrEqual(high + 1e-9);
          }
        for (let k = 0; k < 10 * ys.length; k++) {
          const x = (k + 0.37) / 10;
          const [was, is] = [heightAt(points, x), heightAt(shown, x)];
          const inside = was !== null && was > low + 1e-6 && was < high - 1e-6;
          if (inside) expect(is).toBeCloseTo(was, 6);
          if (was === null || was < low - 1e-6 || was > high + 1e-6) expect(is).toBeNull();
        }
      },
    ),
  );
});

test('a line within stays one line, point by point; one that leaves and comes back is parted', () => {
  const within = [
    [0, 1],
    [1, 2],
    [2, 1],
  ] as const;
  expect(withinRange(within, 0, 3)).toEqual(within);
  expect(withinRange(within, 0, 1.5)).toEqual([
    [0, 1],
    [0.5, 1.5],
    [1.5, Number.NaN],
    [1.5, 1.5],
    [2, 1],
  ]);
});
