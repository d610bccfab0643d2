/** What would make the plan surer, told before it is done. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import type { CauseReport } from '../../../src/report/cut/causes.ts';
import { likelierText } from '../../../src/report/cut/causeWords.ts';
import { cutNow } from '../../../src/report/cut/now.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { worthSentence } from '../../../src/report/cut/worthText.ts';

const read = (path: string) => JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8')) as Design;
const base = read('../../../assets/designs/steep-first.conepair.json');
const cut = cutSection(base)!;

describe('before any trial', () => {
  it('is of the step that is least sure, beside what the dial takes it off to', () => {
    const { worth } = cut;
    expect(worth).toMatchObject({ seat: 'steep', part: 'journal', sigma: cut.steps[0]!.sigma });
    // a twentieth of the stock and half a division
    expect(worth!.cutting).toBeCloseTo(Math.hypot(0.05 * cut.steps[0]!.normal, 0.0025 * Math.cos(Math.PI / 4)), 3);
    expect(worth!.trial).toBeLessThan(0.85 * worth!.sigma);
  });

  it('the shake of the nose tells most: it leans on the shallow film, which the stock follows 13.5 times', () => {
    const { reading } = cut.worth!;
    expect(reading!.reading.kind).toBe('shake');
    expect(reading!.sigma).toBeLessThan(0.4 * cut.worth!.sigma);
    expect(worthSentence(cut, 'metric')).toMatch(
      /^What is to come off the steep journal is known to ± 1\d\d µm: the shake, read at the nose with the journal held at \d+\.\d µm, would bring that to ± \d\d µm on average(, 1 time in 4 below ± \d+(\.\d)? µm)?, a trial assembly with its blue looked at to ± \d+ µm on average(, 1 time in 4 below ± \d+(\.\d)? µm)?; counted off the dial in one go, spring and wear of the wheel in it, it comes off to ± 7\.7 µm\.$/,
    );
    expect(worthSentence(cut, 'inch')).toMatch(/ tenths: /);
    expect(worthSentence({}, 'metric')).toBe('');
  });

  it('the set-up that is advised can be typed into the notebook as it stands', () => {
    const design = { ...base, readings: [cut.worth!.reading!.reading] };
    expect(validateDesign(design)).toMatchObject({ ok: true });
  });
});

it('after it was read the stock is as sure as was foretold', () => {
  const { reading, sigma } = cut.worth!.reading!;
  const { value, indicator, position, direction } = reading as { [key: string]: unknown } & { value: number };
  const shake = { value, sigma: 0.002, indicator, position, direction } as { value: number; sigma: number } & {
    indicator: number;
    position: number;
    direction: number;
  };
  const then = cutSection({ ...base, cut: { ...base.cut!, trials: [{ shake }] } })!;
  expect(then.remaining!.steps[0]!.sigma / sigma).toBeGreaterThan(0.6);
  expect(then.remaining!.steps[0]!.sigma / sigma).toBeLessThan(1.6);
});

it('while readings clash nothing is told of it', () => {
  const clashing = read('../../regressions/trial-clashes.conepair.json');
  expect(cutSection(clashing)!.worth).toBeUndefined();
});

it('where nothing stops the journal no trial is told of, and no shake beside its touch', () => {
  const journal = { halfAngle: 0, diameter: 20, station: 0, from: -20, to: 0 };
  const straight: Design = {
    conepair: 1,
    seats: [
      { name: 'a', journal, bush: { ...journal, diameter: 20.002 }, film: { target: 0.0025, tolerance: 0.0005 } },
    ],
    cut: { allow: [{ seat: 'a', part: 'journal', limit: 0.05 }] },
  };
  const told = cutSection(straight)!;
  expect(told.steps).toHaveLength(1);
  expect(told.worth).toMatchObject({
    seat: 'a',
    part: 'journal',
    trial: null,
    reading: { reading: { kind: 'diameter' } },
  });
  expect(worthSentence(told, 'metric')).not.toMatch(/trial|blue/);
});

describe('the shake, before a trial and after', () => {
  const trial = {
    standOff: { value: -0.004, sigma: 0.001 },
    blue: [
      { seat: 'steep', prints: true },
      { seat: 'shallow', prints: false },
    ],
  };
  const tried = (more: object) => cutSection({ ...base, cut: { ...base.cut!, trials: [{ ...trial, ...more }] } })!;

  it('is held where the shallow seat alone stops it: a trial that agrees takes none of what it tells', () => {
    const [before, then] = [cut.worth!.reading!, tried({}).worth!.reading!];
    expect(then.reading.kind).toBe('shake');
    expect(then.again).toBe(false);
    expect(then.sigma / before.sigma).toBeGreaterThan(0.7);
    expect(then.sigma / before.sigma).toBeLessThan(1.2);
  });

  it('read at a trial it is asked for once more, at the place where it tells more', () => {
    const shake = { value: 0.0652, sigma: 0.001, indicator: 30, position: 0.01, direction: 0 };
    const { worth } = tried({ shake: { ...shake, value: 0.0276, position: 0.0085 } });
    expect(worth!.reading!.reading.kind).toBe('shake');
    expect(worth!.reading!.again).toBe(true);
    expect(worthSentence({ worth }, 'metric')).toMatch(/once more, with the journal held at/);
  });
});

it('after a shake at the nose the same at the rear end is what tells more of a pair without gauges', () => {
  const only: Design = { ...base, cut: { ...base.cut!, allow: [{ seat: 'steep', part: 'journal', limit: 0.5 }] } };
  const shaken = (indicator: number): Design => ({
    ...only,
    cut: {
      ...only.cut!,
      trials: [
        {
          standOff: { value: -0.0086, sigma: 0.001 },
          shake: { value: 0.1135, sigma: 0.001, indicator, position: 0.214, direction: 0 },
          blue: [{ seat: 'shallow', prints: false }],
        },
      ],
    },
  });
  const { sigma, reading } = cutSection(shaken(30))!.worth!;
  expect(reading).toMatchObject({ rear: true, again: false, reading: { kind: 'shake', indicator: -26 } });
  expect(reading!.sigma).toBeLessThan(0.8 * sigma);
  expect(worthSentence({ worth: cutSection(shaken(30))!.worth }, 'metric')).toMatch(
    /the shake, read at the rear end \(indicator at −26\.000 mm\) with the journal held at /,
  );
});

it('no dead end: a reading that promises only a little is asked for where nothing else promises more', () => {
  const trials = [
    {
      standOff: { value: -0.0053, sigma: 0.001 },
      shake: { value: 0.1209, sigma: 0.001, indicator: 30, position: 0.214, direction: 0 },
      blue: [
        { seat: 'shallow', prints: false },
        { seat: 'steep', prints: true },
      ],
    },
  ];
  const tried = cutSection({ ...base, cut: { ...base.cut!, trials } })!;
  const { sigma, reading } = tried.worth!;
  expect(reading!.sigma).toBeGreaterThan(0.8 * sigma);
  expect(cutNow(tried, { mustNotRun: false }, 'metric')).toMatch(
    /^First read the shake at the rear end \(indicator at −26\.000 mm\).*; safe now: [\d.]+ µm off the steep journal\.$/,
  );
  // What spreads between limits is not said to be known to either side.
  expect(worthSentence(tried, 'metric')).toMatch(
    /^What is to come off the steep journal spreads by ± \d+ µm: the shake, read/,
  );
  const nothing = { ...tried, worth: { ...tried.worth!, trial: sigma, reading: { ...reading!, sigma: 0.99 * sigma } } };
  expect(worthSentence(nothing, 'metric')).toMatch(
    /neither a stand-off with blue nor a further reading makes that much/,
  );
});

it('where another thing is most likely wrong than the reading that stands out, that leads', () => {
  const cause = { what: 'taken', trial: 4, seat: 'steep', part: 'journal', told: 0.0076, likely: 0.0015, enough: null };
  const told = (chance: number, what = 'standOff') =>
    likelierText([{ ...cause, chance } as CauseReport], { what, trial: 4 }, 'metric');
  expect(told(0.9)).toBe(
    'Most likely less came off the steep journal before trial 4 than typed, 1.50 µm in place of 7.60 µm (90 in 100): see to that first.',
  );
  expect(told(0.4)).toBeNull();
  expect(told(0.9, 'taken')).toBeNull();
  expect(likelierText([], { what: 'standOff', trial: 4 }, 'metric')).toBeNull();
});
