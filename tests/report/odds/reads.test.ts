/** What it would gain to read what nobody has read, against the same parts with that reading really taken. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import type { OddsReport } from '../../../src/report/odds/definition.ts';
import { chanceOf, hundredthText, mattersText, oddsVerdict, readSentence } from '../../../src/report/odds/words.ts';
import { oddsWork } from '../../../src/report/odds/work.ts';

const parsed = parseDesign(
  readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
if (!parsed.ok) throw new Error('demo');

function solved(design: Design): OddsReport {
  const work = oddsWork(design, false);
  for (;;) {
    const next = work.next();
    if (next.done) return next.value!;
  }
}

const base: Design = { ...parsed.design, odds: { draws: 8192 } };
const report = solved(base);
const { reads = [] } = report.planned!;
const now = reads[0]!.share - reads[0]!.gain;

describe('of parts that nobody has read', () => {
  it('every surface alone, and last all together', () => {
    expect(reads.map(({ surfaces }) => surfaces.length)).toEqual([1, 1, 1, 1, 4]);
    expect(now).toBeCloseTo(report.planned!.best.inBand.all!, 1);
    for (const { share, gain } of reads) expect(share - gain).toBeCloseTo(now, 9);
    // A cone of 3° moves the relation 13 times as far as one of 45° does.
    const [journal, , steep] = reads;
    expect(journal!.surfaces[0]).toEqual({ seat: 'shallow', part: 'journal', line: true });
    expect(journal!.gain).toBeGreaterThan(steep!.gain + 0.015);
    expect(reads[4]!.gain).toBeGreaterThan(3 * journal!.gain);
  });

  it('the one to read first is said with both chances, and in the verdict, once', () => {
    const told = readSentence(report.planned!, true, chanceOf(report));
    expect(told).toMatch(
      /^Measure first a diameter at both ends of the shallow (journal|bush), known from the drawing alone: cut after that, it works \d+ in 100 instead of \d+ in 100; with all 4 surfaces measured, \d+ in 100\.$/,
    );
    // The chance that the headline tells, not that of the pairs by which the gain was found.
    expect(told).toContain(`instead of ${hundredthText(chanceOf(report))}`);
    const { sentences } = oddsVerdict(base, report, 'metric');
    expect(sentences.filter((sentence) => /instead of/.test(sentence))).toEqual([told]);
  });

  it('read, it works as often as was foretold, and is asked for no more', () => {
    const sigma = 0.002;
    const readings = base.seats.flatMap(({ name, ...parts }) =>
      (['journal', 'bush'] as const).flatMap((part) => {
        const { from, to, station, diameter, halfAngle } = parts[part];
        const at = (z: number) => diameter + 2 * (z - station) * Math.tan((halfAngle * Math.PI) / 180);
        return [from, to].map((z) => ({
          kind: 'diameter' as const,
          seat: name,
          part,
          station: z,
          value: at(z),
          sigma,
        }));
      }),
    );
    const after = solved({ ...base, readings });
    expect(after.planned!.reads).toBeUndefined();
    expect(Math.abs(after.planned!.best.inBand.all! - reads[4]!.share)).toBeLessThan(0.06);
  });
});

it('words: nothing alone helps, nothing at all helps; what is for experts stays there', () => {
  const one = (seat: string, gain: number) => ({
    surfaces: [{ seat, part: 'journal' as const, line: false }],
    share: 0.1 + gain,
    low: 0,
    high: 1,
    gain,
    uncertainty: 0.001,
  });
  const two = [one('front', 0.01), one('rear', 0.02)];
  const both = { ...one('', 0.5), surfaces: two.flatMap(({ surfaces }) => surfaces) };
  expect(readSentence({ reads: [...two, both] })).toBe(
    'Measure all 2 surfaces that are known from the drawing alone: it then works 60 in 100 instead of 10 in 100; one of them by itself hardly changes it.',
  );
  expect(readSentence({ reads: two })).toMatch(/would hardly change that: the front journal and the rear journal\.$/);
  expect(readSentence({})).toBe('');
  for (const method of ['linear', 'indices'] as const)
    expect(mattersText({ ...report, method, of: { quantity: 'film', seat: 'a' } })).not.toMatch(
      /Sobol|variance|indices/,
    );
});
