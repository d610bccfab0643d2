/** What may come off before a trial: the order of work, the first line and the sheet say the same of it. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseDesign } from '../../../src/design/parse.ts';
import { beforeTrial, surfaceBeforeTrial } from '../../../src/report/cut/beforeTrial.ts';
import type { CutReport } from '../../../src/report/cut/definition.ts';
import { leftVerdict } from '../../../src/report/cut/leftVerdict.ts';
import { cutNow } from '../../../src/report/cut/now.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { learntText } from '../../../src/report/cut/surerText.ts';
import { purposeOf } from '../../../src/report/sheet/purpose.ts';

const read = parseDesign(
  readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
if (!read.ok) throw new Error('demo');
const { design } = read;
type Trials = NonNullable<NonNullable<typeof design.cut>['trials']>;
const NONE = { guessed: false, mustNotRun: false };
const tried = (trials: Trials, doubt?: number) => ({
  ...design,
  cut: { ...design.cut!, trials, ...(doubt !== undefined && { doubt }) },
});
const wide = cutSection(design)!;
const sure = cutSection({ ...design, cut: { ...design.cut!, doubt: 1e-9 } })!;
const part = cutSection({ ...design, cut: { ...design.cut!, doubt: 0.002 } })!;
const cuts = (cut: CutReport) => cut.work.filter(({ id }) => id.startsWith('cut ')).map(({ text }) => text);

describe('before any trial', () => {
  it('nothing, part or all of it', () => {
    expect([wide, part, sure].map(beforeTrial)).toEqual(['nothing', 'part', 'all']);
    expect(surfaceBeforeTrial(wide, 'steep', 'journal')).toBe('nothing');
    expect(surfaceBeforeTrial(part, 'steep', 'journal')).toBe('part');
    expect(surfaceBeforeTrial(sure, 'steep', 'journal')).toBe('all');
  });

  it('where nothing is safe a trial is the first thing to do, on the list, in the first line and on the sheet', () => {
    expect(wide.work.slice(0, 2).map(({ id }) => id)).toEqual(['cleanFirst', 'trialFirst']);
    expect(cuts(wide)).toEqual([expect.stringMatching(/no more than a trial tells is safe/)]);
    expect(cutNow(wide, NONE, 'metric')).toMatch(/^A trial with its shake first/);
    expect(purposeOf(design, wide, 'metric').headline).toMatch(/^A trial assembly first: nothing/);
    expect(purposeOf(design, wide, 'metric').sentences[0]).toMatch(
      /^Then most likely: 76\.53 µm off the steep journal/,
    );
  });

  it('where it is, the work begins as ever', () => {
    for (const cut of [part, sure]) expect(cut.work[0]!.id).toBe('manual');
    expect(cutNow(part, NONE, 'metric')).toMatch(/^[\d.]+ µm off the steep journal, then a trial with its shake\.$/);
    expect(cutNow(sure, NONE, 'metric')).toBe('76.53 µm off the steep journal.');
  });
});

describe('after a trial', () => {
  const trial = { standOff: { value: -0.004, sigma: 0.001 } };
  const report = cutSection(tried([trial]))!;

  it('nothing safe: try again first; the advice asks for nothing that it says would tell nothing', () => {
    expect(beforeTrial(report)).toBe('nothing');
    expect(report.work[0]!.id).toBe('cleanFirst');
    const idle = { ...report, worth: { ...report.worth!, trial: report.worth!.sigma, reading: null } };
    const told = leftVerdict(design, idle, 'metric')!.sentences.join(' ');
    expect(told).toMatch(/neither a stand-off with blue nor a further reading makes that much surer/);
    expect(told).not.toMatch(/read it again|read the shake|look at the blue/);
    expect(told).toMatch(
      /Three ways are left: have the parts gauged in another way; leave them as they are; or see on Odds/,
    );
    const withSafe = (safe: number) => ({
      ...idle,
      remaining: { ...idle.remaining!, steps: idle.remaining!.steps.map((s) => ({ ...s, safe })) },
    });
    const saying = (safe: number) => leftVerdict(design, withSafe(safe), 'metric')!.sentences.join(' ');
    expect(saying(0.04)).toMatch(/Take the safe part and try again\./);
    // A sliver taken leaves as little safe as before: that goes round and round.
    expect(saying(0.01)).toMatch(
      /too little for a cut: taken and tried again, as little would be safe\. Three ways are left: have the parts gauged in another/,
    );
    expect(saying(0.01)).not.toMatch(/Take the safe part/);
  });

  it('no amount is advised whose doubt is more than itself: what is safe stands before it', () => {
    const headlineOf = (safe: number) =>
      leftVerdict(
        design,
        {
          ...report,
          remaining: { ...report.remaining!, steps: report.remaining!.steps.map((s) => ({ ...s, safe })) },
        },
        'metric',
      )!.headline;
    expect(headlineOf(0.04)).toMatch(
      /^Only 40\.00 µm off the steep journal is safe to take now: .*77 \(0 to 2\d\d\) µm .*after another trial\.$/,
    );
    expect(headlineOf(0.01)).toMatch(/^Only 10\.00 µm .*77 \(0 to 2\d\d\) µm .*; first read the shake at the nose\.$/);
    const most = {
      ...report,
      remaining: {
        ...report.remaining!,
        steps: report.remaining!.steps.map(({ limits: _, ...s }) => ({ ...s, sigma: 0.004, safe: 0.07 })),
      },
    };
    expect(leftVerdict(design, most, 'metric')!.headline).toMatch(
      /^You are 108\.2 µm short along the axis: take 76\.5 ± 7\.8 µm more off the steep journal\.$/,
    );
  });

  it('how far short it is is known as well as the metal is, seen along the axis', () => {
    const { remaining, trials } = cutSection(tried([trial], 0.001))!;
    const { standOff, steps } = remaining!;
    expect(Math.abs((standOff.sigma! * Math.SQRT1_2) / steps[0]!.sigma - 1)).toBeLessThan(0.005);
    // and so is how the cones stand to each other: one doubt, in one size wherever it stands
    expect(Math.abs((trials!.at(-1)!.relation!.after * Math.SQRT1_2) / steps[0]!.sigma - 1)).toBeLessThan(0.005);
  });

  it('each trial that tells something makes the relation surer, and says by how much', () => {
    const { before, after } = report.trials![0]!.relation!;
    expect(after).toBeLessThan(0.95 * before);
    const shake = { value: 0.04, sigma: 0.001, indicator: 30, position: 0.02, direction: 0 };
    const twice = cutSection(tried([trial, { shake }]))!.trials!;
    // Told again with the next, it is the same to the last digit.
    expect(twice[1]!.relation!.before).toBe(after);
    expect(twice[0]!.relation).toEqual({ before, after });
    expect(twice[1]!.relation!.after).toBeLessThan(0.5 * after);
    expect(learntText({ before: 0.104 / 1.96, after: 0.038 / 1.96 }, 'metric')).toBe(
      'made it surer: how the cones stand to each other was known to ± 104 µm, now it is to ± 38 µm',
    );
    expect(learntText({ before: 0.01, after: 0.02 }, 'metric')).toMatch(/^made it less sure, as metal/);
    expect(learntText({ before: 0.01, after: 0.01 }, 'metric')).toMatch(/^changed little/);
  });
});
