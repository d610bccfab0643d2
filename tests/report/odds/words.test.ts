/** The odds in words: how often, on what that rests, what would help. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import type { OddsReport } from '../../../src/report/odds/definition.ts';
import { oddsNow } from '../../../src/report/odds/now.ts';
import { oddsTold } from '../../../src/report/odds/section.ts';
import { timesText } from '../../../src/report/odds/times.ts';
import { mattersText, methodText, NO_PAIRS, oddsSentence, oddsVerdict } from '../../../src/report/odds/words.ts';

const plain: Design = JSON.parse(
  readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
const found = oddsTold(plain)!;
const planned = (chance: number, trial?: number): OddsReport => {
  const best = { ...found.planned!.best, inBand: { ...found.planned!.best.inBand, all: chance } };
  return {
    ...found,
    planned: { ...found.planned!, best },
    ...(trial !== undefined && { trialFirst: { share: trial, low: 0, high: 1, trials: 48, sigma: 0.001 } }),
  };
};

describe('the verdict', () => {
  it('says how often the pair works cut now, and with a trial first', () => {
    const { headline, tone } = oddsVerdict(plain, planned(0.71, 0.96), 'metric');
    expect(headline).toBe(
      'Cut now and this pair works 7 times in 10; a trial assembly first makes it about 19 times in 20 (0 to 100 in 100, of 48 tried).',
    );
    expect(tone).toBe('mend');
    expect(oddsVerdict(plain, planned(0.71), 'metric').headline).toBe('Cut now and this pair works 7 times in 10.');
    expect(oddsVerdict(plain, planned(0.98, 0.985), 'metric')).toMatchObject({
      tone: 'good',
      headline:
        'Cut now and this pair works 19 times in 20; a trial assembly before it would hardly change that: try it after.',
    });
    expect(oddsVerdict(plain, planned(0.08, 0.12), 'metric').headline).toBe(
      'Cut now and this pair works 8 times in 100; a trial assembly first makes it about 12 times in 100 (0 to 100 in 100, of 48 tried).',
    );
  });

  it('of parts that were read otherwise than drawn speaks of them as read, for so the pairs are drawn', () => {
    const other = { ...planned(0.71), notAsRead: 'other' as const };
    expect(oddsNow(plain, other)).toBe('As read: If cut now, it works 7 times in 10.');
    expect(oddsVerdict(plain, other, 'metric').sentences[0]).toBe(
      'As read: Cut now and this pair works 7 times in 10.',
    );
    expect(oddsNow(plain, planned(0.71))).toBe('If cut now, it works 7 times in 10.');
  });

  it('says that nothing was read and what is taken for it, in the person’s units', () => {
    const said = (system: 'metric' | 'inch') => oddsVerdict(plain, found, system).sentences.join(' ');
    expect(said('metric')).toMatch(/Nothing was read: .* assumed known to 5\.00 µm/);
    expect(said('inch')).toMatch(/assumed known to 1\.97 tenths/);
    expect(said('inch')).not.toMatch(/µm|mm/);
  });

  it('without a plan tells of the parts as they are; without a film wanted of none', () => {
    const { planned: _, ...bare } = found;
    expect(oddsVerdict(plain, bare, 'metric').headline).toBe('As the parts are now this pair works 6 times in 100.');
    const none = { ...plain, seats: plain.seats.map(({ film: __, ...seat }) => seat) };
    expect(oddsVerdict(none, bare, 'metric').headline).toMatch(/^No film is wanted/);
    expect(oddsSentence(none, bare)).toBe('');
  });

  it('tells no odds where nothing goes together, and never praises what is assumed', () => {
    expect(oddsVerdict(plain, null, 'metric').headline).toBe(NO_PAIRS);
    expect(oddsVerdict(plain, { ...found, effective: 3 }, 'metric').headline).toBe(NO_PAIRS);
    const assumed = { ...plain, assumed: ['seats[0].bush.diameter'] };
    const { tone, sentences } = oddsVerdict(assumed, planned(0.99), 'metric');
    expect(tone).toBe('mend');
    expect(sentences[0]).toMatch(/^Assumed, never measured: shallow bush diameter/);
  });

  it('names where most is to be gained, unless that is chance', () => {
    const gain = { seat: 'steep', part: 'bush' as const, by: 'measuring' as const, low: 0, high: 1 };
    const withGain = (gain_: number, uncertainty: number) => ({
      ...planned(0.7),
      planned: {
        ...planned(0.7).planned!,
        gains: [{ ...gain, share: 0.7 + gain_, gain: gain_, uncertainty }],
        reads: [],
      },
    });
    const said = (report: OddsReport) => oddsVerdict(plain, report, 'metric').sentences.join(' ');
    expect(said(withGain(0.2, 0.01))).toContain(
      'Most is gained by knowing the steep bush twice as well: 90 in 100 instead of 70 in 100.',
    );
    expect(said(withGain(0.2, 0.3))).not.toContain('Most is gained');
    expect(said(withGain(0.01, 0.001))).not.toContain('Most is gained');
  });
});

it('a chance as one says it', () => {
  expect([1, 0.96, 0.9, 0.71, 0.5, 0.1, 0.06, 0.01, 0].map((chance) => timesText(chance))).toEqual([
    'almost always',
    '19 times in 20',
    '18 times in 20',
    '7 times in 10',
    '5 times in 10',
    '1 time in 10',
    '6 times in 100',
    '1 time in 100',
    'hardly ever',
  ]);
});

it('one line for the Sheet; how the shares were worked out', () => {
  expect(oddsSentence(plain, planned(0.71))).toBe(
    'Odds, as drawn, never measured: cut as planned, every film can be brought within its tolerance 7 times in 10 (20000 pairs drawn).',
  );
  expect(mattersText({ sensitivity: [], of: null, method: null, gains: [] })).toMatch(/not told/);
  expect(mattersText(found)).toMatch(/axial relation of shallow and steep/);
  expect(methodText(found)).toMatch(/Sobol’ indices/);
});
