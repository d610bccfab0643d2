/** A finger as the browser itself takes it: pulling the nose is a pull, and never taken for scrolling. */
import { expect, test } from 'vitest';
import { page as browser } from 'vitest/browser';
import { endsOf, finger, middle } from './finger.ts';
import { page as app, still, withoutSolid } from './page.tsx';

const shown = app('#fit', true);
const LONG = { timeout: 40_000 };

const ring = () => document.querySelector('.pull-grip .handle')!.getBoundingClientRect();

async function standing(width: number, height: number) {
  withoutSolid();
  await browser.viewport(width, height);
  shown.show();
  shown.open('steep-first');
  await expect.poll(() => document.querySelector('.track'), LONG).not.toBeNull();
  await expect.poll(() => document.querySelector('.lens'), LONG).not.toBeNull();
  await still();
  expect(document.documentElement.scrollHeight).toBeGreaterThan(window.innerHeight);
}

test.each([
  [390, 844, 1],
  [820, 1180, 1],
  [390, 844, -1],
  [820, 1180, -1],
] as const)('at %i × %i a finger pulls the nose (%i down) until something holds it', async (width, height, down) => {
  await standing(width, height);
  const from = middle(ring());
  const ended = endsOf(document.querySelector('.pull-grip')!);
  await finger('touchStart', from);
  for (let step = 1; step <= 12; step++) await finger('touchMove', { x: from.x, y: from.y + 8 * step * down });
  const { pull } = shown.work.store.getState();
  expect(Math.sign(pull?.y ?? 0)).toBe(-down);
  await expect.poll(() => document.querySelector('.force-arrow')).not.toBeNull();
  expect(Math.sign(middle(ring()).y - from.y)).toBe(down);
  await finger('touchEnd', null);
  expect(ended).toEqual(['pointerup']);
  expect(window.scrollY).toBe(0);
  await expect
    .poll(() => document.querySelector('.verdict .now')!.textContent)
    .toMatch(/^Nose pulled aside until .* touch/);
  const said = () => document.querySelector('.visually-hidden[role=status]')!.textContent;
  await expect.poll(said).toMatch(/^Nose pulled aside until .* touch/);
});

test('a finger that goes up beside the ring scrolls the page', async () => {
  await standing(390, 844);
  const { x, y } = middle(document.querySelector('.section')!.getBoundingClientRect());
  const away = { x: 24, y: y + 60 };
  expect(x).toBeGreaterThan(away.x);
  await finger('touchStart', away);
  for (let step = 1; step <= 12; step++) await finger('touchMove', { x: away.x, y: away.y - 12 * step });
  await finger('touchEnd', null);
  await expect.poll(() => window.scrollY).toBeGreaterThan(20);
  expect(shown.work.store.getState().pull).toBeNull();
  window.scrollTo(0, 0);
});

test.each([390, 820])(
  'at %i px a finger that sets out askew moves the mark of the track, and no page',
  async (width) => {
    await standing(width, 844);
    const mark = document.querySelector('.track .mark')!;
    mark.scrollIntoView({ block: 'center' });
    const [scrolled, ended, from, stood] = [
      window.scrollY,
      endsOf(mark.closest('svg')!),
      middle(mark.getBoundingClientRect()),
      shown.position(),
    ];
    await finger('touchStart', from);
    for (let step = 1; step <= 12; step++) await finger('touchMove', { x: from.x + 2 * step, y: from.y - 5 * step });
    await finger('touchEnd', null);
    expect(ended).toEqual(['pointerup']);
    expect(window.scrollY).toBe(scrolled);
    expect(shown.position()).not.toBe(stood);
  },
);
