import { expect, test } from 'vitest';
import { covarianceOf, unit } from '../../../src/engine/belief/decomposition.ts';
import { radiusAt } from '../../../src/engine/contact/fit.ts';
import { believe } from '../../../src/engine/gauging/believe.ts';
import type { Reading } from '../../../src/engine/gauging/reading.ts';
import { believedSampler, spreadSampler } from '../../../src/engine/odds/believed.ts';
import { BLOCK, drawer } from '../../../src/engine/odds/odds.ts';
import type { Sampler } from '../../../src/engine/odds/sampler.ts';
import { lineOf } from '../../../src/engine/parts/line.ts';
import { doubleCone } from './pairs.ts';

const DOUBT = 2e-6;
const read = (station: number, value: number): Reading => ({
  kind: 'diameter',
  seat: 0,
  part: 'journal',
  station,
  value,
  sigma: 5e-7,
});
/** The shallow journal read near both ends, 2 µm large at the nose. */
const diameterAt = (station: number) => 0.022 + 2 * station * Math.tan(doubleCone()[0]!.journal.halfAngle);
const READINGS = [read(-0.024, diameterAt(-0.024)), read(-0.002, diameterAt(-0.002) + 2e-6)];

/** Standard deviation of something over 8 blocks of draws. */
function sdOf(sampler: Sampler, of: (shape: NonNullable<ReturnType<Sampler['shape']>>) => number): number {
  const drawn = drawer(sampler, 2);
  const values: number[] = [];
  for (let block = 0; block < 8; block++) {
    const u = drawn(block * BLOCK);
    for (let k = 0; k < BLOCK; k++) values.push(of(sampler.shape(Float64Array.from(u, (column) => column[k]!))!));
  }
  const mean = values.reduce((s, x) => s + x, 0) / values.length;
  return Math.sqrt(values.reduce((s, x) => s + (x - mean) ** 2, 0) / (values.length - 1));
}

test('what is read is drawn as it was read, its two numbers together; a spread adds to it', () => {
  const belief = believe(doubleCone(), READINGS, [], DOUBT, 0);
  const sampler = believedSampler(belief, [
    { seat: 1, part: 'journal', of: 'station', sigma: 3e-6, shape: 'rectangular' },
  ]);
  expect(sampler.dimensions).toBe(9);
  const { linear } = sampler as ReturnType<typeof spreadSampler>;
  // Half angle and radius of the surface that was read stand in one group, everything else alone.
  const journal = linear.sources.flatMap(({ seat, part }, i) => (seat === 0 && part === 'journal' ? [i] : []));
  expect(linear.groups).toEqual(linear.groups.map((_, i) => (journal.includes(i) ? journal[0] : i)));
  for (const station of [-0.024, -0.002])
    expect(sdOf(sampler, ([seat]) => 2 * radiusAt(lineOf(seat!.journal, 'inside'), station)) / 5e-7).toBeCloseTo(1, 1);
  expect(sdOf(sampler, (seats) => seats[1]!.journal.station) / 3e-6).toBeCloseTo(1, 2);
  // In the middle, what was found: the nose is large.
  const middle = sampler.shape(new Float64Array(9).fill(0.5))!;
  expect(2 * radiusAt(lineOf(middle[0]!.journal, 'inside'), -0.002)).toBeCloseTo(READINGS[1]!.value, 9);
});

test('with points of a profile in doubt the pairs go one by one, as the belief has them', () => {
  const straightness: Reading = {
    kind: 'straightness',
    seat: 0,
    part: 'journal',
    station: -0.013,
    value: 1e-6,
    sigma: 2e-7,
  };
  const belief = believe(doubleCone(), [...READINGS, straightness], [], DOUBT, 0);
  const sampler = believedSampler(belief, [{ seat: 1, part: 'bush', of: 'radius', sigma: 4e-6, shape: 'normal' }]);
  expect(sampler.varied).toBeUndefined();
  const n = belief.unknowns.list.length;
  expect(sampler.dimensions).toBe(belief.decomposition.rank + 1);
  const sdBelieved = (seat: number, part: 'journal' | 'bush', of: string) => {
    const place = belief.unknowns.list.findIndex((u) => u.seat === seat && u.part === part && u.of === of);
    return Math.sqrt(covarianceOf(belief.decomposition, unit(n, place), unit(n, place)));
  };
  expect(sdOf(sampler, ([seat]) => seat!.journal.profile[1]![1]) / sdBelieved(0, 'journal', 'deviation')).toBeCloseTo(
    1,
    1,
  );
  expect(sdOf(sampler, ([seat]) => seat!.journal.halfAngle) / sdBelieved(0, 'journal', 'halfAngle')).toBeCloseTo(1, 1);
  const both = Math.hypot(4e-6, sdBelieved(1, 'bush', 'radius'));
  expect(sdOf(sampler, ([, seat]) => seat!.bush.radius) / both).toBeCloseTo(1, 1);
});

test('spreads alone are drawn about the pair as it is', () => {
  const seats = doubleCone();
  const sampler = spreadSampler(seats, [{ seat: 0, part: 'bush', of: 'to', sigma: 1e-4, shape: 'normal' }]);
  expect(sampler.shape(Float64Array.of(0.5))).toEqual(seats);
  expect(sdOf(sampler, ([seat]) => seat!.bush.to) / 1e-4).toBeCloseTo(1, 2);
});
