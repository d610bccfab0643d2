/**
 * The page on a phone: one row at the top, keys for numbers, a minus where the keys have none.
 *
 * @module-tag long
 */
import { flushSync } from 'react-dom';
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { SCREENS } from '../../src/app/screens/index.ts';
import { expectAccessible, frame, page, withoutSolid } from './page.tsx';

const shown = page('#fit', true);

const header = () => document.querySelector('header')!;
const button = (name: string) => browser.getByRole('banner').getByRole('button', { name, exact: true });
const targets = () => [...header().querySelectorAll('a, button')].filter((one) => one.getClientRects().length > 0);

test.each([360, 390, 820])('at %i px the bar takes one row, every part of it 44 px high and wide', async (width) => {
  withoutSolid();
  await browser.viewport(width, 840);
  shown.show();
  expect(header().getBoundingClientRect().height).toBeLessThan(width < 641 ? 60 : 70);
  // The screen that is shown stands in sight.
  const [row, now] = ['nav', 'nav [aria-current]'].map((at) => header().querySelector(at)!.getBoundingClientRect());
  expect(now!.left).toBeGreaterThanOrEqual(row!.left - 1);
  expect(now!.right).toBeLessThanOrEqual(row!.right + 1);
  expect(SCREENS.length).toBeLessThan(targets().length);
  for (const target of targets()) {
    const { width: wide, height, right } = target.getBoundingClientRect();
    expect(Math.min(wide, height), target.textContent!).toBeGreaterThanOrEqual(44);
    // The row of screens scrolls where they do not stand beside each other.
    if (!target.closest('nav')) expect(right).toBeLessThanOrEqual(width);
  }
});

test('what is asked for seldom stands behind one button, and goes as another screen comes', async () => {
  withoutSolid();
  await browser.viewport(390, 840);
  shown.show();
  expect(button('Save').query()?.checkVisibility() ?? false).toBe(false);
  await userEvent.click(button('More'));
  for (const name of ['Redo', 'Save', 'Take along']) await expect.element(button(name)).toBeVisible();
  await userEvent.click(browser.getByRole('banner').getByRole('link', { name: 'Sheet', exact: true }));
  await expect.poll(() => button('Save').query()).toBeNull();
  await expectAccessible();
});

const WITHOUT_FIELDS = ['learn', 'sheet'];
const inputs = () => [...document.querySelectorAll<HTMLInputElement>('main input:not([type])')];

test('every field for a number has the keys of a number, those of words have letters', async () => {
  withoutSolid();
  await browser.viewport(820, 1000);
  shown.show();
  const withFields = SCREENS.map(({ name }) => name.toLowerCase()).filter((name) => !WITHOUT_FIELDS.includes(name));
  for (const screen of [...withFields, 'new']) {
    flushSync(() => {
      window.location.hash = `#${screen}`;
    });
    await frame();
    if (screen === 'measure')
      await userEvent.click(browser.getByRole('button', { name: '+ Ball depth', exact: true }).last());
    if (screen === 'new') await userEvent.click(browser.getByRole('button', { name: /^Double cone at the nose/ }));
    await expect.poll(() => inputs().length, { timeout: 30_000, message: screen }).toBeGreaterThan(0);
    for (const details of document.querySelectorAll('details')) details.open = true;
    const words = inputs().filter(({ inputMode }) => inputMode !== 'decimal');
    const titles = words.map(({ id }) => document.querySelector(`label[for="${id}"]`)?.textContent ?? '');
    for (const title of titles)
      expect(title, screen).toMatch(/^by$|name|title|note|who|stage|balls there|rolls there|angle|phase|lean|slide/i);
    for (const field of inputs().filter((one) => one.inputMode === 'decimal' && one.value !== ''))
      expect(field.value, screen).toMatch(/\d/);
  }
});

test('lengths in inch keep the keys for 11/16; the rest of the numbers does not need them', async () => {
  withoutSolid();
  await browser.viewport(820, 1000);
  shown.show();
  const modeOf = (path: string) => document.querySelector<HTMLInputElement>(`[data-path="${path}"] input`)!.inputMode;
  await expect.poll(() => document.querySelector('[data-path="adjuster.pitch"] input')).not.toBeNull();
  const [size, fine] = ['seats[0].bush.diameter', 'position'];
  expect([modeOf(size), modeOf(fine)]).toEqual(['decimal', 'decimal']);
  flushSync(() => shown.work.store.setState({ system: 'inch' }));
  expect([modeOf(size), modeOf(fine)]).toEqual(['', 'decimal']);
});

test('a key turns the sign where a number may be below nought, and only there', async () => {
  withoutSolid();
  await browser.viewport(820, 1000);
  shown.show();
  await expect.poll(() => document.querySelector('[data-path="position"] input')).not.toBeNull();
  const field = document.querySelector<HTMLInputElement>('[data-path="position"] input')!;
  await userEvent.fill(field, '5 µm');
  const sign = field.parentElement!.querySelector<HTMLButtonElement>('.sign')!;
  flushSync(() => sign.click());
  expect(field.value).toBe('-5 µm');
  expect(document.activeElement).toBe(field);
  await userEvent.keyboard('{Enter}');
  expect(shown.position()).toBeCloseTo(-0.005, 12);
  await expect.poll(() => field.value).toMatch(/^−5/);
  flushSync(() => sign.click());
  expect(field.value).toMatch(/^5/);
  const diameter = document.querySelector('[data-path$="journal.diameter"], [data-path$="bush.diameter"]');
  expect(diameter).not.toBeNull();
  expect(diameter!.querySelector('.sign')).toBeNull();
});
