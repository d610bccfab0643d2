/**
 * The Sheet printed by Chromium: paper, pages, fonts, nothing shrunk or off the page, the stop readings on it.
 *
 * @module-tag long
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import type { PreviewServer } from 'vite';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { stopText } from '../../src/app/screens/sheet/figures.ts';
import { MARGIN, PAPERS, type Paper } from '../../src/app/screens/sheet/papers.ts';
import { parseDesign } from '../../src/design/parse.ts';
import { fineText } from '../../src/design/units.ts';

import { rightsOf } from '../../src/lessons/apart.ts';
import { type Dealt, deal } from '../../src/lessons/deal.ts';

import { seedOf } from '../../src/lessons/runner.ts';
import { sheetRound } from '../../src/lessons/sheets.ts';
import { cutSection } from '../../src/report/cut/section.ts';
import { withShopTools } from '../../src/report/cut/usualMachine.ts';
import { fitOf } from '../../src/report/fit/fitOf.ts';
import { stopTolerance } from '../../src/report/sheet/stopTolerance.ts';
import { CHROMIUM } from '../../vite.config.ts';
import { exampleDesign, lessonOf } from '../lessons/lessons.ts';
import { type Pdf, readPdf } from './readPdf.ts';
import { addressOf, served, top } from './served.ts';

const POINTS = 72 / 25.4;
let server: PreviewServer;
let browser: Browser;

beforeAll(async () => {
  server = await served();
  browser = await chromium.launch(CHROMIUM);
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await server?.close();
});

const designOf = (file: string) => {
  const read = parseDesign(readFileSync(join(top, `assets/designs/${file}.conepair.json`), 'utf8'));
  if (!read.ok) throw new Error(file);
  return read.design;
};

/** A page on a demo; printed only when all of it is worked out, unless another design is to take its place. */
async function opened(file: string, paper: Paper, width = 1200, replaced = false): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height: 900 } });
  await page.goto(`${addressOf(server)}#sheet`);
  await openFile(page, `${file}.conepair.json`, designOf(file));
  await page.waitForFunction(
    (title) => document.querySelector('.title-block h3')?.textContent === title,
    designOf(file).title,
  );
  await page.selectOption('.paper-choice select', paper);
  if (!replaced) await page.waitForSelector('.pages[aria-busy="false"]');
  return page;
}

const kept = new Map<string, Page>();
/** One page for every paper and width that a demo is printed on: its films are worked out once. */
async function printed(file: string, paper: Paper, width: number): Promise<Page> {
  const page = kept.get(file) ?? (await opened(file, paper, width));
  kept.set(file, page);
  await page.setViewportSize({ width, height: 900 });
  await page.selectOption('.paper-choice select', paper);
  return page;
}

/** Drops a file on the page. */
async function openFile(page: Page, name: string, design: object): Promise<void> {
  await page.waitForSelector('header');
  await page.evaluate(
    ([file, text]) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([text!], file!));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer }));
    },
    [name, JSON.stringify(design)],
  );
}

