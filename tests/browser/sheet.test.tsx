/** The Sheet in Chromium: what stands on the pages, nothing off their edge, drawings that stand alone. */
import { createRoot } from 'react-dom/client';
import { beforeEach, expect, test, vi } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { PrintButton } from '../../src/app/screens/sheet/PrintButton.tsx';
import { PAPERS, PIXELS_PER_MM } from '../../src/app/screens/sheet/papers.ts';
import { isMoved } from '../../src/app/screens/sheet/StepTable.tsx';
import { svgText } from '../../src/app/screens/sheet/svgText.ts';
import { DEMOS } from '../../src/app/state/demos.ts';
import type { Design } from '../../src/design/definition.ts';
import { doubtedText, fineText, readingText } from '../../src/design/units.ts';
import { cutSection } from '../../src/report/cut/section.ts';
import { waysToSet } from '../../src/report/sheet/waysToSet.ts';
import { expectAccessible, expectNoSidewaysScroll, page } from './page.tsx';

const shown = page('#sheet');
const solved = { timeout: 20_000 };
beforeEach(() => browser.viewport(1200, 900));
const leaves = () => [...document.querySelectorAll<HTMLElement>('.leaf')];
const open = (design: Design) => shown.work.open('demo', { ok: true, design });
const demo = (file: string) => DEMOS.find((d) => d.file === `${file}.conepair.json`)!.design;
/** The sheet of this design, not of the one before. */
const drawn = (design: Design) =>
  expect.poll(() => document.querySelector('.title-block h3')?.textContent, solved).toBe(design.title ?? 'untitled');

/** What sticks out of the content box of its page, to a pixel; the pages are shown made smaller. */
function overflowing(): string[] {
  return leaves().flatMap((leaf) => {
    const { left, right } = leaf.getBoundingClientRect();
    const scale = (right - left) / leaf.offsetWidth;
    const padding = Number.parseFloat(getComputedStyle(leaf).paddingLeft) * scale;
    return [...leaf.querySelectorAll('*')].flatMap((element) => {
      const box = element.getBoundingClientRect();
      return box.width > 0 && (box.left < left + padding - 1 || box.right > right - padding + 1)
        ? [
            `${element.tagName} ${element.textContent?.slice(0, 40)} by ${Math.max(left + padding - box.left, box.right - right + padding)}`,
          ]
        : [];
    });
  });
}

/** Figures of a drawing that stand on one another, or off it. */
function collisions(): string[] {
  return [...document.querySelectorAll('.drawing svg')].flatMap((svg) => {
    const frame = svg.getBoundingClientRect();
    const texts = [...svg.querySelectorAll('text')].map((text) => ({
      text: text.textContent,
      box: text.getBoundingClientRect(),
    }));
    const off = texts.filter(
      ({ box }) =>
        box.left < frame.left - 1 ||
        box.right > frame.right + 1 ||
        box.top < frame.top - 1 ||
        box.bottom > frame.bottom + 1,
    );
    // The box of a text is as high as its font, a fifth more than its letters on either side.
    const inner = ({ left, right, top, bottom }: DOMRect) => {
      const spare = 0.2 * Math.min(right - left, bottom - top);
      return { left: left + spare, right: right - spare, top: top + spare, bottom: bottom - spare };
    };
    const over = texts.flatMap(({ text, box }, i) =>
      texts.slice(i + 1).flatMap((other) => {
        const [a, b] = [inner(box), inner(other.box)];
        return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
          ? [`"${text}" on "${other.text}"`]
          : [];
      }),
    );
    return [...off.map(({ text }) => `"${text}" off the drawing`), ...over];
  });
}

