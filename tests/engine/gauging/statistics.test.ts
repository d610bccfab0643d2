/**
 * Simulated notebooks (thousands in the long run): the stated uncertainties cover as often as they claim, and
 * chi-square is distributed as it should be.
 *
 * @module-tag long
 */
import { beforeAll, describe, expect, test, vi } from 'vitest';
import { uncertaintyOf, unit } from '../../../src/engine/belief/decomposition.ts';
import { chiSquareTail, twoSidedTail } from '../../../src/engine/belief/distributions.ts';
import { followed } from '../../../src/engine/belief/quantities.ts';
import { gradientOf, numbersOf } from '../../../src/engine/belief/unknowns.ts';
import type { Estimate } from '../../../src/engine/gauging/estimate.ts';
import type { Reading } from '../../../src/engine/gauging/reading.ts';
import { LONG } from '../../long.ts';
import { disturbed, doubleCone, estimated, kolmogorov, noisy, normals, notebook, readFrom, UM } from './pairs.ts';

// Nothing is timed here; a busy machine only takes longer.
vi.setConfig({ testTimeout: 60_000 * LONG });

const RUNS = 1000 * LONG;
/** Kolmogorov–Smirnov, exceeded by chance in one case of a thousand. */
const CHANCE = 1.95;
const normal = (x: number) => (x < 0 ? twoSidedTail(x) / 2 : 1 - twoSidedTail(x) / 2);

// Angles that differ enough for the seats to touch at one end whatever the noise: the kink has its own test.
const truth = disturbed(doubleCone(), [0.4, -0.3, -0.4, 0.5, -0.8, 0.2, 0.9, -0.6]);
const bent = truth[0]!.bush;
const stations = [0.3, 0.6].map((share) => bent.from + share * (bent.to - bent.from));
const withBend = truth.map((seat, i) =>
  i === 0
    ? {
        ...seat,
        bush: {
          ...bent,
          profile: [
            [bent.from, 0],
            [stations[0]!, 1.5 * UM],
            [stations[1]!, -UM],
            [bent.to, 0],
          ] as const,
        },
      }
    : seat,
);
const straightness = stations.flatMap((station) =>
  readFrom(withBend, { kind: 'straightness', seat: 0, part: 'bush', station, value: 0, sigma: 0.3 * UM } as Reading),
);
const exact = [...notebook(doubleCone(), withBend), ...straightness];

describe('simulated notebooks of one pair', () => {
  const runs: Estimate[] = [];
  beforeAll(() => {
    const draw = normals(2026);
    for (let k = 0; k < RUNS; k++) runs.push(estimated(doubleCone(), noisy(exact, draw)));
  }, 120_000 * LONG);

  test('every number: its error over its uncertainty is a standard normal variable, and 95 of 100 lie within 1.96', () => {
    const { unknowns } = runs[0]!;
    const count = unknowns.list.length;
    expect(count).toBe(10);
    const true_ = numbersOf(withBend, unknowns);
    for (const [j] of unknowns.list.entries()) {
      const errors = runs.map(
        (run) => (run.numbers[j]! - true_[j]!) / uncertaintyOf(run.decomposition, unit(count, j))!,
      );
      expect(kolmogorov(errors, normal)).toBeLessThan(CHANCE);
      const covered = errors.filter((e) => Math.abs(e) < 1.959964).length / RUNS;
      expect(Math.abs(covered - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / RUNS));
    }
  });

  test('chi-square has the distribution of its freedom', () => {
    const { freedom } = runs[0]!;
    expect(freedom).toBe(exact.length - 10);
    expect(runs.every((run) => run.freedom === freedom && run.settled)).toBe(true);
    const sample = runs.map((run) => run.chiSquare);
    expect(kolmogorov(sample, (x) => 1 - chiSquareTail(x, freedom))).toBeLessThan(CHANCE);
    expect(
      kolmogorov(
        runs.map((run) => run.probability),
        (p) => p,
      ),
    ).toBeLessThan(CHANCE);
  });

  test('every normalised residual is a standard normal variable; the plain ones are not', () => {
    let tooNarrow = 0;
    exact.forEach(({ sigma }, i) => {
      const fits = runs.map((run) => run.readings[i]!);
      if (1 - fits[0]!.leverage < 1e-6) return;
      expect(
        kolmogorov(
          fits.map((fit) => fit.normalised),
          normal,
        ),
      ).toBeLessThan(CHANCE);
      if (
        kolmogorov(
          fits.map((fit) => fit.residual / sigma),
          normal,
        ) > CHANCE
      )
        tooNarrow++;
    });
    expect(tooNarrow).toBeGreaterThan(exact.length / 2);
  });

  test('what follows from the shape is covered too', () => {
    for (const of of ['relation', 'firstPosition'] as const) {
      const wanted = followed({ of }, withBend, 0)!.value;
      const errors = runs.map((run) => {
        const found = followed({ of }, run.seats, 0)!;
        return (
          (found.value - wanted) /
          uncertaintyOf(run.decomposition, gradientOf(found.influences, run.seats, run.unknowns))!
        );
      });
      expect(kolmogorov(errors, normal)).toBeLessThan(CHANCE);
    }
  });
});
