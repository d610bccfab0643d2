/** The first line of Cut says nothing more hopeful than what stands below it, and is short. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import type { CutReport } from '../../../src/report/cut/definition.ts';
import { cutNow } from '../../../src/report/cut/now.ts';
import { cutSection } from '../../../src/report/cut/section.ts';

const folder = new URL('../../../assets/designs/', import.meta.url);
const demos = readdirSync(folder).map((file): [string, Design] => {
  const read = parseDesign(readFileSync(new URL(file, folder), 'utf8'));
  if (!read.ok) throw new Error(file);
  return [file, read.design];
});
const demo = (name: string) => demos.find(([file]) => file.startsWith(name))![1];
const NOTHING_AGAINST = { mustNotRun: false };
const numbersIn = (text: string) => [...text.matchAll(/[\d.]+/g)].length;

test.each(demos.filter(([, { cut }]) => cut))('%s: a few words, three numbers at most', (_, design) => {
  const cut = cutSection(design)!;
  for (const system of ['metric', 'inch'] as const)
    for (const against of [NOTHING_AGAINST, { mustNotRun: true }]) {
      const now = cutNow(cut, against, system);
      expect(now.length).toBeLessThanOrEqual(95);
      expect(numbersIn(now.replace(/journal \d|seat \d/g, ''))).toBeLessThanOrEqual(3);
      expect(now).toMatch(/^[\dA-Z].*\.$/);
    }
});

describe('of the steep cone to be cut', () => {
  const design = demo('steep-first');
  const cut = cutSection(design)!;
  const now = (changed: Partial<CutReport> = {}, against: Partial<typeof NOTHING_AGAINST> = {}) =>
    cutNow({ ...cut, ...changed }, { ...NOTHING_AGAINST, ...against }, 'metric');

  test('it names what comes off, and that none of it is safe before a trial', () => {
    expect(now()).toBe('A trial with its shake first; then most likely 76.53 µm off the steep journal.');
    const [step] = cut.steps;
    expect(now({ steps: [{ ...step!, safe: 0.02 }] })).toBe(
      '20.00 µm off the steep journal, then a trial with its shake.',
    );
    expect(now({ steps: [{ ...step!, safe: step!.normal }] })).toBe('76.53 µm off the steep journal.');
  });

  test('what speaks against cutting comes first, the gravest of all before the rest', () => {
    expect(now({}, { mustNotRun: true })).toMatch(/^Cut nothing yet: it must not run so/);
    expect(now({ guess: true }, { mustNotRun: true })).toMatch(/^Not measured: cut nothing, assemble it for a trial/);
    expect(now({ notAsRead: 'contradict', guess: true })).toMatch(/contradict each other: cut nothing yet/);
    expect(now({ notAsRead: 'other' })).toMatch(/cut nothing yet/);
  });

  test('after a trial it tells what is safe to take, or to take nothing', () => {
    const tried = (value: number, sigma: number) =>
      cutSection({ ...design, cut: { ...design.cut!, trials: [{ standOff: { value, sigma } }] } })!;
    const wide = tried(-0.004, 0.001);
    expect(wide.remaining).toBeTruthy();
    expect(cutNow(wide, NOTHING_AGAINST, 'metric')).toMatch(
      /^Take nothing yet|^Safe to take now: [\d.]+ µm off the steep/,
    );
    // What is told as safe is what the report has as safe.
    const safe = wide.remaining!.steps.map((step) => ({ ...step, safe: 0.03 }));
    expect(now({ trials: wide.trials, remaining: { ...wide.remaining!, steps: safe } })).toBe(
      'Safe to take now: 30.00 µm off the steep journal, then try again.',
    );
    // A sliver is not worth a set-up where a look tells more: that comes first.
    const sliver = wide.remaining!.steps.map((step) => ({ ...step, safe: 0.1 * step.normal }));
    const shake = (sigma: number) => ({
      ...{ seat: 'steep', part: 'journal', sigma: 0.02, cutting: 0.001, trial: 0.012 },
      reading: { reading: { kind: 'shake', position: 0.05 }, again: false, sigma },
    });
    const worth = shake(0.008) as unknown as NonNullable<CutReport['worth']>;
    const less = shake(0.015) as unknown as NonNullable<CutReport['worth']>;
    const nowAfter = (more: Partial<CutReport>) =>
      now({ trials: wide.trials, remaining: { ...wide.remaining!, steps: sliver }, ...more });
    expect(nowAfter({ worth: undefined })).toMatch(/^Safe to take now: .*, then try again\.$/);
    expect(nowAfter({ worth })).toMatch(
      /^First read the shake at the nose; safe now: [\d.]+ µm off the steep journal\.$/,
    );
    expect(nowAfter({ worth: less })).toMatch(/^First try it again and look at the blue; safe now: /);
    // Nothing more is most likely to come off: that is done only where it is known to work.
    const gone = { ...wide.remaining!, steps: [], faces: [], feasible: true };
    const works = (chance: number) => ({ now: chance, safe: chance, all: chance });
    expect(nowAfter({ remaining: gone, works: works(0.97) })).toBe('Nothing is left to cut.');
    expect(nowAfter({ remaining: gone, works: works(0.06) })).toMatch(/^Most likely nothing is left to cut, but /);
    const none = sliver.map((step) => ({ ...step, safe: 0 }));
    expect(nowAfter({ worth, remaining: { ...wide.remaining!, steps: none } })).toBe(
      'Take nothing yet: first read the shake at the nose.',
    );
    const again = { ...worth, reading: { ...worth.reading!, again: true } };
    expect(nowAfter({ worth: again })).toMatch(
      /^First read the shake once more, the journal held at 50\.00 µm; safe now: /,
    );
    const nearly = wide.remaining!.steps.map((step) => ({ ...step, safe: 0.9 * step.normal }));
    expect(now({ trials: wide.trials, remaining: { ...wide.remaining!, steps: nearly } })).not.toMatch(/try again/);
    const clash = wide.trials!.map((trial) => ({ ...trial, status: 'contradiction' as const }));
    expect(now({ trials: clash, remaining: wide.remaining })).toMatch(/take nothing\.$/);
  });
});
