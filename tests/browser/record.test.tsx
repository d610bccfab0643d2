/**
 * The record of the job on the page: entries get their day and hand, before and after, notes and photographs.
 *
 * @module-tag long
 */
import { expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import { setOpen } from '../../src/app/frame/openParts.ts';
import { dayText } from '../../src/app/record/entered.ts';
import { DEMOS } from '../../src/app/state/demos.ts';
import type { Design } from '../../src/design/definition.ts';
import { expectAccessible, expectNoSidewaysScroll, frame, page, withoutSolid } from './page.tsx';

const shown = page('#measure', true);
const demo = DEMOS.find(({ file }) => file.startsWith('steep-first'))!.design;
const on = { seat: 'steep', part: 'journal', sigma: 0.001 } as const;
const job: Design = {
  ...demo,
  seats: demo.seats.map((seat) =>
    seat.name === 'steep' ? { ...seat, journal: { ...seat.journal, caseDepth: 0.03 } } : seat,
  ),
  readings: [1.5, 2.5, 3.5].map((station) => ({
    kind: 'diameter',
    ...on,
    value: 24 + 2 * (station - 1.2),
    station,
    date: '2026-03-01',
    by: 'Ada',
    stage: 'received',
  })),
  cut: {
    ...demo.cut!,
    trials: [
      { date: '2026-03-02', by: 'Bo', stage: 'ground', taken: [{ seat: 'steep', part: 'journal', normal: 0.01 }] },
    ],
  },
};
const design = () => shown.work.store.getState().design;
const find = <E extends HTMLElement>(selector: string) =>
  expect.poll(() => document.querySelector<E>(selector), { timeout: 30_000 });
const button = (text: string, within: ParentNode = document) =>
  [...within.querySelectorAll('button')].find(({ textContent }) => textContent === text)!;
const field = (form: Element, title: string) => {
  const label = [...form.querySelectorAll('label')].find(({ textContent }) => textContent === title)!;
  return document.getElementById(label.htmlFor) as HTMLInputElement;
};

async function opened(screen = 'measure') {
  withoutSolid();
  window.location.hash = `#${screen}`;
  shown.show();
  shown.work.open('job', { ok: true, design: job });
  setOpen(`${screen}/record`, true, false);
  await find('.before-after').toBeTruthy();
  return document.querySelector('.record')!;
}

test('before and after, and the story in its order', { timeout: 60_000 }, async () => {
  const record = await opened();
  const table = document.querySelector('[aria-label="steep journal, before and after"]')!;
  const rows = [...table.querySelectorAll('tbody tr')].map(({ textContent }) => textContent);
  expect(rows).toHaveLength(2);
  expect(rows[0]).toMatch(/^At first45\.0° ± .*24\.000 mm ± .*—30\.00 µm3$/);
  expect(rows[1]).toMatch(/^Now, after trial 1, ground.*23\.9717 mm ± .*10.* ± .* µm20\.00 µm3 older, moved$/);
  const days = [...record.querySelectorAll('.story .when')].map(({ textContent }) => textContent);
  expect(days).toEqual(['1 Mar 2026as receivedAda', '2 Mar 2026groundBo']);
});

test('a note gets today and the last hand by itself, and is struck out again', { timeout: 60_000 }, async () => {
  const record = await opened();
  const form = record.querySelector('form')!;
  expect(field(form, 'Date').value).toBe(dayText(new Date()));
  expect(field(form, 'By').value).toBe('Bo');
  await userEvent.fill(form.querySelector('textarea')!, 'A scratch at the large end');
  button('Write it down', form).click();
  await expect
    .poll(() => design().record)
    .toEqual([{ note: 'A scratch at the large end', date: dayText(new Date()), by: 'Bo', after: 1 }]);
  await expect
    .poll(() => record.querySelector('.story li.record')?.textContent)
    .toContain('A scratch at the large end');
  button('Strike out', record).click();
  await expect.poll(() => design().record).toBeUndefined();
  shown.work.undo();
  expect(design().record).toHaveLength(1);
});

test('a new reading carries its day, hand and stage; they can be changed before and after', {
  timeout: 60_000,
}, async () => {
  await opened();
  await expect.poll(() => button('+ Diameter')).toBeTruthy();
  button('+ Diameter').click();
  await find('form.new-entry').toBeTruthy();
  const form = document.querySelector('form.new-entry')!;
  await userEvent.fill(field(form, 'By'), 'Cy');
  await userEvent.selectOptions(field(form, 'Stage') as unknown as HTMLSelectElement, 'lapped');
  await userEvent.fill(form.querySelector('input')!, '26.58');
  button('Write it down', form).click();
  await expect
    .poll(() => design().readings?.at(-1))
    .toMatchObject({
      value: 26.58,
      after: 1,
      date: dayText(new Date()),
      by: 'Cy',
      stage: 'lapped',
    });
  const entry = [...document.querySelectorAll<HTMLDetailsElement>('.notebook details')].at(-1)!;
  entry.querySelector('summary')!.click();
  await expect.poll(() => entry.querySelector('.when-read')).toBeTruthy();
  await userEvent.selectOptions(field(entry, 'Stage') as unknown as HTMLSelectElement, '');
  await expect.poll(() => design().readings?.at(-1)?.stage).toBeUndefined();
});

test('a step that would cut through the case is said first, in red', { timeout: 60_000 }, async () => {
  withoutSolid();
  window.location.hash = '#cut';
  shown.show();
  shown.work.open('job', { ok: true, design: { ...job, readings: [], cut: demo.cut! } });
  await expect
    .poll(() => document.querySelector('.verdict.stop h2')?.textContent, { timeout: 30_000 })
    .toMatch(/^This would cut through the hard case of the steep journal/);
});

test('it reads without a mouse, in both themes, and on a phone', { timeout: 90_000 }, async () => {
  await opened();
  await frame();
  await expectAccessible();
  await expectNoSidewaysScroll();
});
