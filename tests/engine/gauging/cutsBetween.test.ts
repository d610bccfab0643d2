/** Readings from before and after cuts: the estimate of the parts as they are is that of before, moved by the stock. */
import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { covarianceOf, uncertaintyOf, unit } from '../../../src/engine/belief/decomposition.ts';
import { numbersOf, type On } from '../../../src/engine/belief/unknowns.ts';
import type { SeatInput } from '../../../src/engine/contact/fit.ts';
import type { CutBetween, Since } from '../../../src/engine/gauging/cutsBetween.ts';
import type { Estimate } from '../../../src/engine/gauging/estimate.ts';
import { linearise } from '../../../src/engine/gauging/linearise.ts';
import type { Reading } from '../../../src/engine/gauging/reading.ts';
import { startingShape } from '../../../src/engine/gauging/shape.ts';
import { movedAxially } from '../../../src/engine/parts/shift.ts';
import { withStock } from '../../../src/engine/parts/stock.ts';
import {
  anyPair,
  between,
  disturbed,
  doubleCone,
  errors,
  estimated,
  noisy,
  normals,
  notebook,
  readFrom,
  UM,
} from './pairs.ts';

vi.setConfig({ testTimeout: 60_000 });

const stocks = fc.array(between(0, 60), { minLength: 4, maxLength: 4 });
const PLACES: On[] = [0, 1].flatMap((seat): On[] => [
  { seat, part: 'journal' },
  { seat, part: 'bush' },
]);

/** A stock (µm) off each surface, and metal (µm) off a spacer behind the steep bush. */
const cutsOf = (by: readonly number[], face: number, sigma: number): CutBetween[] => [
  ...PLACES.map((on, k): CutBetween => ({ of: 'surface', ...on, normal: by[k]! * UM, sigma })),
  { of: 'face', part: 'bush', seats: [1], moves: -1, normal: face * UM, sigma },
];

/** The parts after the cuts, worked out here from the definition of each. */
function after(seats: readonly SeatInput[], cuts: readonly CutBetween[]): SeatInput[] {
  const cut = seats.map((seat) => ({ ...seat }));
  for (const each of cuts) {
    if (each.of === 'surface')
      cut[each.seat]![each.part] = withStock(cut[each.seat]![each.part], each.part, each.normal);
    else
      for (const seat of each.seats)
        cut[seat]![each.part] = movedAxially(cut[seat]![each.part], each.moves * each.normal);
  }
  return cut;
}

const since = (cuts: readonly CutBetween[], sign: 1 | -1): Since[] => cuts.map((cut) => ({ cut, sign }));
const place = ({ unknowns }: Estimate, on: On, of: string) =>
  unknowns.list.findIndex((u) => u.seat === on.seat && u.part === on.part && u.of === of);
const sigmaOf = (found: Estimate, on: On, of: string) =>
  uncertaintyOf(found.decomposition, unit(found.unknowns.list.length, place(found, on, of)))!;

/** To 1e-9 mm and degrees. */
function expectSame(found: readonly SeatInput[], wanted: readonly SeatInput[]) {
  for (const { seat, part } of PLACES) {
    expect(Math.abs(found[seat]![part].halfAngle - wanted[seat]![part].halfAngle)).toBeLessThan((1e-9 * Math.PI) / 180);
    expect(Math.abs(found[seat]![part].radius - wanted[seat]![part].radius)).toBeLessThan(1e-12);
  }
}

test('readings from before a cut give the shape of before less the stock, to 1e-9 mm, however sure the stock is', () => {
  fc.assert(
    fc.property(
      anyPair,
      errors,
      stocks,
      between(-40, 40),
      fc.constantFrom(0, 2.5 * UM),
      fc.boolean(),
      fc.integer(),
      (nominal, by, taken, face, sigma, exact, seed) => {
        const truth = disturbed(nominal, by);
        const read = notebook(nominal, truth).filter((r) => 'seat' in r);
        // With noise the readings do not agree with each other, so that weights count.
        const readings = exact ? read : noisy(read, normals(seed));
        const cuts = cutsOf(taken, face, sigma);
        const list = since(cuts, -1);
        const before = estimated(nominal, readings);
        const now = estimated(
          after(nominal, cuts),
          readings.map((reading) => ({ ...reading, since: list })),
        );
        const wanted = after(before.seats, cuts);
        if (exact) expectSame(now.seats, wanted);
        expect(now.chiSquare).toBeCloseTo(before.chiSquare, 6);
        expect(now.freedom).toBe(before.freedom);
        for (const on of PLACES) {
          const cos = Math.cos(now.seats[on.seat]![on.part].halfAngle);
          // A spacer shifts the line along the axis: what it is not known by is radius too.
          const moved = on.seat === 1 && on.part === 'bush' ? sigma * Math.tan(now.seats[1]!.bush.halfAngle) : 0;
          // Where readings disagree the search ends once chi-square falls by rounding alone: within a part in 10,000 of
          // an uncertainty.
          for (const of of ['radius', 'halfAngle'] as const)
            expect(Math.abs(now.seats[on.seat]![on.part][of] - wanted[on.seat]![on.part][of])).toBeLessThan(
              1e-4 * sigmaOf(before, on, of),
            );
          expect(
            sigmaOf(now, on, 'radius') / Math.hypot(sigmaOf(before, on, 'radius'), sigma / cos, moved),
          ).toBeCloseTo(1, 6);
          expect(sigmaOf(now, on, 'halfAngle') / sigmaOf(before, on, 'halfAngle')).toBeCloseTo(1, 6);
        }
      },
    ),
    { seed: 61, numRuns: 60 },
  );
});

