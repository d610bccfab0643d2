/** After trials: one advice for Cut and Odds, what is safe taken as done, what is left drawn as it is believed. */
import { readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import { writingOf } from '../../../src/app/screens/cut/ToTheTrial.tsx';
import type { Design } from '../../../src/design/definition.ts';
import { validateDesign } from '../../../src/design/validate.ts';
import { lookBefore, lookSentence } from '../../../src/report/cut/advice.ts';
import { withToldSafe } from '../../../src/report/cut/beyondSafe.ts';
import type { CutReport } from '../../../src/report/cut/definition.ts';
import { leftShown } from '../../../src/report/cut/leftShown.ts';
import { cutNow } from '../../../src/report/cut/now.ts';
import { safePart } from '../../../src/report/cut/safePart.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { designWithCut } from '../../../src/report/cut/withCut.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { oddsTold } from '../../../src/report/odds/section.ts';
import { oddsVerdict } from '../../../src/report/odds/words.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 600_000 });

const url = new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url);
const base = JSON.parse(readFileSync(url, 'utf8')) as Design;
const blue = [
  { seat: 'shallow', prints: false },
  { seat: 'steep', prints: true },
];
const shake = { value: 0.0276, sigma: 0.001, indicator: 30, position: 0.008, direction: 0 };
const trials = [
  { standOff: { value: -0.0016, sigma: 0.001 }, shake, blue },
  {
    taken: [{ seat: 'steep', part: 'journal' as const, normal: 0.03 }],
    standOff: { value: -0.044, sigma: 0.001 },
    blue,
  },
];
const tried: Design = { ...base, odds: { draws: 2000 }, cut: { ...base.cut!, trials } };
const cut = cutSection(tried)!;
const knows = { guessed: false, mustNotRun: false };
const withSafe = (safe: number): CutReport => ({
  ...cut,
  remaining: { ...cut.remaining!, steps: cut.remaining!.steps.map((step) => ({ ...step, safe })) },
});

describe('what to look at before metal comes off', () => {
  it('is what the first line of Cut says, and Odds says no other', () => {
    const look = lookBefore(cut, 'metric')!;
    expect(look).toMatchObject({
      when: 'first',
      doing: expect.stringMatching(/^read the shake at the rear end \(indicator at −26\.000 mm\)/),
    });
    expect(cutNow(cut, knows, 'metric')).toContain(look.doing);
    const report = oddsTold(tried)!;
    const told = oddsVerdict(tried, report, 'metric', lookSentence(cut, 'metric'));
    const all = [told.headline, ...told.sentences].join(' ');
    expect(lookSentence(cut, 'metric')).toContain(look.doing);
    expect(all).not.toMatch(/Measure first|Measure all|try it after/);
    // Where Cut has nothing to say Odds advises by itself.
    const alone = oddsVerdict(tried, report, 'metric');
    expect([alone.headline, ...alone.sentences].join(' ')).toMatch(/Measure /);
  });

  it('follows what is safe: nothing once most of it is, another trial where part of it is', () => {
    const { normal } = cut.remaining!.steps[0]!;
    expect(lookBefore(withSafe(normal), 'metric')).toBeNull();
    expect(lookBefore(withSafe(0.5 * normal), 'metric')).toMatchObject({ when: 'then' });
    expect(cutNow(withSafe(0.5 * normal), knows, 'metric')).toMatch(/then try again/);
    expect(lookBefore(withSafe(0), 'metric')).toMatchObject({ when: 'first' });
    expect(lookBefore({ ...cut, notAsRead: 'contradict' }, 'metric')).toBeNull();
  });

  it('before any trial is a trial, with the shake where that tells most, on both', () => {
    const report = cutSection(base)!;
    expect(lookBefore(report, 'metric')).toMatchObject({
      when: 'first',
      way: { reading: { reading: { kind: 'shake' } } },
    });
    expect(cutNow(report, knows, 'metric')).toMatch(/^A trial with its shake first/);
    expect(lookSentence(report, 'metric')).toMatch(
      /^Before anything is cut, assemble for a trial and read the shake at the nose/,
    );
  });
});

describe('a shake that is asked for', () => {
  const asked = lookBefore(cut, 'metric')!.way!.reading!.reading;
  it('is added to the last trial, where it is to be held already written', () => {
    const { at, draft } = writingOf(cut, tried, 'metric');
    expect(at).toBe(1);
    expect(draft.standOff).toBe(-0.044);
    expect(asked.kind === 'shake' && draft.position).toBe(asked.kind === 'shake' && asked.position);
  });

  it('where that has one already, or nothing is asked, the trial is a new one', () => {
    const again: Design = { ...tried, cut: { ...tried.cut!, trials: trials.map((trial) => ({ ...trial, shake })) } };
    const { at, draft } = writingOf(cut, again, 'metric');
    expect(at).toBe('new');
    expect(draft.standOff).toBeNull();
    expect(draft.position).toBe(asked.kind === 'shake' ? asked.position : null);
    expect(writingOf(withSafe(0.5 * cut.remaining!.steps[0]!.normal), tried, 'metric')).toMatchObject({
      at: 'new',
      // Where the last shake was read.
      draft: { shake: null, position: shake.position, indicator: null },
    });
  });
});

it('what is safe is taken as done: as an entry, never more than was told, and nothing is said to be beyond it', () => {
  const told = withSafe(0.0123456789);
  const safe = safePart(told)!;
  expect(safe.taken).toEqual([{ seat: 'steep', part: 'journal', normal: 0.0123456 }]);
  const entry = withToldSafe(tried, told, safe);
  expect(entry.taken![0]!.normal).toBeLessThanOrEqual(0.0123456789);
  expect(entry.taken![0]!.safe! - entry.taken![0]!.normal).toBeLessThan(1e-6);
  const design: Design = { ...tried, cut: { ...tried.cut!, trials: [...trials, entry] } };
  expect(validateDesign(design)).toMatchObject({ ok: true });
  const then = cutSection(design)!.remaining!.steps[0]!;
  expect(Math.abs(then.normal - (cut.remaining!.steps[0]!.normal - 0.0123456))).toBeLessThan(1e-6);
  expect(safePart(withSafe(0))).toBeNull();
});

it('what is left is drawn on the parts as they are believed: its films are those that Cut tells', () => {
  const shown = leftShown(tried, cut)!;
  expect(shown.cut.steps.map(({ normal }) => normal)).toEqual(cut.remaining!.steps.map(({ normal }) => normal));
  const after = fitSection(designWithCut(shown.design, shown.cut));
  for (const { name, leastFilm } of after.seats)
    expect(Math.abs(leastFilm! - cut.remaining!.films[name]!)).toBeLessThan(1e-8);
  expect(leftShown(base, cutSection(base)!)).toBeNull();
});
