import { expect, test } from 'vitest';
import { halvedInTurn, spreadsFor, type Wish } from '../../../src/engine/odds/buy.ts';
import { blocksOf, oddsRun } from '../../../src/engine/odds/odds.ts';
import { linearSampler, type Source, samplerOf, withSpreads } from '../../../src/engine/odds/sampler.ts';
import { together } from '../../../src/engine/odds/tally.ts';
import { inProportion, leastDifficulty, spreadFor } from './allocation.ts';
import { chance, doubleCone } from './pairs.ts';

/**
 * Shaft and housing: a clearance of ±0.015 in from seven lengths, three of them bought (±0.0015, 0.0025, 0.0025), four
 * made (±0.008, 0.002, 0.006, 0.002): by root sum of squares the four may be 1.39526 times as wide.
 * @source Chase1999 (worked example)
 */
test('tolerances scaled in proportion, as published', () => {
  const factor = inProportion(0.015, [0.0015, 0.0025, 0.0025], [0.008, 0.002, 0.006, 0.002])!;
  expect(factor).toBeCloseTo(1.39526, 5);
  expect([0.008, 0.002, 0.006, 0.002].map((t) => t * factor)).toEqual(
    [0.01116, 0.00279, 0.00837, 0.00279].map((t) => expect.closeTo(t, 5)),
  );
  expect(inProportion(0.003, [0.0015, 0.0025, 0.0025], [0.008])).toBeNull();
  expect(inProportion(0.003, [], [])).toBeNull();
});

test('least difficulty: the spread is the wanted one, and no exchange of two inputs is easier', () => {
  const random = chance(3);
  for (const power of [1, 2]) {
    const gradient = Array.from({ length: 5 }, () => 0.1 + random());
    const difficulty = Array.from({ length: 5 }, () => 0.1 + 10 * random());
    const sigma = leastDifficulty(2, gradient, difficulty, power);
    const spread = (s: ArrayLike<number>) => Math.hypot(...gradient.map((g, i) => g * s[i]!));
    const cost = (s: ArrayLike<number>) => difficulty.reduce((sum, c, i) => sum + c / s[i]! ** power, 0);
    expect(spread(sigma)).toBeCloseTo(2, 12);
    for (let i = 0; i < 5; i++)
      for (let k = 0; k < 5; k++) {
        if (i === k) continue;
        const other = sigma.slice();
        other[i]! *= 1.01;
        // The other pays for it: the spread stays.
        const left = 4 - gradient.reduce((sum, g, j) => sum + (j === k ? 0 : (g * other[j]!) ** 2), 0);
        other[k] = Math.sqrt(left) / gradient[k]!;
        expect(cost(other)).toBeGreaterThan(cost(sigma));
      }
  }
  expect(leastDifficulty(1, [1, 0], [1, 1])).toEqual(Float64Array.of(1, Number.POSITIVE_INFINITY));
  expect(spreadFor(0.95, 1.959964)).toBeCloseTo(1, 6);
});

/**
 * The steep seat alone at a position where it has its film: the film follows two radii and the bush's station evenly.
 */
function standAlone(): Wish {
  const [, steep] = doubleCone();
  const { journal, bush } = steep!;
  // With its film of 2.5 µm: the radii differ by it over cos 45°.
  const seats = [{ ...steep!, bush: { ...bush, station: 0, radius: journal.radius + 2.5e-6 * Math.SQRT2 } }];
  const sources: Source[] = [
    { seat: 0, part: 'journal', of: 'radius' },
    { seat: 0, part: 'bush', of: 'radius' },
    { seat: 0, part: 'bush', of: 'station' },
  ];
  const { linear } = linearSampler(seats, sources, [
    [4e-14, 0, 0],
    [0, 1.6e-13, 0],
    [0, 0, 9e-14],
  ]);
  return {
    linear,
    question: { position: 0, friction: 0.1 },
    asked: 'inBand',
    inputs: [[0], [1], [2]],
    draws: { blocks: 8, seed: 1 },
  };
}
const SIGMAS = [2e-7, 4e-7, 3e-7];
/** Share of a normal within ± x deviations, by the series of the error function. */
function insideOf(x: number): number {
  let [term, sum] = [x, x];
  for (let k = 1; k < 60; k++) {
    term *= (-x * x) / (2 * k);
    sum += term / (2 * k + 1);
  }
  return sum * Math.sqrt(2 / Math.PI);
}

