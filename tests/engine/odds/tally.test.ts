import { expect, test } from 'vitest';
import { distributionOf, gridFor, joined, momentsOf, quantileOf } from '../../../src/engine/odds/distribution.ts';
import { chanceOf } from '../../../src/engine/odds/limits.ts';
import { blocksOf, oddsRun } from '../../../src/engine/odds/odds.ts';
import { linearSampler, type Source } from '../../../src/engine/odds/sampler.ts';
import { sobolPoints } from '../../../src/engine/odds/sobol.ts';
import { together } from '../../../src/engine/odds/tally.ts';
import { chance, doubleCone } from './pairs.ts';

const SOURCES: Source[] = (['journal', 'bush'] as const).flatMap((part) =>
  [0, 1].map((seat) => ({ seat, part, of: 'radius' }) as const),
);
const sampler = linearSampler(
  doubleCone(),
  SOURCES,
  SOURCES.map((_, i) => SOURCES.map((_, k) => (i === k ? 9e-14 : 0))),
);
const question = { position: 0, friction: 0.12 };

test('one worker or four, in whatever order: the same to the last digit', () => {
  const run = () => oddsRun(sampler, doubleCone(), question, 11);
  const alone = run();
  const blocks = blocksOf(20_000);
  expect(blocks.at(-1)).toEqual([19 * 1024, 20_000 - 19 * 1024]);
  const one = blocks.reduce((tally, [from, count]) => together(tally, alone.block(from, count)), alone.empty());
  const random = chance(2);
  const workers = [run(), run(), run(), run()];
  const parts = workers.map((worker) => worker.empty());
  const left = blocks.slice();
  while (left.length > 0) {
    const [block] = left.splice(Math.floor(random() * left.length), 1);
    const w = Math.floor(random() * 4);
    parts[w] = together(workers[w]!.block(...block!), parts[w]!);
  }
  const four = [parts[2]!, parts[0]!, parts[3]!, parts[1]!].reduce(together);
  expect(four).toEqual(one);
  expect(workers[3]!.answer(four)).toEqual(alone.answer(one));
  expect(one.draws).toBe(20_000);
  for (const share of [one.allInBand, one.allInBandAtBest, ...one.inBand])
    expect(Math.abs(share - 10_000)).toBeLessThan(9_500);
  // Another seed is another answer.
  const other = oddsRun(sampler, doubleCone(), question, 12).block(0, 1024);
  expect(other.distributions[0]!.sum).not.toBe(alone.block(0, 1024).distributions[0]!.sum);
});

test('a tally takes no more room for more draws', () => {
  const run = oddsRun(sampler, doubleCone(), question, 1);
  const size = (tally: object) =>
    JSON.stringify(tally, (_, v) => (typeof v === 'bigint' ? `${v}` : v instanceof Uint32Array ? v.length : v)).length;
  let tally = run.block(0, 1024);
  const once = size(tally);
  for (let b = 1; b < 40; b++) tally = together(tally, run.block(b * 1024, 1024));
  expect(size(tally)).toBeLessThan(once * 1.1);
});

test('sums lose nothing: moments of blocks are those of all', () => {
  const random = chance(4);
  const values = Float64Array.from({ length: 4096 }, () => 1e-6 + 1e-9 * random());
  values[17] = Number.NaN;
  values[18] = Number.POSITIVE_INFINITY;
  const grid = gridFor(values.subarray(0, 512));
  const parts = Array.from({ length: 8 }, (_, b) => distributionOf(grid, values.subarray(b * 512, (b + 1) * 512)));
  const all = parts.reduce(joined);
  expect(all.count).toBe(4094);
  const kept = values.filter(Number.isFinite);
  const mean = kept.reduce((s, x) => s + x, 0) / kept.length;
  const sd = Math.sqrt(kept.reduce((s, x) => s + (x - mean) ** 2, 0) / (kept.length - 1));
  expect(momentsOf(grid, all).mean / mean).toBeCloseTo(1, 13);
  expect(momentsOf(grid, all).sd / sd).toBeCloseTo(1, 9);
  expect([all.least, all.most]).toEqual([Math.min(...kept), Math.max(...kept)]);
});

