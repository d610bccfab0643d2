/** The draws and the tally against published and closed results. */

import jStat from 'jstat';
import { expect, test } from 'vitest';
import { distributionOf, gridFor, joined, momentsOf, quantileOf } from '../../../src/engine/odds/distribution.ts';
import { chanceOf } from '../../../src/engine/odds/limits.ts';
import { BLOCK, blocksOf, oddsRun } from '../../../src/engine/odds/odds.ts';
import { linearSampler, type Marginal, standard } from '../../../src/engine/odds/sampler.ts';
import { sobolPoints } from '../../../src/engine/odds/sobol.ts';
import { together } from '../../../src/engine/odds/tally.ts';
import { surface } from './pairs.ts';

/** A model of even draws through the tally: moments, the middle share, and the shortest stretch with that share. */
function propagated(dimensions: number, model: (u: number[]) => number, share: number, draws = 1 << 16) {
  const points = sobolPoints(1);
  const u = Array.from({ length: dimensions }, () => new Float64Array(draws));
  for (const [d, column] of u.entries()) points(d, 0, column);
  const values = Float64Array.from({ length: draws }, (_, k) => model(u.map((column) => column[k]!)));
  const grid = gridFor(values.subarray(0, BLOCK));
  const all = blocksOf(draws)
    .map(([from, count]) => distributionOf(grid, values.subarray(from, from + count)))
    .reduce(joined);
  const sorted = values.slice().sort();
  const wide = Math.floor(share * draws);
  let shortest = [sorted[0]!, sorted[wide]!];
  for (let k = 0; k + wide < draws; k++)
    if (sorted[k + wide]! - sorted[k]! < shortest[1]! - shortest[0]!) shortest = [sorted[k]!, sorted[k + wide]!];
  return {
    ...momentsOf(grid, all),
    middle: [(1 - share) / 2, (1 + share) / 2].map((p) => quantileOf(grid, all, p).value),
    shortest,
  };
}

const of = (marginal: Marginal, mean: number, sd: number) => (u: number) => mean + sd * standard(u, marginal);
const within = (low: number, high: number) => of('rectangular', (low + high) / 2, (high - low) / Math.sqrt(12));

/** @source JCGM101 9.2.2, 9.2.3, 9.2.4 (sums of four) */
test('sums of four: normal, rectangular, one much wider', () => {
  const sum = (each: readonly ((u: number) => number)[]) => (u: number[]) =>
    each.reduce((total, x, i) => total + x(u[i]!), 0);
  const [normal, even] = [of('normal', 0, 1), of('rectangular', 0, 1)];
  for (const [each, u, to, exact] of [
    [[normal, normal, normal, normal], 2, 3.92, 3.919928],
    // The ends of four rectangular ones in closed form: 2√3·(2 - (3/5)^¼).
    [[even, even, even, even], 2, 3.88, 2 * Math.sqrt(3) * (2 - 0.6 ** 0.25)],
    [[even, even, even, of('rectangular', 0, 10)], Math.sqrt(103), 17.0, 17.01],
  ] as const) {
    const found = propagated(4, sum(each), 0.95);
    expect(Math.abs(found.mean)).toBeLessThan(1e-3);
    expect(found.sd).toBeCloseTo(u, 2);
    for (const [i, end] of found.middle.entries()) {
      expect(Math.abs(Math.abs(end) - exact)).toBeLessThan(0.015);
      expect(Math.abs(Math.abs(end) - to)).toBeLessThan(0.03);
      expect(Math.sign(end)).toBe(i === 0 ? -1 : 1);
    }
  }
});

/** @source JCGM101 9.3 and table 6 (mass calibration) */
test('mass calibration', () => {
  const [ratio, excess] = [of('normal', 100_000, 0.05), of('normal', 1.234, 0.02)];
  const [air, weight, reference] = [within(1.1, 1.3), within(7000, 9000), within(7950, 8050)];
  const found = propagated(
    5,
    (u) =>
      (ratio(u[0]!) + excess(u[1]!)) * (1 + (air(u[2]!) - 1.2) * (1 / weight(u[3]!) - 1 / reference(u[4]!))) - 100_000,
    0.95,
  );
  expect(found.mean).toBeCloseTo(1.2341, 3);
  expect(Math.abs(found.sd / 0.0754 - 1)).toBeLessThan(0.01);
  // As computed apart, by four million draws.
  expect(Math.abs(found.sd / 0.075480547 - 1)).toBeLessThan(0.002);
  expect(Math.abs(found.middle[0]! - 1.0848029)).toBeLessThan(0.001);
  expect(Math.abs(found.middle[1]! - 1.384085)).toBeLessThan(0.001);
  expect(Math.abs(found.shortest[0]! - 1.0834)).toBeLessThan(0.003);
  expect(Math.abs(found.shortest[1]! - 1.3825)).toBeLessThan(0.003);
});

