/** The named parts of a screen: shut they tell their result; opened by hand, by the list, by the address, on paper. */
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { setAllOpen } from '../../src/app/frame/openParts.ts';
import { frame, page, withoutSolid } from './page.tsx';

const shown = page('#cut', true);
const LONG = { timeout: 50_000 };

const part = (place: string) => document.querySelector<HTMLDetailsElement>(`[id="${place}"]`);
const parts = () => [...document.querySelectorAll<HTMLDetailsElement>('details.part')];

async function shut(screen: string) {
  withoutSolid();
  setAllOpen(false);
  window.location.hash = `#${screen}`;
  shown.show();
  await expect.poll(() => parts().length, LONG).toBeGreaterThan(1);
}

test('a part that is shut tells its result; opened it stays so while the page lives', async () => {
  await shut('cut');
  await expect.poll(() => part('cut/steps'), LONG).not.toBeNull();
  for (const one of parts()) {
    expect(one.open, one.id).toBe(false);
    expect(one.querySelector('.told-shut')!.textContent!.length, one.id).toBeGreaterThan(3);
  }
  expect(part('cut/steps')!.querySelector('.told-shut')!.textContent).toMatch(/µm off the steep journal$/);
  part('cut/steps')!.querySelector('summary')!.click();
  await expect.poll(() => part('cut/steps')!.open).toBe(true);
  window.location.hash = '#fit';
  await expect.poll(() => part('fit/play'), LONG).not.toBeNull();
  window.location.hash = '#cut';
  await expect.poll(() => part('cut/steps')?.open, LONG).toBe(true);
  expect(part('cut/order')!.open).toBe(false);
});

test('the list jumps to a part and opens it, and so does an address that names it', { tags: ['long'] }, async () => {
  await shut('cut');
  await expect.poll(() => part('cut/order'), LONG).not.toBeNull();
  const list = browser.getByRole('navigation', { name: 'Parts of this screen' });
  await userEvent.click(list.getByRole('link', { name: 'Order of work' }));
  await expect.poll(() => part('cut/order')!.open).toBe(true);
  await expect.poll(() => document.activeElement).toBe(part('cut/order')!.querySelector('summary'));
  expect(window.location.hash).toBe('#cut/order');
  window.location.hash = '#cut/errors';
  await expect.poll(() => part('cut/errors')!.open).toBe(true);
  await userEvent.click(list.getByRole('button', { name: 'Open all' }));
  await expect.poll(() => parts().every(({ open }) => open)).toBe(true);
  await userEvent.click(list.getByRole('button', { name: 'Close all' }));
  await expect.poll(() => parts().some(({ open }) => open)).toBe(false);
});

test('on paper every part stands open, and after it as it was', async () => {
  await shut('cut');
  await expect.poll(() => part('cut/steps'), LONG).not.toBeNull();
  window.dispatchEvent(new Event('beforeprint'));
  expect(parts().every(({ open }) => open)).toBe(true);
  await frame();
  window.dispatchEvent(new Event('afterprint'));
  await expect.poll(() => parts().some(({ open }) => open)).toBe(false);
});

/** What is to be in sight at once: the answer, the picture, and what the hand moves. */
const AT_ONCE = {
  run: ['.verdict .now', '.seat-map canvas', '.hand-slider input'],
  cut: ['.verdict .now', '.picture svg.section', '.aims input'],
};

test.each([
  [1440, 900],
  [1180, 820],
  [820, 1180],
  [390, 844],
] as const)(
  'at %i × %i answer, picture and the hand’s control are on the first screen of Run and Cut',
  async (width, height) => {
    await browser.viewport(width, height);
    for (const screen of ['run', 'cut'] as const) {
      await shut(screen);
      // Once it is known that nothing speaks against the plan.
      await expect.poll(() => document.querySelector('[aria-label="How it runs as planned"]'), LONG).toBeNull();
      for (const what of AT_ONCE[screen]) {
        await expect.poll(() => document.querySelector(what), { ...LONG, message: `${screen} ${what}` }).not.toBeNull();
        await frame();
        const { top, bottom, height: tall } = document.querySelector(what)!.getBoundingClientRect();
        expect(top, what).toBeGreaterThanOrEqual(0);
        // Of a picture most of it.
        expect(bottom - 0.25 * tall, `${screen} ${what}`).toBeLessThanOrEqual(height);
      }
      expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
    }
  },
);
