/**
 * The whole page on a design, for the browser tests: opened before each, closed after, and what it says to the console
 * held against it.
 */
import axe from 'axe-core';
import { flushSync } from 'react-dom';
import { createRoot, type Root } from 'react-dom/client';
import { afterEach, beforeEach, expect, vi } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { App } from '../../src/app/App.tsx';
import { setAllOpen, setOpen } from '../../src/app/frame/openParts.ts';
import { askAgain } from '../../src/app/pictures/canDraw.ts';
import { DEMOS } from '../../src/app/state/demos.ts';
import { OPENING } from '../../src/app/state/opening.ts';
import { createWork, type Work } from '../../src/app/state/store.ts';
import '../../src/app/frame/style.css';

/** three speaks of a context that a test takes away; software WebGL of slow reads. */
const KNOWN =
  /GPU stall due to ReadPixels|THREE\.WebGLRenderer: (Context Lost|WEBGL_lose_context extension not supported)/;

export interface Shown {
  work: Work;
  /** Draws the page; done already unless asked otherwise. */
  show(): void;
  position(): number;
  /** Steps there are to undo. */
  steps(): number;
  /** Opens the demo whose file begins so. */
  open(name: string): void;
}

/** @param hash the screen in the address · `waiting`: the page is not drawn until `show` is called */
export function page(hash = '', waiting = false): Shown {
  let root: Root;
  const complaints: string[] = [];
  const shown: Shown = {
    work: createWork(OPENING.design),
    show: () => flushSync(() => root.render(<App work={shown.work} />)),
    position: () => shown.work.store.getState().design.position ?? 0,
    steps: () => shown.work.store.getState().steps.back,
    open: (name) =>
      flushSync(() =>
        shown.work.open(name, { ok: true, design: DEMOS.find(({ file }) => file.startsWith(name))!.design }),
      ),
  };
  beforeEach(() => {
    complaints.length = 0;
    for (const kind of ['error', 'warn', 'log'] as const) {
      vi.spyOn(console, kind).mockImplementation((...words) => {
        const said = words.map(String).join(' ');
        if (!KNOWN.test(said)) complaints.push(said);
      });
    }
    // A file picker waits for a hand; what is saved is offered as a download instead.
    Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined });
    // What is looked for may stand in a part that is shut; tests of the parts shut them.
    setAllOpen(true);
    for (const screen of ['measure', 'cut']) setOpen(`${screen}/record`, false, false);
    localStorage.removeItem('conepair colours');
    window.location.hash = hash;
    document.body.innerHTML = '<div id="root"></div>';
    document.documentElement.lang = 'en';
    document.title = 'Conepair';
    shown.work = createWork(OPENING.design);
    root = createRoot(document.getElementById('root')!);
    if (!waiting) shown.show();
  });
  afterEach(() => {
    flushSync(() => root.unmount());
    vi.restoreAllMocks();
    expect(complaints).toEqual([]);
  });
  return shown;
}

/**
 * A device that cannot draw the solid picture, until the test ends: drawn in software it takes most of the time of a
 * page, and what is not about it need not wait for it.
 */
export function withoutSolid(): void {
  askAgain();
  const real = HTMLCanvasElement.prototype.getContext;
  vi.spyOn(HTMLCanvasElement.prototype, 'getContext').mockImplementation(function (
    this: HTMLCanvasElement,
    kind: string,
    ...rest: unknown[]
  ) {
    return kind.startsWith('webgl') ? null : (real as (...all: unknown[]) => unknown).call(this, kind, ...rest);
  } as typeof real);
}

/** Presses a button of the bar at the top; on a narrow page it may stand behind another. */
export async function pressInBar(name: string): Promise<void> {
  const bar = browser.getByRole('banner');
  const button = bar.getByRole('button', { name, exact: true });
  const more = bar.getByRole('button', { name: 'More', exact: true, expanded: false });
  if (button.query() === null && more.query() !== null) await userEvent.click(more);
  await userEvent.click(button);
}

/** The closing chart of Fit, which is loaded after the first picture. */
export const chartLoaded = () =>
  expect.poll(() => document.querySelector('.chart > svg'), { timeout: 40_000 }).not.toBeNull();

export const frame = () => new Promise((done) => requestAnimationFrame(() => done(null)));

/** The drawings of the page as they stay: their size follows the page's a frame later, on a busy machine more. */
export async function still(): Promise<void> {
  const drawn = () => [...document.querySelectorAll('svg')].map((svg) => svg.outerHTML).join();
  for (let [same, last] = [0, '']; same < 3; ) {
    await frame();
    const now = drawn();
    same = now === last ? same + 1 : 0;
    last = now;
  }
}

/** The pixels of an element as the page shows it, four bytes each. */
export async function pixelsOf(element: Element): Promise<Uint8ClampedArray> {
  const shot = await browser.elementLocator(element).screenshot({ base64: true, save: false, timeout: 8000 });
  const image = new Image();
  image.src = `data:image/png;base64,${typeof shot === 'string' ? shot : (shot as { base64: string }).base64}`;
  await image.decode();
  const copy = document.createElement('canvas');
  [copy.width, copy.height] = [image.width, image.height];
  const context = copy.getContext('2d')!;
  context.drawImage(image, 0, 0);
  return context.getImageData(0, 0, copy.width, copy.height).data;
}

/** How many of the pixels are so. */
export function countPixels(
  pixels: Uint8ClampedArray,
  so: (red: number, green: number, blue: number) => boolean,
): number {
  let count = 0;
  for (let i = 0; i < pixels.length; i += 4) if (so(pixels[i]!, pixels[i + 1]!, pixels[i + 2]!)) count++;
  return count;
}

/** Nothing reaches beyond the page on a phone, a tablet or a desk. */
/** As if it were chosen from the files of the device. */
export function giveLesson(text: string): void {
  const files = new DataTransfer();
  files.items.add(new File([text], 'mine.lesson.json'));
  const field = document.querySelector<HTMLInputElement>('.own-lesson input')!;
  field.files = files.files;
  field.dispatchEvent(new Event('change', { bubbles: true }));
}

export async function expectNoSidewaysScroll(): Promise<void> {
  for (const width of [390, 820, 1440]) {
    await browser.viewport(width, 900);
    await new Promise((done) => setTimeout(done, 80));
    expect(document.documentElement.scrollWidth, `at ${width}`).toBeLessThanOrEqual(width);
  }
}

/** An axe scan with everything opened finds nothing, in both themes. */
export async function expectAccessible(): Promise<void> {
  await browser.viewport(820, 1100);
  for (const details of document.querySelectorAll('details')) details.open = true;
  for (const theme of ['light', 'dark']) {
    document.documentElement.style.colorScheme = theme;
    const { violations } = await axe.run(document);
    expect(
      violations.map(
        (v) => `${v.id}: ${v.nodes.map((n) => `${n.html.slice(0, 120)} ${n.failureSummary}`).join(' | ')}`,
      ),
    ).toEqual([]);
  }
  document.documentElement.style.colorScheme = '';
}