/** Text may begin in the margin only where the foot stands. */
function misplaced({ pages }: Pdf, paper: Paper): string[] {
  const { width, height } = PAPERS[paper];
  const hair = 0.3;
  return pages.flatMap(({ texts }, i) =>
    texts
      .filter(
        ({ x, y, end }) =>
          x < MARGIN.side * POINTS - hair ||
          Math.max(x, end) > (width - MARGIN.side) * POINTS + hair ||
          y < MARGIN.top * POINTS - hair ||
          y > height * POINTS,
      )
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
  ['steep-first', 'A4', 'mm', 1200],
  ['shallow-first', 'A4', 'mm', 390],
  ['shallow-first', 'Letter', 'inch', 1200],
] as const)(
  '%s on %s in %s: two pages of that paper, fonts within the file, all text on the page, from a window %i wide',
  async (file, paper, unit, width) => {
    const page = await printed(file, paper, width);
    const inch = unit === 'inch';
    if (inch) {
      // On a narrower page they stand behind one button.
      const more = page.locator('header button.menu');
      if (await more.isVisible()) await more.click();
      await page.click('header button:has-text("Units")');
    }
    await page.waitForSelector('.pages[aria-busy="false"]');
    const pdf = readPdf(await page.pdf({ preferCSSPageSize: true }));
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
      expect(Math.min(...each.texts.map(({ size }) => size))).toBeGreaterThan(7);
    }
    const design = designOf(file);
    const [work, drawings] = pdf.pages as [Pdf['pages'][number], Pdf['pages'][number]];
    const { steps, work: order } = cutSection(withShopTools(design, inch ? 'inch' : 'metric'))!;
    // Printed in the size they are set in: a page too wide would have been shrunk to fit.
    for (const [{ texts }, words, points] of [
      [work, 'Order of work', 11],
      [drawings, 'Surface, ', 8.5],
    ] as const)
      expect(texts.find(({ text }) => text.startsWith(words))?.size).toBeCloseTo(points, 1);
    for (const { name } of design.seats) expect(wordsOf(drawings)).toContain(`${name} journal`);
    for (const step of steps)
      for (const gauge of step.gauges)
        expect(wordsOf(work)).toContain(
          stopText(gauge.stop!, stopTolerance(step, gauge, 0.0005), inch ? 'inch' : 'metric'),
        );
    for (const { text } of order) expect(wordsOf(work)).toContain(text.normalize('NFKC'));
    expect(wordsOf(work)).toContain('prove it by measurement');
    expect(wordsOf(drawings)).toMatch(/Least film cold .* Warm/);
    // Well filled: the last line of each page stands in its lowest fifth, above the foot.
    for (const { height, texts } of pdf.pages)
      expect(Math.max(...texts.map(({ y }) => y).filter((y) => y < height - MARGIN.bottom * POINTS))).toBeGreaterThan(
        0.8 * height,
      );
  },
  60_000,
);

test('eight seats with every surface cut go on to further pages, and nothing is lost', async () => {
  const page = await opened('steep-first', 'A4', 1200, true);
  const seats = [0, 1, 2, 3].flatMap((k) =>
    designOf('steep-first').seats.map((seat) => ({ ...seat, name: `${seat.name} ${k + 1}` })),
  );
  const allow = seats.flatMap(({ name }) => [
    { seat: name, part: 'journal' as const, cleanup: 0.001, limit: 0.2 },
    { seat: name, part: 'bush' as const, cleanup: 0.001, limit: 0.2 },
  ]);
  const design = { ...designOf('steep-first'), title: 'Eight seats', seats, cut: { allow } };
  await openFile(page, 'eight.conepair.json', design);
  await page.waitForFunction(() => document.querySelector('.title-block h3')?.textContent === 'Eight seats');
  const pdf = readPdf(await page.pdf({ preferCSSPageSize: true }));
  await page.close();
  expect(pdf.pages.length).toBeGreaterThan(2);
  expect(misplaced(pdf, 'A4')).toEqual([]);
  const { steps, work } = cutSection(design)!;
  expect(steps.length).toBe(16);
  // Where a list goes on, its heading comes again.
  for (const { texts } of pdf.pages.filter((each) => /\d+\. (shallow|steep) \d (journal|bush): ⌀/.test(wordsOf(each))))
    expect(texts.some(({ text }) => /Stop at|Stop first/.test(text.normalize('NFKC')))).toBe(true);
  const words = pdf.pages.map(wordsOf).join(' ');
  for (const { text } of work) expect(words).toContain(text);
  for (const [i, { seat, part }] of steps.entries()) expect(words).toContain(`${i + 1}. ${seat} ${part}`);
}, 60_000);

