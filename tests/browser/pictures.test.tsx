/** The pictures of the Fit screen in Chromium: zoom and dimensions, the chart's marks, the scene and what happens without it. */
import { flushSync } from 'react-dom';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { cdp, page, userEvent } from 'vitest/browser';
import { App } from '../../src/app/App.tsx';
import { DEMOS, openingDesign } from '../../src/app/demos.ts';
import { createWork, type Work } from '../../src/app/store.ts';
import '../../src/app/style.css';

let root: Root;
let work: Work;
const complaints: string[] = [];
/** three speaks of a class that fiber still uses, and of a context that a test takes away; software WebGL of slow reads. */
const KNOWN = /THREE\.Clock: This module has been deprecated|GPU stall due to ReadPixels|THREE\.WebGLRenderer: (Context Lost|WEBGL_lose_context extension not supported)/;

beforeEach(() => {
  complaints.length = 0;
  for (const kind of ['error', 'warn', 'log'] as const) {
    vi.spyOn(console, kind).mockImplementation((...words) => {
      const said = words.map(String).join(' ');
      if (!KNOWN.test(said)) complaints.push(said);
    });
  }
  document.body.innerHTML = '<div id="root"></div>';
  document.documentElement.lang = 'en';
  work = createWork(openingDesign(), undefined);
  root = createRoot(document.getElementById('root')!);
});

afterEach(() => {
  flushSync(() => root.unmount());
  vi.restoreAllMocks();
  expect(complaints).toEqual([]);
});

const show = () => flushSync(() => root.render(<App work={work} />));
const position = () => work.store.getState().design.position ?? 0;
const steps = () => work.store.temporal.getState().pastStates.length;
const frame = () => new Promise((done) => requestAnimationFrame(() => done(null)));
const section = () => document.querySelector<SVGSVGElement>('svg.section')!;
const open = (name: string) => flushSync(() => work.open(name, { ok: true, design: DEMOS.find((demo) => demo.file.startsWith(name))!.design }));

