/**
 * npm run -s soak -- [--minutes N] [--seed N] [--snapshot FILE]
 *
 * A job edited without a pause over all screens of the built page, for an hour or as long as is said: numbers typed,
 * the journal moved and dragged, buttons pressed, units, undo and redo, other jobs opened. Every minute, after a
 * collection that is forced: the heap of the page, its nodes and listeners, and what its process has of the machine's
 * memory, the workers with it; in the end also those of the same page loaded anew. Ends in error where the page says
 * something to the console, or the heap has not come to rest. `--snapshot`: the heap at the end, for a browser to open.
 */
import { createWriteStream, readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { type CDPSession, chromium, type Page } from 'playwright-core';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xorshift128plus } from 'pure-rand/generator/xorshift128plus';
import { preview } from 'vite';
import { CHROMIUM } from '../../vite.config.ts';
import { beginJob, screensOf } from './ownJob.ts';

const text = { type: 'string' } as const;
const { values } = parseArgs({ options: { minutes: text, seed: text, snapshot: text } });
const minutes = Number(values.minutes ?? 60);
const seed = Number(values.seed ?? 1);

const generator = xorshift128plus(seed);
const random = () => uniformFloat64(generator);
const oneOf = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
const say = (line: string) => process.stdout.write(`${line}\n`);

/** Edits on a screen before the next one. */
const EDITS = 12;
/** What takes the work somewhere the soak does not follow, or asks for a hand. */
const LEFT_ALONE =
  /delete|remove|print|file|csv|json|stl|gltf|svg|png|copy|take over|photograph|put away|begin|start|new job|save|load|newer/i;

/** Of something on the page: where a hand would meet it, and what it says. */
interface Met {
  x: number;
  y: number;
  text: string;
}

/**
 * What is in sight and enabled of a selector, and begins with `says`, brought before the hand: the one at `share` (0 to
 * 1) of the list. The page looks it up itself and answers in numbers: what drives the page would keep hold of an
 * element it was given wherever an act fails, and of the whole screen about it.
 */
const meet = (page: Page, selector: string, share: number, says = ''): Promise<Met | null> =>
  page.evaluate(
    ([selector, share, says]) => {
      const found = [...document.querySelectorAll<HTMLInputElement>(selector)]
        .filter((one) => one.getClientRects().length > 0 && !one.disabled)
        .map((one) => ({ one, text: one.value || one.getAttribute('aria-label') || one.textContent || '' }))
        .filter(({ text }) => text.trim().startsWith(says));
      const { one, text } = found[Math.floor(share * found.length)] ?? {};
      if (!one || text === undefined) return null;
      one.scrollIntoView({ block: 'center' });
      const { x, y, width, height } = one.getBoundingClientRect();
      return { x: x + width / 2, y: y + height / 2, text };
    },
    [selector, share, says] as const,
  );

/** A number of the page typed a little larger or smaller, in its own words. */
async function type(page: Page): Promise<void> {
  const field = await meet(page, 'main .typed input', random());
  const figure = /[−-]?\d+(\.\d+)?/.exec(field?.text ?? '')?.[0];
  if (!field || !figure) return;
  const value = Number(figure.replace('−', '-')) * (1 + 0.01 * (random() - 0.5));
  await page.mouse.click(field.x, field.y, { clickCount: 3 });
  await page.keyboard.insertText(field.text.replace(figure, value.toPrecision(6)));
  await page.keyboard.press(random() < 0.7 ? 'Enter' : 'Tab');
}

async function press(page: Page): Promise<void> {
  const button = await meet(page, 'main button', random());
  if (button && !LEFT_ALONE.test(button.text)) await page.mouse.click(button.x, button.y);
}

async function move(page: Page): Promise<void> {
  const journal = await page.evaluate(() => {
    const sliders = document.querySelectorAll<HTMLElement>('[aria-label="Axial position of the journal"]');
    const last = [...sliders].at(-1);
    last?.focus();
    return last !== undefined;
  });
  for (let i = 0; journal && i < 10; i++) await page.keyboard.press(oneOf(['ArrowLeft', 'ArrowRight']));
}

async function drag(page: Page): Promise<void> {
  const journal = await meet(page, '.journal', 0);
  if (!journal) return;
  await page.mouse.move(journal.x, journal.y);
  await page.mouse.down();
  for (let i = 0; i < 10; i++) await page.mouse.move(journal.x + 40 * (random() - 0.5), journal.y);
  await page.mouse.up();
}

const header = (says: string) => async (page: Page) => {
  const button = await meet(page, 'header button', 0, says);
  if (button) await page.mouse.click(button.x, button.y);
};

const ACTS = [
  type,
  type,
  type,
  move,
  drag,
  press,
  press,
  header('Undo'),
  header('Redo'),
  header('Units'),
  header('Take along'),
] as const;

/**
 * Begins another job now and then: what belonged to the one before is to be let go. The file is put in by the page
 * itself: what drives the page would keep hold of its input, and of all that stands about it, for good.
 */
async function another(page: Page): Promise<void> {
  const text = readFileSync(new URL('../../assets/designs/notebook.conepair.json', import.meta.url), 'utf8');
  await page.locator('.begin input[type=file]').waitFor({ state: 'attached' });
  await page.evaluate((text) => {
    const files = new DataTransfer();
    files.items.add(new File([text], 'another.conepair.json', { type: 'application/json' }));
    const input = document.querySelector<HTMLInputElement>('.begin input[type=file]')!;
    input.files = files.files;
    input.dispatchEvent(new Event('change', { bubbles: true }));
  }, text);
}

