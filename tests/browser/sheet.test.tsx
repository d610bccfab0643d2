/** The Sheet in Chromium: what stands on the pages, nothing off their edge, drawings that stand alone. */
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { readText } from '../../src/app/cut/gaugeText.ts';
import { DEMOS } from '../../src/app/demos.ts';
import { PAPERS, PIXELS_PER_MM } from '../../src/app/sheet/papers.ts';
import { svgText } from '../../src/app/sheet/svgText.ts';
import type { Design } from '../../src/design/definition.ts';
import { cutSection } from '../../src/report/cut/section.ts';
import { expectAccessible, expectNoSidewaysScroll, page } from './page.tsx';

const shown = page('#sheet');
const solved = { timeout: 20_000 };
const leaves = () => [...document.querySelectorAll<HTMLElement>('.leaf')];
const open = (design: Design) => shown.work.open('demo', { ok: true, design });
const demo = (file: string) => DEMOS.find((d) => d.file === `${file}.conepair.json`)!.design;
/** The sheet of this design, not of the one before. */
const drawn = (design: Design) => expect.poll(() => document.querySelector('.title-block h3')?.textContent, solved).toBe(design.title ?? 'untitled');

/** What sticks out of the content box of its page, to a pixel; the pages are shown made smaller. */
function overflowing(): string[] {
  return leaves().flatMap((leaf) => {
    const { left, right } = leaf.getBoundingClientRect();
    const scale = (right - left) / leaf.offsetWidth;
    const padding = Number.parseFloat(getComputedStyle(leaf).paddingLeft) * scale;
    return [...leaf.querySelectorAll('*')].flatMap((element) => {
      const box = element.getBoundingClientRect();
      return box.width > 0 && (box.left < left + padding - 1 || box.right > right - padding + 1) ? [`${element.tagName} ${element.textContent?.slice(0, 40)} by ${Math.max(left + padding - box.left, box.right - right + padding)}`] : [];
    });
  });
}

test('stop readings, settings and boxes on paper are those of the report', async () => {
  open(demo('shallow-first'));
  await drawn(demo('shallow-first'));
  const { steps } = cutSection(demo('shallow-first'))!;
  await expect.poll(() => document.querySelectorAll('.sheet-steps tbody').length, solved).toBe(steps.length);
  const text = document.querySelector('.pages')!.textContent!;
  for (const step of steps) for (const gauge of step.gauges) for (const mm of [gauge.half, gauge.stop]) expect(text).toContain(readText(mm!, 'metric'));
  expect(document.querySelectorAll('.sheet-steps .read-box').length).toBe(steps.reduce((sum, step) => sum + step.gauges.length + 1, 0));
  // The diameter in the gauge plane, which stands on the surface even where the station of the design does not.
  for (const { seat, part, after } of steps) {
    const { station, from, to } = demo('shallow-first').seats.find(({ name }) => name === seat)![part];
    const plane = Math.min(to, Math.max(from, station));
    expect(text).toContain(readText(after.diameter + 2 * (plane - station) * Math.tan((after.halfAngle * Math.PI) / 180), 'metric').replace(' mm', ' ±'));
  }
  expect(document.querySelector('main')!.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
});

test('nothing stands off the edge of a page, whatever the design, paper and units', async () => {
  for (const { design } of DEMOS) {
    open(design);
    await drawn(design);
    for (const system of ['metric', 'inch'] as const) {
      shown.work.store.setState({ system });
      for (const paper of ['A4', 'Letter'] as const) {
        await userEvent.selectOptions(document.querySelector<HTMLSelectElement>('.paper-choice select')!, paper);
        expect(overflowing(), `${design.title} ${system} ${paper}`).toEqual([]);
        // A leaf is as tall as its paper, and taller only where its content is: every demo fits two pages.
        for (const leaf of leaves()) expect(leaf.offsetHeight, `${design.title} ${system} ${paper}`).toBeLessThanOrEqual(Math.ceil(PAPERS[paper].height * PIXELS_PER_MM));
      }
    }
  }
});

test('every drawing stands alone: no class, no variable, its legend inside, and a browser draws it', async () => {
  open(demo('steep-first'));
  await drawn(demo('steep-first'));
  for (const name of ['journal', 'bush', 'chart']) {
    const text = svgText(document.querySelector<SVGSVGElement>(`[data-drawing="${name}"] svg`)!);
    expect(text).not.toMatch(/class=|var\(|currentColor/);
    expect(text).toMatch(/^<svg [^>]*xmlns="http:\/\/www.w3.org\/2000\/svg"/);
    expect(text).toMatch(/width="186mm"/);
    const image = new Image();
    image.src = URL.createObjectURL(new Blob([text], { type: 'image/svg+xml' }));
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [image.naturalWidth, image.naturalHeight];
    const ink = canvas.getContext('2d')!;
    ink.drawImage(image, 0, 0);
    const { data } = ink.getImageData(0, 0, canvas.width, canvas.height);
    let dark = 0;
    for (let i = 0; i < data.length; i += 4) if (data[i]! < 100 && data[i + 3]! > 200) dark++;
    // Lines and lettering cover a few hundredths of the paper; a blank one or a black one is wrong.
    expect(dark / (data.length / 4)).toBeGreaterThan(0.004);
    expect(dark / (data.length / 4)).toBeLessThan(0.2);
    URL.revokeObjectURL(image.src);
  }
  // ISO 3040: gauge diameter, exact place of the gauge plane in a frame, rate of taper, included angle.
  const journal = document.querySelector('[data-drawing="journal"] svg')!.textContent!;
  expect(journal).toMatch(/⌀22\.000 ±0\.0005/);
  expect(journal).toMatch(/1:9\.5406/);
  expect(journal).toMatch(/90\.0° included/);
  expect(journal).toMatch(/heavy: to be cut/);
  expect(document.querySelectorAll('[data-drawing="journal"] rect[stroke]').length).toBe(1);
});

test('a design without a plan has its drawings and its chart', async () => {
  open(demo('opposed-cones'));
  await drawn(demo('opposed-cones'));
  expect(document.querySelector('.sheet-steps')).toBeNull();
  expect(document.querySelectorAll('.leaf [data-drawing] svg').length).toBe(3);
  await expect.element(browser.getByText('Figures are those of the design', { exact: false })).toBeVisible();
});

test('no sideways scroll at any width, and an axe scan is clean in both themes', async () => {
  open(demo('shallow-first'));
  await expect.poll(() => document.querySelector('.sheet-steps'), solved).toBeTruthy();
  await expectNoSidewaysScroll();
  await expectAccessible();
});
