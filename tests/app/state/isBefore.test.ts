/** What was worked out is of before once trials, readings or doubt are other; not where the journal or a size moved. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { isBefore } from '../../../src/app/state/isBefore.ts';
import type { Design } from '../../../src/design/definition.ts';
import { behindTrial, WITHHELD_NOW, withheldBy } from '../../../src/report/cut/withheld.ts';

const url = new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url);
const base = JSON.parse(readFileSync(url, 'utf8')) as Design;
const cut = base.cut!;
const trials = [{ standOff: { value: -0.004, sigma: 0.001 } }];

it('follows trials, readings, priors and doubt, by what they say', () => {
  const tried = { ...base, cut: { ...cut, trials } };
  expect(isBefore(base, tried)).toBe(true);
  expect(isBefore(tried, base)).toBe(true);
  expect(isBefore(tried, structuredClone(tried))).toBe(false);
  expect(isBefore(tried, { ...tried, cut: { ...tried.cut, doubt: 0.003 } })).toBe(true);
  const read = { kind: 'diameter', seat: 'steep', part: 'journal', station: 2, value: 25, sigma: 0.001 } as const;
  expect(isBefore(tried, { ...tried, readings: [read] })).toBe(true);
});

it('what moves under the hand is of no other history, and nothing known is of none', () => {
  expect(isBefore(base, { ...base, position: 0.01, title: 'other' })).toBe(false);
  expect(isBefore(base, { ...base, cut: { ...cut, allow: [] } })).toBe(false);
  expect(isBefore(null, base)).toBe(false);
});

it('while it is so every screen withholds, behind what stands in a form and before what clashed then', () => {
  expect(withheldBy(null, { notAsRead: 'trials', before: true })).toBe('working');
  expect(withheldBy('metal', { before: true })).toBe('metal');
  expect(withheldBy(null, { before: false })).toBeNull();
  const told = behindTrial({ tone: 'good', headline: 'Take 4 µm.', sentences: ['Safe.'] }, 'working');
  expect(told).toEqual({ tone: 'plain', headline: expect.stringMatching(/of before the last change/), sentences: [] });
  expect(WITHHELD_NOW.working).toMatch(/being worked out/);
});

it('the slip that is likeliest stands in the headline of every screen that is withheld by it', () => {
  const plain = { tone: 'good' as const, headline: 'Good.', sentences: [] };
  expect(behindTrial(plain, 'clash', false, 'Most likely a slip.').headline).toMatch(
    /until it does\. Most likely a slip\.$/,
  );
});
