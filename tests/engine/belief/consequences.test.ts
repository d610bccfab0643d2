/** What follows: propagation against drawn shapes, probabilities of first touch, and what has no uncertainty. */
import { describe, expect, test, vi } from 'vitest';
import { consequencesOf } from '../../../src/engine/belief/consequences.ts';
import { twoSidedTail } from '../../../src/engine/belief/distributions.ts';
import { ofDrawnShapes } from '../../../src/engine/belief/draws.ts';
import { quantitiesOf, valuesOf } from '../../../src/engine/belief/quantities.ts';
import type { Reading } from '../../../src/engine/gauging/reading.ts';
import { disturbed, doubleCone, estimated, noisy, normals, notebook, UM } from '../gauging/pairs.ts';

// Nothing is timed here; a busy machine only takes longer.
vi.setConfig({ testTimeout: 60_000 });

const POSITION = 10 * UM;
const truth = disturbed(doubleCone(), [0.4, -0.3, -0.4, 0.5, -0.8, 0.2, 0.9, -0.6]);
const found = estimated(doubleCone(), notebook(doubleCone(), truth));

const deviation = (sample: readonly number[]) => {
  const mean = sample.reduce((a, b) => a + b, 0) / sample.length;
  return Math.sqrt(sample.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (sample.length - 1));
};

describe('away from ties', () => {
  test('propagated uncertainties are those of drawn shapes, and the ranges are twice as wide to either side', () => {
    const drawn = ofDrawnShapes(found, 4000, 3, (shape) => valuesOf(shape, POSITION));
    consequencesOf(found, POSITION).all.forEach(({ sigma, value, interval }, k) => {
      const sampled = deviation(drawn.map((values) => values[k]!));
      // 4,000 draws tell a deviation to 1.1 %
      expect(Math.abs(sampled / sigma! - 1)).toBeLessThan(0.05);
      expect(Math.abs((interval![1] - interval![0]) / (2 * 1.96 * sigma!) - 1)).toBeLessThan(0.08);
      expect(Math.abs((interval![0] + interval![1]) / 2 - value!)).toBeLessThan(0.15 * sigma!);
    });
  });

  test('values are those of the fit of the shape', () => {
    const { all } = consequencesOf(found, POSITION, 10);
    const plain = valuesOf(found.seats, POSITION);
    expect(all.map((c) => c.quantity)).toEqual(quantitiesOf(found.seats));
    all.forEach(({ value }, k) => {
      expect(value).toBeCloseTo(plain[k]!, 15);
    });
  });

  test('the same for the same readings', () => {
    expect(consequencesOf(found, POSITION)).toEqual(consequencesOf(found, POSITION));
  });
});

describe('which seat touches first', () => {
  test('the probability is that of the difference of the two seat positions, where they are normal', () => {
    // Seats that touch nearly together: the steep bush wide enough to bring its touch to that of the shallow one.
    const [shallow, steep] = [2, 3].map((k) => valuesOf(truth, 0)[k]!);
    const near = truth.map((seat, i) =>
      i === 1
        ? {
            ...seat,
            bush: {
              ...seat.bush,
              radius: seat.bush.radius + (steep! - shallow! + 3 * UM) * Math.tan(seat.bush.halfAngle),
            },
          }
        : seat,
    );
    const estimate = estimated(
      doubleCone(),
      notebook(doubleCone(), near).filter((r) => r.kind !== 'standOff'),
    );
    const { first } = consequencesOf(estimate, 0, 8000);
    const positions = ofDrawnShapes(estimate, 8000, 9, (shape) => valuesOf(shape, 0));
    const differences = positions.map((values) => values[2]! - values[3]!);
    const z = differences.reduce((a, b) => a + b, 0) / differences.length / deviation(differences);
    const wanted = z > 0 ? 1 - twoSidedTail(z) / 2 : twoSidedTail(z) / 2;
    expect(first!.map((f) => f.seat)).toEqual([0, 1]);
    expect(first![0]!.probability + first![1]!.probability).toBeCloseTo(1, 12);
    expect(wanted).toBeGreaterThan(0.02);
    expect(wanted).toBeLessThan(0.98);
    expect(Math.abs(first![0]!.probability - wanted)).toBeLessThan(0.03);
  });

  test('near a tie of ends the range reaches further to the rear, since the first touch only comes sooner', () => {
    const parallel = estimated(
      doubleCone(),
      notebook(doubleCone(), doubleCone()).filter((r) => r.kind !== 'standOff'),
    );
    const touch = consequencesOf(parallel, 0).all.find(({ quantity: q }) => q.of === 'seatPosition' && q.seat === 0)!;
    expect(touch.value! - (touch.interval![0] + touch.interval![1]) / 2).toBeGreaterThan(0.5 * touch.sigma!);
  });

  test('and it holds the truth as often as it claims, where both ends of both seats touch at once', () => {
    const exact = notebook(doubleCone(), doubleCone());
    const wanted = valuesOf(doubleCone(), POSITION);
    const draw = normals(77);
    const runs = 150;
    const held = wanted.map(() => 0);
    for (let k = 0; k < runs; k++) {
      consequencesOf(estimated(doubleCone(), noisy(exact, draw)), POSITION, 500).all.forEach(({ interval }, i) => {
        if (wanted[i]! >= interval![0] && wanted[i]! <= interval![1]) held[i]!++;
      });
    }
    for (const count of held) expect(Math.abs(count / runs - 0.95)).toBeLessThan(4 * Math.sqrt((0.95 * 0.05) / runs));
  });
});

describe('what has no uncertainty', () => {
  test('a quantity that leans on a surface nothing was read of: the surface is named', () => {
    const readings = notebook(doubleCone(), truth).filter(
      (r) => !('part' in r && r.seat === 1 && r.part === 'bush') && r.kind !== 'standOff',
    );
    const { all, first } = consequencesOf(estimated(doubleCone(), readings), POSITION);
    const relation = all.find(({ quantity }) => quantity.of === 'relation')!;
    expect(relation).toMatchObject({ sigma: null, interval: null, asDrawn: [{ seat: 1, part: 'bush' }] });
    expect(first).toBeNull();
    const shallow = all.find(({ quantity: q }) => q.of === 'film' && q.seat === 0)!;
    expect(shallow.asDrawn).toEqual([]);
    expect(shallow.sigma).toBeGreaterThan(0);
  });

  test('a stand-off tells the position of first touch, though it tells no surface', () => {
    const standOff: Reading = { kind: 'standOff', value: 5 * UM, sigma: 2 * UM };
    const { all } = consequencesOf(estimated(doubleCone(), [standOff]), POSITION);
    const touch = all.find(({ quantity }) => quantity.of === 'firstPosition')!;
    expect(touch.value).toBeCloseTo(5 * UM, 12);
    expect(touch.sigma).toBeCloseTo(2 * UM, 12);
    expect(all.find(({ quantity }) => quantity.of === 'relation')!.sigma).toBeNull();
  });
});
