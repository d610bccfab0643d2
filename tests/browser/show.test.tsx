/** Large, for a projector: one control, what is so now in words, and any state of it as a link that opens here. */
import { expect, test, vi } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { expectAccessible, page, withoutSolid } from './page.tsx';

const shown = page('#show', true);
const { position } = shown;
const now = () => document.querySelector('.show-now')?.textContent ?? '';

async function large() {
  withoutSolid();
  await browser.viewport(1280, 720);
  shown.show();
  await expect.poll(() => document.querySelectorAll('.show .lens').length, { timeout: 30_000 }).toBe(2);
}

test('it fills the page alone, and the one control closes the pair until it touches', async () => {
  await large();
  expect(document.querySelector('header')!.checkVisibility()).toBe(false);
  expect(document.documentElement.scrollHeight).toBeLessThanOrEqual(721);
  expect(now()).toBe('Shallow 9.24 µm, too thick; steep 16.97 µm, too thick.');
  const slider = document.querySelector<HTMLInputElement>('.show-move input')!;
  const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!;
  slider.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true }));
  set.call(slider, '-0.004');
  slider.dispatchEvent(new Event('input', { bubbles: true }));
  slider.dispatchEvent(new PointerEvent('pointerup', { bubbles: true }));
  expect(position()).toBeCloseTo(-0.004, 9);
  await expect.poll(now).toBe('Steep touches. Shallow stands 7.98 µm off.');
  slider.focus();
  await userEvent.keyboard('{ArrowLeft}');
  await expect.poll(now).toMatch(/into its bush/);
  await expectAccessible();
});

test('the control pulled past the touch in one go stops there, and goes on from there', async () => {
  await large();
  const slider = document.querySelector<HTMLInputElement>('.show-move input')!;
  const setter = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!;
  const pull = (to: number) => {
    setter.call(slider, `${to}`);
    slider.dispatchEvent(new Event('input', { bubbles: true }));
  };
  slider.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true }));
  pull(-0.03);
  expect(position()).toBeCloseTo(-0.004, 9);
  await expect.poll(now).toBe('Steep touches. Shallow stands 7.98 µm off.');
  expect(slider.getAttribute('aria-valuetext')).toMatch(/steep touches$/);
  pull(-0.04);
  expect(position()).toBeLessThan(-0.006);
  expect(position()).toBeGreaterThan(-0.0141);
  slider.dispatchEvent(new PointerEvent('pointerup', { bubbles: true }));
  await expect.poll(now).toMatch(/^Steep touched and is [\d.]+ µm into its bush/);
});

test('in portrait the answer, the pictures and the whole of the control are in sight', async () => {
  await large();
  for (const [width, height] of [
    [820, 1180],
    [390, 844],
  ] as const) {
    await browser.viewport(width, height);
    const box = (selector: string) => document.querySelector(selector)!.getBoundingClientRect();
    await expect.poll(() => box('.show-move').bottom).toBeLessThanOrEqual(height);
    await expect.poll(() => box('.show .picture').top).toBeGreaterThanOrEqual(box('.show-now').bottom - 1);
    expect(box('.show-move input').width).toBeGreaterThan(width / 3);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
    for (const lens of document.querySelectorAll('.show .lens'))
      expect(lens.getBoundingClientRect().bottom).toBeLessThanOrEqual(box('.show-move').top + 1);
  }
});

test('where the clipboard may not be written the link stands in a field, selected', async () => {
  await large();
  vi.spyOn(navigator.clipboard, 'writeText').mockRejectedValue(new Error('no'));
  await userEvent.click(browser.getByRole('button', { name: 'Copy a link to this' }));
  const field = browser.getByLabelText('The link, to be copied by hand');
  await expect.element(field).toBeVisible();
  const { value, selectionStart, selectionEnd } = field.element() as HTMLInputElement;
  expect(new URL(value).hash).toMatch(/show/);
  expect([selectionStart, selectionEnd]).toEqual([0, value.length]);
});

test('a link to what is shown opens here, as it was; Escape goes back to Fit', async () => {
  await large();
  let link = '';
  vi.spyOn(navigator.clipboard, 'writeText').mockImplementation(async (text) => {
    link = text;
  });
  shown.work.moveTo(0.007);
  await userEvent.click(browser.getByRole('button', { name: 'Copy a link to this' }));
  await expect.element(browser.getByText('The link is copied.')).toBeVisible();
  await userEvent.keyboard('{Escape}');
  await expect.poll(() => window.location.hash).toBe('#fit');
  shown.work.moveTo(0.011);
  window.location.hash = new URL(link).hash;
  await expect.poll(() => window.location.hash).toBe('#show');
  await expect.poll(position).toBeCloseTo(0.007, 9);
});

