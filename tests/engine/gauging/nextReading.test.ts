/** What to read next: every promise held against a new estimate with that reading. */
import { describe, expect, test, vi } from 'vitest';
import { consequencesOf } from '../../../src/engine/belief/consequences.ts';
import { uncertaintyOf, unit } from '../../../src/engine/belief/decomposition.ts';
import type { Quantity } from '../../../src/engine/belief/quantities.ts';
import { nextFor, nextForUnknown, wholePairOf } from '../../../src/engine/gauging/nextReading.ts';
import type { Reading } from '../../../src/engine/gauging/reading.ts';
import { predict } from '../../../src/engine/gauging/readings/index.ts';
import { INCH_TOOLS } from '../../../src/engine/gauging/tooling.ts';
import { disturbed, doubleCone, estimated, notebook, UM } from './pairs.ts';

// Nothing is timed here; a busy machine only takes longer.
vi.setConfig({ testTimeout: 60_000 });

const truth = disturbed(doubleCone(), [0.4, -0.3, -0.4, 0.5, -0.8, 0.2, 0.9, -0.6]);
const all = notebook(doubleCone(), truth);
const RELATION: Quantity = { of: 'relation' };
const sigmaOf = (readings: readonly Reading[], quantity: Quantity) =>
  consequencesOf(estimated(doubleCone(), readings), 0, 10).all.find(
    ({ quantity: q }) => q.of === quantity.of && JSON.stringify(q) === JSON.stringify(quantity),
  )!.sigma;

describe('for a quantity that is told', () => {
  const whole = wholePairOf(estimated(doubleCone(), all), all);

  test('every suggestion would give the uncertainty it promises, the best first', () => {
    for (const quantity of [RELATION, { of: 'firstPosition' }, { of: 'film', seat: 1 }] as const) {
      const suggestions = nextFor(whole, quantity, 0, 50);
      expect(suggestions.length).toBeGreaterThan(1);
      suggestions.forEach(({ reading, sigma }, i) => {
        expect(sigma! / sigmaOf([...all, reading], quantity)!).toBeCloseTo(1, 6);
        expect(sigma!).toBeLessThan(sigmaOf(all, quantity)!);
        if (i > 0) expect(sigma!).toBeGreaterThanOrEqual(suggestions[i - 1]!.sigma!);
      });
    }
  });

  test('candidates are possible set-ups, with the uncertainty of their kind in the notebook', () => {
    expect(whole.candidates.length).toBeGreaterThan(12);
    for (const candidate of whole.candidates) {
      expect(predict(candidate, whole.seats)).toMatchObject({ fault: null, value: candidate.value });
      expect(candidate.sigma).toBe(all.find((r) => r.kind === candidate.kind)!.sigma);
    }
  });
});

describe('for an inch shop', () => {
  const inches = (m: number) => m / 0.0254;
  const whole32nds = (m: number) => Math.abs(32 * inches(m) - Math.round(32 * inches(m))) < 1e-9;
  const onDiameter = all.filter((r) => r.kind === 'diameter');
  const { candidates } = wholePairOf(estimated(doubleCone(), onDiameter), onDiameter, [], INCH_TOOLS);

  test('balls, rolls, bar and stack are those it has', () => {
    const [balls, rolls, rises] = [
      candidates.filter((r) => r.kind === 'ballDepth'),
      candidates.filter((r) => r.kind === 'overRolls'),
      candidates.filter((r) => r.kind === 'sineRise'),
    ];
    for (const list of [balls, rolls, rises]) expect(list.length).toBeGreaterThan(0);
    for (const { ball } of balls) expect(whole32nds(ball)).toBe(true);
    for (const { roll } of rolls) expect(whole32nds(roll)).toBe(true);
    for (const { bar, stack } of rises) {
      expect(inches(bar)).toBeCloseTo(5, 12);
      expect(Math.abs(inches(stack) * 1e4 - Math.round(inches(stack) * 1e4))).toBeLessThan(1e-6);
    }
  });

  test('a bar of the notebook keeps its blocks', () => {
    const withBar = wholePairOf(estimated(doubleCone(), all), all, [], INCH_TOOLS).candidates.flatMap((r) =>
      r.kind === 'sineRise' ? [r] : [],
    );
    for (const { bar, stack } of withBar) {
      expect(bar).toBe(0.1);
      expect(Math.abs(stack * 1e6 - Math.round(stack * 1e6))).toBeLessThan(1e-6);
    }
  });
});

describe('for what is open', () => {
  test('a reading that settles a number alone is found, with what it will then be told to', () => {
    const readings = all.filter((r) => 'part' in r && r.seat === 0 && r.part === 'journal').slice(0, 1);
    const found = estimated(doubleCone(), readings);
    const whole = wholePairOf(found, readings);
    found.unknowns.list.forEach((unknown) => {
      const [best] = nextForUnknown(whole, unknown);
      const then = estimated(doubleCone(), [...readings, best!.reading]);
      const place = then.unknowns.list.findIndex(
        (u) => u.seat === unknown.seat && u.part === unknown.part && u.of === unknown.of,
      );
      expect(best!.sigma).not.toBeNull();
      expect(best!.sigma! / uncertaintyOf(then.decomposition, unit(then.unknowns.list.length, place))!).toBeCloseTo(
        1,
        5,
      );
    });
  });

  test('with one reading missing to tell the relation, it is that one or its like', () => {
    const readings = all.filter(
      (r) => !('part' in r && r.seat === 1 && r.part === 'bush' && r.kind !== 'sineRise') && r.kind !== 'standOff',
    );
    expect(sigmaOf(readings, RELATION)).toBeNull();
    const [best] = nextFor(wholePairOf(estimated(doubleCone(), readings), readings), RELATION, 0);
    expect(best!.sigma).not.toBeNull();
    expect(best!.sigma! / sigmaOf([...readings, best!.reading], RELATION)!).toBeCloseTo(1, 5);
  });

  test('where several are missing, following the suggestions tells it', () => {
    const readings: Reading[] = [{ kind: 'diameter', seat: 0, part: 'journal', station: 0, value: 0.022, sigma: UM }];
    let steps = 0;
    while (sigmaOf(readings, RELATION) === null) {
      const [best] = nextFor(wholePairOf(estimated(doubleCone(), readings), readings), RELATION, 0);
      readings.push(best!.reading);
      if (++steps > 12) throw new Error('the suggestions lead nowhere');
    }
    // eight numbers, two of which the one reading and the tie of their sum already tell
    expect(steps).toBeLessThanOrEqual(8);
  });
});
