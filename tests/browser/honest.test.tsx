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
/** mm: an opening that the first factor draws too large for the picture. */
const FAR = 0.09;
/** px: where the journal ends at its nose; it goes along the axis. */
const drawnAt = () => document.querySelector('.journal .outline')!.getBoundingClientRect().right;

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

test('the closing draws the journal going one way at one factor, which stays for as long as the picture holds it', async () => {
  await standing();
  const first = factor();
  const [places, factors, films] = [[drawnAt()], [first], [position()]];
  // Pressed from within: on a busy machine the closing is over before a press from without is told to be done.
  (page.getByRole('button', { name: 'first touch' }).element() as HTMLElement).click();
  while (position() > -0.0039999) {
    await frame();
    places.push(drawnAt());
    films.push(position());
    factors.push(factor());
  }
  expect(new Set(factors)).toEqual(new Set([first]));
  for (let i = 1; i < places.length; i++)
    if (films[i]! < films[i - 1]!) expect(places[i]!).toBeLessThanOrEqual(places[i - 1]! + 0.5);
  expect(places.at(-1)!).toBeLessThan(places[0]! - 3);
  expect(now()).toBe('Steep touches. Shallow stands 7.98 µm off.');
  expect(document.querySelector('.journal')!.getAttribute('aria-valuetext')).toMatch(
    /rearward of the datum; steep touches/,
  );
  await expect.poll(() => document.querySelector('.verdict [role="status"]')!.textContent).toMatch(/Steep touches/);
  // Said by now, and the factor has had its rest: a film that closed is not drawn open again.
  expect(factor()).toBe(first);
  expect(drawnAt()).toBeLessThan(places[0]! - 3);
});

test('a gap that the picture holds no more has its factor lessened at rest, and that is said', async () => {
  await standing();
  const first = factor();
  const before = drawnAt();
  flushSync(() => shown.work.moveTo(FAR));
  await expect.poll(caption).toMatch(new RegExp(`×${first} → ×\\d+`));
  await expect.poll(factor).toBeLessThan(first / 1.5);
  // More is never drawn as less.
  expect(drawnAt()).toBeGreaterThanOrEqual(before - 0.5);
});

test('locked, it stays whatever moves', async () => {
  await standing();
  const before = factor();
  await userEvent.click(page.getByRole('button', { name: /^Keep ×/ }));
  flushSync(() => shown.work.moveTo(FAR));
  await expect.poll(now).toMatch(/too thick/);
  // What would change it at rest has had its time once the status has told where it stands.
  await expect.poll(() => document.querySelector('.verdict [role="status"]')!.textContent).toMatch(/too thick/);
  expect(factor()).toBe(before);
  await userEvent.click(page.getByRole('button', { name: /^Keep ×/ }));
  await expect.poll(factor).toBeLessThan(before / 1.5);
});

test('pressed in far beyond what the picture holds it stays in sight, lenses in their order, and all seats are heard', async () => {
  await standing();
  const names = () => [...document.querySelectorAll('.lens strong')].map(({ textContent }) => textContent);
  const [order, first] = [names(), factor()];
  shown.work.dragStart();
  const bush = document.querySelector('.section .outline.bush')!.getBoundingClientRect();
  const places = [-0.01, -0.05, -0.1, -0.15].map((place) => {
    flushSync(() => shown.work.moveTo(place));
    return { right: drawnAt(), factor: factor() };
  });
  const [last] = places.slice(-1);
  expect(last!.right).toBeGreaterThan(bush.left + 0.2 * bush.width);
  for (const [i, { right, factor: times }] of places.entries()) {
    const before = places[i - 1] ?? { right: Number.POSITIVE_INFINITY, factor: first };
    expect(right).toBeLessThanOrEqual(before.right);
    expect(times).toBeLessThanOrEqual(before.factor);
  }
  expect(last!.factor).toBeLessThan(0.6 * first);
  expect(names()).toEqual(order);
  await expect
    .poll(() => document.querySelector('.verdict [role="status"]')!.textContent)
    .toMatch(/^Steep touched and is .* metal must give\. Shallow stands 0\.34 µm off\.$/);
  shown.work.dragEnd();
});

test('in the lenses one move shuts the steep seat and hardly stirs the shallow one', async () => {
  await standing();
  const oil = (name: string) =>
    [...lens(name).querySelectorAll('.film')].reduce((height, path) => height + path.getBoundingClientRect().height, 0);
  const [shallow, steep] = [oil('shallow'), oil('steep')];
  flushSync(() => shown.work.moveTo(0.005));
  await still();
  // However high the lenses are on this page.
  const [crept, shut] = [shallow - oil('shallow'), steep - oil('steep')];
  expect(shut).toBeGreaterThan(40);
  expect(crept).toBeLessThan(shut / 4);
  flushSync(() => shown.work.moveTo(-0.004));
  await still();
  expect(oil('steep')).toBeLessThan(1);
  expect(lens('steep').querySelector('.touch')).not.toBeNull();
  expect(lens('shallow').querySelector('.touch')).toBeNull();
  flushSync(() => shown.work.moveTo(-0.02));
  await still();
  expect(now()).toMatch(/^Steep touched and is [\d.]+ µm into its bush: metal must give\.$/);
  // Said once: the second line tells what follows from it.
  expect(document.querySelector('.verdict h2')!.textContent).not.toMatch(/into its bush here/);
});