test('a plan that is not possible prints what conflicts, and nothing to carry out', async () => {
  const page = await opened('steep-first', 'A4', 1200, true);
  const steep = designOf('steep-first');
  const design = {
    ...steep,
    title: 'Too little',
    cut: { ...steep.cut!, allow: [{ seat: 'steep', part: 'journal' as const, limit: 0.002 }] },
  };
  await openFile(page, 'tight.conepair.json', design);
  await page.waitForFunction(() => document.querySelector('.title-block h3')?.textContent === 'Too little');
  const pdf = readPdf(await page.pdf({ preferCSSPageSize: true }));
  await page.close();
  expect(pdf.pages.length).toBe(2);
  expect(misplaced(pdf, 'A4')).toEqual([]);
  expect(wordsOf(pdf.pages[0]!)).toMatch(
    /Not a work order: do not cut to this sheet\..*the steep journal may lose at most 2\.00 μm/,
  );
  expect(pdf.pages.map(wordsOf).join(' ')).not.toMatch(/Stop at|Order of work|Set it so|Machine |by the plan/);
}, 60_000);

test('printed by the browser while the films are worked out, what is half made is left out', async () => {
  const page = await printed('steep-first', 'A4', 1200);
  await page.evaluate(() => document.querySelector('.run-figures')!.setAttribute('aria-busy', 'true'));
  const pdf = readPdf(await page.pdf({ preferCSSPageSize: true }));
  await page.close();
  expect(pdf.pages.length).toBe(2);
  expect(pdf.pages.map(wordsOf).join(' ')).not.toMatch(/Running\.|rev\/min|worked out/);
}, 60_000);

test('a lesson on paper: the answers stand on a page of their own, and are those of its numbers', async () => {
  const page = await browser.newPage({ viewport: { width: 1000, height: 900 } });
  await page.goto(`${addressOf(server)}#learn/two-cones/sheet/1`);
  await page.waitForSelector('.paper-leaf.answers');
  await page.selectOption('.work-sheet select', 'A4');
  const pdf = readPdf(await page.pdf({ preferCSSPageSize: true }));
  const lesson = lessonOf('two-cones');
  const rounds: Dealt[] = [];
  for (const round of [0, 1]) {
    const before = rounds.flatMap((one) => rightsOf(lesson, one));
    const dealt = deal(lesson, seedOf(1, round), exampleDesign, before);
    if (!dealt.ok) throw new Error(dealt.message);
    rounds.push(dealt.value);
  }
  const answers = rounds.flatMap((dealt) => sheetRound(lesson, dealt, { system: 'metric', way: 'half' }).answered);
  const words = pdf.pages.map(wordsOf);
  const first = words.findIndex((text) => text.includes('Answers: Two cones'));
  expect(first).toBeGreaterThan(0);
  const [asked, told] = [words.slice(0, first).join(' '), words.slice(first).join(' ')];
  expect(asked).toContain('How I got it');
  expect(asked).not.toContain('both films open alike');
  expect(told).not.toContain('How I got it');
  for (const { right, slips } of answers) {
    expect(told).toContain(right.normalize('NFKC'));
    for (const { name, gives } of slips) expect(told).toContain(`${gives} ${name}`.normalize('NFKC'));
  }
  // Every question is drawn: the half angles, the films of the first as they stand, a blank for each that changes.
  expect(asked.match(/then _{6,}/g)).toHaveLength(rounds.length * lesson.questions.length * 2);
  expect(told).not.toMatch(/then _{6,}/);
  for (const { questions } of rounds)
    for (const [i, { from, to }] of questions.entries()) {
      for (const { leastFilm } of fitOf(to).seats) expect(told).toContain(filmText(leastFilm!));
      if (i === 0) for (const { leastFilm } of fitOf(from).seats) expect(asked).toContain(filmText(leastFilm!));
      // As the first question leaves them is what it asks for.
      else for (const { leastFilm } of fitOf(from).seats) expect(asked).not.toContain(filmText(leastFilm!));
    }
  expect(words.every((text, i) => text.includes(`page ${i + 1} of ${words.length}`))).toBe(true);
  expect(misplaced(pdf, 'A4')).toEqual([]);
  await page.close();
}, 120_000);

const filmText = (film: number) => `film ${fineText(film, 'metric')}`.normalize('NFKC');
