/** Readings that contradict each other, or tell of other parts than are drawn, stand before every verdict. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { behindReadings } from '../../../src/report/belief/notAsRead.ts';
import { beliefSection } from '../../../src/report/belief/section.ts';
import { offSentences } from '../../../src/report/belief/words.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { measureSection } from '../../../src/report/measure/section.ts';
import { designWithMeasured } from '../../../src/report/measure/withMeasured.ts';
import { oddsTold } from '../../../src/report/odds/section.ts';
import { oddsVerdict } from '../../../src/report/odds/words.ts';
import { purposeOf } from '../../../src/report/sheet/purpose.ts';

const url = new URL('../../../assets/designs/notebook.conepair.json', import.meta.url);
const notebook = JSON.parse(readFileSync(url, 'utf8')) as Design;
const cut: Design['cut'] = { allow: [{ seat: 'steep', part: 'journal', limit: 0.2 }] };
/** Read otherwise than it is drawn; taken over; and with one reading a tenth of a millimetre out. */
const other: Design = { ...notebook, cut };
const taken: Design = { ...designWithMeasured(notebook, measureSection(notebook)!), cut };
const slipped = (design: Design): Design => ({
  ...design,
  readings: design.readings!.map((reading, i) => (i === 0 ? { ...reading, value: reading.value + 0.1 } : reading)),
});

describe('what was read', () => {
  it('is told of the belief, the plan and the odds alike', () => {
    for (const [design, why] of [
      [other, 'other'],
      [taken, undefined],
      [slipped(taken), 'contradict'],
    ] as const) {
      expect(beliefSection(design)!.notAsRead).toBe(why);
      expect(cutSection(design)!.notAsRead).toBe(why);
      expect(oddsTold(design)!.notAsRead).toBe(why);
    }
  });

  it('makes no work order and no praise: the Sheet refuses, the odds say what comes first', () => {
    expect(purposeOf(taken, cutSection(taken)!, 'metric').kind).toBe('work');
    const refused = purposeOf(other, cutSection(other)!, 'metric');
    expect(refused.kind).not.toBe('work');
    expect(refused.headline).toMatch(/^The parts were read otherwise than they are drawn here/);
    expect(oddsVerdict(other, oddsTold(other)!, 'metric').headline).toBe(refused.headline);
  });

  it('stands before a sheet of parts of which nothing is cut, and is no matter of doubt', () => {
    const { cut: _, ...whole } = other;
    const belief = beliefSection(whole)!;
    const told = purposeOf(whole, null, 'metric', 'half', { notAsRead: belief.notAsRead });
    expect(told.headline).toMatch(/^The parts were read otherwise than they are drawn here/);
    expect(told.tone).toBe('mend');
    expect(offSentences(whole, belief, 'metric')[0]).toMatch(
      /^Where the journal is set the films are, as drawn, .*; by all that is known and assumed they are shallow [\d.−]+ ± [\d.]+ µm and steep .*\.$/,
    );
    const { cut: __, ...asRead } = taken;
    expect(offSentences(asRead, beliefSection(asRead)!, 'metric')[0]).toMatch(
      /^Where the journal is set the films are .* ± .* by how well the parts are known/,
    );
  });

  it('that contradicts itself leaves nothing safe to take, and no doubt to be told', () => {
    const design = slipped(taken);
    for (const { safe } of cutSection(design)!.steps) expect(safe).toBe(0);
    expect(cutSection(taken)!.steps.some(({ safe }) => safe! > 0)).toBe(true);
    expect(offSentences(design, beliefSection(design)!, 'metric')).toEqual([
      'Readings of the bench contradict each other, so it is not known how sure this is: settle that on Measure first.',
    ]);
  });

  it('and was drawn so leaves a verdict as it is; otherwise it goes on with what it was', () => {
    const good = { tone: 'good' as const, headline: 'Every seat has its film.', sentences: ['So it is.'] };
    expect(behindReadings(good, undefined)).toBe(good);
    expect(behindReadings(good, 'other')).toMatchObject({
      tone: 'mend',
      sentences: ['As drawn: Every seat has its film.', 'So it is.'],
    });
    expect(behindReadings(good, 'contradict').tone).toBe('stop');
  });
});
