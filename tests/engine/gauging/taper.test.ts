/** A surface drawn straight stays straight unless the readings say otherwise, as often by chance as is claimed. */
import { describe, expect, test } from 'vitest';
import { uncertaintyOf, unit } from '../../../src/engine/belief/decomposition.ts';
import type { Reading } from '../../../src/engine/gauging/reading.ts';
import { isTapered } from '../../../src/engine/gauging/taper.ts';
import { cone, DEG, estimated, kolmogorov, MM, normals, UM } from './pairs.ts';

const pair = [{ name: 'rear', journal: cone(0, 14, -60, -70, -50), bush: cone(0, 14.008, -60, -70, -50) }];
const at = (station: number, value: number, sigma = UM, part: 'journal' | 'bush' = 'journal'): Reading => ({
  kind: 'diameter',
  seat: 0,
  part,
  station: station * MM,
  value: value * MM,
  sigma,
});
const taperIn = (readings: readonly Reading[]) => estimated(pair, readings).tapers[0]!;

describe('held straight', () => {
  test('two readings a tenth apart give one diameter, their weighted mean, known as well as both tell it', () => {
    const found = estimated(pair, [at(-68, 14.00127), at(-52, 13.99873, 2 * UM)]);
    expect(found.seats[0]!.journal.halfAngle).toBe(0);
    expect(found.seats[0]!.journal.radius * 2).toBeCloseTo(((14.00127 * 4 + 13.99873) / 5) * MM, 12);
    expect(found.unknowns.list.map(({ of }) => of)).toEqual(['radius']);
    expect(2 * uncertaintyOf(found.decomposition, unit(1, 0))!).toBeCloseTo(UM / Math.sqrt(1 + 1 / 4), 12);
    expect(found.freedom).toBe(1);
  });

  test('beside it stands what a free fit says: the slope of the two, its uncertainty, the odds', () => {
    const [taper] = estimated(pair, [at(-68, 14.00127), at(-52, 13.99873)]).tapers;
    expect(taper!.halfAngle).toBeCloseTo(Math.atan(-0.00254 / 32), 12);
    expect(taper!.sigma).toBeCloseTo((Math.SQRT2 * UM) / (32 * MM), 9);
    // z = 2.54/√2 = 1.796: two-sided 0.0725 (normal table)
    expect(taper!.significance).toBeCloseTo(0.0725, 4);
    expect(isTapered(taper!)).toBe(false);
    expect(isTapered(taperIn([at(-68, 14.0019), at(-52, 13.9981)]))).toBe(true);
  });

  test('one reading tells a diameter and no taper; a cone drawn as one is fitted as before', () => {
    expect(estimated(pair, [at(-68, 14)]).tapers).toEqual([]);
    const slender = [{ ...pair[0]!, journal: cone(0.001, 14, -60, -70, -50) }];
    const found = estimated(slender, [at(-68, 14.00127), at(-52, 13.99873)]);
    expect(found.tapers).toEqual([]);
    expect(found.seats[0]!.journal.halfAngle).toBeCloseTo(Math.atan(-0.00254 / 32), 12);
  });

  test('of straight parts the chance told is just what it claims', () => {
    const draw = normals(5);
    const chances = Array.from(
      { length: 400 },
      () => taperIn([-69, -63, -57, -51].map((z) => at(z, 14 + 0.001 * draw()))).significance,
    );
    expect(kolmogorov(chances, (p) => p)).toBeLessThan(1.95);
    expect(chances.filter((p) => p < 0.01).length).toBeLessThan(13);
  });
});

test('what only a taper explains names no reading as wrong; a wrong one is named all the same', () => {
  const tapered = [-69, -63, -57, -51].map((z) => at(z, 14 + 0.002 * (z + 60)));
  const found = estimated(pair, tapered);
  expect(isTapered(found.tapers[0]!)).toBe(true);
  expect(found.seats[0]!.journal.halfAngle).toBe(0);
  expect(found.probability).toBeLessThan(1e-6);
  expect(found.disagreeing).toEqual([]);
  const slipped = [...tapered, at(-60, 14), at(-55, 14.11)];
  expect(estimated(pair, slipped).disagreeing.map(({ index }) => index)).toEqual([5]);
});

test('what is known of the half angle beforehand counts against a taper', () => {
  const readings = [at(-68, 14.0019), at(-52, 13.9981)];
  const found = estimated(pair, readings, [{ seat: 0, part: 'journal', of: 'halfAngle', sigma: 0.001 * DEG }]);
  expect(found.seats[0]!.journal.halfAngle).toBe(0);
  expect(isTapered(found.tapers[0]!)).toBe(false);
});