/** px to one mm: from the transform that draws the journal. */
const scale = () => Number(/scale\(([\d.]+)/.exec(document.querySelector('.journal g')!.getAttribute('transform')!)![1]);

/** A place (px of the screen) carried by the drawing's transform. */
function placeOf(mm: number): number {
  const [, x, k] = /translate\(([-\d.e]+) [-\d.e]+\) scale\(([\d.]+)/.exec(document.querySelector('.journal g')!.getAttribute('transform')!)!;
  return section().getBoundingClientRect().left + Number(x) + mm * Number(k);
}

test('the wheel scrolls the page, and zooms with Ctrl or with the focus, toward the pointer', async () => {
  await page.viewport(1440, 900);
  show();
  await expect.poll(() => section().clientWidth).toBeGreaterThan(400);
  await frame();
  await frame();
  const before = scale();
  const box = section().getBoundingClientRect();
  // A wheel event tells its place in whole pixels.
  const pointer = Math.round(placeOf(-20));
  const mm = (pointer - placeOf(0)) / before;
  const wheel = (ctrlKey: boolean) => {
    const event = new WheelEvent('wheel', { bubbles: true, cancelable: true, deltaY: -100, ctrlKey, clientX: pointer, clientY: box.top + box.height / 2 });
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
  await expect.poll(() => section().clientWidth).toBeGreaterThan(400);
  await frame();
  await frame();
  const journal = document.querySelector<SVGGElement>('.journal')!;
  journal.setPointerCapture = () => {};
  section().setPointerCapture = () => {};
  const box = journal.getBoundingClientRect();
  const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
  const finger = (kind: string, pointerId: number, dx: number) => flushSync(() => journal.dispatchEvent(new PointerEvent(kind, { bubbles: true, pointerType: 'touch', pointerId, button: 0, clientX: x + dx, clientY: y })));
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
  await page.viewport(1440, 900);
  show();
  const figures = () => [...document.querySelectorAll('.dimensions text')].map((text) => text.textContent);
  await expect.poll(() => figures().join(' ')).toMatch(/⌀22\.0164/);
  expect(figures()).toContain('24.500');
  expect(figures()).toContain('29.000');
  expect(figures()).toContain('45.0°');
  const dimensionsOf = page.getByRole('group', { name: 'Dimensions' });
  await userEvent.click(dimensionsOf.getByRole('button', { name: 'Journal' }));
  await expect.poll(() => figures().join(' ')).toMatch(/⌀22\.000/);
  expect(figures()).toContain('26.000');
  await userEvent.click(dimensionsOf.getByRole('button', { name: 'None' }));
  expect(figures()).toEqual([]);
});

/** Boxes of texts as they are drawn, by what they say. */
function boxesOf(selector: string) {
  return [...document.querySelectorAll<SVGTextElement>(selector)].map((node) => ({ said: node.textContent!, box: node.getBoundingClientRect() }));
}

test('no text of section or chart stands on another, in any demo, at any width, in both systems', async () => {
  show();
  for (const width of [390, 820, 1440]) {
    await page.viewport(width, 900);
    for (const system of ['metric', 'inch'] as const) {
      for (const { file } of DEMOS) {
        flushSync(() => work.store.setState({ system }));
        open(file);
        await frame();
        await frame();
        for (const picture of ['.section', '.chart > svg']) {
          const frameBox = document.querySelector(picture)!.getBoundingClientRect();
          const texts = boxesOf(`${picture} text`);
          expect(texts.length).toBeGreaterThan(3);
          texts.forEach(({ said, box }, i) => {
            const where = `${file} ${width} ${system}: "${said}"`;
            expect(box.left, where).toBeGreaterThanOrEqual(frameBox.left - 1);
            expect(box.right, where).toBeLessThanOrEqual(frameBox.right + 1);
            for (const other of texts.slice(i + 1)) {
              const [across, down] = [Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left), Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top)];
              // Boxes of text reach a little past its letters.
              expect(across > 1 && down > 5, `${where} and "${other.said}"`).toBe(false);
            }
          });
        }
      }
    }
  }
});

test('the chart tells the films wanted, the slopes, and a seat whose film is beyond it', async () => {
  await page.viewport(1440, 900);
  show();
  const said = () => document.querySelector('.chart > svg')!.textContent!;
  expect(said()).toMatch(/shallow, steep: 2\.50 µm ± 0\.50 wanted/);
  expect(said()).toMatch(/shallow\d+ µm → 1\.05 µm/);
  expect(said()).toMatch(/steep 16\.97 µm/);
  expect(document.querySelectorAll('.band-mark').length).toBe(4);
  work.moveTo(0);
  await expect.poll(said).not.toMatch(/steep \d/);
  open('rear-bearing');
  expect(said()).toMatch(/rearstays the same/);
});

async function sceneCanvas(): Promise<HTMLCanvasElement> {
  await expect.poll(() => document.querySelector<HTMLCanvasElement>('.scene canvas')?.getContext('webgl2'), { timeout: 20_000 }).toBeTruthy();
  await expect.poll(() => document.querySelector<HTMLCanvasElement>('.scene canvas')!.width, { timeout: 20_000 }).toBeGreaterThan(200);
  // The first picture stands.
  for (let i = 0; i < 20; i++) await frame();
  return document.querySelector<HTMLCanvasElement>('.scene canvas')!;
}

/** How much two pictures of an element differ, share of the pixels. */
async function pixelsOf(element: Element): Promise<Uint8ClampedArray> {
  const shot = await page.elementLocator(element).screenshot({ base64: true, save: false });
  const image = new Image();
  image.src = `data:image/png;base64,${typeof shot === 'string' ? shot : (shot as { base64: string }).base64}`;
  await image.decode();
  const copy = document.createElement('canvas');
  [copy.width, copy.height] = [image.width, image.height];
  const context = copy.getContext('2d')!;
  context.drawImage(image, 0, 0);
  return context.getImageData(0, 0, copy.width, copy.height).data;
}

function differing(a: Uint8ClampedArray, b: Uint8ClampedArray): number {
  let count = 0;
  for (let i = 0; i < a.length; i += 4) if (Math.abs(a[i]! - b[i]!) + Math.abs(a[i + 1]! - b[i + 1]!) + Math.abs(a[i + 2]! - b[i + 2]!) > 24) count++;
  return count / (a.length / 4);
}

test('a drag in the scene moves the journal, shows it, and is one step to undo', async () => {
  await page.viewport(1440, 900);
  show();
  const canvas = await sceneCanvas();
  canvas.scrollIntoView({ block: 'center' });
  const before = position();
  const seen = await pixelsOf(canvas);
  const box = canvas.getBoundingClientRect();
  // The journal's seat, open to the viewer in the middle of the picture.
  const at = (dx: number) => ({ bubbles: true, pointerId: 7, pointerType: 'mouse', button: 0, buttons: 1, clientX: box.left + box.width / 2 + dx, clientY: box.top + box.height / 2 });
  canvas.dispatchEvent(new PointerEvent('pointerdown', at(0)));
  for (const dx of [-8, -16, -30]) {
    canvas.dispatchEvent(new PointerEvent('pointermove', at(dx)));
    await frame();
  }
  canvas.dispatchEvent(new PointerEvent('pointerup', at(-30)));
  expect(position()).toBeLessThan(before);
  expect(steps()).toBe(1);
  await expect.poll(async () => differing(seen, await pixelsOf(canvas)), { timeout: 10_000 }).toBeGreaterThan(0.002);
  work.undo();
  expect(position()).toBe(before);
  await expect.poll(async () => differing(seen, await pixelsOf(canvas)), { timeout: 10_000 }).toBeLessThan(0.001);
});

test('the keyboard turns the view and brings it back; the journal stays where it is', async () => {
  await page.viewport(1440, 900);
  show();
  const canvas = await sceneCanvas();
  const view = page.getByRole('application', { name: /Arrow keys turn the view/ });
  (view.element() as HTMLElement).focus();
  // The whole, in the size the canvas has by now.
  await userEvent.keyboard('0');
  for (let i = 0; i < 5; i++) await frame();
  const seen = await pixelsOf(canvas);
  await userEvent.keyboard('{ArrowLeft}{ArrowLeft}{ArrowUp}');
  await expect.poll(async () => differing(seen, await pixelsOf(canvas)), { timeout: 10_000 }).toBeGreaterThan(0.02);
  await userEvent.keyboard('0');
  await expect.poll(async () => differing(seen, await pixelsOf(canvas)), { timeout: 10_000 }).toBeLessThan(0.001);
  await userEvent.keyboard('+');
  await expect.poll(async () => differing(seen, await pixelsOf(canvas)), { timeout: 10_000 }).toBeGreaterThan(0.02);
  expect(steps()).toBe(0);
});

test('where the graphics context is lost the section carries on, and a sentence says so', async () => {
  await page.viewport(820, 900);
  show();
  await userEvent.click(page.getByRole('button', { name: 'Solid' }));
  const canvas = await sceneCanvas();
  canvas.getContext('webgl2')!.getExtension('WEBGL_lose_context')!.loseContext();
  await expect.element(page.getByText('This device cannot draw the solid picture; the section shows the same pair.')).toBeVisible();
  expect(document.querySelector('.scene')).toBeNull();
  const before = position();
  document.querySelector<SVGGElement>('.journal')!.focus();
  await userEvent.keyboard('{ArrowLeft}');
  expect(position()).toBeLessThan(before);
});

test('where there is no WebGL the section carries on, and a sentence says so', async () => {
  const getContext = HTMLCanvasElement.prototype.getContext;
  vi.spyOn(HTMLCanvasElement.prototype, 'getContext').mockImplementation(function (this: HTMLCanvasElement, kind: string, ...rest: unknown[]) {
    return kind.startsWith('webgl') ? null : (getContext as (...args: unknown[]) => unknown).call(this, kind, ...rest);
  } as typeof getContext);
  await page.viewport(1440, 900);
  show();
  await expect.element(page.getByText('This device cannot draw the solid picture; the section shows the same pair.')).toBeVisible();
  expect(document.querySelectorAll('.film').length).toBeGreaterThan(0);
});

/** Chromium told that its user wants less motion, or not. */
const reducedMotion = (value: 'reduce' | 'no-preference') => (cdp() as unknown as { send(method: string, params: object): Promise<unknown> }).send('Emulation.setEmulatedMedia', { features: [{ name: 'prefers-reduced-motion', value }] });

test('the closing runs, can be paused, ends exactly at the touch, each run one step to undo', async () => {
  await page.viewport(820, 900);
  show();
  const from = position();
  await userEvent.click(page.getByRole('button', { name: 'Close until it touches' }));
  await expect.poll(position, { timeout: 5000, interval: 50 }).toBeLessThan(from - 0.001);
  await userEvent.click(page.getByRole('button', { name: 'Pause' }));
  const paused = position();
  expect(paused).toBeGreaterThan(-0.004);
  expect(steps()).toBe(1);
  await frame();
  await frame();
  expect(position()).toBe(paused);
  await userEvent.click(page.getByRole('button', { name: 'Close until it touches' }));
  await expect.poll(() => page.getByRole('button', { name: /Pause|Close until/ }).query(), { timeout: 8000 }).toBeNull();
  expect(document.querySelectorAll('.touch').length).toBe(2);
  expect(steps()).toBe(2);
  work.undo();
  expect(position()).toBe(paused);
  work.undo();
  expect(position()).toBe(from);
});

test('where less motion is wanted the closing is one jump to the touch', async () => {
  await reducedMotion('reduce');
  try {
    await page.viewport(820, 900);
    show();
    await userEvent.click(page.getByRole('button', { name: 'Close until it touches' }));
    expect(page.getByRole('button', { name: 'Pause' }).query()).toBeNull();
    expect(document.querySelectorAll('.touch').length).toBe(2);
    expect(steps()).toBe(1);
  } finally {
    await reducedMotion('no-preference');
  }
});
