/** The Run screen in Chromium: the verdict, the maps, the hand, the long work and its stop, a scenario of our own. */
import axe from 'axe-core';
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { CLASS_COLOUR } from '../../src/app/pictures/filmColour.ts';
import { plausibleRun } from '../../src/app/screens/run/plausibleRun.ts';
import { DEMOS } from '../../src/app/state/demos.ts';
import { behindFit, filmsOff } from '../../src/report/film/besideFit.ts';
import type { FilmReport } from '../../src/report/film/definition.ts';
import { underNow } from '../../src/report/film/now.ts';
import { filmVerdict } from '../../src/report/film/verdict.ts';
import { solve } from '../../src/report/report.ts';
import { expectNoSidewaysScroll, page, withoutSolid } from './page.tsx';

const shown = page('#run');
const design = () => shown.work.store.getState().design;
const run = () => design().run!;
const verdict = () => document.querySelector('.verdict')?.textContent ?? '';
const maps = () => [...document.querySelectorAll<HTMLCanvasElement>('.seat-map canvas')];
const LONG = { timeout: 50_000 };

/** How many colours a map shows, how dark its darkest place is (0 to 255), and the colour most of it has. */
function painted(canvas: HTMLCanvasElement): { colours: number; darkest: number; most: string } {
  const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
  const colours = new Map<string, number>();
  let darkest = 255;
  for (let i = 0; i < data.length; i += 4) {
    const colour = data.slice(i, i + 3).join();
    colours.set(colour, (colours.get(colour) ?? 0) + 1);
    darkest = Math.min(darkest, 0.2126 * data[i]! + 0.7152 * data[i + 1]! + 0.0722 * data[i + 2]!);
  }
  const [most] = [...colours].reduce((a, b) => (b[1] > a[1] ? b : a));
  return { colours: colours.size, darkest, most };
}

let report: FilmReport | undefined;
/** Of the design that opens, worked out once. */
const opening = () => {
  report ??= solve(design(), 'here', ['film']).film!;
  return report;
};

test('the verdict is the one of the report', async () => {
  const plain = filmVerdict(design(), opening(), 'metric');
  const under = { ...plain, headline: underNow(opening(), 'metric') ?? plain.headline };
  // Where the first example opens its films are not those wanted: Run says so too.
  const off = filmsOff(design(), 'metric');
  expect(off).toMatch(/^No position gives both/);
  const { tone, headline, sentences } = behindFit(under, off);
  expect(tone).toBe('mend');
  await expect.poll(verdict, LONG).toContain(headline);
  // The films that follow the hand say the headline too, and come first.
  for (const sentence of sentences) await expect.poll(verdict, LONG).toContain(sentence);
});

test('pressure and film are painted on every seat, with the peak and the least film marked', async () => {
  await expect.poll(() => maps().length, LONG).toBe(2);
  await expect.poll(() => maps().every((map) => painted(map).colours > 30), LONG).toBe(true);
  const pressed = maps().map((map) => painted(map).darkest);
  expect(Math.min(...pressed)).toBeLessThan(140);
  expect(document.querySelectorAll('.mark.peak').length).toBe(2);
  expect(document.querySelectorAll('.mark.least').length).toBe(2);
  await userEvent.click(browser.getByRole('button', { name: 'Film', exact: true }));
  await expect.poll(() => document.querySelector('.map-legend')!.textContent).toContain('µm');
  // Films in the colours they have in every picture.
  const fills = Object.values(CLASS_COLOUR).map((fill) => fill.map((part) => Math.round(255 * part)).join());
  for (const map of maps()) expect(fills).toContain(painted(map).most);
  expect(document.querySelector('main')!.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
});

test('a hand on the speed is followed by the maps, and the whole drag is one step to undo', async () => {
  await expect.poll(() => maps().length, LONG).toBe(2);
  const told = () => document.querySelector('.seat-map figcaption')!.textContent!;
  const [before, said] = [run().speed, told()];
  const slider = document.querySelector<HTMLInputElement>('.hand-slider input')!;
  const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!;
  slider.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true }));
  for (const speed of [1300, 1700, 2400]) {
    set.call(slider, `${Math.log10(speed)}`);
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    await new Promise((done) => requestAnimationFrame(done));
  }
  slider.dispatchEvent(new PointerEvent('pointerup', { bubbles: true }));
  expect(run().speed).toBeCloseTo(2400, -2);
  await expect.poll(told, LONG).not.toBe(said);
  await userEvent.click(browser.getByRole('button', { name: 'Undo' }));
  expect(run().speed).toBe(before);
});

