/** The plan's cut off pairs drawn: the fast way against the slow one, and against the cut itself. */
import { expect, test } from 'vitest';
import type { TrialInput } from '../../../src/engine/cutting/trial.ts';
import { type CutOff, cutLinear, cutPair, cutSampler } from '../../../src/engine/odds/cut.ts';
import { kernelOf } from '../../../src/engine/odds/kernel.ts';
import { standardNormal } from '../../../src/engine/odds/normal.ts';
import { BLOCK, drawer } from '../../../src/engine/odds/odds.ts';
import { linearSampler, type Source } from '../../../src/engine/odds/sampler.ts';
import { degrees, doubleCone } from './pairs.ts';

const question = { position: 0, friction: 0.12 };
const sources: Source[] = (['journal', 'bush'] as const).flatMap((part) =>
  [0, 1].flatMap((seat) => [
    { seat, part, of: 'halfAngle' as const },
    { seat, part, of: 'radius' as const },
  ]),
);
const sampler = linearSampler(
  doubleCone(),
  sources,
  sources.map(({ of }, i) => sources.map((_, k) => (i === k ? (of === 'halfAngle' ? 4e-5 : 4e-7) ** 2 : 0))),
);
const input = (renew: boolean): TrialInput => ({
  seats: doubleCone(),
  allow: [
    { seat: 0, part: 'bush', cleanup: 0, limit: 1e-4, ...(renew && { renew: degrees(3.01) }) },
    { seat: 1, part: 'journal', cleanup: 0, limit: 1e-4 },
  ],
  faces: [{ name: 'collar', part: 'bush', seats: [1], moves: 1, cleanup: 0, limit: 1e-3, add: 0 }],
});
const cutOff = (renew: boolean): CutOff => ({
  input: input(renew),
  off: {
    taken: [
      { seat: 0, part: 'bush', normal: 4e-6, sigma: 5e-7 },
      { seat: 1, part: 'journal', normal: 2e-5, sigma: 1e-6 },
    ],
    faces: [{ face: 0, off: 1e-5, sigma: 5e-7 }],
  },
  before: [],
});

for (const renew of [false, true])
  test(`by the thousand as one by one${renew ? ', a line cut anew' : ''}`, () => {
    const cut = cutOff(renew);
    const { varied, ...slow } = cutSampler(sampler, cut);
    const middle = cutPair(cut, doubleCone());
    expect(varied!.seats).toEqual(middle);
    const u = drawer(slow, 7)(0);
    const fast = kernelOf({ ...slow, varied: varied! }, middle, question, BLOCK)(u);
    const values = fast.values.map((column) => column.slice());
    const first = fast.first.slice();
    const plain = kernelOf(slow, middle, question, BLOCK)(u);
    expect([...first]).toEqual([...plain.first]);
    plain.values.forEach((column, c) => {
      for (let k = 0; k < BLOCK; k += 13)
        if (Number.isNaN(column[k]!)) expect(values[c]![k]).toBeNaN();
        else
          expect(Math.abs(values[c]![k]! - column[k]!)).toBeLessThan(1e-11 * Math.max(1, Math.abs(column[k]!) * 1e6));
    });
  });

test('each draw is the pair drawn with its own metal off', () => {
  const cut = cutOff(false);
  const { shape, dimensions } = cutSampler(sampler, cut);
  expect(dimensions).toBe(sampler.dimensions + 3);
  const u = Float64Array.from({ length: dimensions }, (_, d) => (d + 1) / (dimensions + 2));
  const before = sampler.shape(u.subarray(0, sampler.dimensions))!;
  const after = shape(u)!;
  const w = [0, 1, 2].map((i) => standardNormal(u[sampler.dimensions + i]!));
  const stock = 2e-5 + 1e-6 * w[1]!;
  expect(after[1]!.journal.radius).toBeCloseTo(
    before[1]!.journal.radius - stock / Math.cos(before[1]!.journal.halfAngle),
    15,
  );
  expect(after[0]!.bush.radius).toBeGreaterThan(before[0]!.bush.radius);
  expect(after[1]!.bush.from).toBeCloseTo(before[1]!.bush.from + 1e-5 + 5e-7 * w[2]!, 15);
  expect(after[0]!.bush.from).toBe(before[0]!.bush.from);
});

test('a line cut anew has the half angle set, once only', () => {
  const u = Float64Array.from({ length: sampler.dimensions + 3 }, (_, d) => 0.2 + 0.05 * d);
  expect(cutSampler(sampler, cutOff(true)).shape(u)![0]!.bush.halfAngle).toBe(degrees(3.01));
  const again = { ...cutOff(true), before: [{ seat: 0, part: 'bush' as const }] };
  const [drawn, cut] = [sampler.shape(u.subarray(0, sampler.dimensions))!, cutSampler(sampler, again).shape(u)!];
  expect(cut[0]!.bush.halfAngle).toBe(drawn[0]!.bush.halfAngle);
});

test('what follows evenly has the doubt of the cuts beside its own, and none of a line that is gone', () => {
  const { sampler: cut, from } = cutLinear(sampler.linear, cutOff(true));
  const variances = cut.linear.factor.map((row) => row.reduce((sum, f) => sum + f * f, 0));
  const own = sources.length;
  const gone = sources.findIndex(({ seat, part, of }) => seat === 0 && part === 'bush' && of === 'halfAngle');
  expect(variances[gone]).toBe(0);
  expect(from.slice(own)).toEqual([{ cut: 0 }, { cut: 1 }, { cut: 2 }, { cut: 2 }, { cut: 2 }]);
  expect(Math.sqrt(variances[own]!)).toBeCloseTo(5e-7 / Math.cos(degrees(3.01)), 15);
  expect(Math.sqrt(variances[own + 1]!)).toBeCloseTo(1e-6 / Math.SQRT1_2, 12);
  // Station and ends of a face go together.
  expect(cut.linear.groups.slice(own + 2)).toEqual([own + 2, own + 2, own + 2]);
});
