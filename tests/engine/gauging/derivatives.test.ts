/** Every analytic derivative against central differences, for every kind of reading and every quantity of the fit. */
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { followed, type Quantity, quantitiesOf } from '../../../src/engine/belief/quantities.ts';
import { gradientOf, type Influence, numbersOf, type On, withNumbers } from '../../../src/engine/belief/unknowns.ts';
import type { SeatInput } from '../../../src/engine/contact/fit.ts';
import type { Reading } from '../../../src/engine/gauging/reading.ts';
import { predict } from '../../../src/engine/gauging/readings/index.ts';
import { startingShape } from '../../../src/engine/gauging/shape.ts';
import { anyPair, between, DEG, disturbed, errors, MM, notebook, UM } from './pairs.ts';

// Nothing is timed here; a busy machine only takes longer.
vi.setConfig({ testTimeout: 60_000 });

const STEP = { halfAngle: 1e-7, radius: 1e-9, deviation: 1e-9, stock: 1e-9 };

interface Told {
  value: number | null;
  influences: Influence[];
}

/** Compares the gradient with central differences; false where the value has a kink or an end nearby. */
function agrees(
  seats: readonly SeatInput[],
  readings: readonly Reading[],
  told: (seats: readonly SeatInput[]) => Told | null,
): boolean {
  const everything = seats.flatMap((_, seat): On[] => [
    { seat, part: 'journal' },
    { seat, part: 'bush' },
  ]);
  const { seats: start, unknowns } = startingShape(seats, everything, readings);
  const here = told(start);
  if (!here || here.value === null) return false;
  const gradient = gradientOf(here.influences, start, unknowns);
  const numbers = numbersOf(start, unknowns);
  const shifted = (j: number, by: number) =>
    told(
      withNumbers(
        start,
        unknowns,
        numbers.map((x, k) => (k === j ? x + by : x)),
      ),
    )?.value ?? null;
  let smooth = true;
  for (const [j, unknown] of unknowns.list.entries()) {
    const h = STEP[unknown.of];
    const [below, above] = [shifted(j, -h), shifted(j, h)];
    if (below === null || above === null) return false;
    const [left, right] = [(here.value - below) / h, (above - here.value) / h];
    const size = Math.max(Math.abs(left), Math.abs(right), unknown.of === 'halfAngle' ? 1 * MM : 0.1);
    if (Math.abs(left - right) > 1e-3 * size) {
      smooth = false;
      continue;
    }
    const difference = (above - below) / (2 * h);
    if (Math.abs(gradient[j]! - difference) > 2e-5 * size)
      expect.fail(`by ${JSON.stringify(unknown)}: ${gradient[j]} but differences give ${difference}`);
  }
  return smooth;
}

/** Profiles on every surface, so that no line is straight. */
const waves = fc.array(between(-1, 1), { minLength: 12, maxLength: 12 });
function waved(seats: readonly SeatInput[], by: readonly number[]): SeatInput[] {
  let k = 0;
  const surface = <S extends SeatInput['bush']>(s: S): S => ({
    ...s,
    profile: [0, 0.4, 1].map((share) => [s.from + share * (s.to - s.from), 3 * UM * by[k++]!] as const),
  });
  return seats.map((seat) => ({ ...seat, journal: surface(seat.journal), bush: surface(seat.bush) }));
}

describe('derivatives of the readings', () => {
  test.each(['diameter', 'overRolls', 'ballDepth', 'sineRise', 'standOff'] as const)('%s', (kind) => {
    let smooth = 0;
    fc.assert(
      fc.property(anyPair, errors, waves, fc.boolean(), (nominal, by, wave, straight) => {
        const truth = straight ? disturbed(nominal, by) : waved(disturbed(nominal, by), wave);
        for (const reading of notebook(nominal, truth))
          if (reading.kind === kind && agrees(truth, [], (seats) => predict(reading, seats))) smooth++;
      }),
      { seed: 1, numRuns: 150 },
    );
    expect(smooth).toBeGreaterThan(20);
  });

  test('of a straightness, and of the others by the deviations', () => {
    let smooth = 0;
    fc.assert(
      fc.property(anyPair, errors, waves, (nominal, by, wave) => {
        const truth = waved(disturbed(nominal, by), wave);
        const straightness = (seat: number, part: 'journal' | 'bush'): Reading => {
          const { from, to } = truth[seat]![part];
          return { kind: 'straightness', seat, part, station: from + 0.4 * (to - from), value: 0, sigma: UM };
        };
        const readings = truth.flatMap((_, seat) => [straightness(seat, 'journal'), straightness(seat, 'bush')]);
        for (const reading of [...readings, ...notebook(nominal, truth)])
          if (agrees(truth, readings, (seats) => predict(reading, seats))) smooth++;
      }),
      { seed: 2, numRuns: 25 },
    );
    expect(smooth).toBeGreaterThan(300);
  });

  test('shake, by the multipliers of its programme', () => {
    let smooth = 0;
    fc.assert(
      fc.property(anyPair, errors, between(5, 30), between(0, 6), (nominal, by, open, direction) => {
        const truth = disturbed(
          nominal,
          by.map((e) => 0.1 * e),
        );
        const toward = truth[0]!.bush.halfAngle > 0 ? 1 : -1;
        const reading: Reading = {
          kind: 'shake',
          indicator: 30 * MM,
          position: toward * open * UM,
          direction,
          free: ['x', 'y', 'tiltX', 'tiltY'],
          value: 0,
          sigma: UM,
        };
        if (agrees(truth, [], (seats) => predict(reading, seats))) smooth++;
      }),
      { seed: 3, numRuns: 40 },
    );
    expect(smooth).toBeGreaterThan(15);
  });
});

describe('derivatives of what follows from the shape', () => {
  test.each(quantitiesOf([0, 1] as never))('%j', (quantity: Quantity) => {
    let smooth = 0;
    fc.assert(
      fc.property(anyPair, errors, waves, fc.boolean(), (nominal, by, wave, straight) => {
        const truth = straight ? disturbed(nominal, by) : waved(disturbed(nominal, by), wave);
        if (agrees(truth, [], (seats) => followed(quantity, seats, 10 * UM))) smooth++;
      }),
      { seed: 4, numRuns: 200 },
    );
    expect(smooth).toBeGreaterThan(20);
  });

  test('at a tie of two ends the mean of both', () => {
    const flat = disturbed(
      [
        {
          name: 'a',
          journal: { halfAngle: 3 * DEG, radius: 11 * MM, station: 0, from: -26 * MM, to: 0, profile: [] },
          bush: { halfAngle: 3 * DEG, radius: 11.003 * MM, station: 0, from: -25 * MM, to: -0.5 * MM, profile: [] },
        },
      ],
      Array(8).fill(0),
    );
    const { seats, unknowns } = startingShape(flat, [{ seat: 0, part: 'bush' }], []);
    const gradient = gradientOf(followed({ of: 'seatPosition', seat: 0 }, seats, 0)!.influences, seats, unknowns);
    // The bush grown by dr lets the journal dr/tan a further; turned about its station it does so by half at either
    // end.
    expect(gradient[0]).toBeCloseTo(-1 / Math.tan(3 * DEG), 9);
    expect(gradient[1]).toBeCloseTo((0.5 * (25 + 0.5) * MM) / Math.cos(3 * DEG) ** 2 / Math.tan(3 * DEG), 9);
  });
});
