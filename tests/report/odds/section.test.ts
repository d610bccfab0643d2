/** The odds in the report, against closed forms of pairs simple enough to have them. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { twoSidedTail } from '../../../src/engine/belief/distributions.ts';
import { takenSigma } from '../../../src/report/cut/metalDoubt.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { type OddsReport, oddsReport } from '../../../src/report/odds/definition.ts';
import { oddsSection, oddsTold } from '../../../src/report/odds/section.ts';
import { oddsWork } from '../../../src/report/odds/work.ts';

const demo = (name: string): Design =>
  JSON.parse(readFileSync(new URL(`../../../assets/designs/${name}.conepair.json`, import.meta.url), 'utf8')) as Design;
const radians = (angle: number) => (angle * Math.PI) / 180;
const line = (halfAngle: number, diameter: number, from: number, to: number) => ({
  halfAngle,
  diameter,
  station: 0,
  from,
  to,
});
/** Chance that a normal quantity about nothing lies within ± `band`. */
const within = (band: number, sd: number) => 1 - twoSidedTail(band / sd);
const ended = (design: Design): OddsReport => {
  const work = oddsWork(design);
  for (;;) {
    const next = work.next();
    if (next.done) return next.value!;
  }
};

/** One cone of 30°, its bush larger by 10 µm: a film of 5·cos 30° µm at position 0. */
const FILM = 0.005 * Math.cos(radians(30));
const oneCone = (spread: NonNullable<Design['odds']>['spread']): Design => ({
  conepair: 1,
  seats: [
    {
      name: 'cone',
      journal: line(30, 20, -10, 0),
      bush: line(30, 20.01, -9, -1),
      film: { target: FILM, tolerance: 0.001 },
    },
  ],
  odds: { spread: spread! },
});

describe('one cone', () => {
  const sigma = 0.002;
  const design = oneCone([{ seat: 'cone', part: 'journal', of: 'diameter', sigma }]);
  const odds = oddsSection(design)!;
  const sd = (sigma / 2) * Math.cos(radians(30));

  it('its film is spread as half the diameter, along the normal', () => {
    const film = odds.films.cone!;
    expect(film.mean).toBeCloseTo(FILM, 6);
    expect(film.sd / sd).toBeCloseTo(1, 2);
    expect(film.p05).toBeCloseTo(FILM - 1.6449 * sd, 4.5);
    expect(film.p95).toBeCloseTo(FILM + 1.6449 * sd, 4.5);
    expect(oddsReport.safeParse(JSON.parse(JSON.stringify(odds))).success).toBe(true);
  });

  it('is in its band as often as a normal quantity is, and always where it may be set', () => {
    const chance = within(0.001, sd);
    expect(Math.abs(odds.inBand.cone! - chance)).toBeLessThan(0.003);
    expect(odds.inBand.all).toBe(odds.inBand.cone);
    expect(odds.limits.inBand.all!.low).toBeLessThan(chance);
    expect(odds.limits.inBand.all!.high).toBeGreaterThan(chance);
    expect(odds.best.inBand.all).toBe(1);
    expect(odds.best.position!.sd / (sigma / 2 / Math.tan(radians(30)))).toBeCloseTo(1, 2);
    expect(odds.first).toEqual({ cone: 1 });
    expect(odds.selfHolding).toBe(0);
  });

  it('an even spread ends at √3 of its deviation', () => {
    const even = oddsSection(
      oneCone([{ seat: 'cone', part: 'journal', of: 'diameter', sigma, shape: 'rectangular' }]),
    )!;
    // Uniform: half the band over √3 of the deviation.
    expect(even.inBand.all).toBeCloseTo(0.001 / (Math.sqrt(3) * sd), 2);
    expect(even.films.cone!.sd / sd).toBeCloseTo(1, 2);
  });

  it('shares are those of the squares, each with what goes with it', () => {
    const { sensitivity, method, of } = oddsSection(
      oneCone([
        { seat: 'cone', part: 'journal', of: 'diameter', sigma: 0.002 },
        { seat: 'cone', part: 'bush', of: 'diameter', sigma: 0.001 },
        { seat: 'cone', part: 'bush', of: 'diameter', sigma: 0.001 },
        { seat: 'cone', part: 'bush', of: 'station', sigma: 0.001 },
      ]),
    )!;
    // Radius: cos a of it is film; station: sin a. The same number twice is told once.
    const parts = [1 * 0.75, 2 * 0.25 * 0.75, 1 * 0.25];
    const all = parts.reduce((a, b) => a + b);
    expect(of).toEqual({ quantity: 'film', seat: 'cone' });
    expect(method).toBe('linear');
    expect(sensitivity.map((s) => `${s.part} ${s.of}`)).toEqual(['journal diameter', 'bush diameter', 'bush station']);
    for (const [i, { share }] of sensitivity.entries()) expect(share).toBeCloseTo(parts[i]! / all, 5);
  });

  it('a steep cone never holds by itself, a slow one where its tangent is within the friction', () => {
    const slow = { ...design, friction: 0.7 };
    expect(oddsSection(slow)!.selfHolding).toBe(1);
  });
});