test('a quantile stands within a step of the sorted one, its limits about it, tails included', () => {
  const u = new Float64Array(1 << 14);
  sobolPoints(8)(3, 0, u);
  // A long tail to one side, far outside the steps.
  const values = u.map((x) => Math.exp(4 * x) ** 3);
  const grid = gridFor(values.subarray(0, 1024));
  const whole = distributionOf(grid, values);
  const sorted = values.slice().sort();
  for (const share of [0.01, 0.05, 0.3, 0.5, 0.7, 0.9]) {
    const { value, low, high } = quantileOf(grid, whole, share);
    const exact = sorted[Math.ceil(share * sorted.length) - 1]!;
    const inSteps = exact < grid.centre + 2048 * grid.step;
    if (inSteps) expect(Math.abs(value - exact)).toBeLessThanOrEqual(grid.step);
    expect(low).toBeLessThanOrEqual(exact);
    expect(high).toBeGreaterThanOrEqual(exact);
    const off = Math.ceil(1.96 * Math.sqrt(share * (1 - share) * sorted.length));
    if (inSteps)
      expect(low).toBeGreaterThan(sorted[Math.max(0, Math.ceil(share * sorted.length) - off - 2)]! - 1.01 * grid.step);
  }
  expect(quantileOf(grid, whole, 0).value).toBe(sorted[0]);
  expect(quantileOf(grid, whole, 1).value).toBe(sorted.at(-1));
});

test('quantiles of nothing that varies are that', () => {
  const same = new Float64Array(100).fill(3e-6);
  const grid = gridFor(same);
  const { value, low, high } = quantileOf(grid, distributionOf(grid, same), 0.5);
  expect([value, low, high]).toEqual([3e-6, 3e-6, 3e-6]);
  expect(momentsOf(grid, distributionOf(grid, same))).toEqual({ mean: 3e-6, sd: 0 });
});

/** Wilson's limits of shares, three places. @source Newcombe1998 table I (method 3) */
test('limits of a share are the published ones', () => {
  for (const [times, of, low, high] of [
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ] as const) {
    const found = chanceOf(times, of);
    expect(found.low).toBeCloseTo(low, 4);
    expect(found.high).toBeCloseTo(high, 4);
    const turned = chanceOf(of - times, of);
    expect(turned.low).toBeCloseTo(1 - found.high, 12);
    expect(turned.high).toBeCloseTo(1 - found.low, 12);
  }
  expect(chanceOf(0, 0)).toEqual({ share: Number.NaN, low: 0, high: 1 });
});

/** Chances of a half, a tenth and a hundredth, by points of their own: the limits are to hold them 95 times in 100. */
test('of scrambled points the limits hold the chance at least as often as they say', () => {
  const u = new Float64Array(1024);
  for (const p of [0.5, 0.1, 0.01]) {
    let held = 0;
    for (let seed = 0; seed < 400; seed++) {
      // A slanting cut through two dimensions, which no box of the net follows.
      const other = new Float64Array(1024);
      sobolPoints(seed)(0, 0, u);
      sobolPoints(seed)(4, 0, other);
      const cut = p <= 0.5 ? Math.sqrt(2 * p) : Number.NaN;
      const { low, high } = chanceOf(
        u.reduce((sum, x, k) => sum + (x + other[k]! < cut ? 1 : 0), 0),
        1024,
      );
      if (low <= p && p <= high) held++;
    }
    expect(held, `${p}`).toBeGreaterThanOrEqual(380);
  }
});

test('blocks are added without rounding, to 2^-300', () => {
  const grid = { centre: 0, step: 1 };
  const mean = (values: number[]) =>
    momentsOf(grid, values.map((value) => distributionOf(grid, Float64Array.of(value))).reduce(joined)).mean;
  const tiny = 2 ** -250;
  // Rounded one after the other nothing of the small ones would be left, or of one of them.
  expect(mean([2 ** 40, tiny, -(2 ** 40), tiny])).toBe(tiny / 2);
  expect(mean([0, 0, 2 ** -299, 2 ** -299])).toBe(2 ** -300);
  expect(mean([-1.5, 0.25])).toBe(-0.625);
});
