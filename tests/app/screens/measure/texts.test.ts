/** What the notebook says of an entry, and what a new one is proposed with. */
import { describe, expect, test } from 'vitest';
import { newReading, onSurface } from '../../../../src/app/screens/measure/entries.ts';
import { KIND_NAMES, type Reading, readingText, setUpText } from '../../../../src/app/screens/measure/kinds.ts';
import { validateDesign } from '../../../../src/design/validate.ts';
import { predictedReading } from '../../../../src/report/measure/predictedReading.ts';
import { notebookDemo } from '../../../report/measure/notebooks.ts';

const on = { seat: 'shallow', part: 'journal', sigma: 0.001 } as const;

describe('an entry tells the whole reading', () => {
  test.each([
    [
      { kind: 'diameter', ...on, station: -10, value: 17.2 },
      'Diameter of the shallow journal at station −10.000 mm: 17.200 mm',
    ],
    [
      { kind: 'overRolls', ...on, roll: 4, station: -20, value: 23.9044 },
      'Over two rolls of 4 mm on the shallow journal, centres at station −20.000 mm: 23.9044 mm',
    ],
    [
      { kind: 'ballDepth', ...on, part: 'bush', ball: 16, face: 4.5, value: 15.4308 },
      'Ball of 16 mm resting in the shallow bush, depth from the face at station 4.500 mm: 15.4308 mm down to its top',
    ],
    [
      { kind: 'ballDepth', ...on, part: 'bush', ball: 29, face: 4.5, value: -21.7 },
      'Ball of 29 mm resting in the shallow bush, depth from the face at station 4.500 mm: 21.700 mm proud of it',
    ],
    [
      { kind: 'sineRise', ...on, bar: 100, stack: 5.234, travel: 18, value: 0.0015 },
      'Sine bar of 100 mm on a stack of 5.234 mm under the shallow journal, travel 18.000 mm: the indicator rises 1.50 µm',
    ],
    [
      { kind: 'sineRise', ...on, bar: 100, stack: -38.268, travel: 4, value: -0.002 },
      'Sine bar of 100 mm on a stack of 38.268 mm under the shallow journal, travel 4.000 mm: the indicator falls 2.00 µm',
    ],
    [
      { kind: 'straightness', ...on, station: -5, value: -0.0004 },
      'Straightness of the shallow journal at station −5.000 mm: 0.40 µm hollow',
    ],
    [
      { kind: 'standOff', sigma: 0.001, value: -0.0004 },
      'Stand-off on trial assembly: first touch 0.40 µm rearward of the datum',
    ],
    [
      { kind: 'shake', sigma: 0.001, indicator: 26, position: 0.03, direction: 90, value: 0.0454 },
      'Shake at station 26.000 mm, the journal 30.00 µm noseward of the datum, pulled at 90°: 45.40 µm from side to side',
    ],
  ] satisfies [Reading, string][])('%#', (reading, text) => {
    expect(readingText(reading, 'metric')).toBe(text);
  });

  test('tools keep their own names on a screen of inches', () => {
    expect(setUpText({ kind: 'sineRise', ...on, bar: 100, stack: 5.234, travel: 18, value: 0 }, 'inch')).toBe(
      'Sine bar of 100 mm on a stack of 5.234 mm under the shallow journal, travel 0.7087 in',
    );
    expect(setUpText({ kind: 'ballDepth', ...on, part: 'bush', ball: 17.4625, face: 0, value: 1 }, 'inch')).toBe(
      'Ball of 11/16 in resting in the shallow bush, depth from the face at station 0.000 in',
    );
    expect(setUpText({ kind: 'overRolls', ...on, roll: 6.35, station: -20, value: 1 }, 'inch')).toBe(
      'Over two rolls of 1/4 in on the shallow journal, centres at station −0.7874 in',
    );
  });
});

describe('a new entry', () => {
  const design = notebookDemo();
  const sizes = (reading: Reading) =>
    ['roll', 'ball'].flatMap((key) => (key in reading ? [(reading as unknown as Record<string, number>)[key]!] : []));

  test.each(['metric', 'inch'] as const)('is proposed with tools of a %s shop that touch the surface', (tools) => {
    for (const kind of KIND_NAMES) {
      const reading = newReading(design, kind, tools);
      expect(validateDesign({ ...design, readings: [reading] }).ok).toBe(true);
      expect(predictedReading(design, reading).fault).toBeNull();
      for (const size of sizes(reading))
        expect(Math.abs((tools === 'metric' ? 2 * size : (32 * size) / 25.4) % 1)).toBeLessThan(1e-6);
      if (reading.kind === 'sineRise') expect(reading.bar).toBe(tools === 'metric' ? 100 : 127);
    }
  });

  test('on another surface it is set up anew there, as sure as it was', () => {
    const reading = { ...newReading(design, 'sineRise', 'inch'), sigma: 0.0007 };
    const there = onSurface(design, reading, 'steep', 'bush', 'inch');
    expect(there).toMatchObject({ kind: 'sineRise', seat: 'steep', part: 'bush', sigma: 0.0007, bar: 127 });
    expect(there.kind === 'sineRise' && there.stack / 25.4).toBeCloseTo(3.5355, 9);
    expect(Math.abs(predictedReading(design, there).value! - there.value)).toBeLessThan(1e-7);
  });
});
