import { expect, test } from 'vitest';
import type { SeatInput } from '../../../src/engine/contact/fit.ts';
import { kernelOf } from '../../../src/engine/odds/kernel.ts';
import { columnsOf, type Question } from '../../../src/engine/odds/outcomes.ts';
import { linearSampler, type Source } from '../../../src/engine/odds/sampler.ts';
import { LONG } from '../../long.ts';
import { anyPair, chance } from './pairs.ts';

const NUMBERS = ['halfAngle', 'radius', 'station', 'from', 'to'] as const;
const everyNumber = (seats: readonly SeatInput[]): Source[] =>
  seats.flatMap((_, seat) =>
    (['journal', 'bush'] as const).flatMap((part) => NUMBERS.map((of) => ({ seat, part, of }) as const)),
  );
const sigmaOf = ({ of }: Source) => ({ halfAngle: 2e-5, radius: 1e-6, station: 2e-6, from: 1e-4, to: 1e-4 })[of];
const diagonal = (sources: readonly Source[]) =>
  sources.map((s, i) => sources.map((_, k) => (i === k ? sigmaOf(s) ** 2 : 0)));

test('drawn by the thousand, a pair has the answers of the fit itself, to 1e-15 m', () => {
  const random = chance(7);
  let compared = 0;
  for (let pair = 0; pair < 60 * LONG; pair++) {
    const seats = anyPair(random, 2 + (pair % 3));
    const sources = everyNumber(seats);
    const sampler = linearSampler(seats, sources, diagonal(sources));
    const question: Question = { position: 1e-4 * random(), friction: 0.15 };
    const u = sources.map(() => Float64Array.from({ length: 8 }, random));
    const fast = kernelOf(sampler, seats, question, 8)(u);
    // Without saying that it is linear, the same pairs go one by one through contact/.
    const slow = kernelOf({ dimensions: sampler.dimensions, shape: sampler.shape }, seats, question, 8)(u);
    const at = columnsOf(seats.length);
    expect([fast.first, fast.holds, fast.inBand, fast.inBandAtBest]).toEqual([
      slow.first,
      slow.holds,
      slow.inBand,
      slow.inBandAtBest,
    ]);
    fast.values.forEach((column, c) => {
      // Of the position that is searched for, to what the search is good for; a miss is told in tolerances.
      const close = c === at.worstMiss ? 1e-7 : c >= at.bestPosition && c < at.relations ? 3e-15 : 1e-15;
      for (let k = 0; k < 8; k++) {
        const [one, other] = [column[k]!, slow.values[c]![k]!];
        if (Number.isFinite(other)) expect(Math.abs(one - other), JSON.stringify(fast.answered[c])).toBeLessThan(close);
        else expect(one, JSON.stringify(fast.answered[c])).toBe(other);
        compared++;
      }
    });
  }
  expect(compared).toBeGreaterThan(3000);
});
