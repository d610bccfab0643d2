/**
 * The walk round the job in Chromium: measured, cut, taken as done, measured again.
 *
 * @module-tag long
 */
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { fitSection } from '../../src/report/fit/section.ts';
import { expectAccessible, expectNoSidewaysScroll, page } from './page.tsx';

const shown = page('#measure');
const solved = { timeout: 20_000 };
const design = () => shown.work.store.getState().design;
const verdict = () => document.querySelector('.verdict:not([aria-label])')?.textContent ?? '';
const go = (screen: string) => {
  window.location.hash = `#${screen}`;
};
const films = () => fitSection(design()).seats.map(({ leastFilm }) => leastFilm!);

test('after the plan was taken as done Measure tells the parts as they are now, and using its shapes puts no metal on again', async () => {
  shown.open('notebook');
  await expect.poll(verdict, solved).toMatch(/cones stand .* wrong to each other/);
  await userEvent.click(browser.getByRole('button', { name: /^Use these shapes/ }));
  const measured = verdict();
  go('cut');
  await expect.poll(verdict, solved).toMatch(/What may be cut\? Proposed|off the/);
  if (/Proposed/.test(verdict())) await userEvent.click(browser.getByRole('button', { name: 'Plan the cut' }));
  const done = browser.getByRole('button', { name: 'Take the plan as done' });
  await expect.element(done, solved).toBeEnabled();
  await userEvent.click(done);
  const planned = films();
  const cut = design();
  expect(cut.cut!.trials).toMatchObject([{ inShapes: true }]);
  go('measure');
  // The relation is right now, and the verdict no longer that of before.
  await expect.poll(() => Number(/cones stand ([\d.]+) µm wrong/.exec(verdict())?.[1]), solved).toBeLessThan(0.1);
  expect(verdict()).not.toBe(measured);
  expect(document.querySelectorAll('.notebook .when')).toHaveLength(cut.readings!.length);
  expect(document.querySelector('.notebook .when')!.textContent).toBe(', before any cut');
  await userEvent.click(browser.getByRole('button', { name: /^Use these shapes/ }));
  films().forEach((film, i) => {
    expect(Math.abs(film - planned[i]!)).toBeLessThan(1e-5);
  });
  // What is read now is read after that trial.
  await userEvent.click(browser.getByRole('button', { name: '+ Stand-off', exact: true }).last());
  await userEvent.fill(
    document.querySelector<HTMLInputElement>('.new-entry input')!,
    `${fitSection(design()).firstPosition! * 1000} µm`,
  );
  await userEvent.click(browser.getByRole('button', { name: 'Write it down' }));
  expect(design().readings!.at(-1)).toMatchObject({ kind: 'standOff', after: 1 });
  await expect
    .poll(() => [...document.querySelectorAll('.notebook .when')].at(-1)!.textContent)
    .toBe(', after trial 1');
  for (const details of document.querySelectorAll<HTMLDetailsElement>('.notebook details')) details.open = true;
  await expectNoSidewaysScroll();
  await expectAccessible();
});