test('the load is moved by the arrow keys; held by hand instead, the axis is', async () => {
  withoutSolid();
  await expect.poll(() => document.querySelector('.hold'), LONG).toBeTruthy();
  // Once the films are there.
  await expect.poll(() => maps().length, LONG).toBe(2);
  const { y } = run().load!;
  document.querySelector<SVGGElement>('.hold')!.focus();
  await userEvent.keyboard('{ArrowDown}');
  expect(run().load!.y!).toBeLessThan(y!);
  await userEvent.selectOptions(browser.getByLabelText('Spindle', { exact: true }), 'pose');
  expect(run().load).toBeUndefined();
  // Where the load had put it, so that nothing jumps.
  expect(Math.hypot(run().pose!.x!, run().pose!.y!)).toBeGreaterThan(1e-5);
  await expect.poll(verdict, LONG).not.toMatch(/being worked out/);
  // Let go again, it carries what it carried before.
  await userEvent.selectOptions(browser.getByLabelText('Spindle', { exact: true }), 'load');
  expect(run().load!.y!).toBeLessThan(y!);
  expect(run().pose).toBeUndefined();
});

test('figures typed one after the other, as fast as can be, all stay', async () => {
  withoutSolid();
  await expect.element(browser.getByLabelText('Load upward', { exact: true }), LONG).toBeVisible();
  const put = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!;
  const field = (label: string) =>
    [...document.querySelectorAll<HTMLInputElement>('.controls input')].find(
      (input) => input.labels?.[0]?.textContent === label,
    )!;
  for (let k = 1; k <= 5; k++) {
    for (const [label, value] of [
      ['Speed', 1000 + k],
      ['Load upward', -50 - k],
      ['Thrust', -10 - k],
    ] as const) {
      const input = field(label);
      input.focus();
      put.call(input, `${value}`);
      input.dispatchEvent(new Event('input', { bubbles: true }));
      input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }));
      input.blur();
    }
    expect([run().speed, run().load!.y, run().load!.z]).toEqual([1000 + k, -50 - k, -10 - k]);
  }
});

test('the oil is known in one of three ways, each with its own keys', async () => {
  withoutSolid();
  const choice = browser.getByLabelText('Oil known', { exact: true });
  await expect.element(choice, LONG).toBeVisible();
  await userEvent.selectOptions(choice, 'measured');
  expect(Object.keys(run().oil)).toEqual(['measured']);
  const field = browser.getByLabelText('Viscosity there').first();
  await userEvent.fill(field, '12 mm²/s');
  await userEvent.keyboard('{Enter}');
  expect([...document.querySelectorAll('.error')].map((e) => e.textContent)).toEqual([]);
  expect(run().oil.measured![0]).toEqual([40, 12]);
  await userEvent.selectOptions(choice, 'viscosity');
  expect(Object.keys(run().oil)).toEqual(['viscosity']);
  expect(run().oil.viscosity).toBeGreaterThan(0.01);
});

test('grooves are added, edited and struck out, and are drawn on the map', async () => {
  withoutSolid();
  await expect.poll(() => document.querySelector('.controls summary'), LONG).toBeTruthy();
  for (const details of document.querySelectorAll<HTMLDetailsElement>('.controls details')) details.open = true;
  await userEvent.click(browser.getByRole('button', { name: '+ Groove' }));
  expect(run().supply!.length).toBe(1);
  await expect.poll(() => document.querySelectorAll('.groove').length, LONG).toBe(1);
  await userEvent.fill(browser.getByLabelText('Supply pressure', { exact: true }), '0.3 MPa');
  await userEvent.keyboard('{Enter}');
  expect(run().supply![0]!.pressure).toBe(0.3);
  await userEvent.click(browser.getByRole('button', { name: 'Strike out groove 1' }));
  expect(run().supply).toBeUndefined();
});

