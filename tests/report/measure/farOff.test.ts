/** Readings far from the drawing: none of the demo, each kind when it is a slip. */
import { describe, expect, test } from 'vitest';
import { farOffText } from '../../../src/report/measure/farOff.ts';
import type { Reading } from '../../../src/report/measure/kinds.ts';
import { predictedReading } from '../../../src/report/measure/predictedReading.ts';
import { notebookDemo } from './notebooks.ts';

const design = notebookDemo();

test('nothing of the demo is asked after', () => {
  expect(design.readings!.map((reading) => farOffText(design, reading, 'metric')).filter(Boolean)).toEqual([]);
});

describe('asked after beyond its limit and not within', () => {
  const { sigma } = { sigma: 0.001 };
  test.each<[string, Reading, number]>([
    // 2 % of 17.5 mm
    ['a diameter', { kind: 'diameter', seat: 'shallow', part: 'journal', value: 0, sigma, station: -5 }, 0.35],
    ['a width over rolls', design.readings![0]!, 0.478],
    // 2 % of 16 mm, over 2·tan 3°
    ['a ball', design.readings![4]!, 3.05],
    ['a rise', design.readings![3]!, 0.36],
    ['a straightness', { kind: 'straightness', seat: 'shallow', part: 'bush', value: 0, sigma, station: -5 }, 0.1],
    ['a stand-off', design.readings![14]!, 1],
    ['a shake', design.readings![15]!, 1],
  ])('%s', (_, reading, limit) => {
    const { value } = predictedReading(design, reading);
    for (const sign of reading.kind === 'shake' ? [1] : [1, -1]) {
      expect(farOffText(design, { ...reading, value: value! + 0.98 * sign * limit }, 'metric')).toBeNull();
      expect(farOffText(design, { ...reading, value: value! + 1.02 * sign * limit }, 'metric')).toMatch(
        /^\d[\d.]* mm from the drawing: really\?$/,
      );
    }
  });

  test('in the units wanted', () => {
    const reading: Reading = { kind: 'diameter', seat: 'shallow', part: 'journal', value: 0, sigma, station: 0 };
    expect(farOffText(design, { ...reading, value: predictedReading(design, reading).value! + 25.4 }, 'inch')).toMatch(
      /^1\.0+ in from the drawing: really\?$/,
    );
  });
});

describe('what nobody can have read', () => {
  const what = (reading: Reading) => predictedReading(design, reading).fault?.what;
  test('a shake below nothing', () => {
    const shake = design.readings![15]!;
    expect(what({ ...shake, value: -0.01 })).toBe('negative');
    expect(what({ ...shake, value: 0 })).toBeUndefined();
  });

  test('a straightness at an end, but for what an indicator may come back to', () => {
    const { from, to } = design.seats[0]!.bush;
    for (const station of [from, to]) {
      const reading: Reading = {
        kind: 'straightness',
        seat: 'shallow',
        part: 'bush',
        value: 0.0009,
        sigma: 0.0005,
        station,
      };
      expect(what(reading)).toBeUndefined();
      expect(what({ ...reading, value: -0.005 })).toBe('ofEnd');
      expect(what({ ...reading, value: 0.005, station: (from + to) / 2 })).toBeUndefined();
    }
  });

  test('a stack as long as the bar, and a rise that leans the line across the axis', () => {
    const rise = design.readings![3]! as Extract<Reading, { kind: 'sineRise' }>;
    expect(what({ ...rise, stack: rise.bar })).toBe('stackBeyondBar');
    expect(what({ ...rise, value: 20 })).toBe('crossesAxis');
    expect(what({ ...rise, value: 1 })).toBeUndefined();
    expect(predictedReading(design, { ...rise, value: 20 }).fault!.message).toBe(
      'a rise of 20.000 mm over a travel of 18.000 mm would lean the line across the axis of the part',
    );
  });
});
