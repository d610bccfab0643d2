import { expect, test } from 'vitest';
import { kernelOf } from '../../../src/engine/odds/kernel.ts';
import { chanceOf } from '../../../src/engine/odds/limits.ts';
import { blocksOf, drawer, oddsRun } from '../../../src/engine/odds/odds.ts';
import { linearSampler } from '../../../src/engine/odds/sampler.ts';
import { together } from '../../../src/engine/odds/tally.ts';
import { weightedSampler } from '../../../src/engine/odds/weighted.ts';
import { anyPair, chance, doubleCone } from './pairs.ts';

const question = { position: 0, friction: 0.12 };
const larger = (by: number) => {
  const seats = doubleCone();
  seats[1]!.bush.radius += by;
  seats[0]!.journal.halfAngle += by;
  return seats;
};

test('each shape is drawn as often as its weight says, to within one', () => {
  const shapes = [larger(0), larger(1e-7), larger(5e-5), larger(3e-7)];
  const sampler = weightedSampler(doubleCone(), shapes, [1, 0, 2, 5]);
  const times = shapes.map(() => 0);
  const u = drawer(sampler, 3)(0)[0]!;
  for (const x of u) {
    const drawn = sampler.shape(Float64Array.of(x))!;
    times[shapes.findIndex((shape) => shape[1]!.bush.radius === drawn[1]!.bush.radius)]!++;
  }
  expect(times).toEqual([128, 0, 256, 640]);
  const run = oddsRun(sampler, doubleCone(), question, 3);
  const answer = run.answer(blocksOf(8192).reduce((sum, block) => together(sum, run.block(...block)), run.empty()));
  // All but the third are in band.
  expect(answer.inBand.all.share).toBeCloseTo(0.75, 3);
  // Four pairs tell no more for being drawn eight thousand times: as 64/30 of one weight.
  expect(sampler.effective).toBeCloseTo(64 / 30, 12);
  const { low, high } = chanceOf((0.75 * 64) / 30, 64 / 30);
  expect(answer.inBand.all.low).toBeCloseTo(low, 3);
  expect(answer.inBand.all.high).toBeCloseTo(high, 3);
  const film = answer.spreads[3]!;
  expect([film.p50.low, film.p50.high]).toEqual([film.p05.low, film.p95.high]);
});

test('by the thousand or one by one, with a spread on top: the same pairs', () => {
  const random = chance(8);
  const shapes = Array.from({ length: 20 }, () => anyPair(random, 2));
  const spread = linearSampler(shapes[0]!, [{ seat: 1, part: 'bush', of: 'radius' }], [[1e-14]]);
  const sampler = weightedSampler(shapes[0]!, shapes, Float64Array.from(shapes, random), spread);
  expect(sampler.dimensions).toBe(2);
  const u = [0, 1].map(() => Float64Array.from({ length: 64 }, random));
  const fast = kernelOf(sampler, shapes[0]!, question, 64)(u);
  const slow = kernelOf({ dimensions: 2, shape: sampler.shape }, shapes[0]!, question, 64)(u);
  expect(fast.first).toEqual(slow.first);
  expect(new Set(fast.values[0]).size).toBeGreaterThan(10);
  for (const [c, column] of [fast.values[0]!, fast.values[1]!, fast.values[3]!].entries())
    for (const [k, x] of column.entries()) {
      const other = slow.values[[0, 1, 3][c]!]![k]!;
      // Numbers of the middle and what is added round apart from those of the shape.
      if (Number.isNaN(other)) expect(x).toBeNaN();
      else expect(Math.abs(x - other)).toBeLessThan(1e-14);
    }
});

test('shapes with profiles go one by one; weights that are none are refused', () => {
  const bent = larger(0);
  bent[0]!.bush.profile = [[-0.02, 1e-7]];
  expect(weightedSampler(doubleCone(), [bent], [1]).varied).toBeUndefined();
  expect(() => weightedSampler(doubleCone(), [bent], [-1])).toThrow('weight 0 is -1: allowed is 0 or more');
  expect(() => weightedSampler(doubleCone(), [bent], [0])).toThrow('none is more than 0');
});
