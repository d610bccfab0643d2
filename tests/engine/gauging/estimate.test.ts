/** The estimate: round trips, what it leaves open, priors, odd scales, and the reading that disagrees. */
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { uncertaintyOf, unit } from '../../../src/engine/belief/decomposition.ts';
import { numbersOf, type On } from '../../../src/engine/belief/unknowns.ts';
import type { SeatInput } from '../../../src/engine/contact/fit.ts';
import { type Estimate, estimate } from '../../../src/engine/gauging/estimate.ts';
import { chiSquareOf } from '../../../src/engine/gauging/linearise.ts';
import type { Reading } from '../../../src/engine/gauging/reading.ts';
import { startingShape } from '../../../src/engine/gauging/shape.ts';
import { LONG } from '../../long.ts';
import {
  anyPair,
  between,
  cone,
  DEG,
  disturbed,
  doubleCone,
  errors,
  estimated,
  MM,
  noisy,
  normals,
  notebook,
  readFrom,
  UM,
} from './pairs.ts';

vi.setConfig({ testTimeout: 60_000 * LONG });

/** 1e-9 mm and 1e-9 degrees */
const NEAR = { radius: 1e-12, halfAngle: 1e-9 * DEG };

function expectShape(found: readonly SeatInput[], truth: readonly SeatInput[], near = NEAR) {
  truth.forEach((seat, i) => {
    for (const part of ['journal', 'bush'] as const) {
      expect(Math.abs(found[i]![part].halfAngle - seat[part].halfAngle)).toBeLessThan(near.halfAngle);
      expect(Math.abs(found[i]![part].radius - seat[part].radius)).toBeLessThan(near.radius);
    }
  });
}

const place = ({ unknowns }: Estimate, on: On, of: string) =>
  unknowns.list.findIndex((u) => u.seat === on.seat && u.part === on.part && u.of === of);
const sigmaOf = (found: Estimate, on: On, of: string) =>
  uncertaintyOf(found.decomposition, unit(found.unknowns.list.length, place(found, on, of)));
const JOURNAL: On = { seat: 0, part: 'journal' };
const BUSH: On = { seat: 0, part: 'bush' };

describe('round trip', () => {
  test('exact readings of a random pair give its shape to 1e-9 mm and degrees', () => {
    let shakes = 0;
    fc.assert(
      fc.property(anyPair, errors, (nominal, by) => {
        const truth = disturbed(nominal, by);
        const shake = readFrom(truth, {
          kind: 'shake',
          indicator: 30 * MM,
          position: 50 * UM * Math.sign(truth[0]!.bush.halfAngle),
          direction: 1,
          free: ['x', 'y', 'tiltX', 'tiltY'],
          value: 0,
          sigma: UM,
        });
        shakes += shake.length;
        const found = estimated(nominal, [...notebook(nominal, truth), ...shake]);
        expect(found.settled).toBe(true);
        expectShape(found.seats, truth);
        expect(found.chiSquare).toBeLessThan(1e-9);
        expect(found.told.every(Boolean)).toBe(true);
      }),
      { seed: 11, numRuns: 50 * LONG },
    );
    expect(shakes).toBeGreaterThan(25 * LONG);
  });

  test('with straightness readings, the profile too', () => {
    fc.assert(
      fc.property(anyPair, errors, fc.array(between(-5, 5), { minLength: 3, maxLength: 3 }), (nominal, by, bends) => {
        const straight = disturbed(nominal, by);
        const bent = straight[0]!.bush;
        const stations = [0.25, 0.5, 0.75].map((share) => bent.from + share * (bent.to - bent.from));
        const profile = [
          [bent.from, 0] as const,
          ...stations.map((z, k) => [z, bends[k]! * UM] as const),
          [bent.to, 0] as const,
        ];
        const truth = straight.map((seat, i) => (i === 0 ? { ...seat, bush: { ...bent, profile } } : seat));
        const readings: Reading[] = stations.flatMap((station) =>
          readFrom(truth, { kind: 'straightness', ...BUSH, station, value: 0, sigma: 0.2 * UM }),
        );
        const found = estimated(nominal, [...notebook(nominal, truth), ...readings]);
        expectShape(found.seats, truth);
        stations.forEach((_, k) => {
          expect(Math.abs(found.seats[0]!.bush.profile[k + 1]![1] - bends[k]! * UM)).toBeLessThan(1e-12);
        });
      }),
      { seed: 12, numRuns: 40 },
    );
  });

  test('whatever the uncertainties: the unknowns are scaled', () => {
    const truth = disturbed(doubleCone(), [0.3, -0.7, 0.4, 0.9, -0.2, 0.1, 0.8, -0.5]);
    fc.assert(
      fc.property(fc.array(between(-3, 3), { minLength: 30, maxLength: 30 }), (powers) => {
        const readings = notebook(doubleCone(), truth).map((reading, i) => ({
          ...reading,
          sigma: UM * 10 ** powers[i]!,
        }));
        const found = estimated(doubleCone(), readings);
        expectShape(found.seats, truth);
        expect(found.settled).toBe(true);
        expect(found.told.every(Boolean)).toBe(true);
      }),
      { seed: 13, numRuns: 60 },
    );
  });

  test('uncertainties scale with those of the readings, and not with how well they fit', () => {
    const readings = notebook(doubleCone(), doubleCone());
    const [one, ten] = [1, 10].map((factor) =>
      estimated(
        doubleCone(),
        readings.map((reading) => ({ ...reading, sigma: factor * reading.sigma })),
      ),
    );
    for (const of of ['halfAngle', 'radius'])
      expect(sigmaOf(ten!, JOURNAL, of)! / sigmaOf(one!, JOURNAL, of)!).toBeCloseTo(10, 9);
    expect(one!.chiSquare).toBeLessThan(1e-12);
  });
});

