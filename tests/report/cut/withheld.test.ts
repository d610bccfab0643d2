/** While a trial stands refused, or metal is off that is not written down, nothing is advised that it forbids. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseDesign } from '../../../src/design/parse.ts';
import { leftVerdict } from '../../../src/report/cut/leftVerdict.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { behindTrial, WITHHELD_NOW, type Withheld } from '../../../src/report/cut/withheld.ts';
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
  for (const why of ['refused', 'metal'] satisfies Withheld[]) {
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
