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

/** m: where the journal touches with so much off it. */
const touchAfter = (off: number): number =>
  solveFit([{ ...seats[0]!, journal: withStock(seats[0]!.journal, 'journal', off) }], 0).firstPosition!;

/** A touch as expected, then so much (m) told off the journal, and how much of it (m) came off indeed. */
function cutThenRead(told: number, off: number, sigma: number): Trial[] {
  return [
    { ...bare, standOff: { value: home, sigma: SIGMA } },
    {
      ...bare,
      taken: [{ seat: 0, part: 'journal', normal: told, sigma }],
      standOff: { value: touchAfter(off), sigma: SIGMA },
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
    const of = ({
      first = SIGMA,
      second = SIGMA,
      metal = sigma,
      parts = DOUBT,
      meant = told,
      read = home,
      later = touchAfter(off),
    }) =>
      density(
        [read - home, later - touchAfter(meant)],
        [parts ** 2 * gain + first ** 2, parts ** 2 * gain, (parts ** 2 + metal ** 2) * gain + second ** 2],
      );
    const across = 2 / Math.cos(rad(45));
    const ofMetal = (kind: string, prior: number, times: number): [string, number] => [
      `${kind} ${times.toFixed(3)}`,
      prior * of({ meant: times * told, metal: Math.hypot(sigma, 0.05 * times * told) }),
    ];
    // What is read is read τ times as densely where τ times as much was meant.
    const ofRead = (kind: string, prior: number, times: number): [string, number][] => [
      [`${kind} ${times.toFixed(3)} first`, prior * Math.abs(times) * of({ read: times * home })],
      [`${kind} ${times.toFixed(3)} second`, prior * Math.abs(times) * of({ later: times * touchAfter(off) })],
    ];
    const weights = Object.fromEntries<number>([
      ['none', 0.878 * of({})],
      ['taken', 0.02 * of({ metal: told / 2 })],
      ['first', 0.01 * of({ first: 100 * UM })],
      ['second', 0.01 * of({ second: 100 * UM })],
      ['parts', 0.02 * of({ parts: 4 * DOUBT })],
      ...[10, 0.1].map((times) => ofMetal('ten', 0.005, times)),
      ...[25.4, 1 / 25.4].map((times) => ofMetal('inch', 0.002, times)),
      ...[across, 1 / across].map((times) => ofMetal('diameter', 0.005, times)),
      ...[10, 0.1].flatMap((times) => ofRead('ten', 0.005, times)),
      ...[25.4, 1 / 25.4].flatMap((times) => ofRead('inch', 0.002, times)),
      ...ofRead('sign', 0.005, -1),
    ]);
    const whole = Object.values(weights).reduce((a, b) => a + b, 0);
    const causes = causesOf({ input: { seats }, trials, before: evenDoubt(1, DOUBT) });
    const chance = (which: string) => weights[which]! / whole;
    const nameOf = ({ doubted }: (typeof causes)[number]): string => {
      const slip = 'times' in doubted ? `${doubted.kind} ${doubted.times.toFixed(3)}` : '';
      if (!('what' in doubted)) return slip || (doubted.of === 'parts' ? 'parts' : 'taken');
      return `${slip} ${doubted.trial === 0 ? 'first' : 'second'}`.trim();
    };
    for (const cause of causes) expect(cause.chance).toBeCloseTo(chance(nameOf(cause)), 6);
    const likelyOnes = Object.keys(weights).filter(
      (name) => name !== 'none' && name !== 'parts' && chance(name) > 0.05,
    );
    // Some that are likely enough would still leave the rest apart, and are none.
    expect(likelyOnes).toEqual(expect.arrayContaining(causes.map(nameOf).filter((name) => name !== 'parts')));
    expect(causes.map(nameOf)).toContain('taken');
    const most = causes.find((cause) => nameOf(cause) === 'taken');
    // It leans on the dial no more than the reading is sure.
    expect(Math.abs(most!.likely! - off)).toBeLessThan(Math.abs(told - off) / 20);
  }
});

test('a point in the wrong place is named as such, with what was meant, either way', () => {
  for (const [told, off] of [
    [4.2, 42],
    [3, 31],
    [60, 6.3],
  ].map((row) => row.map((um) => um * UM)) as [number, number][]) {
    const trials = cutThenRead(told, off, Math.hypot(0.05 * told, 1.2 * UM));
    const [most] = causesOf({ input: { seats }, trials, before: evenDoubt(1, DOUBT) });
    const times = off > told ? 10 : 0.1;
    expect(most!.doubted).toEqual({ trial: 1, of: 'taken', place: 0, kind: 'ten', times });
    expect(most!.likely).toBeCloseTo(times * told, 12);
    expect(most!.chance).toBeGreaterThan(0.5);
    expect(most!.enough).toBeNull();
  }
});

test('as told it clashes; with the doubt that would do all goes together', () => {
  const [told, sigma] = [20 * UM, 3 * UM];
  const trials = cutThenRead(told, 4 * UM, sigma);
  const before = evenDoubt(1, DOUBT);
  // A fifth of what was told may be a slip of ten as well: of the doubt that would do the other is asked.
  const most = causesOf({ input: { seats }, trials, before }).find((cause) => cause.enough !== null);
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
    trials: [read(home), read(home + 30 * UM)],
    before: evenDoubt(1, 30 * UM),
  });
  expect(causes.map(({ doubted }) => doubted)).toEqual(
    expect.arrayContaining([
      { trial: 0, what: 'standOff' },
      { trial: 1, what: 'standOff' },
    ]),
  );
  expect(causes.map(({ likely }) => Math.round(likely! / UM)).sort((a, b) => a - b)).toEqual(
    [home + 30 * UM, home].map((m) => Math.round(m / UM)).sort((a, b) => a - b),
  );
  expect(causes.every(({ enough }) => enough === null)).toBe(true);
});
