/**
 * The section and the closing chart in Chromium: zoom, dimensions, labels that keep clear of each other.
 *
 * @module-tag long
 */
import { flushSync } from 'react-dom';
import { expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { DEMOS } from '../../src/app/state/demos.ts';
import { page as app, chartLoaded, still, withoutSolid } from './page.tsx';

const shown = app('', true);
const { show, position, steps, open } = shown;

const section = () => document.querySelector<SVGSVGElement>('svg.section')!;

/** px to one mm: from the transform that draws the journal. */
const scale = () =>
  Number(/scale\(([\d.]+)/.exec(document.querySelector('.journal g')!.getAttribute('transform')!)![1]);

/** A place (px of the screen) carried by the drawing's transform. */
function placeOf(mm: number): number {
  const [, x, k] = /translate\(([-\d.e]+) [-\d.e]+\) scale\(([\d.]+)/.exec(
    document.querySelector('.journal g')!.getAttribute('transform')!,
  )!;
  return section().getBoundingClientRect().left + Number(x) + mm * Number(k);
}

test('the wheel scrolls the page, and zooms with Ctrl or with the focus, toward the pointer', async () => {
  await page.viewport(1440, 900);
  show();
  await chartLoaded();
  await still();
  const before = scale();
  const box = section().getBoundingClientRect();
  // A wheel event tells its place in whole pixels.
  const pointer = Math.round(placeOf(-20));
  const mm = (pointer - placeOf(0)) / before;
  const wheel = (ctrlKey: boolean) => {
    const event = new WheelEvent('wheel', {
      bubbles: true,
      cancelable: true,
      deltaY: -100,
      ctrlKey,
      clientX: pointer,
      clientY: box.top + box.height / 2,
    });
    flushSync(() => section().dispatchEvent(event));
    return event.defaultPrevented;
  };
  expect(wheel(false)).toBe(false);
  expect(scale()).toBe(before);
  expect(wheel(true)).toBe(true);
  await expect.poll(scale).toBeGreaterThan(before * 1.1);
  expect(placeOf(mm)).toBeCloseTo(pointer, 3);
  section().focus();
  expect(wheel(false)).toBe(true);
  await expect.poll(scale).toBeGreaterThan(before * 1.3);
  await userEvent.keyboard('0');
  expect(scale()).toBeCloseTo(before, 6);
  await userEvent.keyboard('++-');
  expect(scale()).toBeCloseTo(before * 1.4, 6);
  await userEvent.keyboard('{Escape}');
  expect(section().contains(document.activeElement)).toBe(false);
});

test('two fingers zoom about what lies between them, and a journal taken hold of by the first goes back', async () => {
  await page.viewport(1440, 900);
  show();
  await chartLoaded();
  await still();
  const journal = document.querySelector<SVGGElement>('.journal')!;
  journal.setPointerCapture = () => {};
  section().setPointerCapture = () => {};
  const box = journal.getBoundingClientRect();
  const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
  const finger = (kind: string, pointerId: number, dx: number) =>
    flushSync(() =>
      journal.dispatchEvent(
        new PointerEvent(kind, {
          bubbles: true,
          pointerType: 'touch',
          pointerId,
          button: 0,
          clientX: x + dx,
          clientY: y,
        }),
      ),
    );
  const before = { scale: scale(), position: position() };
  finger('pointerdown', 1, -40);
  finger('pointermove', 1, -60);
  expect(position()).toBeLessThan(before.position);
  finger('pointerdown', 2, 60);
  expect(position()).toBe(before.position);
  const mm = (x - placeOf(0)) / scale();
  finger('pointermove', 2, 180);
  finger('pointermove', 1, -180);
  await expect.poll(scale).toBeCloseTo(before.scale * 3, 3);
  expect(placeOf(mm)).toBeCloseTo(x, 1);
  finger('pointerup', 1, -180);
  finger('pointerup', 2, 180);
  expect(position()).toBe(before.position);
  expect(steps()).toBe(0);
});

test('the section is dimensioned in the figures of the part asked for', async () => {
  await page.viewport(1440, 1400);
  show();
  const figures = () => [...document.querySelectorAll('.dimensions text')].map((text) => text.textContent);
  const dimensionsOf = page.getByRole('group', { name: 'Dimensions' });
  expect(figures()).toEqual([]);
  await userEvent.click(dimensionsOf.getByRole('button', { name: 'Bush' }));
  await expect.poll(() => figures().join(' ')).toMatch(/⌀22\.0164/);
  expect(figures()).toContain('24.500');
  expect(figures()).toContain('29.000');
  expect(figures()).toContain('45.0°');
  await userEvent.click(dimensionsOf.getByRole('button', { name: 'Journal' }));
  await expect.poll(() => figures().join(' ')).toMatch(/⌀22\.000/);
  expect(figures()).toContain('26.000');
  await userEvent.click(dimensionsOf.getByRole('button', { name: 'None' }));
  expect(figures()).toEqual([]);
});

/** Boxes of the texts of a drawing as they are drawn, by what they say. */
function boxesOf(drawing: Element) {
  return [...drawing.querySelectorAll<SVGTextElement>('text')].map((node) => ({
    said: node.textContent!,
    box: node.getBoundingClientRect(),
  }));
}

test('no text of section or chart stands on another, in any demo, at any width, in both systems', {
  timeout: 240_000,
}, async () => {
  withoutSolid();
  show();
  await chartLoaded();
  for (const width of [390, 820, 1440]) {
    await page.viewport(width, 900);
    for (const [i, { file }] of DEMOS.entries()) {
      // Each demo in one system a width, the other way about from one to the next, so that each is seen in both.
      const system = (i + (width === 820 ? 1 : 0)) % 2 ? 'inch' : 'metric';
      flushSync(() => shown.work.store.setState({ system }));
      open(file);
      await still();
      const drawings = [...document.querySelectorAll('.section, .chart > svg, .lens svg, .track svg')];
      expect(drawings.length).toBeGreaterThan(3);
      for (const drawing of drawings) {
        const frameBox = drawing.getBoundingClientRect();
        const texts = boxesOf(drawing);
        expect(texts.length).toBeGreaterThan(2);
        texts.forEach(({ said, box }, i) => {
          const where = `${file} ${width} ${system}: "${said}"`;
          expect(box.left, where).toBeGreaterThanOrEqual(frameBox.left - 1);
          expect(box.right, where).toBeLessThanOrEqual(frameBox.right + 1);
          for (const other of texts.slice(i + 1)) {
            const [across, down] = [
              Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left),
              Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top),
            ];
            // Boxes of text reach a little past its letters.
            expect(across > 1 && down > 5, `${where} and "${other.said}"`).toBe(false);
          }
        });
      }
    }
  }
});

test('the chart tells the films wanted, the slopes, and a seat whose film is beyond it', async () => {
  // One column: in two the chart has no room for the words of the band.
  await page.viewport(1000, 900);
  show();
  await chartLoaded();
  const said = () => document.querySelector('.chart > svg')!.textContent!;
  await expect.poll(said).toMatch(/shallow, steep: 2\.50 µm ± 0\.50 wanted/);
  expect(said()).toMatch(/shallow\d+ µm → 1\.05 µm/);
  expect(said()).toMatch(/steep 16\.97 µm/);
  expect(document.querySelectorAll('.band-mark').length).toBe(4);
  shown.work.moveTo(0);
  await expect.poll(said).not.toMatch(/steep \d/);
  open('rear-bearing');
  await expect.poll(said).toMatch(/rearstays the same/);
});
