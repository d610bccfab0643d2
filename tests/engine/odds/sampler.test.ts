import { expect, test } from 'vitest';
import { normalQuantile } from '../../../src/engine/belief/distributions.ts';
import { standardNormal } from '../../../src/engine/odds/normal.ts';
import { BLOCK, drawer } from '../../../src/engine/odds/odds.ts';
import { linearSampler, type Source, samplerOf, withSpreads } from '../../../src/engine/odds/sampler.ts';
import { doubleCone } from './pairs.ts';

/** Quantiles of the standard normal, to the digits tabled. @source Handbooks (tables of the normal distribution) */
test('an even draw becomes a normal one, to rounding', () => {
  const tabled: [number, number][] = [
    [0.5, 0],
    [0.975, 1.959963984540054],
    [0.995, 2.5758293035489004],
    [0.9, 1.2815515655446004],
    [0.0005, -3.2905267314918945],
    [1e-9, -5.9978070150076865],
    [1e-20, -9.26234008979841],
  ];
  for (const [u, x] of tabled) expect(Math.abs(standardNormal(u) - x)).toBeLessThan(4e-15 * Math.max(1, Math.abs(x)));
  for (let k = 1; k < 2000; k++) {
    const u = k / 2000;
    expect(standardNormal(u)).toBeCloseTo(normalQuantile(u), 8);
    expect(standardNormal(1 - u)).toBeCloseTo(-standardNormal(u), 12);
  }
  // Where one formula takes over from another.
  for (const u of [0.075, 0.925, Math.exp(-25)])
    expect(Math.abs(standardNormal(u * (1 + 1e-12)) / standardNormal(u * (1 - 1e-12)) - 1)).toBeLessThan(1e-11);
});

const SOURCES: Source[] = [
  { seat: 0, part: 'journal', of: 'halfAngle' },
  { seat: 0, part: 'journal', of: 'radius' },
  { seat: 1, part: 'bush', of: 'radius' },
  { seat: 1, part: 'bush', of: 'station' },
];
const COVARIANCE = [
  [4e-10, -1.2e-11, 0, 0],
  [-1.2e-11, 1e-12, 0, 0],
  [0, 0, 9e-13, 0],
  [0, 0, 0, 2.5e-11],
];

test('draws have the mean and the covariance they are asked for, normal or rectangular', () => {
  const seats = doubleCone();
  const sampler = linearSampler(seats, SOURCES, COVARIANCE, ['normal', 'normal', 'normal', 'rectangular']);
  expect(sampler.linear.groups).toEqual([0, 0, 2, 3]);
  const draws: number[][] = [];
  const drawn = drawer(sampler, 5);
  for (let block = 0; block < 16; block++) {
    const u = drawn(block * BLOCK);
    for (let k = 0; k < BLOCK; k++) {
      const shape = sampler.shape(Float64Array.from(u, (column) => column[k]!))!;
      draws.push(SOURCES.map(({ seat, part, of }) => shape[seat]![part][of] - seats[seat]![part][of]));
      // What is not in doubt is as drawn.
      expect(shape[0]!.bush).toEqual(seats[0]!.bush);
    }
  }
  COVARIANCE.forEach((row, i) => {
    row.forEach((c, k) => {
      const found = draws.reduce((sum, x) => sum + x[i]! * x[k]!, 0) / draws.length;
      expect(Math.abs(found - c)).toBeLessThan(0.01 * Math.sqrt(COVARIANCE[i]![i]! * COVARIANCE[k]![k]!));
    });
  });
  const greatest = Math.max(...draws.map((x) => Math.abs(x[3]!)));
  expect(greatest / Math.sqrt(3 * 2.5e-11)).toBeGreaterThan(0.999);
  expect(greatest / Math.sqrt(3 * 2.5e-11)).toBeLessThan(1);
});

test('doubts of one number add, and are multiplied one by one', () => {
  const seats = doubleCone();
  const twice: Source[] = [SOURCES[1]!, SOURCES[1]!];
  const sampler = linearSampler(seats, twice, [
    [1e-12, 0],
    [0, 4e-12],
  ]);
  const u = Float64Array.of(0.975, 0.975);
  const off = (s: typeof sampler) => s.shape(u)![0]!.journal.radius - seats[0]!.journal.radius;
  expect(off(sampler)).toBeCloseTo(3e-6 * 1.959964, 11);
  expect(off(samplerOf(withSpreads(sampler.linear, [0, 0.5])))).toBeCloseTo(1e-6 * 1.959964, 11);
});

test('a source told by another has no draw of its own; no shape is none', () => {
  const seats = doubleCone();
  const told = linearSampler(
    seats,
    [SOURCES[1]!, SOURCES[2]!],
    [
      [1e-12, 2e-12],
      [2e-12, 4e-12],
    ],
  );
  expect(told.linear.factor[1]).toEqual(Float64Array.of(2e-6, 0));
  const far = linearSampler(seats, [SOURCES[1]!], [[1]]);
  expect(far.shape(Float64Array.of(0.0001))).toBeNull();
  const reversed = linearSampler(seats, [{ seat: 0, part: 'bush', of: 'to' }], [[1]]);
  expect(reversed.shape(Float64Array.of(0.0001))).toBeNull();
});

test('what is no covariance is refused', () => {
  const two = [SOURCES[1]!, SOURCES[2]!];
  expect(() =>
    linearSampler(doubleCone(), two, [
      [1e-12, 2e-12],
      [2e-12, 1e-12],
    ]),
  ).toThrow(/covariance of source 1: .* allowed is 0 or more/);
  expect(() =>
    linearSampler(
      doubleCone(),
      two,
      [
        [1e-12, 1e-13],
        [1e-13, 1e-12],
      ],
      ['normal', 'rectangular'],
    ),
  ).toThrow('source 1 is rectangular and correlated with another');
});
