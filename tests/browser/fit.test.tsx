/** The Fit screen in Chromium: the main job by pointer and by keyboard, bad files, accessibility, widths, themes. */
import { flushSync } from 'react-dom';
import { expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { DEMOS } from '../../src/app/state/demos.ts';
import { page as app, chartLoaded, countPixels, expectAccessible, pixelsOf, pressInBar } from './page.tsx';

const shown = app();
const { position } = shown;
const verdict = () => document.querySelector('.verdict')!.textContent!;

test('opens on a demo that shows the problem at once', () => {
  expect(verdict()).toMatch(/No position gives both their film/);
  expect(verdict()).toMatch(/the steep seat touches first/);
});

test('dragging the journal in the section moves it true to the factor drawn, and is one step to undo', async () => {
  const journal = document.querySelector<SVGGElement>('.journal')!;
  const svg = journal.ownerSVGElement!;
  const before = position();
  const said = verdict();
  const { left, top, width, height } = journal.getBoundingClientRect();
  const at = (dx: number) => ({
    bubbles: true,
    pointerId: 1,
    button: 0,
    clientX: left + width / 2 + dx,
    clientY: top + height / 2,
  });
  svg.setPointerCapture = () => {};
  journal.setPointerCapture = () => {};
  journal.dispatchEvent(new PointerEvent('pointerdown', at(0)));
  for (const dx of [-10, -30, -61]) {
    journal.dispatchEvent(new PointerEvent('pointermove', at(dx)));
    await new Promise((done) => requestAnimationFrame(done));
  }
  journal.dispatchEvent(new PointerEvent('pointerup', at(-61)));
  await expect.poll(verdict).not.toBe(said);
  expect(position()).toBeLessThan(before);
  await userEvent.click(page.getByRole('button', { name: 'Undo' }));
  expect(position()).toBe(before);
  await pressInBar('Redo');
  expect(position()).toBeLessThan(before);
});

test('a fast drag stops where the steep seat touches, which is said; pushed on it goes in without a leap', async () => {
  const journal = document.querySelector<SVGGElement>('.journal')!;
  const { left, top, width, height } = journal.getBoundingClientRect();
  journal.ownerSVGElement!.setPointerCapture = () => {};
  journal.setPointerCapture = () => {};
  const send = async (type: string, dx: number) => {
    const at = { clientX: left + width / 2 + dx, clientY: top + height / 2 };
    journal.dispatchEvent(new PointerEvent(type, { bubbles: true, pointerId: 1, button: 0, ...at }));
    await new Promise((done) => requestAnimationFrame(done));
  };
  await send('pointerdown', 0);
  await send('pointermove', -400);
  expect(position()).toBeCloseTo(-0.004, 9);
  expect(document.querySelector('.verdict .now')!.textContent).toBe('Steep touches. Shallow stands 7.98 µm off.');
  expect(journal.getAttribute('aria-valuetext')).toMatch(/steep touches$/);
  let before = position();
  for (let dx = -401; dx > -425; dx--) {
    await send('pointermove', dx);
    // A pixel of the smallest picture is under a micrometre and a half.
    expect(before - position()).toBeLessThan(0.0015);
    before = position();
  }
  expect(position()).toBeLessThan(-0.0045);
  await send('pointerup', -425);
  await expect
    .poll(() => document.querySelector('.verdict [role="status"]')!.textContent)
    .toMatch(/^Steep touched and is/);
});

test('a key that would step over the touch stops there, and the next goes on', async () => {
  flushSync(() => shown.work.moveTo(-0.0035));
  document.querySelector<SVGGElement>('.journal')!.focus();
  await userEvent.keyboard('{ArrowLeft}');
  expect(position()).toBeCloseTo(-0.004, 9);
  expect(document.querySelector('.journal')!.getAttribute('aria-valuetext')).toMatch(/steep touches$/);
  await userEvent.keyboard('{Shift>}{ArrowLeft}{/Shift}');
  expect(position()).toBeCloseTo(-0.014, 9);
});

test('the keyboard alone does the main job: to the touch, to the film', async () => {
  document.querySelector<SVGGElement>('.journal')!.focus();
  await userEvent.keyboard('{ArrowLeft}');
  expect(position()).toBeCloseTo(0.019, 9);
  await userEvent.keyboard('{PageDown}');
  await expect.poll(verdict).toMatch(/The steep seat stands at its film now\./);
  await userEvent.keyboard('{PageDown}');
  expect(position()).toBeCloseTo(-0.004, 9);
  expect(document.querySelectorAll('.section .touch').length).toBe(2);
  await userEvent.keyboard('{ArrowLeft}');
  expect(verdict()).toMatch(/into its bush/);
});

test('a field takes another unit, and refuses nonsense where it stands', async () => {
  const field = page.getByLabelText('Position', { exact: true });
  await userEvent.fill(field, '2 tenths');
  await userEvent.keyboard('{Enter}');
  expect(position()).toBeCloseTo(0.00508, 12);
  await userEvent.fill(field, 'seven');
  await userEvent.keyboard('{Enter}');
  await expect.element(page.getByText('found "seven"', { exact: false })).toBeVisible();
  expect(position()).toBeCloseTo(0.00508, 12);
});

test('every number of the pair has a control that says what it is', async () => {
  await expect.element(page.getByLabelText('Adjuster pitch', { exact: true })).toBeVisible();
  for (const details of document.querySelectorAll('details')) details.open = true;
  const fields = [...document.querySelectorAll<HTMLInputElement>('.controls input, .controls textarea')];
  // position, adjuster, factor, sector; per seat two surfaces of eight, name, film, tolerance; title, notes
  expect(fields.length).toBe(4 + 2 * (16 + 3) + 2);
  for (const field of fields) {
    const name = document.querySelector(`label[for="${CSS.escape(field.id)}"]`);
    expect(name?.textContent, field.outerHTML).toBeTruthy();
    expect(name!.getAttribute('title'), name!.textContent!).toBeTruthy();
  }
  const angle = page.getByRole('group', { name: 'bush' }).first().getByLabelText('Half angle');
  await userEvent.fill(angle, '1:20');
  await userEvent.keyboard('{Enter}');
  expect(shown.work.store.getState().design.seats[0]!.bush.halfAngle).toBeCloseTo(1.43209618, 7);
  await expect.element(page.getByText('included 2.8642° · 1:20.0000 · 0.6000 in/ft')).toBeVisible();
});

test('a bad file is refused with every error, and what was there stays', async () => {
  const before = shown.work.store.getState().design;
  window.location.hash = '#jobs';
  await expect.poll(() => document.querySelector('.begin input[type=file]')).toBeTruthy();
  const input = document.querySelector<HTMLInputElement>('.begin input[type=file]')!;
  const bag = new DataTransfer();
  bag.items.add(new File(['{"conepair":1,"seats":[{"name":"a","journal":{},"bush":4}],"titel":1}'], 'bad.json'));
  input.files = bag.files;
  input.dispatchEvent(new Event('change', { bubbles: true }));
  await expect.element(page.getByRole('alert')).toBeVisible();
  const alert = document.querySelector('[role=alert]')!.textContent!;
  expect(alert).toMatch(/did you mean "title"/);
  expect(alert).toMatch(/seat 1, bush:/);
  expect(shown.work.store.getState().design).toBe(before);
});

test('every demo draws at every width without sideways scroll', { tags: ['long'] }, async () => {
  await chartLoaded();
  for (const width of [390, 820, 1440]) {
    await page.viewport(width, 900);
    for (const demo of DEMOS) {
      flushSync(() => shown.work.open(demo.file, { ok: true, design: demo.design }));
      await new Promise((done) => setTimeout(done, 30));
      expect(document.documentElement.scrollWidth, `${demo.file} at ${width}`).toBeLessThanOrEqual(width);
      expect(document.querySelector('.picture')!.innerHTML).not.toMatch(/NaN|Infinity/);
      expect(document.querySelector('.chart')!.innerHTML).not.toMatch(/NaN|Infinity/);
    }
  }
});

test('an axe scan is clean in both themes', { tags: ['long'] }, async () => {
  await expect.element(page.getByLabelText('Adjuster pitch', { exact: true })).toBeVisible();
  await expectAccessible();
});

test('the solid picture has drawn: steel and bronze in its pixels', async () => {
  await page.viewport(1440, 1000);
  await expect.poll(() => document.querySelector('.scene canvas'), { timeout: 60_000 }).toBeTruthy();
  const scene = document.querySelector('.scene')!;
  await expect
    .poll(
      async () => {
        const pixels = await pixelsOf(scene);
        const steel = countPixels(pixels, (r, g, b) => b > r && r > 60 && r < 220 && Math.abs(r - g) < 30);
        return Math.min(
          steel,
          countPixels(pixels, (r, _, b) => r > b + 50),
        );
      },
      { timeout: 20_000, interval: 500 },
    )
    .toBeGreaterThan(2000);
});

test('gone to and left on the way, the journal is there all the same, as one step', async () => {
  shown.open('steep-first');
  const from = position();
  const steps = shown.steps();
  const go = () => page.getByRole('group', { name: 'Go to' }).getByRole('button', { name: 'steep film' });
  await userEvent.click(go());
  window.location.hash = '#cut';
  await expect.poll(() => document.querySelector('.goals')).toBeNull();
  const left = position();
  expect(left).not.toBe(from);
  expect(shown.steps()).toBe(steps + 1);
  flushSync(() => shown.work.undo());
  expect(position()).toBe(from);
  window.location.hash = '#fit';
  await expect.element(go()).toBeVisible();
  await userEvent.click(go());
  await expect.poll(() => shown.work.dragging()).toBe(false);
  expect(position()).toBe(left);
});

test('notes are taken at a pause of the hand, and what is being typed as the page is hidden', async () => {
  shown.open('steep-first');
  const field = (path: string) =>
    document.querySelector<HTMLInputElement>(`[data-path="${path}"] :is(input, textarea)`);
  await expect.poll(() => document.querySelectorAll('.controls details').length).toBeGreaterThan(2);
  flushSync(() => {
    for (const details of document.querySelectorAll<HTMLDetailsElement>('.controls details')) details.open = true;
  });
  await expect.poll(() => field('notes')).not.toBeNull();
  await userEvent.click(field('notes')!);
  await userEvent.keyboard(' Lapped twice');
  const { notes } = shown.work.store.getState().design;
  await expect.poll(() => shown.work.store.getState().design.notes).toMatch(/ Lapped twice/);
  expect(notes).not.toMatch(/Lapped/);
  expect(document.activeElement).toBe(field('notes'));
  await userEvent.keyboard(', then blued');
  window.dispatchEvent(new PageTransitionEvent('pagehide'));
  expect(shown.work.store.getState().design.notes).toMatch(/ Lapped twice, then blued/);
  await userEvent.fill(field('adjuster.pitch')!, '0.7 mm');
  expect(shown.work.store.getState().design.adjuster!.pitch).not.toBe(0.7);
  window.dispatchEvent(new PageTransitionEvent('pagehide'));
  expect(shown.work.store.getState().design.adjuster!.pitch).toBe(0.7);
});