describe('what the readings leave open', () => {
  const diameter: Reading = { kind: 'diameter', ...JOURNAL, station: -10 * MM, value: 20.94 * MM, sigma: UM };

  test('one diameter: the half angle is held as drawn and the diameter meets the reading; neither is told', () => {
    const found = estimated(doubleCone(), [diameter]);
    expect(found.unknowns.list.map((u) => u.of)).toEqual(['radius', 'halfAngle']);
    expect(found.told).toEqual([false, false]);
    expect(found.held).toEqual([false, true]);
    expect(found.seats[0]!.journal.halfAngle).toBe(3 * DEG);
    expect(2 * (found.seats[0]!.journal.radius - 10 * MM * Math.tan(3 * DEG))).toBeCloseTo(20.94 * MM, 14);
    expect(found.freedom).toBe(0);
    expect(found.readings[0]).toMatchObject({ normalised: 0, leverage: 1 });
  });

  test('read at its own station, the diameter is told and the half angle alone is open', () => {
    const found = estimated(doubleCone(), [{ ...diameter, station: 0 }]);
    expect(found.told).toEqual([true, false]);
    expect(sigmaOf(found, JOURNAL, 'radius')).toBeCloseTo(UM / 2, 15);
    expect(sigmaOf(found, JOURNAL, 'halfAngle')).toBeNull();
  });

  test('two diameters at one station tell no angle; a micrometre apart they do, badly', () => {
    const twice = estimated(doubleCone(), [diameter, { ...diameter, value: diameter.value + UM }]);
    expect(twice.told).toEqual([false, false]);
    expect(twice.freedom).toBe(1);
    const apart = estimated(doubleCone(), [
      diameter,
      { ...diameter, station: diameter.station + UM, value: diameter.value + 2 * UM * Math.tan(3 * DEG) },
    ]);
    expect(apart.told).toEqual([true, true]);
    // a difference of two readings over twice the distance between them
    expect(sigmaOf(apart, JOURNAL, 'halfAngle')! / ((Math.SQRT2 * UM * Math.cos(3 * DEG) ** 2) / (2 * UM))).toBeCloseTo(
      1,
      6,
    );
  });

  test('a stand-off alone tells no number, and as few as will do are held', () => {
    const found = estimated(doubleCone(), [{ kind: 'standOff', value: 5 * UM, sigma: UM }]);
    expect(found.told.some(Boolean)).toBe(false);
    expect(found.held.filter((h) => !h)).toHaveLength(1);
    expect(found.decomposition.rank).toBe(1);
    expect(found.chiSquare).toBeLessThan(1e-15);
  });

  test('a prior settles what is open, and counts as a reading', () => {
    const sigma = 0.01 * DEG;
    const found = estimated(doubleCone(), [diameter], [{ ...JOURNAL, of: 'halfAngle', sigma }]);
    expect(found.told).toEqual([true, true]);
    expect(found.freedom).toBe(0);
    expect(sigmaOf(found, JOURNAL, 'halfAngle')).toBeCloseTo(sigma, 15);
    // u(R)² = (σ/2)² + (10 mm/cos²)²·σ_a²
    expect(sigmaOf(found, JOURNAL, 'radius')).toBeCloseTo(
      Math.hypot(UM / 2, (10 * MM * sigma) / Math.cos(3 * DEG) ** 2),
      12,
    );
  });

  test('priors alone, against a reading: the weighted mean', () => {
    const prior = { ...JOURNAL, of: 'radius' as const, sigma: UM };
    const found = estimated(doubleCone(), [{ ...diameter, station: 0, value: 22.01 * MM, sigma: 2 * UM }], [prior]);
    expect(found.seats[0]!.journal.radius).toBeCloseTo(11.0025 * MM, 14);
    expect(found.chiSquare).toBeCloseTo(2 * 2.5 ** 2, 6);
    expect(found.freedom).toBe(1);
  });

  test('a straightness at an end tells nothing and takes no freedom', () => {
    const found = estimated(doubleCone(), [
      ...notebook(doubleCone(), doubleCone()),
      { kind: 'straightness', ...JOURNAL, station: 0, value: 0, sigma: UM },
    ]);
    const without = estimated(doubleCone(), notebook(doubleCone(), doubleCone()));
    expect(found.freedom).toBe(without.freedom);
  });
});

