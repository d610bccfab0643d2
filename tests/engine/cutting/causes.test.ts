/** What may be behind trials that clash: by Bayes’ rule in closed form for one cone, and what each promises. */
import { expect, test } from 'vitest';
import { fit as solveFit } from '../../../src/engine/contact/fit.ts';
import { causesOf } from '../../../src/engine/cutting/causes.ts';
import { type Trial, trialsOf } from '../../../src/engine/cutting/trial.ts';
import { withStock } from '../../../src/engine/parts/stock.ts';
import { evenDoubt, pair, rad, UM } from './pairs.ts';

const DOUBT = 5 * UM;
const SIGMA = 1 * UM;
const seats = [pair(0.0164, 0.008)[1]!];
const bare: Trial = { taken: [], thickness: 2 * UM };
const home = solveFit(seats, 0).firstPosition!;

/** A touch as expected, then so much (m) told off the journal, and how much of it (m) came off indeed. */
function cutThenRead(told: number, off: number, sigma: number): Trial[] {
  const cut = [{ ...seats[0]!, journal: withStock(seats[0]!.journal, 'journal', off) }];
  return [
    { ...bare, standOff: { value: home, sigma: SIGMA } },
    {
      ...bare,
      taken: [{ seat: 0, part: 'journal', normal: told, sigma }],
      standOff: { value: solveFit(cut, 0).firstPosition!, sigma: SIGMA },
    },
  ];
}

/** Density of two numbers that are normal about nought. */
function density([a, b]: readonly [number, number], [aa, ab, bb]: readonly [number, number, number]): number {
  const det = aa * bb - ab * ab;
  const squares = (bb * a * a - 2 * ab * a * b + aa * b * b) / det;
  return Math.exp(-squares / 2) / (2 * Math.PI * Math.sqrt(det));
}

test('of one cone the chances are those of Bayes’ rule in closed form', () => {
  for (const [told, off, sigma] of [
    [20, 6, 3],
    [20, 9, 3],
    [15, 28, 2],
    [40, 10, 4],
  ].map((row) => row.map((um) => um * UM)) as [number, number, number][]) {
    const trials = cutThenRead(told, off, sigma);
    const gain = 1 / Math.sin(rad(45)) ** 2;
    const missed = (told - off) / Math.sin(rad(45));
    const of = ({ first = SIGMA, second = SIGMA, metal = sigma, parts = DOUBT }) =>
      density(
        [0, missed],
        [parts ** 2 * gain + first ** 2, parts ** 2 * gain, (parts ** 2 + metal ** 2) * gain + second ** 2],
      );
    const weights = {
      none: 0.94 * of({}),
      taken: 0.02 * of({ metal: told / 2 }),
      first: 0.01 * of({ first: 100 * UM }),
      second: 0.01 * of({ second: 100 * UM }),
      parts: 0.02 * of({ parts: 4 * DOUBT }),
    };
    const whole = Object.values(weights).reduce((a, b) => a + b, 0);
    const causes = causesOf({ input: { seats }, trials, before: evenDoubt(1, DOUBT) });
    const chance = (which: keyof typeof weights) => weights[which] / whole;
    const [most] = causes;
    expect(most!.doubted).toEqual({ trial: 1, of: 'taken', place: 0 });
    expect(most!.chance).toBeCloseTo(chance('taken'), 6);
    for (const { doubted, chance: told } of causes.slice(1)) {
      if (!('what' in doubted)) throw new Error('neither the parts nor other metal explain it');
      expect(told).toBeCloseTo(chance(doubted.trial === 0 ? 'first' : 'second'), 6);
    }
    // It leans on the dial no more than the reading is sure.
    expect(Math.abs(most!.likely! - off)).toBeLessThan(Math.abs(told - off) / 20);
  }
});

test('as told it clashes; with the doubt that would do all goes together', () => {
  const [told, sigma] = [20 * UM, 3 * UM];
  const trials = cutThenRead(told, 4 * UM, sigma);
  const before = evenDoubt(1, DOUBT);
  const [most] = causesOf({ input: { seats }, trials, before });
  const known = (to: number) => {
    const [first, second] = trials as [Trial, Trial];
    const last = trialsOf({ seats }, [first, { ...second, taken: [{ ...second.taken[0]!, sigma: to }] }], before).at(
      -1,
    )!;
    return last.status === 'updated' && last.clashes.length === 0;
  };
  expect(known(sigma)).toBe(false);
  expect(known(most!.enough!)).toBe(true);
  expect(most!.enough!).toBeLessThan(told / 2 + 1e-12);
});

test('what goes together has no cause, and neither has what nothing told explains', () => {
  expect(
    causesOf({ input: { seats }, trials: cutThenRead(20 * UM, 19 * UM, 3 * UM), before: evenDoubt(1, DOUBT) }),
  ).toEqual([]);
  // Two touches far from each other with nothing off between them: one of the two was misread, and both alike.
  const read = (value: number): Trial => ({ ...bare, standOff: { value, sigma: SIGMA } });
  const causes = causesOf({
    input: { seats },
    trials: [read(home), read(home - 30 * UM)],
    before: evenDoubt(1, 30 * UM),
  });
  expect(causes.map(({ doubted }) => doubted)).toEqual(
    expect.arrayContaining([
      { trial: 0, what: 'standOff' },
      { trial: 1, what: 'standOff' },
    ]),
  );
  expect(causes.map(({ likely }) => Math.round(likely! / UM)).sort((a, b) => a - b)).toEqual(
    [home - 30 * UM, home].map((m) => Math.round(m / UM)).sort((a, b) => a - b),
  );
  expect(causes.every(({ enough }) => enough === null)).toBe(true);
});