test('readings of both sides of a cut agree with the shape they tell, stand-off and straightness among them', () => {
  fc.assert(
    fc.property(anyPair, errors, stocks, between(-40, 40), (nominal, by, taken, face) => {
      const truth = disturbed(nominal, by);
      const cuts = cutsOf(taken, face, 2.5 * UM);
      const now = after(truth, cuts);
      const { bush } = nominal[1]!;
      const straight: Reading[] = [0.3, 0.7].map((share) => ({
        kind: 'straightness',
        seat: 1,
        part: 'bush',
        station: bush.from + share * (bush.to - bush.from),
        value: 0,
        sigma: UM,
      }));
      const old = [...notebook(nominal, truth), ...straight].map((reading) => ({ ...reading, since: since(cuts, -1) }));
      const found = estimated(after(nominal, cuts), [...old, ...notebook(after(nominal, cuts), now)]);
      expectSame(found.seats, now);
      expect(found.chiSquare).toBeLessThan(1e-8);
      expect(found.seats[1]!.bush.profile.slice(1, -1).map(([z]) => z)).toEqual(
        straight.map((r) => (r as { station: number }).station - face * UM),
      );
    }),
    { seed: 62, numRuns: 40 },
  );
});

test('metal that is off what was read, but not off the shape sought, is put on again', () => {
  const truth = disturbed(doubleCone(), [0.3, -0.7, 0.4, 0.9, -0.2, 0.1, 0.8, -0.5]);
  const cuts = cutsOf([12, 0, 30, 5], 8, UM);
  const now = after(truth, cuts);
  const readings = notebook(doubleCone(), now).map((reading) => ({ ...reading, since: since(cuts, 1) }));
  expectSame(estimated(doubleCone(), readings).seats, truth);
});

test('many readings from before one cut share its doubt: the shape is no surer than the stock', () => {
  const [journal] = PLACES as [On];
  const cuts = cutsOf([20, 0, 0, 0], 0, 2 * UM);
  const reading: Reading = { kind: 'diameter', ...journal, station: 0, value: 0, sigma: UM };
  const other: Reading = { ...reading, station: -0.02 };
  const [one, two] = [readFrom(doubleCone(), reading)[0]!, readFrom(doubleCone(), other)[0]!];
  const old = Array.from({ length: 50 }, () => [one, two]).flat();
  const found = estimated(
    after(doubleCone(), cuts),
    old.map((r) => ({ ...r, since: since([cuts[0]!], -1) })),
  );
  expect(sigmaOf(found, journal, 'radius')).toBeGreaterThan(2 * UM);
  // A reading of now tells the stock itself, and with it what the old ones told of the taper stays.
  const both = estimated(after(doubleCone(), cuts), [
    ...old.map((r) => ({ ...r, since: since([cuts[0]!], -1) })),
    readFrom(after(doubleCone(), cuts), reading)[0]!,
  ]);
  expect(sigmaOf(both, journal, 'radius')).toBeLessThan(0.6 * UM);
  const [stock, radius] = [place(both, journal, 'stock'), place(both, journal, 'radius')].map((j) =>
    unit(both.unknowns.list.length, j),
  ) as [Float64Array, Float64Array];
  expect(covarianceOf(both.decomposition, stock, radius)).toBeLessThan(0);
});

test('how a reading follows the error of a stock is the slope of what it reads', () => {
  fc.assert(
    fc.property(anyPair, errors, stocks, (nominal, by, taken) => {
      const seats = disturbed(nominal, by);
      const cuts = cutsOf(taken, 15, UM);
      const readings = notebook(nominal, seats).map((reading) => ({ ...reading, since: since(cuts, -1) }));
      const { seats: start, unknowns } = startingShape(seats, PLACES, readings);
      const numbers = numbersOf(start, unknowns);
      const problem = { start, unknowns, startNumbers: numbers, readings, priors: [] };
      const rows = linearise(problem, numbers)!.rows;
      for (const [cut, j] of unknowns.stock) {
        const at = (h: number) =>
          linearise(
            problem,
            numbers.map((x, k) => (k === j ? x + h : x)),
          )!.predictions.map(({ value }) => value!);
        const [low, high] = [at(-1e-9), at(1e-9)];
        readings.forEach((reading, i) => {
          // A stand-off may have a kink within the step.
          if (!('seat' in reading)) return;
          const slope = (high[i]! - low[i]!) / 2e-9;
          expect(Math.abs(rows[i]![j]! * reading.sigma - slope), `${reading.kind} by ${cut.of}`).toBeLessThan(
            1e-4 * Math.max(1, Math.abs(slope)),
          );
        });
      }
    }),
    { seed: 63, numRuns: 20 },
  );
});
