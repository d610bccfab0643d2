/** Seat and play on the Fit screen in Chromium: what the indicator feels, the nose pulled, the blue. */
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { indicatorOf } from '../../src/report/play/toPlay.ts';
import { solve } from '../../src/report/report.ts';
import { countPixels, expectAccessible, expectNoSidewaysScroll, page, pixelsOf } from './page.tsx';

const shown = page();
const panel = () => document.querySelector('.verdict.second')?.textContent ?? '';
const design = () => shown.work.store.getState().design;

test('says how the spindle sits and shakes, as the report does', async () => {
  await expect.poll(panel, { timeout: 20_000 }).toMatch(/Pushed home, the spindle bears in the steep seat alone/);
  const { total } = solve(design(), 'here', ['play']).play!.shake;
  expect(panel()).toContain(`${((total ?? 0) * 1000).toFixed(2)} µm`);
});

test('the nose is pulled by the keyboard as far as it goes, and let go', async () => {
  await expect.poll(() => document.querySelector('.nose'), { timeout: 20_000 }).toBeTruthy();
  document.querySelector<SVGGElement>('.nose')!.focus();
  for (let i = 0; i < 4; i++) await userEvent.keyboard('{Shift>}{ArrowRight}{/Shift}');
  // Against the stop: half the whole travel from side to side.
  const half = (solve(design(), 'here', ['play']).play!.shake.total! / 2) * 1000;
  await expect.poll(() => Number(document.querySelector('.nose')!.getAttribute('aria-valuenow'))).toBeCloseTo(half, 2);
  expect(document.querySelectorAll('.nose-map .force').length).toBeGreaterThan(0);
  expect(indicatorOf(design())).toBe(30);
  await userEvent.keyboard('{Escape}');
  await expect.poll(() => Number(document.querySelector('.nose')!.getAttribute('aria-valuenow'))).toBe(0);
});

test('a shake felt on the bench is read back to a position and its films', async () => {
  await expect.poll(() => document.querySelector('.shake-curve'), { timeout: 20_000 }).toBeTruthy();
  const total = solve({ ...design(), position: 0.005 }, 'there', ['play']).play!.shake.total! * 1000;
  const field = browser.getByLabelText('Shake felt', { exact: true });
  await userEvent.fill(field, `${total} µm`);
  await userEvent.keyboard('{Enter}');
  await expect.element(browser.getByText('It stands at 5.00 µm', { exact: false })).toBeVisible();
  await userEvent.click(browser.getByRole('button', { name: 'Put the journal there' }));
  // the shake is taken to a hundredth of a micrometre
  expect(design().position).toBeCloseTo(0.005, 4);
});

test('no shake is taken as felt until it is typed; nothing is an answer too, and an old answer does not outstay a bad number', async () => {
  await expect.poll(() => document.querySelector('.shake-curve'), { timeout: 20_000 }).toBeTruthy();
  const field = browser.getByLabelText('Shake felt', { exact: true });
  const input = () => field.element() as HTMLInputElement;
  expect(input().value).toBe('');
  expect(input().placeholder).toBe(`${(solve(design(), 'here', ['play']).play!.shake.total! * 1000).toFixed(2)} µm`);
  expect(document.querySelector('.measured')).toBeNull();
  await userEvent.fill(field, '0');
  await userEvent.keyboard('{Enter}');
  await expect
    .element(browser.getByText('Without any shake it stands against the stop', { exact: false }))
    .toBeVisible();
  await userEvent.fill(field, 'much');
  expect(browser.getByText('against the stop, at', { exact: false }).elements()).toHaveLength(0);
  await userEvent.keyboard('{Enter}');
  expect(browser.getByText('against the stop, at', { exact: false }).elements()).toHaveLength(0);
  await userEvent.keyboard('{Escape}');
  await expect.element(browser.getByText('against the stop, at', { exact: false })).toBeVisible();
  await userEvent.fill(field, '');
  await userEvent.keyboard('{Enter}');
  await expect.poll(() => document.querySelector('.measured')).toBeNull();
});

test('one seat blued and tried alone tells what the pair hides', async () => {
  shown.open('worn-bell-mouth');
  await expect.poll(() => document.querySelectorAll('.print canvas').length, { timeout: 20_000 }).toBe(4);
  await expect.element(browser.getByText('The steep seat prints; the shallow stays clean.')).toBeVisible();
  await userEvent.click(browser.getByRole('button', { name: 'shallow alone' }));
  await expect.poll(() => document.querySelectorAll('.print canvas').length, { timeout: 20_000 }).toBe(2);
  await expect.element(browser.getByText('the bush is worn at its mouth', { exact: false })).toBeVisible();
  // another design without that seat is blued all over
  shown.open('rear-bearing');
  await userEvent.click(browser.getByRole('button', { name: 'rear alone' }));
  shown.open('correct');
  await expect.poll(() => document.querySelectorAll('.print canvas').length, { timeout: 20_000 }).toBe(4);
});

test('the blue shows on the steep seat and not on the shallow one', async () => {
  await expect.poll(() => document.querySelectorAll('.print canvas').length, { timeout: 20_000 }).toBe(4);
  await expect.element(browser.getByText('The steep seat prints; the shallow stays clean.')).toBeVisible();
  const blue = (name: string) => {
    const canvas = document.querySelector<HTMLCanvasElement>(`canvas[aria-label="Print on the ${name}, unrolled"]`)!;
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
    let count = 0;
    for (let i = 0; i < data.length; i += 4) if (data[i + 2]! > data[i]! + 30) count++;
    return count / (data.length / 4);
  };
  // Painted once its room is known, a frame after it stands there.
  await expect.poll(() => blue('steep journal'), { timeout: 20_000 }).toBeGreaterThan(0.8);
  expect(blue('shallow journal')).toBe(0);
});

