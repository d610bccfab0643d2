/** Trade words in a verdict tell what they mean, by hand and by key; all of them stand on a page of their own. */
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { GLOSSARY } from '../../src/app/glossary/entries.ts';
import { expectAccessible, page, withoutSolid } from './page.tsx';

const shown = page('', true);

const words = () => [...document.querySelectorAll<HTMLElement>('.verdict .word')];
const word = (text: string) => words().find(({ textContent }) => textContent?.toLowerCase() === text)!;
const meaningOf = (of: string) =>
  GLOSSARY.flatMap(({ entries }) => entries).find((entry) => entry.word === of)!.meaning;
const meaning = () => document.querySelector<HTMLElement>('.meaning');

async function fitShown() {
  withoutSolid();
  shown.show();
  await expect.poll(() => words().length).toBeGreaterThan(1);
}

test('a word tapped tells its meaning beside it, and the sentence stays as it was', async () => {
  await fitShown();
  await browser.viewport(390, 844);
  const heading = browser.getByRole('heading', { level: 2 }).first();
  const said = heading.element().textContent!;
  await userEvent.click(word('film'));
  expect(meaning()!.textContent).toContain('The oil between journal and bush');
  const { left, right } = meaning()!.getBoundingClientRect();
  expect(left).toBeGreaterThanOrEqual(0);
  expect(right).toBeLessThanOrEqual(390);
  expect(heading.element().textContent).toBe(said);
  await expect.element(browser.getByRole('heading', { name: said })).toBeInTheDocument();
  await userEvent.click(word('film'));
  expect(meaning()).toBeNull();
  await userEvent.click(word('film'));
  word('seat').click();
  expect(document.querySelectorAll('.meaning')).toHaveLength(1);
  await userEvent.click(document.querySelector('footer')!);
  expect(meaning()).toBeNull();
});

test('by key a word opens with Enter and shuts with Escape, which leaves the focus on it', async () => {
  await fitShown();
  word('position').focus();
  await userEvent.keyboard('{Enter}');
  expect(meaning()!.textContent).toContain(meaningOf('position'));
  await userEvent.keyboard('{Escape}');
  expect(meaning()).toBeNull();
  expect(document.activeElement).toBe(word('position'));
});

test('all words stand on one page, which a meaning leads to and in which one is looked for', async () => {
  await fitShown();
  word('seat').click();
  await userEvent.click(browser.getByRole('link', { name: 'All words' }));
  await expect
    .poll(() => document.querySelectorAll('.words dt').length)
    .toBe(GLOSSARY.reduce((count, { entries }) => count + entries.length, 0));
  expect(meaning()).toBeNull();
  await expectAccessible();
  await userEvent.fill(browser.getByLabelText('Look for a word'), 'Bushes');
  expect([...document.querySelectorAll('.words dt')].map(({ textContent }) => textContent)).toEqual(['bush']);
});
