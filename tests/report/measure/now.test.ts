/** The first line of Measure. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseDesign } from '../../../src/design/validate.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { measuredNow } from '../../../src/report/measure/now.ts';
import { measureSection } from '../../../src/report/measure/section.ts';
import { measureVerdict } from '../../../src/report/measure/verdict.ts';

const read = parseDesign(
  readFileSync(new URL('../../../assets/designs/notebook.conepair.json', import.meta.url), 'utf8'),
);
if (!read.ok) throw new Error('notebook');
const { design } = read;

test('how far the cones stand wrong is told as the sentence below tells it, whichever way they do', () => {
  const measure = measureSection(design)!;
  const { relation } = measure.consequences;
  for (const value of [relation!.value, -relation!.value]) {
    const told = { ...measure, consequences: { ...measure.consequences, relation: { ...relation!, value } } };
    for (const system of ['metric', 'inch'] as const) {
      const now = measuredNow(told, system);
      const figure = /^Cones wrong by ([\d.]+ \S+), give or take/.exec(now)?.[1];
      expect(figure, now).toBeTruthy();
      const { headline, sentences } = measureVerdict(design, told, fitSection(design), system, 'half');
      expect([headline, ...sentences].join(' ')).toContain(`stand ${figure} wrong to each other`);
    }
  }
});
