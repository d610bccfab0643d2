import { expect, test } from 'vitest';
import { sobolPoints, TABLED } from '../../../src/engine/odds/sobol.ts';

const columnsOf = (seed: number | null, dimensions: readonly number[], from: number, count: number) => {
  const fill = sobolPoints(seed);
  return dimensions.map((d) => {
    const out = new Float64Array(count);
    fill(d, from, out);
    return out;
  });
};

/** First points of five dimensions, and the eighth and last of the table. @source JoeKuo2008 (the directions) */
test('unscrambled, the points are those of the published directions', () => {
  const points = columnsOf(null, [0, 1, 2, 3, 4], 0, 8);
  expect(Array.from({ length: 8 }, (_, k) => points.map((column) => column[k]))).toEqual([
    [0, 0, 0, 0, 0],
    [0.5, 0.5, 0.5, 0.5, 0.5],
    [0.75, 0.25, 0.25, 0.25, 0.75],
    [0.25, 0.75, 0.75, 0.75, 0.25],
    [0.375, 0.375, 0.625, 0.875, 0.375],
    [0.875, 0.875, 0.125, 0.375, 0.875],
    [0.625, 0.125, 0.875, 0.625, 0.625],
    [0.125, 0.625, 0.375, 0.125, 0.125],
  ]);
  // As a general scientific library has them, far on and in the last dimensions of the table.
  const far = columnsOf(null, [7, 20, 40, 62, 63], 1000, 1).map((column) => column[0]);
  expect(far).toEqual(FAR);
});

/** Point 1000 of dimensions 8, 21, 41, 63 and 64. */
const FAR = [0.8994140625, 0.5224609375, 0.9130859375, 0.2587890625, 0.4462890625];

test('any block is the same as that stretch of the whole', () => {
  for (const dimension of [0, 5, TABLED - 1, TABLED, 2 * TABLED + 3]) {
    const [whole] = columnsOf(3, [dimension], 0, 3000);
    for (const [from, count] of [
      [0, 1],
      [1, 700],
      [1023, 2],
      [1999, 1001],
    ] as const)
      expect(columnsOf(3, [dimension], from, count)[0]).toEqual(whole!.slice(from, from + count));
  }
});

/** The least t for which every box of volume 2^{t - m} of two dimensions holds 2^t of the points. */
function qualityOf([x, y]: Float64Array[], m: number): number {
  let quality = 0;
  for (let t = m; t >= 0; t--) {
    const cells = m - t;
    for (let split = 0; split <= cells; split++) {
      const counts = new Map<number, number>();
      for (let k = 0; k < x!.length; k++) {
        const box = Math.floor(x![k]! * 2 ** split) * 2 ** (cells - split) + Math.floor(y![k]! * 2 ** (cells - split));
        counts.set(box, (counts.get(box) ?? 0) + 1);
      }
      if (counts.size !== 2 ** cells || [...counts.values()].some((count) => count !== 2 ** t)) return t + 1;
    }
    quality = t;
  }
  return quality;
}

test('every block of 2^m points is a net, as good scrambled as not', () => {
  for (let m = 3; m <= 10; m++)
    for (const pair of [
      [0, 1],
      [1, 2],
      [3, 7],
      [12, 31],
    ]) {
      const plain = qualityOf(columnsOf(null, pair, 0, 2 ** m), m);
      // The first two dimensions are as even as can be.
      if (pair[1] === 1) expect(plain).toBe(0);
      for (const seed of [1, 2])
        for (const block of [0, 1, 5])
          expect(qualityOf(columnsOf(seed, pair, block * 2 ** m, 2 ** m), m), `${pair} ${m} ${seed} ${block}`).toBe(
            block === 0 ? plain : qualityOf(columnsOf(null, pair, block * 2 ** m, 2 ** m), m),
          );
    }
});

test('beyond the table a dimension alone is as even, and pairs of one group are', () => {
  for (const block of [0, 3]) {
    const pair = columnsOf(9, [TABLED, TABLED + 1], block * 256, 256);
    expect(qualityOf(pair, 8)).toBe(0);
    // Not the order of the table again: the first of the group is not the first of the table.
    const [again] = columnsOf(9, [0], block * 256, 256);
    expect(pair[0]).not.toEqual(again);
    // Nor any closer to it than chance has it.
    const both = correlation(pair[0]!, again!);
    expect(Math.abs(both)).toBeLessThan(4 / Math.sqrt(256));
  }
});

function correlation(x: Float64Array, y: Float64Array): number {
  let [xy, xx, yy] = [0, 0, 0];
  for (let k = 0; k < x.length; k++) {
    const [a, b] = [x[k]! - 0.5, y[k]! - 0.5];
    xy += a * b;
    xx += a * a;
    yy += b * b;
  }
  return xy / Math.sqrt(xx * yy);
}

test('a point is anywhere with equal chance, whatever its number, and never at the edge', () => {
  for (const [dimension, number] of [
    [0, 0],
    [3, 1],
    [10, 77],
    [70, 5],
  ] as const) {
    const times = new Array<number>(16).fill(0);
    for (let seed = 0; seed < 4000; seed++) {
      const u = columnsOf(seed, [dimension], number, 1)[0]![0]!;
      expect(u).toBeGreaterThan(0);
      expect(u).toBeLessThan(1);
      times[Math.floor(u * 16)]!++;
    }
    const square = times.reduce((sum, count) => sum + (count - 250) ** 2 / 250, 0);
    // Chi-square of 15: once in ten thousand above 44.3.
    expect(square, `${dimension} ${number}`).toBeLessThan(44.3);
  }
});

/** Π (1 + (x - ½)) over the unit cube of five: mean 1, variance 0.49214329. @source derived */
test('the error of a mean falls much faster than that of chance', () => {
  const errorsOf = (m: number) => {
    const errors = Array.from({ length: 30 }, (_, seed) => {
      const u = columnsOf(seed, [0, 1, 2, 3, 4], 0, 2 ** m);
      let sum = 0;
      for (let k = 0; k < 2 ** m; k++) sum += u.reduce((product, column) => product * (0.5 + column[k]!), 1);
      return sum / 2 ** m - 1;
    });
    // No bias: the mean of the errors is within three of its own.
    const mean = errors.reduce((s, e) => s + e, 0) / 30;
    const root = Math.sqrt(errors.reduce((s, e) => s + e * e, 0) / 30);
    expect(Math.abs(mean)).toBeLessThan((3 * root) / Math.sqrt(30));
    return root;
  };
  const [few, many] = [errorsOf(6), errorsOf(12)];
  const byChance = Math.sqrt(0.49214329 / 2 ** 12);
  expect(many).toBeLessThan(byChance / 30);
  // Chance gains a factor of 8 from 2^6 to 2^12 points, n^-1.5 one of 512.
  expect(few / many).toBeGreaterThan(150);
});

test('what is no point is refused, with what is allowed', () => {
  expect(() => columnsOf(1, [0], -1, 2)).toThrow('points -1 to 0: allowed are 0 to 4294967295');
  expect(() => columnsOf(1, [0], 2 ** 32 - 1, 2)).toThrow('allowed are 0 to 4294967295');
  expect(() => columnsOf(null, [64], 0, 1)).toThrow('dimension 64: allowed are whole numbers from 0 to 63');
  expect(() => columnsOf(1, [-1], 0, 1)).toThrow('dimension -1');
});
