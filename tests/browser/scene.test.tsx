/**
 * The solid picture in Chromium: by pointer and keys, where WebGL is lost or missing, and the closing to the touch.
 *
 * @module-tag long
 */
import { expect, test, vi } from 'vitest';
import { cdp, page, userEvent } from 'vitest/browser';
import { page as app, frame, pixelsOf, withoutSolid } from './page.tsx';

const shown = app('', true);
const { show, position, steps } = shown;

/** Frames enough that what changed is drawn: a photograph asked for while WebGL draws in software may never come. */
async function drawn(): Promise<void> {
  for (let i = 0; i < 20; i++) await frame();
}

/** The pixels of the scene once it is drawn. */
async function photograph(): Promise<Uint8ClampedArray> {
  await drawn();
  return pixelsOf(document.querySelector('.scene')!);
}

async function sceneCanvas(): Promise<HTMLCanvasElement> {
  await expect
    .poll(() => document.querySelector<HTMLCanvasElement>('.scene canvas')?.getContext('webgl2'), { timeout: 45_000 })
    .toBeTruthy();
  await expect
    .poll(() => document.querySelector<HTMLCanvasElement>('.scene canvas')!.width, { timeout: 20_000 })
    .toBeGreaterThan(200);
  await drawn();
  return document.querySelector<HTMLCanvasElement>('.scene canvas')!;
}

function differing(a: Uint8ClampedArray, b: Uint8ClampedArray): number {
  let count = 0;
  for (let i = 0; i < a.length; i += 4)
    if (Math.abs(a[i]! - b[i]!) + Math.abs(a[i + 1]! - b[i + 1]!) + Math.abs(a[i + 2]! - b[i + 2]!) > 24) count++;
  return count / (a.length / 4);
}

test('a drag in the scene moves the journal, shows it, and is one step to undo', { timeout: 120_000 }, async () => {
  await page.viewport(1440, 900);
  show();
  // The same picture is the same again only at the same factor.
  shown.work.store.setState({ scaleLocked: true });
  const canvas = await sceneCanvas();
  canvas.scrollIntoView({ block: 'center' });
  const before = position();
  // What a hand does is said until one has.
  const hint = () => page.getByText('Drag the steel to move it, the ground to turn').query();
  expect(hint()).not.toBeNull();
  canvas.dispatchEvent(new PointerEvent('pointerup', { bubbles: true }));
  await expect.poll(hint).toBeNull();
  const seen = await photograph();
  const box = canvas.getBoundingClientRect();
  // The journal's seat, open to the viewer in the middle of the picture.
  const at = (dx: number) => ({
    bubbles: true,
    pointerId: 7,
    pointerType: 'mouse',
    button: 0,
    buttons: 1,
    clientX: box.left + box.width / 2 + dx,
    clientY: box.top + box.height / 2,
  });
  canvas.dispatchEvent(new PointerEvent('pointerdown', at(0)));
  for (const dx of [-8, -16, -30]) {
    canvas.dispatchEvent(new PointerEvent('pointermove', at(dx)));
    await frame();
  }
  canvas.dispatchEvent(new PointerEvent('pointerup', at(-30)));
  expect(position()).toBeLessThan(before);
  expect(steps()).toBe(1);
  await expect.poll(async () => differing(seen, await photograph()), { timeout: 10_000 }).toBeGreaterThan(0.002);
  shown.work.undo();
  expect(position()).toBe(before);
  await expect.poll(async () => differing(seen, await photograph()), { timeout: 10_000 }).toBeLessThan(0.001);
});

test('the keyboard turns the view and brings it back; the journal stays where it is', async () => {
  await page.viewport(1440, 900);
  show();
  await sceneCanvas();
  const view = page.getByRole('application', { name: /Arrow keys turn the view/ });
  (view.element() as HTMLElement).focus();
  // The whole, in the size the canvas has by now.
  await userEvent.keyboard('0');
  for (let i = 0; i < 5; i++) await frame();
  const seen = await photograph();
  await userEvent.keyboard('{ArrowLeft}{ArrowLeft}{ArrowUp}');
  await expect.poll(async () => differing(seen, await photograph()), { timeout: 10_000 }).toBeGreaterThan(0.02);
  await userEvent.keyboard('0');
  await expect.poll(async () => differing(seen, await photograph()), { timeout: 10_000 }).toBeLessThan(0.001);
  await userEvent.keyboard('+');
  await expect.poll(async () => differing(seen, await photograph()), { timeout: 10_000 }).toBeGreaterThan(0.02);
  expect(steps()).toBe(0);
});

test('the labels tell each film and both ends; from the nose those of both cuts, and back again', async () => {
  await page.viewport(1440, 900);
  show();
  await sceneCanvas();
  const told = () => [...document.querySelectorAll('.stage-tags text')].map(({ textContent }) => textContent).sort();
  const whole = ['nose', 'rear', 'shallow 9.24 µm', 'steep 16.97 µm'];
  await expect.poll(told, { timeout: 10_000 }).toEqual(whole);
  await userEvent.click(page.getByRole('button', { name: 'From the nose' }));
  await expect.poll(told, { timeout: 10_000 }).toEqual(['shallow 9.24 µm', 'steep 16.97 µm']);
  expect(document.querySelector('.stage-cut')!.textContent).toBe('Cut through shallow and steep, in steps');
  await userEvent.click(page.getByRole('button', { name: 'From the side' }));
  await expect.poll(told, { timeout: 10_000 }).toEqual(whole);
  expect(document.querySelector('.stage .unseen')!.textContent).toBe('shallow 9.24 µm, steep 16.97 µm.');
});

