/** A finger as the browser itself takes it: pulling the nose is a pull, and never taken for scrolling. */
import { expect, test } from 'vitest';
import { page as browser, cdp } from 'vitest/browser';
import { page as app, frame, still, withoutSolid } from './page.tsx';

const shown = app('#fit', true);
const LONG = { timeout: 40_000 };

interface Devices {
  send(
    method: 'Input.dispatchTouchEvent',
    event: { type: string; touchPoints: { x: number; y: number }[] },
  ): Promise<void>;
}

/** Where the page with the test stands in the window that the devices know. */
function within() {
  const { left, top, width } = window.frameElement!.getBoundingClientRect();
  return { left, top, scale: width / window.innerWidth };
}

async function finger(type: 'touchStart' | 'touchMove' | 'touchEnd', at: { x: number; y: number } | null) {
  const { left, top, scale } = within();
  const touchPoints = at ? [{ x: left + scale * at.x, y: top + scale * at.y }] : [];
  await (cdp() as unknown as Devices).send('Input.dispatchTouchEvent', { type, touchPoints });
  await frame();
}

const ring = () => document.querySelector('.pull-grip .handle')!.getBoundingClientRect();
const middle = ({ left, top, width, height }: DOMRect) => ({ x: left + width / 2, y: top + height / 2 });

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
  const ended: string[] = [];
  const grip = document.querySelector('.pull-grip')!;
  for (const name of ['pointerup', 'pointercancel']) grip.addEventListener(name, () => ended.push(name));
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
