/** What keeping costs, on the page's main thread: a save, and the opening of a job with its history. */
import { chromium } from 'playwright-core';
import { build } from 'vite';
import { CHROMIUM } from '../../vite.config.ts';

const STEPS = 300;
const OPENED = 20;

declare const keepTimes: typeof import('./keepTimesPage.ts');

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
    // Nothing of the program's own goes on meanwhile.
    await page.route('**/nothing', (route) => route.fulfill({ contentType: 'text/html', body: '<!doctype html>' }));
    await page.goto(`${address}nothing`);
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
        `${what}, ${(size / 1000).toFixed(0)} kB; of the main thread: a save ${((saved - before) / STEPS).toFixed(2)} ms ` +
          `(5 at most), opening it with its ${STEPS} steps ${((opened - saved) / OPENED).toFixed(1)} ms (100 at most)`,
      );
    }
  } finally {
    await browser.close();
  }
}