test('the picture that is saved holds all that is seen: what is so now, the section, every lens and its words', async () => {
  await large();
  const { wholeOf } = await import('../../src/app/takeAlong/whole.ts');
  const area = document.querySelector<HTMLElement>('.show-pictures')!;
  const { text, width, height } = wholeOf(area, 'A job', now());
  const read = new DOMParser().parseFromString(text, 'image/svg+xml');
  expect(read.querySelector('parsererror')).toBeNull();
  const said = [...read.querySelectorAll('text')].map((one) => one.textContent).join(' ');
  for (const words of [now(), 'A job', '9.24 µm', '16.97 µm', 'too thick']) expect(said).toContain(words);
  expect(said).not.toMatch(/Keep|Whole|Bush\b/);
  const drawings = [...read.documentElement.children].filter(({ tagName }) => tagName === 'svg');
  expect(drawings.length).toBe(3);
  for (const drawing of drawings) {
    const [x, y, wide, high] = ['x', 'y', 'width', 'height'].map((name) => Number(drawing.getAttribute(name)));
    expect(x!).toBeGreaterThanOrEqual(0);
    expect(y!).toBeGreaterThan(40);
    expect(x! + wide!).toBeLessThanOrEqual(width);
    expect(y! + high!).toBeLessThanOrEqual(height);
    // In its own measure, so that nothing of it is left blank.
    const shown = area.querySelector<SVGSVGElement>(`svg[aria-label="${drawing.getAttribute('aria-label')}"]`)!;
    expect(drawing.getAttribute('viewBox')).toBe(`0 0 ${shown.clientWidth} ${shown.clientHeight}`);
  }
});

test('on a phone the saved picture holds every word above it whole, its factor and title, and the units of the lenses', async () => {
  await large();
  await browser.viewport(390, 844);
  await expect.poll(() => document.querySelector('.show .lens-room')!.getBoundingClientRect().width).toBeLessThan(390);
  const { wholeOf } = await import('../../src/app/takeAlong/whole.ts');
  const job = `${shown.work.store.getState().design.title} · gaps drawn ×227`;
  const { text, width, height } = wholeOf(document.querySelector<HTMLElement>('.show-pictures')!, job, now());
  document.body.insertAdjacentHTML('beforeend', text);
  const whole = document.body.lastElementChild as SVGSVGElement;
  const room = whole.getBoundingClientRect();
  expect([room.width, room.height]).toEqual([width, height]);
  const above = [...whole.children].filter(({ tagName }) => tagName === 'text');
  const said = above.map((one) => one.textContent).join(' ');
  for (const words of [now(), job]) expect(said).toContain(words);
  for (const words of above) {
    const { left, right, top, bottom } = words.getBoundingClientRect();
    expect(left, words.textContent!).toBeGreaterThanOrEqual(room.left);
    expect(right, words.textContent!).toBeLessThanOrEqual(room.right + 0.01);
    expect(top).toBeGreaterThanOrEqual(room.top);
    expect(bottom).toBeLessThanOrEqual(room.bottom + 0.01);
  }
  // What is said above ends before the first drawing begins.
  const drawings = [...whole.children].filter(({ tagName }) => tagName === 'svg');
  const head = above.filter((one) => Number(one.getAttribute('x')) === 16).map((one) => one.getBoundingClientRect());
  expect(Math.max(...head.map(({ bottom }) => bottom))).toBeLessThanOrEqual(
    Math.min(...drawings.map((one) => one.getBoundingClientRect().top)) + 8,
  );
  const units = drawings.flatMap((one) =>
    [...one.querySelectorAll('text')]
      .filter(({ textContent }) => textContent === 'µm')
      .map((unit) => [unit, one] as const),
  );
  expect(units.length).toBe(2);
  for (const [unit, one] of units) {
    const [seen, lens] = [unit.getBoundingClientRect(), one.getBoundingClientRect()];
    // A line of text is a little higher than its letters.
    expect(seen.top).toBeGreaterThanOrEqual(lens.top - 3);
    expect(seen.right).toBeLessThanOrEqual(lens.right + 0.01);
  }
  whole.remove();
});
