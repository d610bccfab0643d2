/**
 * The built page in Chromium, cut short and starved: killed at any moment, loaded anew in mid-drag, its clock moved,
 * its store full or thrown away, opened twice. The job is there each time.
 *
 * @module-tag long
 */
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xorshift128plus } from 'pure-rand/generator/xorshift128plus';
import type { PreviewServer } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { CHROMIUM } from '../../vite.config.ts';
import { killOnce } from '../browser/killing.ts';
import { beginJob } from '../browser/ownJob.ts';
import { addressOf, served } from './served.ts';

let server: PreviewServer;
let browser: Browser;
let address = '';

beforeAll(async () => {
  server = await served();
  address = addressOf(server);
  browser = await chromium.launch(CHROMIUM);
}, 180_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
});

const WIDE = { viewport: { width: 820, height: 900 } };

/** One to whom the browser offers no picker for files: it would wait for a hand. */
async function visitor(): Promise<BrowserContext> {
  const context = await browser.newContext(WIDE);
  await context.addInitScript(() => Object.assign(window, { showSaveFilePicker: undefined }));
  return context;
}

/** A job begun, with the journal moved as often. */
async function begun(context: BrowserContext, moves = 0): Promise<Page> {
  const page = await context.newPage();
  await beginJob(page, address);
  for (let i = 0; i < moves; i++) await move(page);
  return page;
}
const slider = (page: Page) => page.getByRole('slider', { name: 'Axial position of the journal', exact: true }).last();
async function move(page: Page) {
  await slider(page).press('ArrowRight');
}
const position = async (page: Page) => Number(await slider(page).getAttribute('aria-valuenow'));
const title = (page: Page) => page.textContent('header .job strong');
const said = (page: Page) => page.locator('.keeping');
/** Hidden, as a page is before it is put aside: all is written. */
const settle = (page: Page) =>
  page.waitForFunction(
    async () => {
      window.dispatchEvent(new Event('pagehide'));
      const open = indexedDB.open('conepair');
      const db = await new Promise<IDBDatabase>((done) => {
        open.onsuccess = () => done(open.result);
      });
      const asked = db.transaction('heads').objectStore('heads').getAll();
      const heads = await new Promise<unknown[]>((done) => {
        asked.onsuccess = () => done(asked.result);
      });
      db.close();
      return heads.length > 0;
    },
    undefined,
    { polling: 100 },
  );

test('killed at random moments while it is edited: the job is there, in a state that was on the screen, the last moments lost at most', async () => {
  const generator = xorshift128plus(7);
  for (const way of ['crash', 'kill'] as const) {
    const killed = await killOnce(address, way, () => uniformFloat64(generator), 1000);
    expect(killed).toMatchObject({ kept: true, whole: true });
    // The bench tells how much; here only that it is written as it is edited, and not as the page is left.
    expect(killed.lost).toBeLessThan(5);
  }
}, 180_000);

test('loaded anew in mid-drag, at once: the job is there as it was dragged, and undo goes back before it', async () => {
  const context = await visitor();
  const page = await begun(context, 3);
  await settle(page);
  const before = await position(page);
  // What comes to stand below the picture may still move it.
  await page.waitForSelector('.lens svg');
  await page.waitForSelector('.track svg');
  const box = (await page.locator('.journal').first().boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2 + 20];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= 5; i++) await page.mouse.move(x - 12 * i, y);
  const dragged = await position(page);
  expect(dragged).not.toBe(before);
  await page.reload();
  await page.waitForSelector('.journal');
  expect([await title(page), await position(page)]).toEqual(['New job', dragged]);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  expect(await position(page)).toBe(before);
  await context.close();
}, 120_000);

test('a clock that was moved by ten years, either way, leaves the job and its list as they were', async () => {
  const context = await visitor();
  const page = await begun(context, 2);
  await settle(page);
  for (const years of [-10, 20]) {
    await page.addInitScript((ms) => {
      const now = Date.now.bind(Date);
      Date.now = () => now() + ms;
    }, years * 31_557_600_000);
    await page.reload();
    await page.waitForSelector('.journal');
    const before = await position(page);
    await move(page);
    await settle(page);
    await page.reload();
    await page.waitForSelector('.journal');
    expect([await title(page), await position(page)]).toEqual(['New job', before + 1]);
  }
  await page.evaluate(() => {
    window.location.hash = '#jobs';
  });
  await expect.poll(() => page.locator('.rows > li').count()).toBe(1);
  await context.close();
}, 120_000);

test('two windows: the second follows the first and says so, takes over, and the first follows', async () => {
  const context = await visitor();
  const one = await begun(context, 2);
  await settle(one);
  const two = await context.newPage();
  await two.goto(`${address}#fit`);
  await two.waitForSelector('.journal');
  await said(two).getByText('This one follows it').waitFor();
  await move(one);
  await expect.poll(() => position(two)).toBe(await position(one));
  await move(two);
  await said(two).getByText('Not changed').waitFor();
  expect(await position(two)).toBe(await position(one));
  await two.getByRole('button', { name: 'Take over here' }).click();
  await said(one).getByText('This one follows it').waitFor();
  await move(two);
  await expect.poll(() => position(one)).toBe(4);
  // Closed, the other has it.
  await two.close();
  await said(one).waitFor({ state: 'detached' });
  await move(one);
  expect(await position(one)).toBe(5);
  await context.close();
}, 120_000);

test('a store that is full, and one that the browser throws away: said, the work goes on, and is kept anew', async () => {
  const context = await visitor();
  const page = await begun(context, 2);
  await settle(page);
  await page.evaluate(() => {
    const real = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (...row) {
      if ((globalThis as { full?: boolean }).full) throw new DOMException('full', 'QuotaExceededError');
      return real.apply(this, row);
    };
    (globalThis as { full?: boolean }).full = true;
  });
  await move(page);
  await said(page).getByText('no room left on this device').waitFor();
  expect(await position(page)).toBe(3);
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as a file' }).click(),
  ]);
  expect(file.suggestedFilename()).toBe('new-job.conepair.json');
  await page.evaluate(() => {
    (globalThis as { full?: boolean }).full = false;
  });
  await move(page);
  await said(page).waitFor({ state: 'detached' });
  const cdp = await context.newCDPSession(page);
  const origin = new URL(address).origin;
  await cdp.send('Storage.clearDataForOrigin', { origin, storageTypes: 'indexeddb' });
  await said(page).getByText('threw away what was kept').waitFor();
  await settle(page);
  await page.reload();
  await page.waitForSelector('.journal');
  expect([await title(page), await position(page)]).toEqual(['New job', 4]);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  expect(await position(page)).toBeLessThan(4);
  await context.close();
}, 120_000);
