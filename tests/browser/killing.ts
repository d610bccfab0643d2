/**
 * Work cut short: a page of the program in a browser of its own is edited without a pause, and at a random moment its
 * renderer is crashed or the whole browser killed. What is there when it is opened again is held against what was asked
 * for before.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { CHROMIUM } from '../../vite.config.ts';
import { beginJob } from './ownJob.ts';

export interface Killed {
  /** the job is there and opens */
  kept: boolean;
  /** how long before the end the oldest edit was made that is not there any more, s */
  lost: number;
  /** whether the state that is there is one that was asked for */
  whole: boolean;
}

export type Way = 'crash' | 'kill';

/** A number from 0 to below 1, handed in so that a run can be told again. */
export type Random = () => number;

/** ms */
const EDITS_EVERY = 40;
const after = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** Moves the journal on and on from the keyboard, a micrometre a press, and says when which state was asked for. */
async function edit(page: Page, asked: { position: number; time: number }[]): Promise<void> {
  await page.getByRole('slider', { name: 'Axial position of the journal', exact: true }).last().focus();
  for (let position = 1; ; position++) {
    asked.push({ position, time: performance.now() });
    await page.keyboard.press('ArrowRight');
    await after(EDITS_EVERY);
  }
}

const positionOf = async (page: Page): Promise<number> =>
  Number(
    await page
      .getByRole('slider', { name: 'Axial position of the journal', exact: true })
      .last()
      .getAttribute('aria-valuenow'),
  );

async function opened(profile: string, address: string): Promise<{ context: BrowserContext; page: Page }> {
  const context = await chromium.launchPersistentContext(profile, {
    ...CHROMIUM,
    viewport: { width: 820, height: 900 },
  });
  const page = context.pages()[0] ?? (await context.newPage());
  await page.goto(address);
  return { context, page };
}

type Opened = Awaited<ReturnType<typeof opened>>;

/** The whole browser is gone, and started again. */
async function killed({ context }: Opened, profile: string, address: string): Promise<Opened> {
  const session = await context.browser()!.newBrowserCDPSession();
  const { processInfo } = (await session.send('SystemInfo.getProcessInfo')) as {
    processInfo: { type: string; id: number }[];
  };
  for (const { id } of processInfo.filter(({ type }) => type === 'browser')) process.kill(id, 'SIGKILL');
  await Promise.race([context.close().catch(() => {}), after(3000)]);
  return opened(profile, `${address}#fit`);
}

/** The page's own process is gone, and the page opened in another. */
async function crashed({ context, page }: Opened, address: string): Promise<Opened> {
  const session = await context.newCDPSession(page);
  const gone = page.waitForEvent('crash');
  await Promise.race([session.send('Page.crash').catch(() => {}), gone]);
  const again = await context.newPage();
  await again.goto(`${address}#fit`);
  return { context, page: again };
}

const lostSince = (edit: { time: number } | undefined, cut: number) =>
  edit === undefined ? 0 : Math.max(0, (cut - edit.time) / 1000);

/** One job begun, edited for up to `most` ms, cut short, and opened again. */
export async function killOnce(address: string, way: Way, random: Random, most: number): Promise<Killed> {
  const profile = mkdtempSync(join(tmpdir(), 'killed-'));
  const asked: { position: number; time: number }[] = [];
  try {
    const first = await opened(profile, `${address}#jobs`);
    await beginJob(first.page, address);
    // What was made a second ago is on the disk.
    await after(1000);
    const editing = edit(first.page, asked).catch(() => {});
    await after(300 + random() * most);
    const cut = performance.now();
    const again = way === 'crash' ? await crashed(first, address) : await killed(first, profile, address);
    await editing;
    await again.page.waitForSelector('.journal');
    const kept = (await again.page.textContent('header .job strong')) === 'New job';
    const position = await positionOf(again.page);
    await again.context.close();
    // The oldest edit that is not there any more.
    const next = asked.find((state) => state.position > position);
    return { kept, whole: Number.isInteger(position) && position <= asked.length, lost: lostSince(next, cut) };
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}