const plain = demo('steep-first');

describe('a double cone', () => {
  /** Nothing in doubt but where the steep bush stands: σ of the relation is σ of its station. */
  const SIGMA = 0.012;
  const design: Design = {
    ...plain,
    cut: { ...plain.cut!, machine: { ...plain.cut!.machine, division: 0.001 } },
    odds: { spread: [{ seat: 'steep', part: 'bush', of: 'station', sigma: SIGMA }] },
  };
  /** Films within ± 0.5 µm: the two positions may be so far apart. */
  const allowance = 0.0005 / Math.sin(radians(3)) + 0.0005 / Math.sin(radians(45));
  const [step] = cutSection(design)!.steps;
  const dial = takenSigma(design.cut!, step!.normal, 45) / Math.sin(radians(45));
  const odds = ended(design);

  it('as planned: the doubt of the relation and of the dial together', () => {
    expect(cutSection(design)!.steps.length).toBe(1);
    const sd = Math.hypot(SIGMA, dial);
    expect(Math.abs(odds.planned!.best.inBand.all! - within(allowance, sd))).toBeLessThan(0.006);
    expect(odds.planned!.method).toBe('linear');
    expect(odds.planned!.sensitivity.map(({ of }) => of)).toEqual(['station', 'stock']);
    expect(odds.planned!.sensitivity[1]!.share).toBeCloseTo((dial / sd) ** 2, 3);
    expect(odds.best.inBand.all).toBe(0);
    // Shallow first where the steep one gives way by more than their films are apart along the axis.
    const apart = 0.0025 / Math.sin(radians(3)) - 0.0025 / Math.sin(radians(45));
    expect(Math.abs(odds.planned!.first.shallow! - twoSidedTail(apart / sd) / 2)).toBeLessThan(3e-4);
    expect(odds.planned!.first.steep! + odds.planned!.first.shallow!).toBeCloseTo(1, 12);
  });

  it('what to hold to: both, as far as leaves the allowance 1 time in 20', () => {
    const [measuring, cutting] = odds.hold!.inputs;
    expect(measuring!.numbers).toMatchObject([{ of: 'station', now: expect.closeTo(SIGMA, 9) }]);
    expect(cutting!.numbers).toMatchObject([
      { of: 'stock', now: expect.closeTo(takenSigma(design.cut!, step!.normal, 45), 9) },
    ]);
    const sd = Math.hypot(SIGMA * measuring!.multiplier, dial * cutting!.multiplier);
    expect(Math.abs(within(allowance, sd) - 0.95)).toBeLessThan(0.02);
    // Least Σ 1/m: each in proportion to the third root of its part of the variance.
    expect(cutting!.multiplier / measuring!.multiplier).toBeCloseTo((SIGMA / dial) ** (2 / 3), 0);
  });

  it('halving each in turn gains as the closed form has it', () => {
    const [measuring, cutting] = odds.planned!.gains;
    expect(measuring!.by).toBe('measuring');
    expect(Math.abs(measuring!.share - within(allowance, Math.hypot(SIGMA / 2, dial)))).toBeLessThan(0.015);
    expect(cutting!.by).toBe('cutting');
    expect(Math.abs(cutting!.share - within(allowance, Math.hypot(SIGMA, dial / 2)))).toBeLessThan(0.015);
  });

  it('a trial first: the relation is then known to the stand-off', () => {
    const { share, low, high, sigma, trials } = odds.trialFirst!;
    expect(sigma).toBe(0.001);
    expect(trials).toBe(24);
    const after = Math.hypot(1 / Math.hypot(1 / SIGMA, 1 / sigma), dial);
    expect(Math.abs(share - within(allowance, after))).toBeLessThan(0.025);
    expect(low).toBeLessThan(share);
    expect(high).toBeGreaterThan(share);
  });

  it('the same seed gives the same, another another; the section is the work without its trial', () => {
    const { trialFirst: _, hold: __, ...rest } = odds;
    expect(oddsSection(design)).toEqual(rest);
    const other = oddsSection({ ...design, odds: { ...design.odds, seed: 2 } })!;
    expect(other.planned!.best.inBand.all).not.toBe(rest.planned!.best.inBand.all);
    expect(Math.abs(other.planned!.best.inBand.all! - rest.planned!.best.inBand.all!)).toBeLessThan(0.01);
  });

  it('points come block by block, and each is a report', () => {
    const work = oddsWork({ ...design, odds: { ...design.odds, draws: 10_000 } }, false);
    const points = [...{ [Symbol.iterator]: () => work }];
    expect([...new Set(points.map(({ stage }) => stage))]).toEqual(['now', 'planned', 'matters']);
    for (const { report } of points)
      expect(oddsReport.safeParse(JSON.parse(JSON.stringify(report))).success).toBe(true);
    const pictured = points.find(({ pictures }) => pictures?.planned)!.pictures!.planned!;
    expect(pictured.pairs.length).toBe(100);
    for (const { best } of pictured.films)
      expect(best!.shares.reduce((a, b) => a + b, best!.below + best!.above + best!.touching)).toBeCloseTo(1, 9);
  });

  it('where each pair is set at its best, one that only touches is counted as that and never as pressed in', () => {
    // So wrong to each other that hardly a pair has both films: most are set where the first touches.
    const [point] = [...oddsWork(demo('steep-first'), false)].filter(({ pictures }) => pictures?.now);
    const films = point!.pictures!.now!.films.map(({ best }) => best!);
    for (const { from, step, shares, below } of films) {
      const pressed = shares.reduce((sum, share, i) => (from + step * (i + 0.5) < 0 ? sum + share : sum), below);
      expect(pressed).toBe(0);
    }
    expect(Math.max(...films.map(({ touching }) => touching))).toBeGreaterThan(0.5);
  });
});