test('one seat alone: what each input halved gains is the closed form', () => {
  const { now, inputs } = halvedInTurn(standAlone());
  const chanceWith = (by: number[]) =>
    insideOf(5e-7 / (Math.SQRT1_2 * Math.hypot(...SIGMAS.map((s, i) => s * by[i]!))));
  expect(Math.abs(now.share - chanceWith([1, 1, 1]))).toBeLessThan(0.003);
  inputs.forEach(({ chance: halved, gain, uncertainty }, i) => {
    const exact = chanceWith([0, 1, 2].map((k) => (k === i ? 0.5 : 1)));
    expect(Math.abs(halved.share - exact)).toBeLessThan(0.003);
    expect(gain).toBeCloseTo(halved.share - now.share, 12);
    expect(Math.abs(gain - (exact - chanceWith([1, 1, 1])))).toBeLessThan(uncertainty);
    expect(uncertainty).toBeLessThan(0.01);
  });
});

test('one seat alone: spreads for a wanted chance are the closed form', () => {
  const wish = standAlone();
  for (const [wanted, difficulty] of [
    [0.95, [1, 1, 1]],
    [0.9, [1, 4, 0.5]],
  ] as const) {
    const found = spreadsFor(wish, wanted, difficulty)!;
    // In multipliers: the film follows input i by its spread times cos 45°.
    const exact = leastDifficulty(
      spreadFor(wanted, 5e-7),
      SIGMAS.map((s) => s * Math.SQRT1_2),
      difficulty,
    );
    exact.forEach((m, i) => {
      expect(Math.abs(found.multipliers[i]! / m - 1), `${i}`).toBeLessThan(0.08);
    });
    expect(Math.abs(found.chance.share - wanted)).toBeLessThan(0.01);
    const cost = (m: ArrayLike<number>) => difficulty.reduce((sum, c, i) => sum + c / m[i]!, 0);
    expect(found.difficulty).toBeCloseTo(cost(found.multipliers) / difficulty.reduce((a, b) => a + b, 0), 12);
    // The least is flat: hardly dearer than the exact one.
    expect(cost(found.multipliers) / cost(exact)).toBeLessThan(1.02);
  }
});

test('a pair: the spreads found keep the chance, and cost less than shrinking all alike', () => {
  const seats = doubleCone();
  const sources: Source[] = [0, 1].flatMap((seat) =>
    (['journal', 'bush'] as const).flatMap((part) =>
      (['radius', 'halfAngle'] as const).map((of): Source => ({ seat, part, of })),
    ),
  );
  const sampler = linearSampler(
    seats,
    sources,
    sources.map((s, i) => sources.map((_, k) => (i === k ? (s.of === 'radius' ? 4e-7 : 2e-5) ** 2 : 0))),
  );
  const wish: Wish = {
    linear: sampler.linear,
    question: { position: 0, friction: 0.12 },
    asked: 'inBandAtBest',
    inputs: sources.map((_, i) => [i]),
    draws: { blocks: 4, seed: 6 },
  };
  const found = spreadsFor(wish, 0.9)!;
  expect(Math.abs(found.chance.share - 0.9)).toBeLessThan(0.02);
  const chanceWith = (by: number[]) => {
    const run = oddsRun(samplerOf(withSpreads(sampler.linear, by)), seats, wish.question, 6);
    const tally = blocksOf(4096).reduce((sum, block) => together(sum, run.block(...block)), run.empty());
    return run.answer(tally).inBandAtBest.all.share;
  };
  expect(Math.abs(chanceWith([...found.multipliers]) - 0.9)).toBeLessThan(0.01);
  // All alike, to the same chance.
  let [low, high] = [0.01, 4];
  for (let i = 0; i < 16; i++) {
    const middle = (low + high) / 2;
    if (chanceWith(sources.map(() => middle)) >= 0.9) low = middle;
    else high = middle;
  }
  expect(found.difficulty).toBeLessThan(1 / low);
});

test('where the pair in the middle is out of band, nothing bought will do', () => {
  const wish = standAlone();
  const [seat] = wish.linear.seats;
  const off = { ...wish, linear: { ...wish.linear, seats: [{ ...seat!, target: 4e-6 }] } };
  expect(spreadsFor(off, 0.9)).toBeNull();
  expect(spreadsFor({ ...wish, inputs: [] }, 0.9)).toBeNull();
});

/** What is fixed takes all of it (3² + 4² = 5²), or more: no factor is left, and none where nothing varies. */
test('no factor where what is fixed leaves nothing', () => {
  expect(inProportion(5, [3, 4], [1])).toBeNull();
  expect(inProportion(4.99, [3, 4], [1])).toBeNull();
  expect(inProportion(5, [3], [0, 0])).toBeNull();
  expect(inProportion(5, [3], [2, 2])).toBeCloseTo(Math.sqrt(2), 14);
});