interface Sizes {
  /** MB, after a collection */
  heap: number;
  nodes: number;
  listeners: number;
  /** MB of the largest process of a page, workers and all */
  process: number;
}

async function sizes(cdp: CDPSession, whole: CDPSession): Promise<Sizes> {
  for (let i = 0; i < 2; i++) await cdp.send('HeapProfiler.collectGarbage');
  const { metrics } = await cdp.send('Performance.getMetrics');
  const of = (name: string) => metrics.find((metric) => metric.name === name)?.value ?? Number.NaN;
  const { processInfo } = (await whole.send('SystemInfo.getProcessInfo')) as {
    processInfo: { type: string; id: number }[];
  };
  const pages = processInfo.filter(({ type: kind }) => kind === 'renderer').map(({ id }) => residentOf(id));
  return {
    heap: of('JSHeapUsedSize') / 1e6,
    nodes: of('Nodes'),
    listeners: of('JSEventListeners'),
    process: Math.max(...pages),
  };
}

/** MB; 0 where the system does not tell. */
function residentOf(id: number): number {
  try {
    return Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${id}/status`, 'utf8'))?.[1] ?? 0) / 1024;
  } catch {
    return 0;
  }
}

/** The heap as a file, in which what holds on to something can be looked up. */
async function snapshot(cdp: CDPSession, file: string): Promise<void> {
  const stream = createWriteStream(file);
  cdp.on('HeapProfiler.addHeapSnapshotChunk', ({ chunk }) => stream.write(chunk));
  await cdp.send('HeapProfiler.takeHeapSnapshot');
  await new Promise<void>((done) => stream.end(done));
}

const mean = (list: readonly number[]) => list.reduce((sum, x) => sum + x, 0) / list.length;
/** The later half may be larger than the earlier one by this much before it is called a leak. */
const ALLOWED = 1.1;

const server = await preview({ logLevel: 'silent', preview: { port: 0, open: false } });
const address = server.resolvedUrls!.local[0]!;
const browser = await chromium.launch(CHROMIUM);
try {
  const page = await browser.newPage({ viewport: { width: 1200, height: 900 } });
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type()) && !/GPU stall/.test(message.text()))
      complaints.push(message.text().slice(0, 300));
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await beginJob(page, address);
  const screens = [...(await screensOf(page)), 'jobs', 'new'];
  // What is pressed may be gone before it is reached.
  page.setDefaultTimeout(3_000);
  page.setDefaultNavigationTimeout(60_000);
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Performance.enable');
  const whole = await browser.newBrowserCDPSession();
  const told: Sizes[] = [];
  const began = performance.now();
  let [acts, missed] = [0, 0];
  const minute = () => (performance.now() - began) / 60_000;
  say(`soak: seed ${seed}, ${minutes} minutes`);
  for (let round = 0; minute() < minutes; round++) {
    const screen = screens[round % screens.length]!;
    await page.goto(`${address}#${screen}`);
    if (screen === 'jobs' && random() < 0.3) await another(page).catch(() => missed++);
    for (let i = 0; i < EDITS && minute() < minutes; i++) {
      await oneOf(ACTS)(page).catch(() => missed++);
      acts++;
    }
    if (minute() >= told.length + 1 || minute() >= minutes) {
      // Looked at on the same screen, at rest.
      await page.goto(`${address}#fit`);
      await page.waitForTimeout(1500);
      const now = await sizes(cdp, whole);
      told.push(now);
      say(
        `${minute().toFixed(1)} min: ${acts} edits (${missed} missed), heap ${now.heap.toFixed(1)} MB, ` +
          `${now.nodes} nodes, ${now.listeners} listeners, process ${now.process.toFixed(0)} MB`,
      );
    }
  }
  // What is loaded once, and steps that can be undone, come in the first part.
  const later = told.slice(Math.floor(told.length / 4));
  const [one, other] = [later.slice(0, later.length / 2), later.slice(later.length / 2)];
  const grown = one.length > 0 ? mean(other.map(({ heap }) => heap)) / mean(one.map(({ heap }) => heap)) : 1;
  say(`soak: ${acts} edits; the heap of the later half is ${grown.toFixed(3)} times that of the earlier`);
  // What was opened and kept by the hand may stay; what only the hour has left behind is gone in a page loaded anew.
  const atRest = async () => {
    for (const screen of [...screens, 'fit']) {
      await page.goto(`${address}#${screen}`);
      await page.waitForTimeout(1500);
    }
    return sizes(cdp, whole);
  };
  const tired = await atRest();
  if (values.snapshot) await snapshot(cdp, values.snapshot);
  await page.reload();
  const anew = await atRest();
  for (const [when, { heap, nodes, listeners }] of Object.entries({ tired, anew }))
    say(`${when}: heap ${heap.toFixed(1)} MB, ${nodes} nodes, ${listeners} listeners`);
  for (const complaint of new Set(complaints)) say(`said to the console: ${complaint}`);
  process.exitCode = complaints.length > 0 || grown > ALLOWED ? 1 : 0;
} finally {
  await browser.close();
  await server.close();
}