test('no sideways scroll, and an axe scan of all of it is clean in both themes', { tags: ['long'] }, async () => {
  await expect.poll(() => document.querySelectorAll('.print canvas').length, { timeout: 20_000 }).toBe(4);
  await expectNoSidewaysScroll();
  await expectAccessible();
});

test('the nose pulled up in the section rocks the journal until the seats hold it, with their shares', async () => {
  await browser.viewport(820, 1000);
  await expect.poll(() => document.querySelector('.pull-grip'), { timeout: 20_000 }).toBeTruthy();
  const grip = document.querySelector<SVGGElement>('.pull-grip')!;
  grip.focus();
  for (let i = 0; i < 6; i++) await userEvent.keyboard('{Shift>}{ArrowUp}{/Shift}');
  await expect.poll(() => document.querySelectorAll('.force-arrow').length).toBe(2);
  const shares = [...document.querySelectorAll('.force-arrow text')]
    .map((text) => Number.parseFloat(text.textContent!))
    .sort();
  // A pull of 1 N beyond both contacts: what the one carries more than 1 the other takes back.
  expect(shares[1]! - shares[0]!).toBeCloseTo(1, 1);
  // Each presses square to its face: what of it goes down the screen holds the pull.
  const down = [...document.querySelectorAll('.force-arrow')].map((arrow) => {
    const way = /matrix\(\S+ (\S+)/.exec(arrow.querySelector('path')!.getAttribute('transform')!)![1];
    return Number(way) * Number.parseFloat(arrow.textContent!);
  });
  expect(down.reduce((sum, part) => sum + part, 0)).toBeCloseTo(1, 1);
  const held = Number(grip.getAttribute('aria-valuenow'));
  await userEvent.keyboard('{Shift>}{ArrowUp}{/Shift}');
  expect(Number(grip.getAttribute('aria-valuenow'))).toBeCloseTo(held, 1);
  await userEvent.keyboard('{Escape}');
  await expect.poll(() => document.querySelectorAll('.force-arrow').length).toBe(0);
});

test('the ring at the nose moves the journal when it is dragged along the axis; pulled aside it has its way back in words', async () => {
  await browser.viewport(820, 1000);
  await expect.poll(() => document.querySelector('.pull-grip'), { timeout: 20_000 }).toBeTruthy();
  const grip = document.querySelector<SVGGElement>('.pull-grip')!;
  const box = grip.querySelector('.handle')!.getBoundingClientRect();
  const from = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const drag = (dx: number, dy: number) => {
    const send = (type: string, share: number) =>
      grip.dispatchEvent(
        new PointerEvent(type, {
          bubbles: true,
          pointerId: 1,
          button: 0,
          clientX: from.x + dx * share,
          clientY: from.y + dy * share,
        }),
      );
    // A pointer that is no real one cannot be captured.
    grip.setPointerCapture = () => {};
    send('pointerdown', 0);
    for (const share of [0.3, 0.6, 1]) send('pointermove', share);
    send('pointerup', 1);
  };
  const before = shown.position();
  drag(-12, 2);
  expect(shown.position()).toBeLessThan(before - 0.001);
  expect(shown.work.store.getState().pull).toBeNull();
  drag(1, -30);
  const moved = shown.position();
  await expect.poll(() => document.querySelector('.verdict.fit .now')?.textContent).toMatch(/^Nose pulled aside/);
  await userEvent.click(document.querySelector('.let-go')!);
  expect(shown.work.store.getState().pull).toBeNull();
  drag(1, -30);
  (document.activeElement as HTMLElement | null)?.blur();
  await userEvent.keyboard('{Escape}');
  await expect.poll(() => document.querySelectorAll('.let-go').length).toBe(0);
  expect(shown.work.store.getState().pull).toBeNull();
  expect(shown.position()).toBe(moved);
});

test('a pulled nose goes back by itself once the journal is pressed in and has no room', async () => {
  await browser.viewport(820, 1000);
  await expect.poll(() => document.querySelector('.pull-grip'), { timeout: 20_000 }).toBeTruthy();
  document.querySelector<SVGGElement>('.pull-grip')!.focus();
  await userEvent.keyboard('{Shift>}{ArrowUp}{/Shift}');
  await expect.poll(() => document.querySelectorAll('.let-go').length).toBe(1);
  shown.work.moveTo(-0.02);
  await expect.poll(() => document.querySelectorAll('.let-go').length).toBe(0);
  expect(shown.work.store.getState().pull).toBeNull();
  expect(document.querySelector('.verdict.fit .now')!.textContent).toMatch(/^Steep touched/);
});

test('the solid picture shows the blue on the parts instead of the film', { tags: ['long'] }, async () => {
  await browser.viewport(820, 1000);
  await userEvent.click(browser.getByRole('button', { name: 'Solid' }));
  await expect.poll(() => document.querySelector('.scene canvas'), { timeout: 20_000 }).toBeTruthy();
  await userEvent.click(browser.getByRole('button', { name: 'Marking blue' }));
  // Where the shallow seat touches first it prints all along.
  shown.open('shallow-first');
  await expect.element(browser.getByText('Within 2.00 µm when pressed home')).toBeVisible();
  const blue = async () => countPixels(await pixelsOf(document.querySelector('.scene')!), (r, _, b) => b > r + 40);
  await expect.poll(blue, { timeout: 20_000, interval: 500 }).toBeGreaterThan(1500);
});
