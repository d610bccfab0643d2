/** Run and Fit judge one spindle: neither praises what the other cannot. */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { behindFit, filmsOff } from '../../../src/report/film/besideFit.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { fitVerdict } from '../../../src/report/fit/verdict.ts';

const folder = new URL('../../../assets/designs/', import.meta.url);
const demos = readdirSync(folder).map((file): [string, Design] => {
  const read = parseDesign(readFileSync(new URL(file, folder), 'utf8'));
  if (!read.ok) throw new Error(file);
  return [file, read.design];
});
const GOOD = { tone: 'good' as const, headline: 'It runs.', sentences: ['Warm too.'] };

test.each(demos)('%s: Run praises nothing where Fit finds a film that is not the one wanted', (_, demo) => {
  for (const position of [demo.position ?? 0, -0.05, -0.01, 0, 0.005, 0.02, 0.1]) {
    const design = { ...demo, position };
    const fit = fitVerdict(design, fitSection(design), 'metric');
    const off = filmsOff(design, 'metric');
    const told = behindFit(GOOD, off);
    // Fit is good only where every film is as wanted; what is uneven or wants no film is none of these.
    if (fit.tone === 'good') expect(off).toBeNull();
    if (off === null) expect(told).toBe(GOOD);
    else {
      expect(fit.tone).not.toBe('good');
      expect(told).toMatchObject({ tone: 'mend', headline: `Fit: ${off}`, sentences: ['It runs.', 'Warm too.'] });
    }
  }
});

test('what is worse already stays as it is', () => {
  const bad = { ...GOOD, tone: 'stop' as const };
  expect(behindFit(bad, 'No one position.')).toBe(bad);
});