describe('what is drawn from', () => {
  it('is asked for by the design; without any doubt stated the default is, and is named', () => {
    expect(oddsSection(plain)).toBeUndefined();
    const odds = oddsTold(plain)!;
    expect(odds.from).toBe('drawing');
    expect(odds.assumed.length).toBe(8);
    expect(odds.films.shallow!.sd).toBeCloseTo(0.005, 3.5);
    const wider = oddsTold({ ...plain, cut: { ...plain.cut!, doubt: 0.01 } })!;
    expect(wider.films.shallow!.sd / odds.films.shallow!.sd).toBeCloseTo(2, 1);
  });

  it('is the readings where there are any, or the drawing where that is asked for', () => {
    const notebook = demo('notebook');
    const read = oddsTold(notebook)!;
    expect(read.from).toBe('belief');
    expect(read.assumed).toEqual([]);
    expect(read.films.shallow!.sd).toBeLessThan(0.001);
    const drawn = oddsTold({ ...notebook, odds: { from: 'drawing' } })!;
    expect(drawn.from).toBe('drawing');
    expect(drawn.films.shallow!.sd).toBeGreaterThan(0.004);
  });

  it('is what trials leave of it, counted as so many pairs', () => {
    const tried: Design = {
      ...plain,
      cut: {
        ...plain.cut!,
        trials: [{ standOff: { value: -0.004, sigma: 0.001 }, blue: [{ seat: 'steep', prints: true }] }],
      },
    };
    const odds = oddsTold(tried)!;
    expect(odds.from).toBe('belief');
    expect(odds.effective!).toBeGreaterThan(50);
    expect(odds.first.steep).toBeGreaterThan(0.95);
    // The stand-off tells the steep film to itself.
    expect(odds.films.steep!.sd).toBeLessThan(0.0025);
    expect(odds.films.shallow!.sd).toBeGreaterThan(0.0025);
    expect(odds.planned!.sensitivity.length).toBeGreaterThan(0);
  });
});
