/** The picture in motion: one factor under the hand and in the closing, changed only at rest, and said. */
import { flushSync } from 'react-dom';
import { expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { page as app, chartLoaded, frame, still, withoutSolid } from './page.tsx';

const shown = app('', true);
const { show, position } = shown;

const caption = () => document.querySelector('.in-sight .picture figcaption')!.textContent!;
const factor = () => Number(/Gaps drawn (?:×[\d,]+ → )?×([\d,]+)/.exec(caption())![1]!.replace(',', ''));
const now = () => document.querySelector('.verdict .now')!.textContent!;
const lens = (name: string) => document.querySelector(`.lens svg[aria-label^="The ${name} seat"]`)!;
/** px the steep film is drawn thick in the section, by its journal: it goes along the axis. */
const drawnAt = () => document.querySelector('.journal path')!.getBoundingClientRect().left;

/** The page as it is at first, all of it there. */
async function standing(): Promise<void> {
  withoutSolid();
  await page.viewport(1440, 900);
  show();
  await chartLoaded();
  await expect.poll(() => document.querySelectorAll('.lens').length, { timeout: 40_000 }).toBe(2);
  await expect.poll(() => document.querySelector('.track')).not.toBeNull();
  await still();
}

test('the closing draws the journal going one way at one factor; then the factor changes, and that is said', async () => {
  await standing();
  const first = factor();
  const [places, factors, films]: [number[], number[], number[]] = [[], [], []];
  await userEvent.click(page.getByRole('button', { name: 'Close until it touches' }));
  while (position() > -0.0039999) {
    await frame();
    places.push(drawnAt());
    films.push(position());
    factors.push(factor());
  }
  expect(new Set(factors)).toEqual(new Set([first]));
  for (let i = 1; i < places.length; i++)
    if (films[i]! < films[i - 1]!) expect(places[i]!).toBeLessThanOrEqual(places[i - 1]! + 0.5);
  expect(now()).toBe('Steep touches. Shallow stands 7.98 µm off.');
  await expect.poll(caption).toMatch(/×227 → ×400/);
  await expect.poll(factor).toBe(400);
  expect(document.querySelector('.journal')!.getAttribute('aria-valuetext')).toMatch(
    /rearward of the datum; steep touches/,
  );
  await expect.poll(() => document.querySelector('.verdict [role="status"]')!.textContent).toMatch(/Steep touches/);
});

test('locked, it stays whatever moves', async () => {
  await standing();
  const before = factor();
  await userEvent.click(page.getByRole('button', { name: /^Keep ×/ }));
  flushSync(() => shown.work.moveTo(-0.004));
  await expect.poll(now).toMatch(/Steep touches/);
  // What would change it at rest has had its time once the status has told the touch.
  await expect.poll(() => document.querySelector('.verdict [role="status"]')!.textContent).toMatch(/Steep touches/);
  expect(factor()).toBe(before);
  await userEvent.click(page.getByRole('button', { name: /^Keep ×/ }));
  await expect.poll(factor).toBe(400);
});

test('in the lenses one move shuts the steep seat and hardly stirs the shallow one', async () => {
  await standing();
  const oil = (name: string) =>
    [...lens(name).querySelectorAll('.film')].reduce((height, path) => height + path.getBoundingClientRect().height, 0);
  const [shallow, steep] = [oil('shallow'), oil('steep')];
  flushSync(() => shown.work.moveTo(0.005));
  await still();
  expect(shallow - oil('shallow')).toBeLessThan(12);
  expect(steep - oil('steep')).toBeGreaterThan(40);
  flushSync(() => shown.work.moveTo(-0.004));
  await still();
  expect(oil('steep')).toBeLessThan(1);
  expect(lens('steep').querySelector('.touch')).not.toBeNull();
  expect(lens('shallow').querySelector('.touch')).toBeNull();
  flushSync(() => shown.work.moveTo(-0.02));
  await still();
  expect(now()).toMatch(/^Steep is [\d.]+ µm into its bush: metal must give\.$/);
  // Said once: the second line tells what follows from it.
  expect(document.querySelector('.verdict h2')!.textContent).not.toMatch(/into its bush here/);
});
