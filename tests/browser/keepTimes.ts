/** What keeping costs, on the page's main thread: a save, and the opening of a job with its history. */
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { CHROMIUM } from '../../vite.config.ts';
import { beginJob } from './ownJob.ts';

const STEPS = 300;
const OPENED = 20;

declare const keepTimes: typeof import('./keepTimesPage.ts');

const at = (sorted: readonly number[], share: number) =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!.toFixed(2);
const told = (times: readonly number[]) => {
  const sorted = [...times].sort((a, b) => a - b);
  return `${at(sorted, 0.5)} (p95 ${at(sorted, 0.95)}, worst ${at(sorted, 1)}) ms`;
};

export async function printTimes(address: string, say: (line: string) => void): Promise<void> {
  const built = await build({
    configFile: false,
    logLevel: 'silent',
    build: {
      write: false,
      lib: { entry: new URL('./keepTimesPage.ts', import.meta.url).pathname, formats: ['iife'], name: 'keepTimes' },
    },
  });
  const [{ output }] = built as unknown as [{ output: { code: string }[] }];
  const browser = await chromium.launch(CHROMIUM);
  try {
    // The page lets no script in but its own; this one is the benchmark's.
    const page = await browser.newPage({ bypassCSP: true });
    await page.goto(address);
    await page.addScriptTag({ content: output[0]!.code });
    const cdp = await page.context().newCDPSession(page);
    // The thread's own clock: what other programs take from the machine meanwhile does not count.
    await cdp.send('Performance.enable', { timeDomain: 'threadTicks' });
    const spent = async () => {
      const { metrics } = await cdp.send('Performance.getMetrics');
      return 1000 * metrics.find(({ name }) => name === 'TaskDuration')!.value;
    };
    for (const points of [0, 2000]) {
      const before = await spent();
      const { id, size } = await page.evaluate(([n, count]) => keepTimes.saves(n!, count!), [points, STEPS] as const);
      const saved = await spent();
      await page.evaluate(([job, steps, count]) => keepTimes.opens(job, steps, count), [id, STEPS, OPENED] as const);
      const opened = await spent();
      const what = points === 0 ? 'first demo' : `two seats, four lines of ${points} points`;
      say(
        `${what}, ${(size / 1000).toFixed(0)} kB; of the main thread: a save ${((saved - before) / STEPS).toFixed(2)} ms, ` +
          `opening it with its ${STEPS} steps ${((opened - saved) / OPENED).toFixed(1)} ms`,
      );
    }
    for (const slow of [1, 4]) {
      const first: number[] = [];
      for (let i = 0; i < 5; i++) first.push(await firstPicture(address, slow));
      say(`first picture of a kept job, processor slowed ${slow} times: ${told(first)}`);
    }
  } finally {
    await browser.close();
  }

  /** ms from the start of the page to the section, with a job that is gone on with. */
  async function firstPicture(of: string, slow: number): Promise<number> {
    const context = await browser.newContext();
    const page = await context.newPage();
    await beginJob(page, of);
    await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    await page.waitForTimeout(800);
    const cdp = await context.newCDPSession(page);
    await cdp.send('Emulation.setCPUThrottlingRate', { rate: slow });
    await page.addInitScript(() => {
      new MutationObserver((_, observer) => {
        if (!document.querySelector('.journal')) return;
        observer.disconnect();
        requestAnimationFrame(() => {
          (globalThis as unknown as { drawn: number }).drawn = performance.now();
        });
      }).observe(document, { childList: true, subtree: true });
    });
    await page.reload();
    await page.waitForFunction(() => (globalThis as unknown as { drawn?: number }).drawn !== undefined);
    const time = await page.evaluate(() => (globalThis as unknown as { drawn: number }).drawn);
    await context.close();
    return time;
  }
}
