/** Nothing moves under the hand: whatever is said of a journal on its way, all that stands below keeps its place. */
import { flushSync } from 'react-dom';
import { beforeAll, expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { page as app, frame, still, withoutSolid } from './page.tsx';

const shown = app('', true);
const { show, work } = { show: shown.show, work: () => shown.work };

const SIZES = [
  [390, 844],
  [820, 1180],
  [1440, 900],
] as const;
const LONG = { timeout: 40_000 };

/** What comes with the solid picture is long on its way the first time. */
beforeAll(() => import('../../src/app/pictures/Scene.tsx').then(() => undefined), 120_000);

/** Where the picture, the track, the lenses' drawings and the list of parts stand, to a tenth of a pixel. */
function places(): Record<string, string> {
  const at = (selector: string) => {
    const { left, top, width, height } = document.querySelector(selector)!.getBoundingClientRect();
    return [left, top + window.scrollY, width, height].map((px) => px.toFixed(1)).join(' ');
  };
  const drawn = document.querySelector('.in-sight .scene') ? '.in-sight .scene' : '.in-sight .drawn';
  return {
    picture: at(drawn),
    track: at('.track svg'),
    shut: at('.lens:first-child .lens-room'),
    last: at('.lens:last-child .lens-room'),
    parts: at('.beside details.part'),
  };
}

async function standing(width: number, height: number, demo: string): Promise<void> {
  await browser.viewport(width, height);
  show();
  shown.open(demo);
  await expect.poll(() => document.querySelector('.lens'), LONG).not.toBeNull();
  await expect.poll(() => document.querySelector('.track'), LONG).not.toBeNull();
  await expect.poll(() => document.querySelector('.word'), LONG).not.toBeNull();
  await expect.poll(() => document.querySelector('.beside details.part[open]'), LONG).not.toBeNull();
  // It is known by then whether the solid picture can be drawn.
  if (width >= 1100) await expect.poll(() => document.querySelector('.in-sight > [role=status]'), LONG).not.toBeNull();
  for (const part of document.querySelectorAll<HTMLDetailsElement>('.beside details.part')) part.open = false;
  await still();
}

/** mm: through every touch and film, from far open to pressed in. */
const WAY = Array.from({ length: 21 }, (_, i) => 0.03 - 0.004 * i);

test.each(
  SIZES.flatMap(([width, height]) => ['steep-first', 'rear-bearing'].map((demo) => [width, height, demo] as const)),
)('at %i × %i a journal dragged, pushed by keys or pulled aside moves nothing else of %s', async (...place) => {
  withoutSolid();
  await standing(...place);
  const before = places();
  flushSync(() => work().dragStart());
  for (const position of WAY) {
    flushSync(() => work().moveTo(position));
    expect(places(), `dragged to ${position}`).toEqual(before);
  }
  flushSync(() => work().dragEnd());
  await frame();
  expect(places(), 'let go').toEqual(before);
  document.querySelector<SVGElement>('.section .journal')!.focus();
  for (const key of ['PageUp', 'ArrowRight', 'ArrowLeft', 'ArrowLeft', 'Home', 'ArrowLeft', 'End']) {
    await userEvent.keyboard(`{${key}}`);
    await frame();
    expect(places(), key).toEqual(before);
  }
  for (const y of [0.001, 0.02, -0.02]) {
    flushSync(() => work().store.setState({ pull: { station: 0, x: 0, y } }));
    await frame();
    expect(places(), `pulled by ${y}`).toEqual(before);
  }
  await expect.poll(() => document.querySelector('.verdict .now')!.textContent).toMatch(/^Nose pulled aside/);
  expect(places(), 'pulled').toEqual(before);
  // The way back lies over the picture, within it.
  const [button, picture] = ['.let-go', '.in-sight .drawn'].map((one) =>
    document.querySelector(one)!.getBoundingClientRect(),
  );
  expect(button!.top).toBeGreaterThanOrEqual(picture!.top);
  expect(button!.bottom).toBeLessThanOrEqual(picture!.bottom);
  await userEvent.click(document.querySelector('.let-go')!);
  await frame();
  expect(places(), 'let go again').toEqual(before);
});

test.each(SIZES.slice(0, 2))('at %i × %i the solid picture takes the place of the section', async (width, height) => {
  await standing(width, height, 'steep-first');
  const before = places();
  await userEvent.click(browser.getByRole('button', { name: 'Solid' }));
  await expect.poll(() => document.querySelector('.scene canvas'), LONG).not.toBeNull();
  await still();
  expect(places()).toEqual(before);
  flushSync(() => work().store.setState({ pull: { station: 0, x: 0, y: 0.02 } }));
  await expect.poll(() => document.querySelector('.scene .let-go')).not.toBeNull();
  expect(places()).toEqual(before);
  await userEvent.click(browser.getByRole('button', { name: 'Section' }));
  await still();
  expect(places()).toEqual(before);
});

test.each([
  [1440, 900],
  [1180, 820],
  [820, 1180],
] as const)(
  'at %i × %i the answer, the section, the hand’s control and every lens are on the first screen',
  async (width, height) => {
    withoutSolid();
    await standing(width, height, 'steep-first');
    const bar = document.querySelector('.jump')!.getBoundingClientRect();
    const end = getComputedStyle(document.querySelector('.jump')!).position === 'fixed' ? bar.top : height;
    for (const what of ['.verdict .now', '.verdict.fit h2', '.in-sight .drawn', '.track .mark', '.lens svg'])
      for (const one of document.querySelectorAll(what)) {
        const { top, bottom } = one.getBoundingClientRect();
        expect(top, what).toBeGreaterThanOrEqual(0);
        expect(bottom, what).toBeLessThanOrEqual(end);
      }
  },
);

test('on a phone the heads of the lenses are, too', async () => {
  withoutSolid();
  await standing(390, 844, 'steep-first');
  const end = document.querySelector('.jump')!.getBoundingClientRect().top;
  for (const what of ['.verdict .now', '.in-sight .drawn', '.track .mark', '.lens .film-now'])
    for (const one of document.querySelectorAll(what))
      expect(one.getBoundingClientRect().bottom, what).toBeLessThanOrEqual(end);
});
