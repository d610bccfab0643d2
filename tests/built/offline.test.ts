/**
 * The built page: nothing is loaded from elsewhere or against its policy; after one visit it works with its server
 * taken away; a newer one is offered, and taken when asked for, with the work still there.
 */
import { appendFileSync, cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import type { PreviewServer } from 'vite';
import { afterAll, beforeAll, expect, inject, test } from 'vitest';
import { CHROMIUM } from '../../vite.config.ts';
import { screensOf } from '../browser/ownJob.ts';
import { addressOf, served } from './served.ts';

/** A copy of its own, since a newer page takes its place. */
const outDir = mkdtempSync(join(tmpdir(), 'offline-'));
/** What a screen shows once all of it is loaded and worked out, where that is more than its verdict. */
const SHOWS: Record<string, string> = {
  measure: '.notebook, .new-reading, main button:has-text("Diameter")',
  fit: 'svg[aria-label^="Least film of every seat"]',
  learn: 'main a[href^="#learn/"]',
  sheet: '.pages[aria-busy="false"]',
};

let server: PreviewServer;
let browser: Browser;
let port = 0;

async function serve() {
  const started = await served(outDir, port);
  port = Number(new URL(addressOf(started)).port);
  return started;
}

beforeAll(async () => {
  cpSync(inject('built'), outDir, { recursive: true });
  server = await serve();
  browser = await chromium.launch(CHROMIUM);
}, 180_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
  rmSync(outDir, { recursive: true, force: true });
});

const address = (screen: string) => `http://localhost:${port}/#${screen}`;

async function visitor(): Promise<{
  context: BrowserContext;
  page: Page;
  asked: string[];
  against: () => Promise<string[]>;
}> {
  const context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
  const page = await context.newPage();
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await page.addInitScript(() => {
    const against: string[] = [];
    Object.assign(window, { against });
    document.addEventListener('securitypolicyviolation', (event) =>
      against.push(`${event.violatedDirective}: ${event.blockedURI}`),
    );
  });
  return {
    context,
    page,
    asked,
    against: () => page.evaluate(() => (window as unknown as { against: string[] }).against),
  };
}

async function show(page: Page, screen: string): Promise<void> {
  await page.evaluate((name) => {
    window.location.hash = name;
  }, screen);
  await page
    .locator(SHOWS[screen] ?? '.verdict h2')
    .first()
    .waitFor({ timeout: 60_000 });
}

test('every screen keeps to the policy, which does hold; nothing is asked for elsewhere', async () => {
  const { context, page, asked, against } = await visitor();
  await page.goto(address('fit'));
  for (const screen of await screensOf(page)) await show(page, screen);
  await page.getByRole('button', { name: 'Take along' }).click();
  await page.getByText('the link opens here only').waitFor();
  expect(await against()).toEqual([]);
  const own = `http://localhost:${port}/`;
  expect(asked.filter((url) => !/^(data|blob):/.test(url) && !url.startsWith(own))).toEqual([]);
  expect(asked.length).toBeGreaterThan(10);
  const ran = await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.ranInline = true';
    document.body.append(script);
    return 'ranInline' in window;
  });
  expect(ran).toBe(false);
  await expect.poll(against).toEqual([expect.stringMatching(/^script-src/)]);
  expect(readFileSync(join(outDir, 'index.html'), 'utf8')).not.toMatch(/<script(?![^>]*\bsrc=)/);
  await context.close();
}, 180_000);

test('after one visit the server is taken away: loaded again, every screen opens and works things out', async () => {
  const { context, page } = await visitor();
  await page.goto(address('fit'));
  await page.evaluate(() => navigator.serviceWorker.ready);
  // Ready is not yet filled: everything is in its store when the worker is active, which `ready` waits for.
  await server.close();
  await page.goto('about:blank');
  await page.goto(address('fit'));
  for (const screen of await screensOf(page)) await show(page, screen);
  await page.evaluate(() => {
    window.location.hash = 'fit';
  });
  await page.getByRole('button', { name: 'Take along' }).click();
  await page.getByText('the link opens here only').waitFor();
  server = await serve();
  await context.close();
}, 180_000);

test('a newer page is offered, not taken by itself; taken when asked for, and the work stays', async () => {
  const { context, page } = await visitor();
  await page.goto(address('fit'));
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.reload();
  const slider = page.getByRole('slider', { name: 'Axial position of the journal', exact: true }).first();
  await slider.focus();
  for (let i = 0; i < 3; i++) await page.keyboard.press('ArrowLeft');
  const moved = await slider.getAttribute('aria-valuetext');
  appendFileSync(join(outDir, 'sw.js'), '\n// a newer one\n');
  const loads: string[] = [];
  page.on('load', () => loads.push(page.url()));
  await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())!.update());
  const offer = page.getByRole('region', { name: 'Newer program' });
  await offer.waitFor();
  expect(loads).toEqual([]);
  expect(await slider.getAttribute('aria-valuetext')).toBe(moved);
  await Promise.all([page.waitForEvent('load'), offer.getByRole('button', { name: 'Take it now' }).click()]);
  await slider.waitFor();
  expect(await slider.getAttribute('aria-valuetext')).toBe(moved);
  expect(await offer.count()).toBe(0);
  await context.close();
}, 180_000);
