/**
 * The README's pictures: screens of the built page, on the demo it opens with. Needs a build:
 *   npx vite build && node --import tsx tests/browser/readmePictures.ts
 */
import { chromium } from 'playwright-core';
import { preview } from 'vite';
import { CHROMIUM } from '../../vite.config.ts';

const assets = new URL('../../assets/', import.meta.url).pathname;
const WIDTH = 1280;
/** ms: the solid picture, drawn in software, and what eases in */
const REST = 4000;

/** What stands on a screen once it is done. */
const SCREENS = [
  { name: 'fit', done: '.chart .curve', height: 1180 },
  { name: 'run', done: '.progress[role=status]', height: 1100 },
];

const server = await preview({ logLevel: 'silent', preview: { port: 0, open: false } });
const browser = await chromium.launch(CHROMIUM);
try {
  for (const { name, done, height } of SCREENS) {
    const page = await browser.newPage({ viewport: { width: WIDTH, height }, colorScheme: 'light' });
    page.setDefaultTimeout(300_000);
    await page.goto(`${server.resolvedUrls!.local[0]!}#${name}`);
    await page.waitForSelector(done);
    await page.waitForSelector('main canvas');
    await page.waitForTimeout(REST);
    await page.screenshot({ path: `${assets}${name}.png` });
    await page.close();
  }
} finally {
  await browser.close();
  await server.close();
}