test('long work is stopped, and taken up again', async () => {
  withoutSolid();
  await userEvent.click(browser.getByRole('button', { name: 'Stop', exact: true }));
  await expect.element(browser.getByText('Stopped.', { exact: false })).toBeVisible();
  // The hand is still followed.
  await expect.poll(() => maps().length, LONG).toBe(2);
  const points = () => document.querySelectorAll('section[aria-label="Against speed"] .dot').length;
  const before = points();
  await new Promise((done) => setTimeout(done, 2500));
  expect(points()).toBe(before);
  await userEvent.click(browser.getByRole('button', { name: 'Work it out' }));
  await expect.element(browser.getByRole('button', { name: 'Stop', exact: true })).toBeVisible();
  await expect
    .poll(() => document.querySelectorAll('section[aria-label="Warming up"] .curve').length, LONG)
    .toBeGreaterThan(3);
});

test('worked out to the end: the window of clearances, safe speeds, and a cold position that is set', {
  tags: ['long'],
  timeout: 110_000,
}, async () => {
  withoutSolid();
  shown.work.open('correct', { ok: true, design: DEMOS.find(({ file }) => file.startsWith('correct'))!.design });
  await expect
    .poll(() => document.querySelector('.progress')?.textContent, { timeout: 100_000 })
    .toBe('Worked out in full.');
  const dots = (line: number) =>
    document.querySelectorAll(`section[aria-label="Clearances that work"] .seat-${line} .dot`).length;
  // Warm, and as it starts.
  expect(dots(0)).toBe(14);
  expect(dots(1)).toBeGreaterThan(10);
  expect(document.querySelector('section[aria-label="Film to aim for"]')!.textContent).toMatch(
    /parts the surfaces: [\d.]+ µm.*cold, as it starts/,
  );
  // Which film counts, and what is asked beside it, stands once.
  expect(verdict()).toMatch(/guidance \(ISO 7902-3\)/);
  expect(document.querySelectorAll('section[aria-label="Against speed"] .dot').length).toBeGreaterThan(30);
  const set = browser.getByRole('button', { name: 'Set this position' }).first();
  await userEvent.click(set);
  expect(Math.abs(design().position ?? 0)).toBeGreaterThan(5e-5);
  // What film to aim for: the button takes the figures of its headline, in both cones.
  const headline = document.querySelector('section[aria-label="Film to aim for"] h2')!.textContent!;
  const [, target, tolerance] = /^Aim for a film of ([\d.]+) µm ± ([\d.]+) µm in the shallow and steep seats/.exec(
    headline,
  )!;
  await userEvent.click(
    browser.getByRole('button', { name: `Take ${target} µm ± ${tolerance} µm as the film wanted` }),
  );
  for (const { film } of design().seats) {
    expect(film!.target * 1000).toBeCloseTo(Number(target), 9);
    expect(film!.tolerance! * 1000).toBeCloseTo(Number(tolerance), 9);
  }
});

test('a design that says nothing of running is asked for the few things; what is not typed stays marked as assumed', async () => {
  withoutSolid();
  const { run: _, ...bare } = design();
  shown.work.open('bare', { ok: true, design: bare });
  await expect.poll(verdict).toMatch(/How does it run\? Nothing says so yet.*assumed by the size/);
  await userEvent.fill(browser.getByLabelText('Load, down'), '55');
  await userEvent.click(browser.getByRole('button', { name: 'Work out how it runs' }));
  expect(run().oil).toEqual({ grade: 10 });
  expect(run().load!.y).toBe(-55);
  expect(design().assumed).toEqual(['run.speed', 'run.oil.grade', 'run.load.z', 'run.load.station']);
  await expect.poll(verdict, LONG).toMatch(/Type speed, ISO grade, thrust and station of the load first: nobody has\./);
  await expect.poll(() => maps().length, LONG).toBeGreaterThan(0);
});

test('every demo draws with its own run or the scenario made for it, and at odd speeds', {
  tags: ['long'],
  timeout: 110_000,
}, async () => {
  for (const { file, design: demo } of DEMOS) {
    shown.work.open(file, { ok: true, design: { ...demo, run: demo.run ?? plausibleRun(demo, 'metric') } });
    await expect
      .poll(() => [...document.querySelectorAll('.seat-map strong')].map((name) => name.textContent), LONG)
      .toEqual(demo.seats.map(({ name }) => name));
    // A seat that stands far open bears next to nothing, on the scale of the one that carries.
    await expect.poll(() => maps().some((map) => painted(map).colours > 30), LONG).toBe(true);
    expect(document.querySelector('main')!.innerHTML, file).not.toMatch(/NaN|Infinity|undefined/);
  }
  for (const speed of [0, -900]) {
    shown.work.change((d) => ({ ...d, run: { ...d.run!, speed } }));
    await expect.poll(() => document.querySelector('.verdict')!.getAttribute('aria-busy'), LONG).toBe('false');
    expect(document.querySelector('main')!.innerHTML, `${speed}`).not.toMatch(/NaN|Infinity|undefined/);
  }
});

