import { bench, describe } from 'vitest';
import { firstTouches, kernelOf } from '../src/engine/odds/kernel.ts';
import { linearSampler, type Source } from '../src/engine/odds/sampler.ts';
import { sobolPoints } from '../src/engine/odds/sobol.ts';
import { doubleCone } from './engine/odds/pairs.ts';

const seats = doubleCone();
const sources: Source[] = seats.flatMap((_, seat) =>
  (['journal', 'bush'] as const).flatMap((part) =>
    (['halfAngle', 'radius'] as const).map((of) => ({ seat, part, of })),
  ),
);
const sampler = linearSampler(
  seats,
  sources,
  sources.map((s, i) => sources.map((_, k) => (i === k ? (s.of === 'radius' ? 3e-7 : 1e-5) ** 2 : 0))),
);
const question = { position: 2e-5, friction: 0.12 };
const BLOCK = 2000;
const points = sobolPoints(1);
const u = sources.map(() => new Float64Array(BLOCK));
const drawn = (block: number) => {
  for (const [d, column] of u.entries()) points(d, block * BLOCK, column);
};
drawn(0);
const touch = firstTouches(sampler.varied, question, BLOCK);
const all = kernelOf(sampler, seats, question, BLOCK);

/** Pairs whose numbers are at hand: what is left is where they touch. */
const given = sources.map(() => new Float64Array(BLOCK));
sampler.varied.add(u, given);
const touchGiven = firstTouches(
  {
    ...sampler.varied,
    add: (_, columns) => {
      for (const [i, column] of columns.entries()) column.set(given[i]!);
    },
  },
  question,
  BLOCK,
);

describe('odds, two cones, eight numbers in doubt, one core', () => {
  bench('100,000 first touches, numbers given', () => {
    for (let block = 0; block < 50; block++) touchGiven(u);
  });
  bench('100,000 first touches, numbers drawn', () => {
    for (let block = 0; block < 50; block++) touch(u);
  });
  bench('100,000 pairs: all films at the best position', () => {
    for (let block = 0; block < 50; block++) all(u);
  });
  bench('100,000 points of eight dimensions', () => {
    for (let block = 0; block < 50; block++) drawn(block);
  });
});
