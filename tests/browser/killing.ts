/**
 * Work cut short: a page of the program in a browser of its own is edited without a pause, and at a random moment its
 * renderer is crashed or the whole browser killed. What is there when it is opened again is held against what was seen
 * on the screen before.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { CHROMIUM } from '../../vite.config.ts';

export interface Killed {
  /** the job is there and opens */
  kept: boolean;
  /** how long before the end the newest edit that is still there was made, less the time without an edit, s */
  lost: number;
  /** whether the state that is there is one that was on the screen */
  whole: boolean;
}

export type Way = 'crash' | 'kill';

/** A number from 0 to below 1, handed in so that a run can be told again. */
export type Random = () => number;

/** ms */
const EDITS_EVERY = 40;
const after = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** Moves the journal on and on from the keyboard, each state another one, and says when it was on the screen. */
async function edit(page: Page, seen: { position: number; time: number }[]): Promise<void> {
  await page.getByRole('slider', { name: 'Axial position of the journal', exact: true }).last().focus();
  for (;;) {
    await page.keyboard.press('ArrowRight');
    seen.push({ position: await positionOf(page), time: performance.now() });
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

/** The process of the browser is told by its own profile's folder, which nobody else has. */
async function killBrowser(context: BrowserContext): Promise<void> {
  const session = await context.browser()?.newBrowserCDPSession();
  const { processInfo } = (await session!.send('SystemInfo.getProcessInfo')) as {
    processInfo: { type: string; id: number }[];
  };
  for (const { id } of processInfo.filter(({ type }) => type === 'browser')) process.kill(id, 'SIGKILL');
}

async function crash(context: BrowserContext, page: Page): Promise<void> {
  const session = await context.newCDPSession(page);
  const gone = page.waitForEvent('crash');
  await Promise.race([session.send('Page.crash').catch(() => {}), gone]);
}

/** One job begun, edited for up to `most` ms, cut short, and opened again. */
export async function killOnce(address: string, way: Way, random: Random, most: number): Promise<Killed> {
  const profile = mkdtempSync(join(tmpdir(), 'killed-'));
  const seen: { position: number; time: number }[] = [];
  try {
    const first = await opened(profile, `${address}#jobs`);
    await first.page.getByRole('button', { name: 'New job', exact: true }).click();
    await first.page.waitForSelector('.journal');
    // What was made a second ago is on the disk.
    await after(1000);
    const editing = edit(first.page, seen).catch(() => {});
    await after(300 + random() * most);
    const cut = performance.now();
    if (way === 'crash') await crash(first.context, first.page);
    else await killBrowser(first.context);
    await editing;
    await Promise.race([first.context.close().catch(() => {}), after(3000)]);
    const again = await opened(profile, `${address}#fit`);
    await again.page.waitForSelector('.journal');
    const kept = (await again.page.textContent('header .job strong')) === 'New job';
    const position = await positionOf(again.page);
    await again.context.close();
    // Newest first: what was made after the state that is there is lost.
    const before = seen.filter(({ time }) => time <= cut);
    const at = before.findLastIndex((state) => Math.abs(state.position - position) < 1e-6);
    const next = before[at + 1];
    return { kept, whole: at >= 0 || (before.length === 0 && kept), lost: next ? (cut - next.time) / 1000 : 0 };
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}