test('a load that no film carries is told, and the map shows where metal touches', async () => {
  withoutSolid();
  shown.work.change((d) => ({ ...d, run: { ...d.run!, speed: 30, load: { x: 0, y: -4000, z: 0, station: 30 } } }));
  await expect.poll(verdict, LONG).toMatch(/No film carries this load/);
  shown.work.change((d) => ({ ...d, run: { speed: 600, oil: { grade: 10 }, pose: { x: 0.03, y: 0 } } }));
  await expect.poll(verdict, LONG).toMatch(/Held there, the .* journal is .* into its bush/);
  await userEvent.click(browser.getByRole('button', { name: 'Film', exact: true }));
  await expect.poll(() => maps().some((map) => painted(map).colours > 10), LONG).toBe(true);
});

test('warm, the maps show the films of the steady state', async () => {
  withoutSolid();
  const warm = browser.getByRole('button', { name: 'Warm', exact: true });
  await expect.element(warm, LONG).toBeEnabled();
  await userEvent.click(warm);
  const steady = opening().steady!;
  const least = `${(1000 * steady.seats[1]!.leastFilm).toFixed(2)} µm`;
  await expect
    .poll(() => document.querySelectorAll('.seat-map figcaption')[1]!.textContent, LONG)
    .toContain(`least film ${least}`);
});

test('without WebGL the maps carry on, and a sentence says so', { tags: ['long'] }, async () => {
  withoutSolid();
  await expect.poll(() => maps().length, LONG).toBe(2);
  await userEvent.click(browser.getByRole('button', { name: 'Solid', exact: true }));
  await expect
    .element(browser.getByText('This device cannot draw the solid picture', { exact: false }), LONG)
    .toBeVisible();
  await userEvent.click(browser.getByRole('button', { name: 'Seats', exact: true }));
  expect(maps().length).toBe(2);
  expect(document.querySelector('.scene')).toBeNull();
});

test('the position is moved by hand, and a film that closes is told', async () => {
  withoutSolid();
  await expect.poll(() => maps().length, LONG).toBe(2);
  const slider = browser.getByLabelText('Position', { exact: true }).first().element() as HTMLInputElement;
  expect(slider.type).toBe('range');
  const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!;
  set.call(slider, slider.min);
  slider.dispatchEvent(new Event('input', { bubbles: true }));
  expect(design().position).toBeCloseTo(-0.004, 6);
  await expect.poll(verdict, LONG).toMatch(/the steep journal is .*there is no room for oil/);
  // Where it could stand instead is one button away.
  await userEvent.click(browser.getByRole('button', { name: /^Set it at/ }));
  expect(design().position).toBeGreaterThan(-0.004);
  await expect.poll(verdict, LONG).toMatch(/0\.67 µm|barely parts/);
});

test('no sideways scroll at any width, and an axe scan with everything open is clean in both themes', {
  tags: ['long'],
  timeout: 110_000,
}, async () => {
  await expect.poll(() => document.querySelector('section[aria-label="Warming up"]'), LONG).toBeTruthy();
  await expect
    .poll(() => document.querySelectorAll('section[aria-label="Clearances that work"] .dot').length, LONG)
    .toBeGreaterThan(2);
  await expectNoSidewaysScroll();
  await browser.viewport(820, 1100);
  for (const details of document.querySelectorAll('details')) details.open = true;
  for (const theme of ['light', 'dark']) {
    document.documentElement.style.colorScheme = theme;
    const { violations } = await axe.run(document);
    expect(
      violations.map(
        (v) => `${v.id}: ${v.nodes.map((n) => `${n.html.slice(0, 120)} ${n.failureSummary}`).join(' | ')}`,
      ),
    ).toEqual([]);
  }
  document.documentElement.style.colorScheme = '';
});
