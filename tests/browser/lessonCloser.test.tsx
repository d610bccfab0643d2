/** Which touches first: once the spindle is stopped, the cone that stands off is seen open; before, nothing of it. */
import { expect, test, vi } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { loadLesson } from '../../src/app/screens/learn/builtIn.ts';
import { deal } from '../../src/lessons/deal.ts';
import { page } from './page.tsx';

page('#learn');

const $ = <E extends Element>(selector: string) => document.querySelector<E>(selector);
const there = (selector: string) => expect.poll(() => $(selector), { timeout: 60_000 }).not.toBeNull();
/** px: oil between two lines */
const SEEN = 8;
/** of numbers by which less than half a micrometre is left */
const SEED = 7;

test.each([[390], [1440]])('at %i px', async (width) => {
  await browser.viewport(width, 844);
  localStorage.clear();
  const lesson = await loadLesson('touches-first');
  const dealt = deal(lesson, SEED, () => undefined);
  if (!dealt.ok) throw new Error(dealt.message);
  const first = dealt.value.questions[0]!.right;
  vi.spyOn(Math, 'random').mockReturnValue((SEED - 1) / 1_000_000);
  window.location.hash = '#learn/touches-first';
  await there('.choices');
  expect($('.closer')).toBeNull();
  await userEvent.click(document.querySelector('.choices input')!);
  await userEvent.click(document.querySelector('.sure input')!);
  await userEvent.click($('.ask button.main')!);
  await there('.saw-options');
  expect($('.closer')!.textContent).toMatch(/\d+ times closer/);
  const lens = (name: string) =>
    [...document.querySelectorAll('.closer .lens')].find((one) => one.querySelector('strong')!.textContent === name)!;
  const other = lens(first === 'steep' ? 'shallow' : 'steep');
  const oil = () => other.querySelector('.film:not(.film-pattern)')?.getBoundingClientRect().height ?? 0;
  // The spindle stands still at last.
  await expect.poll(() => lens(String(first)).querySelector('.touch'), { timeout: 20_000 }).not.toBeNull();
  expect(oil()).toBeGreaterThan(SEEN);
  expect(other.querySelector('.touch')).toBeNull();
  const { top, bottom } = $('.closer')!.getBoundingClientRect();
  expect(top).toBeGreaterThanOrEqual(0);
  expect(bottom).toBeLessThanOrEqual(window.innerHeight);
  // Nothing in figures as long as it is asked what was seen.
  expect(getComputedStyle(other.querySelector('.film-now')!).visibility).toBe('hidden');
});
