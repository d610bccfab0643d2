/** Which reading is blamed: the one that is wrong, or a few of which it is one; never an innocent one alone. */

import { describe, expect, test } from 'vitest';
import { type Agreement, disagreeingOf, type Suspect } from '../../../src/engine/gauging/disagreement.ts';
import { estimate } from '../../../src/engine/gauging/estimate.ts';
import type { Reading } from '../../../src/engine/gauging/reading.ts';
import { toSeats } from '../../../src/report/convert.ts';
import { toReadings } from '../../../src/report/measure/toReading.ts';
import { notebookDemo } from '../../report/measure/notebooks.ts';
import { doubleCone, estimated, MM, UM } from './pairs.ts';

const JOURNAL = { seat: 0, part: 'journal' } as const;
const BUSH = { seat: 0, part: 'bush' } as const;

const design = notebookDemo();
const slipped = (index: number, by: number) => {
  const found = estimate(
    toSeats(design),
    toReadings(design).map((r, i) => (i === index ? { ...r, value: r.value + by * MM } : r)),
  );
  if (found.kind !== 'estimate') throw new Error('unusable');
  return found;
};

describe('each reading of the demo moved by 0.05 mm either way', () => {
  test.each(design.readings!.flatMap(({ kind }, i) => [0.05, -0.05].map((by) => [i, by, kind] as const)))(
    'reading at place %i by %d mm (%s)',
    (i, by) => {
      const { disagreeing, impossible, chiSquare } = slipped(i, by);
      // The shake less 0.05 mm is below nothing: nobody read that, whatever the parts are like.
      if (i === 15 && by < 0)
        return expect([impossible, disagreeing]).toMatchObject([[{ index: 15, fault: { what: 'negative' } }], []]);
      const named = disagreeing.map(({ index }) => index);
      expect(named).toContain(i);
      expect(named.length).toBeLessThanOrEqual(3);
      for (const { chiSquareWithout, probabilityWithout, probability } of disagreeing) {
        expect(chiSquareWithout).toBeLessThan(chiSquare / 2);
        expect(probabilityWithout).toBeGreaterThan(0.01);
        expect(probability).toBeLessThan(1e-6);
      }
    },
  );

  test('those that nothing tells apart are both named, though one has the greater residual', () => {
    // rolls and a sine bar on the steep journal: three readings for two numbers, checked by the pair alone
    expect(slipped(9, -0.05).disagreeing.map(({ index }) => index)).toEqual([9, 10]);
    expect(slipped(8, 0.05).disagreeing.map(({ index }) => index)).toEqual([8]);
  });
});

test('two wrong readings: the worse is named, and that the others do not agree even so', () => {
  const at = (station: number, off: number): Reading => ({
    kind: 'diameter',
    ...JOURNAL,
    station: station * MM,
    value: (22 + 2 * station * Math.tan(doubleCone()[0]!.journal.halfAngle)) * MM + off * UM,
    sigma: UM,
  });
  const { disagreeing } = estimated(doubleCone(), [
    at(0, 0),
    at(-3, 80),
    at(-6, 0),
    at(-9, -40),
    at(-12, 0),
    at(-15, 0),
    at(-18, 0),
  ]);
  expect(disagreeing.map(({ index }) => index)).toEqual([1]);
  expect(disagreeing[0]!.probabilityWithout).toBeLessThan(0.01);
});

test('a ball that the fitted shape does not allow, though the drawn one would, is set against the others', () => {
  const nominal = doubleCone();
  const { seat, part } = BUSH;
  const demo = toReadings(design).filter((r) => 'seat' in r && r.seat === 1 && r.part === 'bush');
  expect(demo.map(({ kind }) => kind)).toEqual(['ballDepth', 'ballDepth', 'sineRise']);
  const readings = demo.map((r) => (r.kind === 'sineRise' ? { ...r, value: r.value - 0.2 * MM } : r));
  const found = estimate(toSeats(design), readings);
  if (found.kind !== 'estimate') throw new Error('unusable');
  expect(found.impossible.map(({ possibleAsDrawn }) => possibleAsDrawn)).toEqual([true]);
  expect(found.disagreeing.map(({ index }) => index)).toContain(2);
  // A ball that the drawn parts do not allow either tells nothing against the others.
  const small = estimated(nominal, [
    { kind: 'diameter', seat, part, station: -2 * MM, value: 2 * nominal[seat]!.bush.radius, sigma: UM },
    { kind: 'ballDepth', seat, part, ball: 1 * MM, face: 0, value: 1 * MM, sigma: UM },
  ]);
  expect(small.impossible.map(({ possibleAsDrawn }) => possibleAsDrawn)).toEqual([false]);
  expect(small.disagreeing).toEqual([]);
});

describe('the choice among removals', () => {
  const suspects: Suspect[] = [0, 1, 2].map((index) => ({ index, normalised: 20 - index }));
  const whole: Agreement = { chiSquare: 400, probability: 0, contradicted: 0 };
  const rest = (chiSquare: number, contradicted = 0): Agreement => ({
    chiSquare,
    probability: chiSquare > 20 ? 0 : 0.5,
    contradicted,
  });
  const named = (rests: readonly (Agreement | null)[], all = whole) =>
    disagreeingOf(suspects, 10, all, (k) => rests[k]!).map(({ index }) => index);

  test('by what is left, not by the residual', () => {
    expect(named([rest(90), rest(9), rest(60)])).toEqual([1]);
    expect(named([rest(11), rest(9), rest(60)])).toEqual([0, 1]);
    expect(named([null, rest(90), rest(60)])).toEqual([2]);
  });

  test('none where chance gains as much, none where nothing can be left out', () => {
    expect(named([rest(395), rest(396), rest(399)])).toEqual([]);
    expect(named([null, null, null])).toEqual([]);
  });

  test('a removal that makes the others possible goes first', () => {
    expect(named([rest(9, 1), rest(12), rest(14)], { ...whole, chiSquare: 10, contradicted: 1 })).toEqual([1, 2]);
  });
});
