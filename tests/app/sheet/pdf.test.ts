/** The Sheet printed by Chromium: paper, pages, fonts, nothing shrunk or off the page, the stop readings on it. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { build, type PreviewServer, preview } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { MARGIN, PAPERS, type Paper } from '../../../src/app/sheet/papers.ts';
import { parseDesign } from '../../../src/design/validate.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { CHROMIUM } from '../../../vite.config.ts';
import { type Pdf, readPdf } from './readPdf.ts';

const top = join(import.meta.dirname, '../../..');
const POINTS = 72 / 25.4;
const outDir = mkdtempSync(join(tmpdir(), 'sheet-'));
let server: PreviewServer;
let browser: Browser;

beforeAll(async () => {
  await build({ configFile: join(top, 'vite.config.ts'), logLevel: 'silent', build: { outDir, emptyOutDir: true } });
  server = await preview({ configFile: join(top, 'vite.config.ts'), logLevel: 'silent', build: { outDir }, preview: { port: 0 } });
  browser = await chromium.launch(CHROMIUM);
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
  rmSync(outDir, { recursive: true, force: true });
});

const designOf = (file: string) => {
  const read = parseDesign(readFileSync(join(top, `assets/designs/${file}.conepair.json`), 'utf8'));
  if (!read.ok) throw new Error(file);
  return read.design;
};

async function opened(file: string, paper: Paper): Promise<Page> {
  const page = await browser.newPage();
  await page.goto(`${server.resolvedUrls!.local[0]!}#sheet`);
  await page.selectOption('header select', `${file}.conepair.json`);
  await page.waitForFunction((title) => document.querySelector('.title-block h3')?.textContent === title, designOf(file).title);
  await page.selectOption('.paper-choice select', paper);
  return page;
}

/** Text may begin in the margin only where the foot stands. */
function misplaced({ pages }: Pdf, paper: Paper): string[] {
  const { width, height } = PAPERS[paper];
  const hair = 0.3;
  return pages.flatMap(({ texts }, i) =>
    texts
      .filter(({ x, y, end }) => x < MARGIN.side * POINTS - hair || Math.max(x, end) > (width - MARGIN.side) * POINTS + hair || y < MARGIN.top * POINTS - hair || y > height * POINTS)
      .map(({ text, x, y }) => `page ${i + 1}: "${text}" at ${x.toFixed(1)}, ${y.toFixed(1)}`),
  );
}

/** Ligatures as their letters, one space between words. */
const wordsOf = ({ texts }: Pdf['pages'][number]) =>
  texts
    .map(({ text }) => text)
    .join(' ')
    .normalize('NFKC')
    .replace(/\s+/g, ' ');

test.each([
  ['steep-first', 'A4'],
  ['shallow-first', 'Letter'],
] as const)(
  '%s on %s: two pages of that paper, fonts within the file, all text on the page',
  async (file, paper) => {
    const page = await opened(file, paper);
    const pdf = readPdf(await page.pdf({ preferCSSPageSize: true }));
    await page.close();
    expect(pdf.pages.length).toBe(2);
    for (const { width, height } of pdf.pages) {
      // Chromium counts paper in whole CSS pixels.
      expect(width).toBeCloseTo(PAPERS[paper].width * POINTS, -0.3);
      expect(height).toBeCloseTo(PAPERS[paper].height * POINTS, -0.3);
    }
    expect(pdf.fonts.length).toBeGreaterThan(0);
    expect(pdf.fonts.filter(({ embedded }) => !embedded)).toEqual([]);
    expect(misplaced(pdf, paper)).toEqual([]);
    for (const [i, each] of pdf.pages.entries()) {
      expect(wordsOf(each)).toContain(`page ${i + 1} of 2`);
      expect(each.texts.some(({ text }) => text.includes('\ufffd'))).toBe(false);
      // Headings are set in 11 points and printed in them: a page too wide would have been shrunk to fit.
      expect(each.texts.some(({ size }) => Math.abs(size - 11) < 0.02)).toBe(true);
      expect(Math.min(...each.texts.map(({ size }) => size))).toBeGreaterThan(7);
    }
    const design = designOf(file);
    const [drawings, work] = pdf.pages as [Pdf['pages'][number], Pdf['pages'][number]];
    for (const { name } of design.seats) expect(wordsOf(drawings)).toContain(`${name} journal`);
    for (const step of cutSection(design)?.steps ?? []) for (const { stop } of step.gauges) expect(wordsOf(work)).toContain(stop!.toFixed(4).replace(/0$/, ''));
    expect(wordsOf(work)).toContain('prove it by measurement');
  },
  60_000,
);

test('eight seats with every surface cut go on to further pages, and nothing is lost', async () => {
  const page = await opened('steep-first', 'A4');
  const seats = [0, 1, 2, 3].flatMap((k) => designOf('steep-first').seats.map((seat) => ({ ...seat, name: `${seat.name} ${k + 1}` })));
  const allow = seats.flatMap(({ name }) => [
    { seat: name, part: 'journal' as const, cleanup: 0.001, limit: 0.2 },
    { seat: name, part: 'bush' as const, cleanup: 0.001, limit: 0.2 },
  ]);
  const design = { ...designOf('steep-first'), title: 'Eight seats', seats, cut: { allow } };
  await page.setInputFiles('header input[type=file]', { name: 'eight.conepair.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(design)) });
  await page.waitForFunction(() => document.querySelector('.title-block h3')?.textContent === 'Eight seats');
  const pdf = readPdf(await page.pdf({ preferCSSPageSize: true }));
  await page.close();
  expect(pdf.pages.length).toBeGreaterThan(2);
  expect(misplaced(pdf, 'A4')).toEqual([]);
  const steps = cutSection(design)!.steps;
  expect(steps.length).toBe(16);
  const words = pdf.pages.map(wordsOf).join(' ');
  for (const [i, { seat, part }] of steps.entries()) expect(words).toContain(`${i + 1}. ${seat} ${part}`);
}, 60_000);