/** @source JCGM101 9.5 (gauge block); JCGM101 6.4.3.4 (rectangle with inexact ends); JCGM101 6.4.6.4 (arc sine) */
test('gauge block calibration: 838 nm, 36 nm, 99 % from 745 to 932 nm', () => {
  const t = (freedom: number, mean: number, scale: number) => (u: number) =>
    mean + scale * jStat.studentt.inv(u, freedom);
  const [standardLength, difference, random, systematic] = [t(18, 623, 25), t(24, 215, 6), t(5, 0, 4), t(8, 0, 7)];
  const [expansion, mean, swing] = [within(9.5e-6, 13.5e-6), of('normal', -0.1, 0.2), 0.5];
  const inexact = (half: number, by: number) => (a: number, b: number) => {
    const low = -half - by + 2 * by * a;
    return low - 2 * low * b;
  };
  const [expansions, temperatures] = [inexact(1e-6, 1e-7), inexact(0.05, 0.025)];
  const found = propagated(
    11,
    (u) => {
      const length = 5e7 + standardLength(u[0]!);
      const off = mean(u[5]!) + swing * Math.sin(2 * Math.PI * u[6]!);
      const heat = expansions(u[7]!, u[8]!) * off + expansion(u[4]!) * temperatures(u[9]!, u[10]!);
      return length - 5e7 + difference(u[1]!) + random(u[2]!) + systematic(u[3]!) - length * heat;
    },
    0.99,
    1 << 14,
  );
  expect(Math.abs(found.mean - 838)).toBeLessThan(0.5);
  expect(Math.abs(found.sd - 36)).toBeLessThan(0.5);
  expect(Math.abs(found.middle[0]! - 745)).toBeLessThan(2);
  expect(Math.abs(found.middle[1]! - 932)).toBeLessThan(2);
});

/** Two seats of 45° whose position is the radius of the journal, in micrometres: means, deviations, correlation. */
function twoSeats(means: [number, number], sds: [number, number], rho: number, tolerance?: number) {
  const seats = means.map((mean, i) => ({
    name: `${i}`,
    journal: { ...surface(45, 24, 0, 0, 5), radius: 0.012 + mean * 1e-6 },
    bush: surface(45, 24, 0, 0.2, 4.8),
    ...(tolerance !== undefined && { target: 5e-6, tolerance: tolerance * 1e-6 }),
  }));
  const covariance = [0, 1].map((i) => [0, 1].map((k) => sds[i]! * sds[k]! * 1e-12 * (i === k ? 1 : rho)));
  return linearSampler(
    seats,
    [0, 1].map((seat) => ({ seat, part: 'journal', of: 'radius' })),
    covariance,
  );
}

function answered(sampler: ReturnType<typeof twoSeats>, position: number, draws = 1 << 16) {
  const run = oddsRun(sampler, sampler.linear.seats, { position, friction: 0.1 }, 3);
  return run.answer(blocksOf(draws).reduce((tally, b) => together(tally, run.block(...b)), run.empty()));
}

/** The greater of two normals that go together. @source Clark1961 (mean, variance, chance of the one) */
test('first touch: the greater of two seat positions', () => {
  const found = answered(twoSeats([0, 2], [3, 4], 0.25), 0);
  const touch = found.spreads[2]!;
  expect(touch.answered).toEqual({ of: 'firstPosition' });
  expect(touch.mean * 1e6).toBeCloseTo(2.9188514, 2);
  expect(touch.sd ** 2 * 1e12).toBeCloseTo(11.055766, 1);
  expect(Math.abs(found.first[0]!.share - 0.3231776)).toBeLessThan(1e-3);
  expect(found.first[0]!.low).toBeLessThan(0.3231776);
  expect(found.first[0]!.high).toBeGreaterThan(0.3231776);
  expect(found.first[0]!.share + found.first[1]!.share).toBe(1);
});

/** Both below 0: ¼ + asin ρ/2π. @source Sheppard1899 */
test('the chance that neither metal is in the other at a position', () => {
  for (const [rho, chance] of [
    [-0.9, 0.071783147],
    [-0.5, 0.16666667],
    [0, 0.25],
    [0.5, 0.33333333],
    [0.9, 0.42821685],
  ] as const) {
    const { inBand } = answered(twoSeats([0, 0], [1, 1], rho), 0);
    expect(Math.abs(inBand.all.share - chance), `${rho}`).toBeLessThan(1.5e-3);
    expect(Math.abs(inBand.each[0]!.share - 0.5)).toBeLessThan(1e-3);
  }
});

/** Both within ± k deviations, by the integral of the two normals. @source derived */
test('the chance that both films are in their bands at a position', () => {
  const rhos = [0, 0.5, 0.95];
  for (const [k, chances] of [
    [1, [0.46606494, 0.49797178, 0.62163903]],
    [2, [0.91106975, 0.91711185, 0.94104844]],
  ] as const)
    rhos.forEach((rho, i) => {
      // A film changes by the radius times cos 45°.
      const found = answered(twoSeats([0, 0], [1, 1], rho, k * Math.SQRT1_2), 5e-6 * Math.SQRT2);
      expect(Math.abs(found.inBand.all.share - chances[i]!), `${k} ${rho}`).toBeLessThan(1.5e-3);
      const { low, high } = chanceOf(Math.round(chances[i]! * found.draws), found.draws);
      expect(found.inBand.all.share).toBeGreaterThan(low);
      expect(found.inBand.all.share).toBeLessThan(high);
    });
});