test('stop readings, settings, order of work and boxes on paper are those of the report', async () => {
  open(demo('shallow-first'));
  await drawn(demo('shallow-first'));
  const { steps, work, settings } = cutSection(demo('shallow-first'))!;
  await expect.poll(() => document.querySelectorAll('.sheet-steps tbody').length, solved).toBe(steps.length);
  const text = document.querySelector('.pages')!.textContent!;
  for (const step of steps)
    for (const gauge of step.gauges)
      for (const mm of [gauge.safe === undefined ? gauge.half : gauge.safe, gauge.stop])
        expect(text).toContain(readingText(mm!, 'metric'));
  // In millimetres a tolerance of 0.5 µm needs no further decimal.
  expect(document.querySelectorAll('.sheet-steps .within').length).toBe(steps.length);
  expect(document.querySelectorAll('.sheet-steps .read-box').length).toBe(
    steps.reduce((sum, step) => sum + step.gauges.length + (isMoved(step.standOff) ? 1 : 0), 0),
  );
  // The shallow cone does not set the touch: its step leaves the stand-off where it is, and there is nothing to read.
  expect(steps.filter(({ standOff }) => !isMoved(standOff)).length).toBe(1);
  for (const row of document.querySelectorAll('.sheet-steps tr:not(.feeds-row)')) {
    const [now, half, stop] = [...row.querySelectorAll('td[data-label]')].map((cell) => cell.textContent);
    if (stop) expect([now, half]).not.toEqual([stop, stop]);
  }
  expect([...document.querySelectorAll('.order-of-work li span:last-child')].map((item) => item.textContent)).toEqual(
    work.map((item) => item.text),
  );
  // Every angle is set by a way that is fine enough; where there is none the sheet says so beside the finest.
  const rows = [...document.querySelectorAll('.set-up-table tbody')];
  expect(rows.length).toBe(settings.length);
  for (const [i, setting] of settings.entries()) {
    const { by } = waysToSet(setting);
    expect(rows[i]!.querySelector('td.what strong')!.textContent).toContain(
      by.way === 'alongBar' || by.way === 'sineBar' ? 'sine bar' : readingText(by.reading, 'metric'),
    );
    expect(rows[i]!.textContent!.includes('Too coarse, though the finest')).toBe(by.enough === false);
  }
  // The diameter in the gauge plane, which stands on the surface even where the station of the design does not.
  for (const { seat, part, after } of steps) {
    const { station, from, to } = demo('shallow-first').seats.find(({ name }) => name === seat)![part];
    const plane = Math.min(to, Math.max(from, station));
    expect(text).toContain(
      `⌀${(after.diameter + 2 * (plane - station) * Math.tan((after.halfAngle * Math.PI) / 180)).toFixed(4)}`,
    );
  }
  expect(document.querySelector('main')!.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
});

test('blocks that are too coarse never stand on the sheet without saying so', async () => {
  // With an indicator of ten micrometres nothing sets a steep cone finely enough.
  const coarse = {
    ...demo('steep-first'),
    title: 'Coarse',
    cut: { ...demo('steep-first').cut!, machine: { ...demo('steep-first').cut!.machine, indicator: 0.01 } },
  };
  open(coarse);
  await drawn(coarse);
  await expect
    .poll(() => document.querySelector('.set-up-table td.what')?.textContent, solved)
    .toContain('Too coarse, though the finest there is');
  open(demo('steep-first'));
  await drawn(demo('steep-first'));
  await expect
    .poll(() => document.querySelector('.set-up-table td.what')?.textContent, solved)
    .not.toContain('though the finest');
  const { settings } = cutSection(demo('steep-first'))!;
  expect(settings[0]!.recommended).not.toBeNull();
});

test('a plan that is not possible looks like no work order: what conflicts at the top, no steps, no boxes', async () => {
  const tight = {
    ...demo('steep-first'),
    title: 'Too little',
    cut: { ...demo('steep-first').cut!, allow: [{ seat: 'steep', part: 'journal' as const, limit: 0.002 }] },
  };
  open(tight);
  await drawn(tight);
  const top = document.querySelector('.leaf .refused')!;
  expect(top.textContent).toContain('Not a work order');
  expect(top.textContent).toContain('the steep journal may lose at most 2.00 µm');
  expect(
    document.querySelector('.sheet-steps, .set-up-table, .order-of-work, .trial-line, .read-box, .title-block span'),
  ).toBeNull();
  // The parts are drawn as they are, nothing to be cut.
  expect(document.querySelector('.pages')!.textContent).not.toContain('heavy: cut');
  expect(document.querySelector('[data-drawing="journal"] svg')!.textContent).toContain('⌀24.0000');
});

test('after trials the sheet is of what is left: the old stop struck and in no box, the next trial named, on every paper', {
  tags: ['long'],
}, async () => {
  const steep = demo('steep-first');
  const trials = [
    { standOff: { value: -0.001, sigma: 0.002 } },
    { taken: [{ seat: 'steep', part: 'journal' as const, normal: 0.04 }], standOff: { value: -0.058, sigma: 0.002 } },
  ];
  for (const [title, doubt] of [
    ['Unsure', 0.005],
    ['Sure', 0.0005],
  ] as const) {
    const design: Design = { ...steep, title, cut: { ...steep.cut!, doubt, trials } };
    const report = cutSection(design)!;
    open(design);
    await drawn(design);
    await expect.poll(() => document.querySelector('.left-steps'), solved).toBeTruthy();
    const [left] = report.remaining!.steps;
    const before = readingText(report.steps[0]!.gauges[0]!.stop!, 'metric');
    const text = document.querySelector('.pages')!.textContent!;
    expect(document.querySelector('.headline')!.textContent).toContain(
      doubtedText(left!.normal, left!.sigma, 'metric', left!.limits ?? undefined),
    );
    expect(document.querySelector('.struck s')!.textContent).toContain(before);
    expect(text.split(before).length).toBe(2);
    expect(document.querySelector('.left-steps')!.textContent).toContain(fineText(Math.abs(left!.diameter), 'metric'));
    expect(document.querySelector('.left-steps')!.textContent!.includes('nothing yet')).toBe(title === 'Unsure');
    expect(document.querySelector('.trial-line')!.textContent).toContain(
      `Trial 3, dry, with blue: stand-off (${fineText(report.remaining!.standOff.safe!, 'metric')} expected)`,
    );
    expect(text).toContain(
      title === 'Unsure'
        ? 'Take nothing off yet: assemble dry again for trial 3'
        : 'stop when the reading has changed by what may be taken now',
    );
    // The drawing carries what is safe now, and the whole stands beside it.
    expect(text).toContain(
      title === 'Unsure'
        ? 'less what the trials say is off, for nothing of the rest is safe to take now'
        : 'less what the trials say is off and what is safe to take now, no more',
    );
    expect(text).toContain('The whole would most likely be: steep journal');
    expect(document.querySelector('main')!.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
    for (const system of ['metric', 'inch'] as const) {
      shown.work.store.setState({ system });
      for (const paper of ['A4', 'Letter'] as const) {
        await userEvent.selectOptions(document.querySelector<HTMLSelectElement>('.paper-choice select')!, paper);
        expect(overflowing(), `${title} ${system} ${paper}`).toEqual([]);
        expect(collisions(), `${title} ${system} ${paper}`).toEqual([]);
        for (const leaf of leaves())
          expect(leaf.offsetHeight).toBeLessThanOrEqual(Math.ceil(PAPERS[paper].height * PIXELS_PER_MM));
      }
    }
    shown.work.store.setState({ system: 'metric' });
  }
});

test('the angle at the machine is held as on the drawing', async () => {
  for (const file of ['steep-first', 'shallow-first']) {
    open(demo(file));
    await drawn(demo(file));
    const { settings } = cutSection(demo(file))!;
    await expect.poll(() => document.querySelectorAll('.set-up-table tbody').length, solved).toBe(settings.length);
    for (const [i, { seat, part }] of settings.entries()) {
      const [within] = document.querySelectorAll('.set-up-table tbody')[i]!.textContent!.match(/±[\d.]+″/)!;
      const row = [...document.querySelectorAll('.surfaces tbody tr')].find((each) =>
        each.querySelector('th')!.textContent!.includes(`${seat} ${part}`),
      )!;
      expect(row.querySelector('.angle')!.textContent).toContain(within);
    }
  }
});

test('Print waits for the films, and after a while prints without them', async () => {
  const print = vi.spyOn(window, 'print').mockImplementation(() => {});
  const box = document.body.appendChild(document.createElement('div'));
  const root = createRoot(box);
  const show = (ready: boolean, patience: number) => root.render(<PrintButton ready={ready} patience={patience} />);
  const pressed = async () => {
    await expect.poll(() => box.querySelector('button')).toBeTruthy();
    box.querySelector('button')!.click();
  };
  try {
    show(false, 60_000);
    await pressed();
    await expect.poll(() => box.querySelector('button')!.textContent).toBe('Preparing…');
    expect(box.textContent).toContain('it prints when they are there');
    expect(print).not.toHaveBeenCalled();
    show(true, 60_000);
    await expect.poll(() => print.mock.calls.length).toBe(1);
    await expect.poll(() => box.querySelector('button')!.textContent).toBe('Print');
    show(false, 50);
    await pressed();
    await expect.poll(() => print.mock.calls.length).toBe(2);
    show(false, 60_000);
    await pressed();
    await expect.poll(() => box.querySelectorAll('button').length).toBe(2);
    box.querySelectorAll('button')[1]!.click();
    await expect.poll(() => print.mock.calls.length).toBe(3);
    await expect.poll(() => box.querySelector('button')!.textContent).toBe('Print');
  } finally {
    root.unmount();
    box.remove();
    print.mockRestore();
  }
});

test('films cold and warm stand on the sheet of a design that runs, and nothing of it where it does not', async () => {
  open(demo('steep-first'));
  await drawn(demo('steep-first'));
  await expect
    .poll(() => document.querySelector('.run-figures')?.textContent, solved)
    .toMatch(/1200 rev\/min, oil ISO VG 10.*Least film cold.*Warm/);
  const { run: _, ...still } = demo('steep-first');
  open({ ...still, title: 'Still' });
  await drawn({ ...still, title: 'Still' });
  expect(document.querySelector('.run-figures')).toBeNull();
});

test('nothing stands off the edge of a page or on another figure, every page is well filled, whatever the design, paper and units', {
  tags: ['long'],
  timeout: 110_000,
}, async () => {
  for (const [i, { design }] of DEMOS.entries()) {
    open(design);
    await drawn(design);
    await expect.poll(() => document.querySelector('.pages')?.getAttribute('aria-busy'), solved).toBe('false');
    for (const system of ['metric', 'inch'] as const) {
      shown.work.store.setState({ system });
      // Each demo in both units and on both papers, the other way about from one to the next.
      for (const paper of [(system === 'metric') === (i % 2 === 0) ? 'A4' : 'Letter'] as const) {
        await userEvent.selectOptions(document.querySelector<HTMLSelectElement>('.paper-choice select')!, paper);
        const where = `${design.title} ${system} ${paper}`;
        // Until the films are worked out the sheet says so, in a line of its own.
        await expect.poll(() => document.querySelector('.pages')?.getAttribute('aria-busy'), solved).toBe('false');
        expect(overflowing(), where).toEqual([]);
        expect(collisions(), where).toEqual([]);
        // A leaf is as tall as its paper, and taller only where its content is: every demo fits two pages.
        for (const leaf of leaves()) {
          expect(leaf.offsetHeight, where).toBeLessThanOrEqual(Math.ceil(PAPERS[paper].height * PIXELS_PER_MM));
          expect(
            leaf.firstElementChild!.getBoundingClientRect().height / leaf.getBoundingClientRect().height,
            where,
          ).toBeGreaterThan(0.8);
        }
      }
    }
  }
});

test('eight seats in a row: every surface lettered, no figure on another, all of them in the table', async () => {
  const [shallow, steep] = demo('steep-first').seats;
  const along = (seat: Design['seats'][number], k: number) => {
    const moved = (surface: typeof seat.journal) => ({
      ...surface,
      station: surface.station - 60 * k,
      from: surface.from - 60 * k,
      to: surface.to - 60 * k,
    });
    return { ...seat, name: `${seat.name} ${k + 1}`, journal: moved(seat.journal), bush: moved(seat.bush) };
  };
  const { run: _, cut: __, ...rest } = demo('steep-first');
  const eight: Design = {
    ...rest,
    title: 'Eight',
    seats: [0, 1, 2, 3].flatMap((k) => [along(shallow!, k), along(steep!, k)]),
  };
  open(eight);
  await drawn(eight);
  for (const system of ['metric', 'inch'] as const) {
    shown.work.store.setState({ system });
    await expect.poll(() => document.querySelectorAll('.surfaces tbody tr').length).toBe(16);
    expect(overflowing(), system).toEqual([]);
    expect(collisions(), system).toEqual([]);
    for (const letter of 'ABCDEFGH') {
      expect(
        [...document.querySelectorAll('[data-drawing="bush"] svg text')].filter((text) => text.textContent === letter)
          .length,
      ).toBe(1);
      expect(
        [...document.querySelectorAll('.surfaces tbody th')].filter((head) =>
          head.textContent!.startsWith(`${letter} `),
        ).length,
      ).toBe(2);
    }
  }
});

test('boxes to be written in are seven millimetres and more', { tags: ['long'] }, async () => {
  open(demo('shallow-first'));
  await drawn(demo('shallow-first'));
  await expect.poll(() => document.querySelector('.sheet-steps .read-box'), solved).toBeTruthy();
  for (const system of ['metric', 'inch'] as const) {
    shown.work.store.setState({ system });
    for (const paper of ['A4', 'Letter'] as const) {
      await userEvent.selectOptions(document.querySelector<HTMLSelectElement>('.paper-choice select')!, paper);
      for (const box of document.querySelectorAll<HTMLElement>('.read-box, .title-block span'))
        expect(box.offsetHeight / PIXELS_PER_MM).toBeGreaterThanOrEqual(7);
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
  // Gauge diameter, exact place of the gauge plane in a frame, rate of taper, included angle. @source ISO3040
  const journal = document.querySelector('[data-drawing="journal"] svg')!.textContent!;
  expect(journal).toMatch(/⌀22\.0000±0\.0005/);
  expect(journal).toMatch(/\(1:9\.541\)half angle 3\.0° ±2\.\d″/);
  // Angles in the way the person says them, and no other.
  expect(journal).toMatch(/steephalf angle 45\.0°/);
  expect(journal).not.toMatch(/included/);
  // Nothing of the cut is safe before a trial: the drawing asks for none.
  expect(journal).not.toMatch(/heavy: cut/);
  expect(document.querySelector('.pages')!.textContent).toContain('nothing is safe to take before a trial');
  // Gauge planes at the datum and at 1.2 mm, both exact; ends of both cones from the datum.
  expect(document.querySelectorAll('[data-drawing="journal"] rect[stroke]').length).toBe(2);
  expect(
    [...document.querySelectorAll('[data-drawing="journal"] [data-stations] text')].map((text) => text.textContent),
  ).toEqual(['−26', '0', '1.2', '4.2']);
});

test('a design without a plan has its drawings and its chart', async () => {
  open(demo('opposed-cones'));
  await drawn(demo('opposed-cones'));
  expect(document.querySelector('.sheet-steps')).toBeNull();
  expect(document.querySelectorAll('.leaf [data-drawing] svg').length).toBe(3);
  await expect.element(browser.getByText('Figures are those of the design', { exact: false })).toBeVisible();
});

test('on a phone the sheet is read as a text, and measured as it will be printed', { tags: ['long'] }, async () => {
  open(demo('steep-first'));
  await drawn(demo('steep-first'));
  const heights = () =>
    [...document.querySelectorAll<SVGSVGElement>('.drawing svg')].map((svg) => svg.viewBox.baseVal.height);
  await expect.poll(() => document.querySelector('.pages')?.getAttribute('aria-busy'), solved).toBe('false');
  const wide = heights();
  await browser.viewport(390, 844);
  await new Promise((done) => setTimeout(done, 200));
  for (const [i, height] of heights().entries()) expect(Math.abs(height - wide[i]!)).toBeLessThan(2);
  for (const leaf of leaves()) expect(leaf.offsetWidth).toBeLessThanOrEqual(390);
  // What is wider than the phone scrolls within its own box, and says so.
  for (const box of document.querySelectorAll('.drawing, .wide')) {
    expect(box.scrollWidth).toBeGreaterThan(box.clientWidth);
    expect(getComputedStyle(box, '::before').content).toContain('sideways');
  }
  for (const cell of document.querySelectorAll('.sheet-steps td, .sheet-steps th, .order-of-work li, .leaf p')) {
    const { width } = cell.getBoundingClientRect();
    if (width > 0) expect(Number.parseFloat(getComputedStyle(cell).fontSize)).toBeGreaterThanOrEqual(12);
  }
});

test('no sideways scroll at any width, and an axe scan is clean in both themes', { tags: ['long'] }, async () => {
  open(demo('shallow-first'));
  await expect.poll(() => document.querySelector('.sheet-steps'), solved).toBeTruthy();
  await expectNoSidewaysScroll();
  await expectAccessible();
});
