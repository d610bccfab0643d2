/**
 * What one drag event costs the main thread, on the built page in Chromium: 300 moves of the journal by the
 * pointer in each picture, at two widths. Prints the median and the 95th percentile in ms of processor time of the main
 * thread in
 *   script   our own work with that of the libraries: solver, report, words, React, geometry, calls to the graphics
 *   all      every task of the main thread: script, style, layout, paint
 * each less what two frames take in which nothing is moved (asking for them takes script too; told beside it), and
 * before that, what the report of such an event takes by itself.
 * Run by `npm run bench`, after a build.
 */
import { type CDPSession, chromium, type Page } from 'playwright-core';
import { build, preview } from 'vite';
import { CHROMIUM } from '../../vite.config.ts';

const EVENTS = 300;
const WARM = 30;
/** px: as wide as this the solid picture stands beside the section (FitScreen.tsx). */
const BESIDE = 1100;

interface Cost {
  script: number;
  all: number;
}

async function metrics(cdp: CDPSession): Promise<Cost> {
  const { metrics: found } = await cdp.send('Performance.getMetrics');
  const ms = (name: string) => 1000 * (found.find((metric) => metric.name === name)?.value ?? Number.NaN);
  return { script: ms('ScriptDuration'), all: ms('TaskDuration') };
}

const twoFrames = (page: Page) =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

/** Costs (ms) of the moves of one drag that starts at a place of the page, and of frames between without a move. */
async function drag(page: Page, x: number, y: number): Promise<{ moves: Cost[]; empty: Cost[] }> {
  const cdp = await page.context().newCDPSession(page);
  // The thread's own clock: what other programs take from the machine meanwhile does not count.
  await cdp.send('Performance.enable', { timeDomain: 'threadTicks' });
  await page.mouse.move(x, y);
  await page.mouse.down();
  const cost = async (act: () => Promise<unknown>): Promise<Cost> => {
    const before = await metrics(cdp);
    await act();
    await twoFrames(page);
    const after = await metrics(cdp);
    return { script: after.script - before.script, all: after.all - before.all };
  };
  // Sent as it is: what drives the page puts listeners of its own round every move of its mouse.
  const move = (i: number) =>
    cdp.send('Input.dispatchMouseEvent', {
      type: 'mouseMoved',
      x: x + 20 * Math.sin(i / 9) + (i % 2),
      y,
      button: 'left',
      buttons: 1,
    });
  const [moves, empty]: [Cost[], Cost[]] = [[], []];
  for (let i = 0; i < WARM + EVENTS; i++) {
    const moved = await cost(() => move(i));
    const still = await cost(async () => {});
    if (i >= WARM) {
      moves.push(moved);
      empty.push(still);
    }
  }
  await page.mouse.up();
  return { moves, empty };
}

function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
}

function told({ moves, empty }: { moves: readonly Cost[]; empty: readonly Cost[] }, kind: keyof Cost): string {
  const nothing = quantile(
    empty.map((cost) => cost[kind]),
    0.5,
  );
  const at = (share: number) =>
    (
      quantile(
        moves.map((cost) => cost[kind]),
        share,
      ) - nothing
    ).toFixed(2);
  return `${kind} ${at(0.5)} (p95 ${at(0.95)}; nothing moved ${nothing.toFixed(2)})`;
}

const said = (page: Page) =>
  page
    .getByRole('slider', { name: 'Axial position of the journal', exact: true })
    .or(page.getByRole('slider', { name: 'on the chart' }))
    .last()
    .getAttribute('aria-valuetext');

async function measure(page: Page, name: string, x: number, y: number): Promise<void> {
  const before = await said(page);
  const costs = await drag(page, x, y);
  if ((await said(page)) === before) throw new Error(`${name}: the drag did not move the journal`);
  process.stdout.write(`${name}: ${told(costs, 'script')}, ${told(costs, 'all')} ms\n`);
}

async function middleOf(page: Page, selector: string): Promise<{ x: number; y: number }> {
  const node = page.locator(selector);
  await node.scrollIntoViewIfNeeded();
  const box = (await node.boundingBox())!;
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** The report alone: fit and words, on the main thread of a page. */
async function report(): Promise<void> {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      write: false,
      lib: { entry: new URL('./reportOfDrag.ts', import.meta.url).pathname, formats: ['iife'], name: 'reportOfDrag' },
    },
  });
  const [{ output }] = built as unknown as [{ output: { code: string }[] }];
  const page = await browser.newPage();
  await page.addScriptTag({ content: output[0]!.code });
  const times = await page.evaluate(
    (count) =>
      (globalThis as unknown as { reportOfDrag: { times(count: number): number[] } }).reportOfDrag.times(count),
    EVENTS,
  );
  const sorted = times.sort((a, b) => a - b);
  process.stdout.write(
    `report of one drag event, fit and words: ${sorted[Math.floor(0.5 * EVENTS)]!.toFixed(2)} (p95 ${sorted[Math.floor(0.95 * EVENTS)]!.toFixed(2)}) ms\n`,
  );
  await page.close();
}

const server = await preview({ logLevel: 'silent', preview: { port: 0, open: false } });
const browser = await chromium.launch(CHROMIUM);
try {
  await report();
  for (const width of [820, 1440]) {
    const page = await browser.newPage({ viewport: { width, height: 1000 } });
    await page.goto(server.resolvedUrls!.local[0]!);
    await page.waitForSelector('.journal');
    const wide = width >= BESIDE;
    if (wide) await page.waitForSelector('.scene canvas');
    // The closing chart stands in a part that opens.
    await page.getByRole('button', { name: 'Open all' }).click();
    await page.waitForTimeout(3000);
    const section = await middleOf(page, '.journal');
    await measure(
      page,
      `${width} px, section${wide ? ' with the solid picture beside it' : ''}`,
      section.x,
      section.y + 20,
    );
    if (!wide) await page.getByRole('button', { name: 'Solid' }).click();
    await page.waitForSelector('.scene canvas');
    await page.waitForTimeout(3000);
    const scene = await middleOf(page, '.scene canvas');
    await measure(page, `${width} px, solid picture${wide ? ' with the section beside it' : ''}`, scene.x, scene.y);
    const chart = await middleOf(page, '.chart > svg[role=group]');
    await measure(page, `${width} px, closing chart`, chart.x, chart.y);
    await page.close();
  }
} finally {
  await browser.close();
  await server.close();
}
