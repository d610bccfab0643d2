/** Cut, Fit and Odds tell one doubt of one film: that of the same pairs drawn. */
import { readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { beliefSection } from '../../../src/report/belief/section.ts';
import { beliefSentences } from '../../../src/report/belief/words.ts';
import type { CutReport } from '../../../src/report/cut/definition.ts';
import { leftVerdict } from '../../../src/report/cut/leftVerdict.ts';
import { surfaceSigma } from '../../../src/report/cut/metalDoubt.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { oddsSection } from '../../../src/report/odds/section.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 600_000 });

const url = new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url);
const base = JSON.parse(readFileSync(url, 'utf8')) as Design;
type Trial = NonNullable<NonNullable<Design['cut']>['trials']>[number];

/** Pairs drawn tell a spread to about this share of it: two hundred of them count. */
const SAMPLED = 0.06;

const steepTouches = [
  { seat: 'shallow', prints: false },
  { seat: 'steep', prints: true },
];
const first: Trial = {
  standOff: { value: -0.0016, sigma: 0.001 },
  shake: { value: 0.0276, sigma: 0.001, indicator: 30, position: 0.008, direction: 0 },
  blue: steepTouches,
};
const second: Trial = {
  taken: [{ seat: 'steep', part: 'journal', normal: 0.03 }],
  standOff: { value: -0.044, sigma: 0.001 },
  blue: steepTouches,
};
const tried = (...trials: Trial[]): Design => ({
  ...base,
  odds: { draws: 4096 },
  cut: { ...base.cut!, trials },
});

describe.each([
  ['a trial', tried({ ...first, shake: undefined } as Trial)],
  ['a trial with its shake', tried(first)],
  ['two, with a cut between', tried(first, second)],
])('after %s', (_, given) => {
  const design = JSON.parse(JSON.stringify(given)) as Design;
  const cut = cutSection(design)!;
  const belief = beliefSection(design)!;
  const last = cut.trials!.at(-1)!;

  it('Cut and Fit tell the same doubt of every film as it is now, to the last digit', () => {
    expect(last.drawn).toBe(true);
    for (const { name } of design.seats) {
      const film = belief.films[name]!;
      expect(film.off).toBe(last.films![name]!.sigma);
      // about the most likely, as it is told: the mean of the pairs lies off it
      expect(film.off! ** 2).toBeCloseTo(film.sd ** 2 + (film.mean - film.likely!) ** 2, 12);
    }
    const sentence = beliefSentences(design, belief, 'metric')[0]!;
    for (const { name } of design.seats) expect(sentence).toContain(name);
  });

  it('Odds draws the same pairs, as they are and cut as planned: no more than sampling lies between', () => {
    const odds = oddsSection(design)!;
    for (const { name } of design.seats) {
      const [now, then] = [odds.films[name]!, odds.planned!.films[name]!];
      expect(Math.abs(now.sd / belief.films[name]!.sd - 1)).toBeLessThan(SAMPLED);
      expect(odds.planned!.position).toBeCloseTo(cut.remaining!.position, 9);
      const about = Math.hypot(then.sd, then.mean - cut.remaining!.films[name]!);
      expect(Math.abs(cut.remaining!.sigmas![name]! / about - 1)).toBeLessThan(SAMPLED);
    }
  });

  it('the relation of the cones has one doubt, as what is short along the axis and as metal off the 45° cone', () => {
    const { steps, standOff } = cut.remaining!;
    expect(steps).toMatchObject([{ seat: 'steep', part: 'journal' }]);
    const axial = steps[0]!.sigma / Math.sin(Math.PI / 4);
    expect(Math.abs(standOff.sigma! / axial - 1)).toBeLessThan(0.005);
    expect(Math.abs(last.relation!.after / axial - 1)).toBeLessThan(0.005);
  });

  it('a cut adds the doubt of its dial to the film of its seat, and none to the others', () => {
    const { steps, sigmas } = cut.remaining!;
    const [step] = steps;
    const dial = surfaceSigma(design, step!.seat, step!.part, step!.normal);
    for (const { name } of design.seats) {
      const then = name === step!.seat ? Math.hypot(last.films![name]!.sigma, dial) : last.films![name]!.sigma;
      expect(Math.abs(sigmas![name]! / then - 1)).toBeLessThan(0.1);
    }
  });

  it('it is told with that doubt', () => {
    const said = leftVerdict(design, cut, 'metric')!;
    expect([said.headline, ...said.sentences].join(' ')).toMatch(
      /films are then most likely shallow 2\.5 (?:\(−[\d.]+ to [\d.]+\)|± [\d.]+) µm and steep 2\.5 ± /,
    );
  });
});

it('where a trial leaves nothing to cut, Odds tells the films where Cut does: one state, one position', () => {
  const right = JSON.parse(readFileSync(new URL('correct.conepair.json', url), 'utf8')) as Design;
  const at = fitSection(right).firstPosition!;
  const trials = [{ standOff: { value: at, sigma: 0.0002 } }];
  const allow = [{ seat: right.seats[0]!.name, part: 'journal' as const, limit: 0.05 }];
  const design: Design = { ...right, odds: { draws: 4096 }, cut: { allow, doubt: 0.0005, trials } };
  const { remaining } = cutSection(design)!;
  expect(remaining!.steps).toEqual([]);
  const odds = oddsSection(design)!;
  expect(odds.planned).toBeUndefined();
  expect(odds.setBy).toBe('plan');
  expect(odds.position).toBeCloseTo(remaining!.position, 9);
  for (const { name } of design.seats) {
    const { mean, sd } = odds.films[name]!;
    const about = Math.hypot(sd, mean - remaining!.films[name]!);
    expect(Math.abs(remaining!.sigmas![name]! / about - 1)).toBeLessThan(SAMPLED);
  }
});

it('before any trial too, where it is not known at which end a film is least', () => {
  const reading = { kind: 'diameter', seat: 'steep', part: 'journal', station: 2, value: 25.6, sigma: 0.001 } as const;
  const design: Design = { ...base, readings: [reading] };
  const [cut, belief] = [cutSection(design)!, beliefSection(design)!];
  for (const { name } of design.seats) expect(belief.films[name]!.off).toBe(cut.doubt[name]!.sigma);
  expect(belief.films.steep!.off).not.toBe(belief.films.steep!.sd);
});

it('where hardly a pair goes with what was read no doubt is told, nothing is safe and nothing is good', () => {
  const cut = cutSection(tried(first, second))!;
  const { sigmas: _, ...remaining } = cut.remaining!;
  const hardly: CutReport = { ...cut, remaining: { ...remaining, steps: [], faces: [] } };
  const said = leftVerdict(tried(first, second), hardly, 'metric')!;
  expect(said.tone).not.toBe('good');
  expect(said.sentences.join(' ')).toMatch(/not known how sure this is/);
});
