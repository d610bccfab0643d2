/** While a trial stands refused, or metal is off that is not written down, nothing is advised that it forbids. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fitLines } from '../../../src/app/screens/fit/fitLines.ts';
import { retoldBy } from '../../../src/app/screens/fit/retold.ts';
import { ofPair, type Stands } from '../../../src/app/state/usePairTold.ts';
import { parseDesign } from '../../../src/design/parse.ts';
import { beliefSection } from '../../../src/report/belief/section.ts';
import { leftVerdict } from '../../../src/report/cut/leftVerdict.ts';
import { cutNow } from '../../../src/report/cut/now.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { behindTrial, isUnsettled, WITHHELD_NOW, type Withheld, withheldBy } from '../../../src/report/cut/withheld.ts';
import { fitOf } from '../../../src/report/fit/fitOf.ts';
import { purposeOf } from '../../../src/report/sheet/purpose.ts';

const parsed = parseDesign(
  readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
if (!parsed.ok) throw new Error('demo');
const { design } = parsed;
const blue = [{ seat: 'steep', prints: true }];
const tried = { ...design, cut: { ...design.cut!, trials: [{ standOff: { value: -0.004, sigma: 0.001 }, blue }] } };

test('neither Cut nor the Sheet advises any metal then, whatever they say without it', () => {
  const cut = cutSection(tried)!;
  const plain = leftVerdict(tried, cut, 'metric')!;
  expect(purposeOf(tried, cut, 'metric').kind).toBe('left');
  for (const why of ['clash', 'refused', 'metal'] satisfies Withheld[]) {
    const told = behindTrial(plain, why);
    expect(told.tone).toBe('stop');
    const sheet = purposeOf(tried, cut, 'metric', 'half', { withheld: why });
    expect(sheet.kind).toBe('refused');
    expect(sheet.headline).toBe(told.headline);
    for (const text of [WITHHELD_NOW[why], told.headline, ...told.sentences, ...sheet.sentences])
      expect([plain.headline, ...plain.sentences]).not.toContain(text);
  }
  expect(behindTrial(plain, null)).toBe(plain);
});

test('trials that clash withhold as one that is refused does, by whatever is known of them', () => {
  const off = { ...tried.cut.trials[0]!, standOff: { value: 0.3, sigma: 0.001 } };
  const clashing = { ...tried, cut: { ...tried.cut, trials: [...tried.cut.trials, off] } };
  const [fine, cut] = [cutSection(tried)!, cutSection(clashing)!];
  expect([isUnsettled(fine), isUnsettled(cut)]).toEqual([false, true]);
  expect(withheldBy(null, { cut: fine })).toBeNull();
  expect(withheldBy(null, { cut })).toBe('clash');
  expect(withheldBy(null, beliefSection(clashing)!)).toBe('clash');
  // What stands in a form comes first: it is nearest to hand.
  expect(withheldBy('metal', { cut })).toBe('metal');
  expect(cutNow(cut, { mustNotRun: false }, 'metric')).toBe(WITHHELD_NOW.clash);
});

test('which pair it is of stands before the first line, once', () => {
  expect(ofPair('plain', 'Steep touches.')).toBe('Steep touches.');
  expect(ofPair('believed', 'Steep touches.')).toBe('As believed: Steep touches.');
  for (const stands of ['drawn', 'waits'] satisfies Stands[])
    expect(ofPair(stands, ofPair(stands, 'Steep touches.'))).toBe('As drawn: Steep touches.');
});

test('Fit tells the believed films with their doubt, and what was drawn without', () => {
  const belief = beliefSection(tried)!;
  const told = (stands: Stands, withheld: Withheld | null) =>
    fitLines({
      design: tried,
      fit: fitOf(tried),
      system: 'metric',
      way: 'half',
      holding: null,
      belief,
      retold: retoldBy(stands, withheld, { drawn: tried.seats, believed: null }),
    });
  expect(told('believed', null).now).toMatch(/^As believed: .*±/);
  expect(told('drawn', null).now).toMatch(/^As drawn: [^±]*$/);
  expect(told('believed', 'refused')).toMatchObject({ tone: 'stop', now: expect.stringMatching(/^As drawn: [^±]*$/) });
});
