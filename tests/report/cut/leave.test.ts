/** What works as it stands is left so, by one account on Cut, Odds and Sheet; no advice makes it less likely. */
import { readFileSync } from 'node:fs';
import { describe, expect, it, vi } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { lookBefore, lookSentence } from '../../../src/report/cut/advice.ts';
import type { CutReport } from '../../../src/report/cut/definition.ts';
import { expectedTouch } from '../../../src/report/cut/expectedAtTrial.ts';
import { isLeft } from '../../../src/report/cut/leave.ts';
import { leftVerdict } from '../../../src/report/cut/leftVerdict.ts';
import { cutNow } from '../../../src/report/cut/now.ts';
import { safePart } from '../../../src/report/cut/safePart.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { oddsNow } from '../../../src/report/odds/now.ts';
import { oddsTold } from '../../../src/report/odds/section.ts';
import { oddsSentence, oddsVerdict } from '../../../src/report/odds/words.ts';
import { purposeOf } from '../../../src/report/sheet/purpose.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 600_000 });

const url = new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url);
const base = JSON.parse(readFileSync(url, 'utf8')) as Design;
type Trial = NonNullable<NonNullable<Design['cut']>['trials']>[number];

/** All but `short` (mm) of the plan off, read as expected; films wanted to within `tolerance`. */
function tried(short: number, tolerance: number, doubt: number): Design {
  const design: Design = {
    ...base,
    odds: { draws: 4000 },
    seats: base.seats.map((seat) => ({ ...seat, film: { target: 0.0025, tolerance } })),
    cut: { ...base.cut!, doubt },
  };
  const [step] = cutSection(design)!.steps as [CutReport['steps'][number]];
  const trial: Trial = { taken: [{ seat: step.seat, part: step.part, normal: step.normal - short, sigma: 0.0001 }] };
  const { value } = expectedTouch({ ...design, cut: { ...design.cut!, trials: [trial] } })!;
  return { ...design, cut: { ...design.cut!, trials: [{ ...trial, standOff: { value, sigma: 0.0002 } }] } };
}

const KNOWS = { guessed: false, mustNotRun: false };

describe('a pair that works as it stands as often as a cut could make it', () => {
  const design = tried(0.001, 0.0015, 0.0004);
  const cut = cutSection(design)!;
  const odds = oddsTold(design)!;

  it('is told to be left on Cut, Odds and Sheet, and nothing is asked to come off', () => {
    expect(cut.remaining!.steps[0]!.normal).toBeGreaterThan(0.0005);
    expect(cut.works).toMatchObject({ leave: true });
    expect(cutNow(cut, KNOWS, 'metric')).toMatch(/^Leave it: as it stands it works /);
    expect(safePart(cut)).toBeNull();
    expect(lookBefore(cut, 'metric')).toBeNull();
    const told = leftVerdict(design, cut, 'metric')!;
    expect([told.headline, ...told.sentences].join(' ')).not.toMatch(/[Tt]ake |[Ss]afe to take/);
    const purpose = purposeOf(design, cut, 'metric');
    expect(purpose.kind).toBe('parts');
    expect(purpose.headline).toMatch(/^Leave it as it stands/);
    const look = lookSentence(cut, 'metric');
    expect(look).toMatch(/leave it/);
    expect(oddsNow(design, odds, look, isLeft(cut))).toMatch(/^As it stands it works /);
    const all = oddsVerdict(design, odds, 'metric', look, true);
    expect(all.headline).toMatch(/^As it stands this pair works .*; all of it cut, /);
    expect(oddsSentence(design, odds, true)).toMatch(/as the parts are/);
  });

  it('is counted alike on both', () => {
    expect(Math.abs(cut.works!.now - odds.best.inBand.all!)).toBeLessThan(0.02);
    expect(Math.abs(cut.works!.all - odds.planned!.best.inBand.all!)).toBeLessThan(0.03);
  });
});

it('one that is out of its tolerances is not left, and what is safe makes it likelier, never less so', () => {
  for (const [short, tolerance, doubt] of [
    [0.02, 0.0015, 0.0004],
    [0.008, 0.0015, 0.001],
    [0.004, 0.0005, 0.0005],
    [0.003, 0.0005, 0.0002],
    [0.001, 0.0005, 0.001],
  ] as const) {
    const cut = cutSection(tried(short, tolerance, doubt))!;
    const { now, safe, all, leave } = cut.works!;
    expect(safe).toBeGreaterThanOrEqual(now - 0.01);
    if (short > 0.01) expect(leave).toBeUndefined();
    if (leave) expect(Math.max(safe, all)).toBeLessThan(now + 0.02);
  }
});