test('turned by hand it is no view of its name any more, and once the cut is not faced none is told nor made', async () => {
  await page.viewport(1440, 900);
  show();
  const canvas = await sceneCanvas();
  const pressed = () =>
    [...document.querySelectorAll('.stage-views [aria-pressed=true]')].map(({ textContent }) => textContent);
  const cut = () => document.querySelector('.stage-cut:not(.of-hand)')?.textContent ?? '';
  const told = () => [...document.querySelectorAll('.stage-tags text')].map(({ textContent }) => textContent);
  await expect.poll(told, { timeout: 10_000 }).toContain('nose');
  expect(pressed()).toEqual(['Three-quarter']);
  const nose = page.getByRole('button', { name: 'From the nose' });
  await userEvent.click(nose);
  await expect.poll(told, { timeout: 10_000 }).not.toContain('nose');
  await drawn();
  expect([pressed(), cut()]).toEqual([['From the nose'], 'Cut through shallow and steep, in steps']);
  (canvas.closest('[role=application]') as HTMLElement).focus();
  // Closer is the same view.
  await userEvent.keyboard('+');
  expect(pressed()).toEqual(['From the nose']);
  await userEvent.keyboard('{ArrowLeft}');
  await expect.poll(pressed).toEqual([]);
  expect(cut()).toMatch(/^Cut through/);
  for (let turns = 0; turns < 10; turns++) await userEvent.keyboard('{ArrowLeft}');
  await expect.poll(cut).toBe('');
  await expect.poll(told, { timeout: 10_000 }).toContain('rear');
  await userEvent.click(nose);
  await expect.poll(() => [pressed(), cut()]).toEqual([['From the nose'], 'Cut through shallow and steep, in steps']);
  await drawn();
  // The hand on the ground turns it as the keys do.
  const { left, top, width, height } = canvas.getBoundingClientRect();
  const at = (x: number) => ({ clientX: left + x * width, clientY: top + 0.9 * height, pointerId: 7, bubbles: true });
  const send = (type: string, x: number) =>
    canvas.dispatchEvent(new PointerEvent(type, { ...at(x), button: type === 'pointermove' ? -1 : 0, buttons: 1 }));
  vi.spyOn(HTMLElement.prototype, 'setPointerCapture').mockImplementation(() => {});
  vi.spyOn(HTMLElement.prototype, 'releasePointerCapture').mockImplementation(() => {});
  send('pointerdown', 0.1);
  for (const x of [0.3, 0.5, 0.7]) send('pointermove', x);
  send('pointerup', 0.7);
  await expect.poll(() => [pressed(), cut()]).toEqual([[], '']);
});

test('where the graphics context is lost the section carries on, and a sentence says so', async () => {
  await page.viewport(820, 900);
  show();
  await userEvent.click(page.getByRole('button', { name: 'Solid' }));
  const canvas = await sceneCanvas();
  canvas.getContext('webgl2')!.getExtension('WEBGL_lose_context')!.loseContext();
  await expect
    .element(page.getByText('This device cannot draw the solid picture; the section shows the same pair.'))
    .toBeVisible();
  expect(document.querySelector('.scene')).toBeNull();
  const before = position();
  document.querySelector<SVGGElement>('.journal')!.focus();
  await userEvent.keyboard('{ArrowLeft}');
  expect(position()).toBeLessThan(before);
});

test('where there is no WebGL the section carries on, and a sentence says so', async () => {
  withoutSolid();
  await page.viewport(1440, 900);
  show();
  await expect
    .element(page.getByText('This device cannot draw the solid picture; the section shows the same pair.'))
    .toBeVisible();
  expect(document.querySelectorAll('.film').length).toBeGreaterThan(0);
});

/** Chromium told that its user wants less motion, or not. */
const reducedMotion = (value: 'reduce' | 'no-preference') =>
  (cdp() as unknown as { send(method: string, params: object): Promise<unknown> }).send('Emulation.setEmulatedMedia', {
    features: [{ name: 'prefers-reduced-motion', value }],
  });

test('the closing runs, can be paused, ends exactly at the touch, each run one step to undo', async () => {
  await page.viewport(820, 900);
  show();
  const from = position();
  await userEvent.click(page.getByRole('button', { name: 'first touch' }));
  await expect.poll(position, { timeout: 5000, interval: 50 }).toBeLessThan(from - 0.001);
  await userEvent.click(page.getByRole('button', { name: 'Pause' }));
  const paused = position();
  expect(paused).toBeGreaterThan(-0.004);
  expect(steps()).toBe(1);
  await frame();
  await frame();
  expect(position()).toBe(paused);
  await userEvent.click(page.getByRole('button', { name: 'first touch' }));
  await expect
    .poll(() => page.getByRole('button', { name: 'first touch' }).query()?.getAttribute('aria-disabled'), {
      timeout: 8000,
    })
    .toBe('true');
  expect(document.querySelectorAll('.section .touch').length).toBe(2);
  expect(steps()).toBe(2);
  shown.work.undo();
  expect(position()).toBe(paused);
  shown.work.undo();
  expect(position()).toBe(from);
});

test('where less motion is wanted the closing is one jump to the touch', async () => {
  await reducedMotion('reduce');
  try {
    await page.viewport(820, 900);
    show();
    await userEvent.click(page.getByRole('button', { name: 'first touch' }));
    expect(page.getByRole('button', { name: 'Pause' }).query()).toBeNull();
    expect(document.querySelectorAll('.section .touch').length).toBe(2);
    expect(steps()).toBe(1);
  } finally {
    await reducedMotion('no-preference');
  }
});
