/** The Odds screen in Chromium: the answer first and as the report has it, stopped, asked of other spreads. */
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import type { Design } from '../../src/design/definition.ts';
import { lookSentence } from '../../src/report/cut/advice.ts';
import { cutSection } from '../../src/report/cut/section.ts';
import { oddsTold } from '../../src/report/odds/section.ts';
import { timesText } from '../../src/report/odds/times.ts';
import { oddsVerdict } from '../../src/report/odds/words.ts';
import { expectAccessible, expectNoSidewaysScroll, frame, page } from './page.tsx';

const shown = page('#odds');
const design = () => shown.work.store.getState().design;
const verdict = () => document.querySelector('.verdict')?.textContent ?? '';
const status = () => document.querySelector('.progress [role="status"], p.progress')?.textContent ?? '';
const solved = { timeout: 60_000 };
const done = () => expect.poll(status, solved).toBe('Worked out in full.');

test('the answer comes first, in words, and is that of the report', { timeout: 120_000 }, async () => {
  await done();
  const report = oddsTold(design())!;
  expect(document.querySelector('main')!.firstElementChild!.className).toMatch(/^verdict/);
  const chance = report.planned!.best.inBand.all!;
  // Not all of it is to come off yet: so it is said which cut the chance is of.
  await expect
    .poll(verdict, solved)
    .toContain(`Were all of the plan cut now this pair would work ${timesText(chance)}; a trial assembly first`);
  expect(verdict()).toContain('Were all of it cut now, it would work');
  // The advice is that of Cut, and no other stands beside it.
  const look = lookSentence(cutSection(design())!, 'metric');
  await expect.poll(verdict, solved).toContain(look);
  for (const sentence of oddsVerdict(design(), report, 'metric', look).sentences) expect(verdict()).toContain(sentence);
  // A line for each seat of a hundred pairs, a drawing for each film, a row for each surface and cut.
  expect(document.querySelectorAll('.cloud .drawn-line').length).toBe(200);
  expect(document.querySelectorAll('.distribution').length).toBe(2);
  expect(document.querySelectorAll('.matters tbody tr').length).toBe(report.planned!.gains.length);
  expect(document.querySelector('.film-odd h3')!.textContent).toBe(
    `shallow: within its tolerance ${timesText(report.planned!.best.inBand.shallow!)}`,
  );
  await userEvent.selectOptions(browser.getByLabelText('Shown'), 'as the parts are now');
  await expect
    .poll(() => document.querySelector('.film-odd h3')!.textContent)
    .toBe(`shallow: within its tolerance ${timesText(report.best.inBand.shallow!)}`);
  expect(document.querySelector('main')!.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
  await expectNoSidewaysScroll();
  await expectAccessible();
});

test('spreads are added, edited and removed; the odds follow, and undo takes each back', {
  tags: ['long'],
  timeout: 120_000,
}, async () => {
  await done();
  const before = design();
  await userEvent.click(browser.getByRole('button', { name: '+ Spread' }));
  expect(design().odds!.spread).toEqual([{ seat: 'shallow', part: 'journal', of: 'diameter', sigma: 0.001 }]);
  await userEvent.selectOptions(browser.getByLabelText('Seat', { exact: true }), 'steep');
  await userEvent.selectOptions(browser.getByLabelText('Part', { exact: true }), 'bush');
  await userEvent.selectOptions(browser.getByLabelText('Size', { exact: true }), 'station');
  await userEvent.fill(browser.getByLabelText('Spread', { exact: true }), '12 µm');
  await userEvent.keyboard('{Tab}');
  await userEvent.selectOptions(browser.getByLabelText('Shape', { exact: true }), 'even within its ends');
  expect(design().odds!.spread).toEqual([
    { seat: 'steep', part: 'bush', of: 'station', sigma: 0.012, shape: 'rectangular' },
  ]);
  const chance = oddsTold(design())!.planned!.best.inBand.all!;
  await expect.poll(verdict, solved).toContain(`all of the plan cut now this pair would work ${timesText(chance)}`);
  await expect.poll(verdict, solved).toContain('with the spreads of your list and no other doubt');
  await userEvent.click(browser.getByRole('button', { name: 'Remove spread 1' }));
  expect(design()).toEqual(before);
  await userEvent.click(browser.getByRole('button', { name: 'Undo' }));
  expect(design().odds!.spread!.length).toBe(1);
});

test('it stops at once where it is told to, keeps what there is, and goes on', { timeout: 120_000 }, async () => {
  const { cut: _, ...bare } = design();
  const many: Design = { ...bare, odds: { draws: 10_000_000 } };
  shown.work.open('many', { ok: true, design: many });
  await expect.poll(() => document.querySelector('progress')?.max ?? 1, solved).toBeGreaterThan(1000);
  await userEvent.click(browser.getByRole('button', { name: 'Stop' }));
  await expect.poll(status).toBe('Stopped. What was worked out stays.');
  await frame();
  expect(document.querySelector('progress')).toBeNull();
  // The worker is free again: a smaller question is answered.
  shown.work.change((d) => ({ ...d, odds: { draws: 1000 } }));
  await userEvent.click(browser.getByRole('button', { name: 'Work it out' }));
  await done();
  expect(verdict()).toMatch(/this pair works/);
});
