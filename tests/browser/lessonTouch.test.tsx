/** What a lesson lets a finger drag goes with it as far as it goes: the page never scrolls instead. */
import { expect, test, vi } from 'vitest';
import { page as browser } from 'vitest/browser';
import { endsOf, finger, middle } from './finger.ts';
import { page, still } from './page.tsx';

page('#learn');

const $ = <E extends Element>(selector: string) => document.querySelector<E>(selector)!;
const there = (selector: string) => expect.poll(() => $(selector), { timeout: 60_000 }).not.toBeNull();
const STEPS = 12;

test.each([
  ['one-cone', '.answer-mark', 390, 844, [1, -3]],
  ['film-carries', '.answer-mark', 820, 700, [1, 3]],
  ['film-carries', '.answer-mark', 820, 700, [-1, -4]],
  ['real-pair', '.place-mark', 390, 844, [6, 3]],
  ['real-pair', '.place-mark', 820, 700, [-6, -3]],
] as const)('%s: a finger drags %s at %i × %i', async (id, mark, width, height, [right, down]) => {
  await browser.viewport(width, height);
  localStorage.clear();
  vi.spyOn(Math, 'random').mockReturnValue(0);
  window.location.hash = `#learn/${id}`;
  await there('.ask');
  await there(mark);
  await still();
  $(mark).scrollIntoView({ block: 'center' });
  expect(document.documentElement.scrollHeight).toBeGreaterThan(window.innerHeight);
  const value = () => Number($(mark).getAttribute('aria-valuenow'));
  const ring = () => middle($(`${mark} .handle`).getBoundingClientRect());
  const [from, before, ended] = [ring(), value(), endsOf($(mark))];
  const at = (step: number) => ({ x: from.x + step * right, y: from.y + step * down });
  await finger('touchStart', from);
  for (let step = 1; step <= STEPS; step++) await finger('touchMove', at(step));
  const along = mark === '.answer-mark' ? 'y' : 'x';
  // Of what is seen: a page that scrolled would take the mark along, or away from the finger.
  const gone = ring()[along] - from[along];
  await finger('touchEnd', null);
  expect(gone / (at(STEPS)[along] - from[along])).toBeCloseTo(1, 1);
  expect(ended).toEqual(['pointerup']);
  expect(value()).not.toBe(before);
});
