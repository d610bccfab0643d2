/**
 * Every screen walked with its forms open while other designs come and go: nothing crashes, and the console stays empty
 * (page.tsx).
 *
 * @module-tag long
 */
import { flushSync } from 'react-dom';
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { SCREENS, type ScreenName } from '../../src/app/screens/index.ts';
import { DEMOS } from '../../src/app/state/demos.ts';
import type { Design } from '../../src/design/definition.ts';
import { frame, page, withoutSolid } from './page.tsx';

const shown = page('', true);

const main = () => document.querySelector('main')!;
/** What a screen is made of is there; the sweeps of Run go on. */
const settled = () =>
  expect
    .poll(() => main().textContent, { timeout: 60_000 })
    .not.toMatch(/(plan|sheet|play|tell) (is|are) being|The films are being|loading/i);
const press = (name: string) => userEvent.click(browser.getByRole('button', { name, exact: true }).last());
const find = <E extends Element>(selector: string) =>
  expect.poll(() => document.querySelector<E>(selector)).toBeTruthy();

function whole(where: string) {
  expect(
    [...document.querySelectorAll('[role=alert]')].map((alert) => alert.textContent).filter((told) => told !== ''),
    where,
  ).toEqual([]);
  expect(document.querySelector('header')).toBeTruthy();
  expect(main().textContent!.length, where).toBeGreaterThan(20);
  expect(main().innerHTML, where).not.toMatch(/NaN|Infinity|undefined/);
}

async function goTo(screen: string) {
  window.location.hash = `#${screen.toLowerCase()}`;
  await frame();
}

test('all screens, both pictures and the marking blue draw without a word to the console', {
  timeout: 240_000,
}, async () => {
  await browser.viewport(1440, 1000);
  shown.show();
  for (const { name } of SCREENS) {
    await goTo(name);
    await settled();
    if (name === 'Fit') await press('Marking blue');
    for (const details of document.querySelectorAll('details')) details.open = true;
    await frame();
    await settled();
    whole(name);
  }
});

/** What can be filled in on each screen and names a seat. */
const FORMS: Record<ScreenName, () => Promise<void>> = {
  Measure: async () => {
    // Begun before, it is open still, or its button says so.
    if (!document.querySelector('.new-entry'))
      await userEvent.click(browser.getByRole('button', { name: /^\+ Ball depth( \(begun\))?$/ }).last());
    await find('.new-entry select');
    const seat = document.querySelector<HTMLSelectElement>('.new-entry select')!;
    await userEvent.selectOptions(seat, seat.options[seat.options.length - 1]!.value);
    await userEvent.fill(document.querySelector('.new-entry input')!, '3');
    for (const details of document.querySelectorAll('details')) details.open = true;
  },
  Fit: async () => {
    const alone = () =>
      [...document.querySelectorAll('button')].filter(({ textContent }) => / alone$/.test(textContent!)).at(-1);
    // One seat is not tried alone.
    await expect.poll(() => alone() !== undefined).toBe(shown.work.store.getState().design.seats.length > 1);
    flushSync(() => alone()?.click());
    await userEvent.fill(browser.getByLabelText('Shake felt', { exact: true }), '0.02 mm');
    await userEvent.keyboard('{Enter}');
    flushSync(() => shown.work.store.setState({ pull: { station: 10, x: 0.01, y: 0 } }));
  },
  Run: async () => {
    for (const details of document.querySelectorAll('details')) details.open = true;
  },
  Cut: async () => {
    // One that is not finished is there again as its piece of work is.
    if (!document.querySelector('.trial-form')) await press('Write down a trial');
    await find('.trial-form');
    for (const field of document.querySelectorAll<HTMLInputElement>('.trial-form fieldset:first-of-type input')) {
      await userEvent.fill(field, '0.002 mm');
      await userEvent.keyboard('{Tab}');
    }
    const blue = document.querySelector<HTMLSelectElement>('.trial-form .blue-seen select')!;
    await userEvent.selectOptions(blue, 'true');
  },
  Odds: async () => {
    // What is drawn may still be on its way; the list of spreads stands below it.
    await press('+ Spread');
    await find('.spreads');
    for (const details of document.querySelectorAll('details')) details.open = true;
  },
  Learn: async () => {
    // A lesson begun is of no job: it stays whatever becomes of that.
    window.location.hash = '#learn/tenth';
    await find('.answer-field input');
    await userEvent.fill(document.querySelector('.answer-field input')!, '3');
  },
  Sheet: async () => {},
};

const able = (design: Design): Design => ({
  ...design,
  cut: design.cut ?? { allow: [{ seat: design.seats[0]!.name, part: 'journal', limit: 0.1 }] },
});
const other = (name: string) => able(DEMOS.find(({ file }) => file.startsWith(name))!.design);

test.each(SCREENS.map(({ name }) => name))(
  '%s with its forms filled in lives through other seats, more of them, fewer, renamed, and back',
  { timeout: 240_000 },
  async (screen) => {
    withoutSolid();
    shown.show();
    flushSync(() => shown.work.open('first', { ok: true, design: other('notebook') }));
    await goTo(screen);
    await settled();
    await FORMS[screen]();
    const changes: [string, () => void][] = [
      ['other seats', () => shown.work.open('other', { ok: true, design: other('opposed') })],
      ['the first again', () => shown.work.open('first', { ok: true, design: other('notebook') })],
      ['more seats', () => shown.work.open('more', { ok: true, design: other('rear') })],
      [
        'a seat less',
        () =>
          shown.work.change((d) => ({
            ...able({ ...d, seats: d.seats.slice(1), cut: undefined as never }),
            run: undefined as never,
          })),
      ],
      [
        'all renamed',
        () =>
          shown.work.change((d) => ({
            conepair: 1,
            seats: d.seats.map((seat, i) => ({ ...seat, name: `seat ${i}` })),
            cut: { allow: [] },
          })),
      ],
    ];
    for (const [what, change] of changes) {
      flushSync(change);
      await frame();
      whole(`${screen}: ${what}, at once`);
      await settled();
      whole(`${screen}: ${what}`);
      if (what !== 'all renamed') await FORMS[screen]();
    }
  },
);

test('a form that asks for a reading is closed where another piece of work is opened, with what was typed for the first', async () => {
  shown.show();
  shown.open('notebook');
  await goTo('Measure');
  const diameter = browser.getByTitle('Micrometer or bore gauge square to the axis at a known station.');
  await expect.poll(() => diameter.query()).toBeTruthy();
  await userEvent.click(diameter);
  await userEvent.fill(document.querySelector('.new-entry input')!, '22');
  // Seats of the same names, but another job.
  shown.open('steep-first');
  expect(document.querySelector('.new-entry')).toBeNull();
  expect(shown.work.store.getState().design.readings).toBeUndefined();
});