describe('readings that cannot be or do not agree', () => {
  const truth = disturbed(doubleCone(), [0.1, -0.4, 0.2, 0.5, -0.3, 0.2, 0.1, -0.1]);

  test('an impossible one is left out, and named with why; the others give the shape', () => {
    const readings = notebook(doubleCone(), truth);
    const bad: Reading = { kind: 'ballDepth', ...BUSH, ball: 5 * MM, face: 0, value: 10 * MM, sigma: UM };
    const found = estimated(doubleCone(), [bad, ...readings]);
    expect(found.impossible.map(({ index, fault }) => [index, fault.what])).toEqual([[0, 'falls']]);
    expect(found.readings.map((r) => r.index)).toEqual(readings.map((_, i) => i + 1));
    expectShape(found.seats, truth);
  });

  test('nothing usable: said so', () => {
    expect(estimate(doubleCone(), [])).toEqual({ kind: 'unusable', impossible: [] });
    const found = estimate(doubleCone(), [
      { kind: 'ballDepth', ...JOURNAL, ball: 5 * MM, face: 0, value: 10 * MM, sigma: UM },
    ]);
    expect(found.kind).toBe('unusable');
    expect(found.impossible).toHaveLength(1);
  });

  test('a set-up that only the true shape allows is taken back once the others have told it', () => {
    // Drawn at 3°, the 19.4 mm ball would rest on the small end's edge; the true bush is smaller there.
    const bush = cone(3.4, 22.005, 0, -25, -0.5);
    const nominal = doubleCone();
    const steep = nominal.map((seat, i) => (i === 0 ? { ...seat, bush } : seat));
    const ball: Reading = { kind: 'ballDepth', ...BUSH, ball: 19.3 * MM, face: 0, value: 0, sigma: UM };
    const others = notebook(nominal, steep).filter((r) => 'part' in r && r.seat === 0 && r.part === 'bush');
    const all = [...readFrom(steep, ball), ...others];
    expect(all[0]).toMatchObject(ball.kind === 'ballDepth' ? { ball: ball.ball } : {});
    expect(estimate(nominal, [all[0]!]).kind).toBe('unusable');
    const found = estimated(nominal, all);
    expect(found.impossible).toEqual([]);
    expectShape([found.seats[0]!], [{ ...nominal[0]!, bush }]);
  });

  test('a slip of ten uncertainties is found in every place of a notebook', () => {
    const draw = normals(5);
    const exact = notebook(doubleCone(), truth);
    for (let k = 0; k < exact.length; k++) {
      const readings = noisy(exact, draw);
      const leverage = estimated(doubleCone(), readings).readings[k]!.leverage;
      // In units of the residual's own spread, so that one that is hardly checked is wrong by as much.
      readings[k] = { ...readings[k]!, value: exact[k]!.value + (10 * readings[k]!.sigma) / Math.sqrt(1 - leverage) };
      const found = estimated(doubleCone(), readings);
      expect(found.disagreeing.map((d) => d.index)).toEqual([k]);
      expect(found.disagreeing[0]!.chiSquareWithout).toBeLessThan(found.chiSquare - 20);
      const without = estimated(
        doubleCone(),
        readings.filter((_, i) => i !== k),
      );
      expect(found.disagreeing[0]!.chiSquareWithout).toBeCloseTo(without.chiSquare, 6);
    }
  });

  test('readings that would make a radius negative do not come to rest, and that is said', () => {
    const at = (station: number, value: number): Reading => ({
      kind: 'diameter',
      ...JOURNAL,
      station: station * MM,
      value: value * MM,
      sigma: UM,
    });
    expect(estimated(doubleCone(), [at(0, 22), at(-5, 1)]).settled).toBe(false);
    expect(estimated(doubleCone(), [at(0, 22), at(-5, 21)]).settled).toBe(true);
  });

  test('two readings that only check each other are both named', () => {
    const diameter: Reading = { kind: 'diameter', ...JOURNAL, station: 0, value: 22 * MM, sigma: UM };
    const found = estimated(doubleCone(), [diameter, { ...diameter, value: 22.02 * MM }]);
    expect(found.disagreeing.map((d) => d.index)).toEqual([0, 1]);
  });

  test('noise alone is seldom called a disagreement', () => {
    const exact = notebook(doubleCone(), truth);
    const draw = normals(6);
    const runs = 150 * LONG;
    let called = 0;
    for (let k = 0; k < runs; k++) if (estimated(doubleCone(), noisy(exact, draw)).disagreeing.length > 0) called++;
    // 1 % by Bonferroni's bound; four standard deviations of the count above
    expect(called).toBeLessThanOrEqual(0.01 * runs + 4 * Math.sqrt(0.01 * runs));
  });
});

