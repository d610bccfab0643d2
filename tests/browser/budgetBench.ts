/**
 * What a visit costs, on the built page in Chromium, each with what is asked of it: scripts before the first picture,
 * the time to it with a processor slowed four times, a save, the opening of a job. Run by `npm run bench`, after a
 * build.
 */
import { gzipSync } from 'node:zlib';
import { chromium, type Page } from 'playwright-core';
import { preview } from 'vite';
import { CHROMIUM } from '../../vite.config.ts';
import { printTimes } from './keepTimes.ts';
import { beginJob } from './ownJob.ts';

const VISITS = 5;
/** Into how many times the processor is slowed. */
const SLOWER = [1, 4];

const say = (line: string) => process.stdout.write(`${line}\n`);
/** ms from the start of the page: the section is in it, and the frame after that. */
interface Seen {
  there: number;
  drawn: number;
}

/** Notes when the section stands. */
const noteFirstPicture = (page: Page) =>
  page.addInitScript(() => {
    new MutationObserver((_, observer) => {
      if (!document.querySelector('.journal')) return;
      observer.disconnect();
      const there = performance.now();
      requestAnimationFrame(() => Object.assign(globalThis, { seen: { there, drawn: performance.now() } }));
    }).observe(document, { childList: true, subtree: true });
  });

async function firstPicture(page: Page, slow: number): Promise<Seen> {
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: slow });
  await page.reload();
  await page.waitForFunction(() => 'seen' in globalThis);
  return page.evaluate(() => (globalThis as unknown as { seen: Seen }).seen);
}

/** Every script that was there before the first picture, gzipped, kB. */
async function scripts(page: Page, { there }: Seen): Promise<number> {
  const names = await page.evaluate(
    (until) =>
      performance
        .getEntriesByType('resource')
        .filter((entry) => entry.name.endsWith('.js') && (entry as PerformanceResourceTiming).responseEnd < until)
        .map(({ name }) => name),
    there,
  );
  const sizes = await Promise.all(
    names.map(async (name) => gzipSync(Buffer.from(await (await fetch(name)).arrayBuffer())).length),
  );
  return sizes.reduce((sum, size) => sum + size, 0) / 1000;
}

const server = await preview({ logLevel: 'silent', preview: { port: 0, open: false } });
const address = server.resolvedUrls!.local[0]!;
const browser = await chromium.launch(CHROMIUM);
try {
  for (const own of [false, true])
    for (const slow of SLOWER) {
      const times: number[] = [];
      let kilobytes = 0;
      for (let i = 0; i < VISITS; i++) {
        // Without what is kept of the page for later: each visit is the first.
        const context = await browser.newContext({ serviceWorkers: 'block' });
        const page = await context.newPage();
        await page.goto(address);
        if (own) await beginJob(page, address);
        // What is changed is on the disk before the page is loaded anew.
        await page.waitForTimeout(800);
        await noteFirstPicture(page);
        const seen = await firstPicture(page, slow);
        times.push(seen.drawn);
        kilobytes = await scripts(page, seen);
        await context.close();
      }
      times.sort((a, b) => a - b);
      say(
        `first picture of ${own ? 'a job that is kept' : 'an example'}, processor slowed ${slow} times: ` +
          `${times[Math.floor(VISITS / 2)]!.toFixed(0)} ms (best ${times[0]!.toFixed(0)}), ` +
          `scripts before it ${kilobytes.toFixed(0)} kB gzipped (150 at most)`,
      );
    }
} finally {
  await browser.close();
}
try {
  await printTimes(address, say);
} finally {
  await server.close();
}
