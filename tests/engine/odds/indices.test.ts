/** Sobol' indices of functions whose indices are known exactly. */
import { expect, test } from 'vitest';
import { type Indices, type Model, sobolIndices } from '../../../src/engine/odds/indices.ts';
import { standardNormal } from '../../../src/engine/odds/normal.ts';

const alone = (n: number) => Array.from({ length: n }, (_, i) => [i]);
const byRow =
  (f: (u: number[]) => number): Model =>
  (u) =>
    Float64Array.from(u[0]!, (_, k) => f(u.map((column) => column[k]!)));
const settings = { rows: 1024, blocks: 8, seed: 4 };

function near({ groups }: Indices, first: readonly number[], total: readonly number[], by = 0.01): void {
  groups.forEach((group, i) => {
    expect(Math.abs(group.first.share - first[i]!), `first ${i}`).toBeLessThan(by);
    expect(Math.abs(group.total.share - total[i]!), `total ${i}`).toBeLessThan(by);
    for (const [{ low, high }, exact] of [
      [group.first, first[i]!],
      [group.total, total[i]!],
    ] as const) {
      // The points are more even than chance, so the interval holds it with room; it says something all the same.
      expect(low - 1e-6).toBeLessThan(exact);
      expect(high + 1e-6).toBeGreaterThan(exact);
      expect(high - low).toBeLessThan(0.12);
    }
  });
}

/** sin x₁ + a·sin² x₂ + b·x₃⁴·sin x₁ over ±π. @source IshigamiHomma1990; derived (its indices) */
test('Ishigami', () => {
  const [a, b] = [7, 0.1];
  const found = sobolIndices(
    byRow((u) => {
      const [x, y, z] = u.map((v) => Math.PI * (2 * v - 1)) as [number, number, number];
      return Math.sin(x) + a * Math.sin(y) ** 2 + b * z ** 4 * Math.sin(x);
    }),
    3,
    alone(3),
    settings,
  );
  const one = (1 + (b * Math.PI ** 4) / 5) ** 2 / 2;
  const two = a ** 2 / 8;
  const both = b ** 2 * Math.PI ** 8 * (1 / 18 - 1 / 50);
  const variance = one + two + both;
  expect(found.mean).toBeCloseTo(a / 2, 2);
  expect(Math.abs(found.variance / variance - 1)).toBeLessThan(0.01);
  near(
    found,
    [one, two, 0].map((v) => v / variance),
    [one + both, two, both].map((v) => v / variance),
  );
  // As printed by a general library, two places.
  expect(found.groups.map(({ first }) => first.share)).toEqual([0.31, 0.44, 0].map((s) => expect.closeTo(s, 1)));
  // Two taken together: all but the second.
  const pair = sobolIndices(
    byRow((u) => {
      const [x, y, z] = u.map((v) => Math.PI * (2 * v - 1)) as [number, number, number];
      return Math.sin(x) + a * Math.sin(y) ** 2 + b * z ** 4 * Math.sin(x);
    }),
    3,
    [[0, 2], [1]],
    settings,
  );
  near(
    pair,
    [one + both, two].map((v) => v / variance),
    [one + both, two].map((v) => v / variance),
  );
});

/** Π (|4x - 2| + a)/(1 + a). @source SaltelliSobol1995; derived (its indices) */
test('the g-function of six', () => {
  const a = [0, 0.5, 3, 9, 99, 99];
  const found = sobolIndices(
    byRow((u) => u.reduce((product, x, i) => (product * (Math.abs(4 * x - 2) + a[i]!)) / (1 + a[i]!), 1)),
    6,
    alone(6),
    settings,
  );
  expect(found.mean).toBeCloseTo(1, 2);
  expect(Math.abs(found.variance / 0.56807093 - 1)).toBeLessThan(0.01);
  near(
    found,
    [0.58678119, 0.26079164, 0.036673824, 0.0058678119, 5.8678119e-5, 5.8678119e-5],
    [0.69008589, 0.35617336, 0.056333542, 0.0091705766, 9.2008385e-5, 9.2008385e-5],
  );
});

/** x₁·x₂ of normals: S_1 = m₂²·s₁²/V, S_12 = s₁²·s₂²/V. @source derived */
test('a product of normals', () => {
  const found = sobolIndices(
    byRow(([u, v]) => (1 + 0.5 * standardNormal(u!)) * (2 + standardNormal(v!))),
    2,
    alone(2),
    settings,
  );
  expect(Math.abs(found.variance / 2.25 - 1)).toBeLessThan(0.01);
  near(found, [0.44444444, 0.44444444], [0.55555556, 0.55555556]);
});

test('rows without a value are left out; the same seed is the same answer', () => {
  const model = byRow(([u, v]) => (u! < 0.01 ? Number.NaN : u! + v!));
  const once = sobolIndices(model, 2, alone(2), settings);
  expect(once.groups.map(({ first }) => Math.abs(first.share - 0.5) < 0.03)).toEqual([true, true]);
  expect(sobolIndices(model, 2, alone(2), settings)).toEqual(once);
  expect(sobolIndices(model, 2, alone(2), { ...settings, seed: 5 })).not.toEqual(once);
});

/** Where a fifth of the pairs have no answer, by a quantity of its own, the indices are those of the others. */
test('rows without a value are left out of every set', () => {
  const found = sobolIndices(
    byRow(([x, y, gone]) => (gone! < 0.2 ? Number.NaN : 3 * x! + 4 * y!)),
    3,
    [[0], [1]],
    { ...settings, rows: 4096 },
  );
  expect(found.mean).toBeCloseTo(3.5, 2);
  expect(Math.abs(found.variance / (25 / 12) - 1)).toBeLessThan(0.02);
  near(found, [9 / 25, 16 / 25], [9 / 25, 16 / 25], 0.02);
});