describe('the kink of a stand-off', () => {
  test('chi-square cannot be made less by any small step, parallel cones or not', () => {
    const draw = normals(7);
    const kept = (r: Reading) => r.kind === 'diameter' || r.kind === 'standOff';
    const exact = notebook(doubleCone(), doubleCone()).filter(kept);
    let onKink = 0;
    for (let k = 0; k < 40; k++) {
      const readings = noisy(exact, draw).map((r) => (r.kind === 'standOff' ? { ...r, sigma: 0.5 * UM } : r));
      const found = estimated(doubleCone(), readings);
      expect(found.settled).toBe(true);
      const surfaces = found.unknowns.list.map(({ seat, part }) => ({ seat, part }));
      const { seats: start, unknowns } = startingShape(doubleCone(), surfaces, readings);
      const problem = { start, unknowns, startNumbers: numbersOf(start, unknowns), readings, priors: [] };
      const least = chiSquareOf(problem, found.numbers);
      expect(least).toBeCloseTo(found.chiSquare, 9);
      const sigmas = unknowns.list.map((_, j) => uncertaintyOf(found.decomposition, unit(unknowns.list.length, j))!);
      let rises = 0;
      for (let trial = 0; trial < 90; trial++) {
        const size = 10 ** -(1 + (trial % 3));
        const there = found.numbers.map((x, j) => x + size * sigmas[j]! * draw());
        const change = chiSquareOf(problem, there) - least;
        expect(change).toBeGreaterThan(-1e-4 * size);
        if (change > 0.05 * size) rises++;
      }
      if (rises > 45) onKink++;
    }
    // the least often lies on the kink itself: then chi-square rises with the step and not with its square
    expect(onKink).toBeGreaterThan(3);
  });
});
