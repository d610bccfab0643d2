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
  const { value, interval } = relation!;
  const [low, high] = interval!;
  for (const found of [relation!, { ...relation!, value: -value, interval: [-high, -low] as typeof interval }]) {
    const told = { ...measure, consequences: { ...measure.consequences, relation: found } };
    for (const system of ['metric', 'inch'] as const) {
      const now = measuredNow(told, system);
      const [, figure, doubt] = /^Cones wrong by ([\d.]+ \S+), give or take ([\d.]+ \S+)\.$/.exec(now) ?? [];
      expect(figure, now).toBeTruthy();
      const { headline, sentences } = measureVerdict(design, told, fitSection(design), system, 'half');
      expect([headline, ...sentences].join(' ')).toMatch(
        new RegExp(`stand ${figure} wrong to each other, [^.]*give or take ${doubt}`),
      );
    }
  }
});
