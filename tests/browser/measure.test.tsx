/** The Measure screen in Chromium: a notebook written, read, doubted, taken into the design. */
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import type { Design } from '../../src/design/definition.ts';
import { predictedReading } from '../../src/report/measure/predictedReading.ts';
import { expectAccessible, expectNoSidewaysScroll, page } from './page.tsx';

const shown = page('#measure');
const verdict = () => document.querySelector('.verdict')!.textContent!;

type Reading = NonNullable<Design['readings']>[number];

/** What the bench would tell of parts that are not quite as drawn: the shallow journal 4 µm larger. */
function notebookOf(design: Design): Reading[] {
  const truth: Design = { ...design, seats: design.seats.map((seat, i) => (i === 0 ? { ...seat, journal: { ...seat.journal, diameter: seat.journal.diameter + 0.004 } } : seat)) };
  const setUps: Reading[] = design.seats.flatMap(({ name, journal, bush }) => [
    ...([0.1, 0.3, 0.5, 0.7, 0.9] as const).flatMap((share): Reading[] => [
      { kind: 'diameter', seat: name, part: 'journal', value: 0, sigma: 0.001, station: journal.from + share * (journal.to - journal.from) },
      { kind: 'diameter', seat: name, part: 'bush', value: 0, sigma: 0.001, station: bush.from + share * (bush.to - bush.from) },
    ]),
  ]);
  return setUps.map((reading) => ({ ...reading, value: predictedReading(truth, reading).value! }));
}

const field = () => document.querySelector<HTMLInputElement>('.new-entry input')!;
const readings = () => shown.work.store.getState().design.readings ?? [];

test('an empty notebook says how to begin; a reading of every kind is written down with its drawing', async () => {
  await expect.poll(verdict).toMatch(/No readings yet/);
  const names = ['Diameter', 'Over two rolls', 'Ball depth', 'Sine bar', 'Straightness', 'Stand-off', 'Shake'];
  for (const [i, name] of names.entries()) {
    await userEvent.click(browser.getByRole('button', { name: `+ ${name}`, exact: true }).last());
    // What the design would give is shown, and is neither in the field nor an entry.
    expect(field().value).toBe('');
    expect(field().placeholder).toMatch(/\d/);
    expect(readings().length).toBe(i);
    await userEvent.fill(field(), field().placeholder);
    if (i % 2 === 0) await userEvent.keyboard('{Enter}');
    else await userEvent.click(browser.getByRole('button', { name: 'Write it down' }));
    await expect.poll(() => readings().length).toBe(i + 1);
    expect(field()).toBeNull();
    // it stands open, for its set-up
    await expect.poll(() => document.querySelectorAll<HTMLDetailsElement>('.notebook details')[i]!.open).toBe(true);
  }
  expect(readings().map(({ kind }) => kind)).toEqual(['diameter', 'overRolls', 'ballDepth', 'sineRise', 'straightness', 'standOff', 'shake']);
  await expect.poll(() => document.querySelectorAll('.set-up').length).toBe(7);
  expect(document.querySelector('main')!.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
  await userEvent.click(browser.getByRole('button', { name: 'Strike out this reading' }).first());
  expect(readings().length).toBe(6);
  await userEvent.click(browser.getByRole('button', { name: 'Undo' }));
  expect(readings().length).toBe(7);
});

test('what is no number is not written down, nor what is left', async () => {
  const ask = browser.getByRole('button', { name: '+ Diameter', exact: true });
  await userEvent.click(ask);
  await userEvent.keyboard('{Enter}');
  expect(document.querySelector('.new-entry .error')!.textContent).toMatch(/type what was read/);
  await userEvent.fill(field(), 'about 22');
  await userEvent.keyboard('{Enter}');
  expect(document.querySelector('.new-entry .error')!.textContent).toMatch(/type a number/);
  await userEvent.click(browser.getByRole('button', { name: 'Leave it' }));
  expect(field()).toBeNull();
  expect(readings().length).toBe(0);
});

test('a suggested reading is asked for, not made up', async () => {
  shown.work.change((d) => ({ ...d, readings: notebookOf(d).slice(0, 6) }));
  await expect.poll(() => document.querySelector('[aria-label="What to read next"] button')).toBeTruthy();
  document.querySelector<HTMLButtonElement>('[aria-label="What to read next"] button')!.click();
  await expect.poll(field).toBeTruthy();
  expect(readings().length).toBe(6);
  await userEvent.fill(field(), field().placeholder);
  await userEvent.keyboard('{Enter}');
  await expect.poll(() => readings().length).toBe(7);
});

test('the shape follows from the readings and is taken into the design', async () => {
  const { design } = shown.work.store.getState();
  shown.work.change((d) => ({ ...d, readings: notebookOf(d) }));
  await expect.element(browser.getByRole('button', { name: 'Use these shapes in the design' })).toBeVisible();
  expect(document.querySelectorAll('.shape .band').length).toBe(4);
  await userEvent.click(browser.getByRole('button', { name: 'Use these shapes in the design' }));
  const taken = shown.work.store.getState().design.seats[0]!.journal;
  expect(taken.diameter).toBeCloseTo(design.seats[0]!.journal.diameter + 0.004, 6);
  expect(taken.halfAngle).toBeCloseTo(design.seats[0]!.journal.halfAngle, 6);
});

test('a slip of the pen is pointed out where it stands', async () => {
  shown.work.change((d) => ({ ...d, readings: notebookOf(d).map((reading, i) => (i === 2 ? { ...reading, value: reading.value + 0.02 } : reading)) }));
  await expect.poll(verdict).toMatch(/Reading 3 .* does not go with the others/);
  expect(document.querySelectorAll('.doubtful').length).toBe(1);
  expect(document.querySelectorAll('.residual.off').length).toBe(1);
});

test('rows of a spreadsheet are taken whole or not at all', async () => {
  await userEvent.click(browser.getByText('To and from a spreadsheet'));
  const field = browser.getByLabelText('Rows copied from a spreadsheet', { exact: false });
  await userEvent.fill(field, 'kind;seat;part;value;sigma;station\ndiameter;shallow;bush;21,998;0,001;-2\ndiameter;shalow;bush;21,9;0,001;-9');
  await userEvent.click(browser.getByRole('button', { name: 'Add these rows' }));
  await expect.element(browser.getByRole('alert')).toHaveTextContent(/Row 3, seat: found "shalow"/);
  expect(shown.work.store.getState().design.readings).toBeUndefined();
  await userEvent.fill(field, 'kind;seat;part;value;sigma;station\ndiameter;shallow;bush;21,998;1 µm;-2');
  await userEvent.click(browser.getByRole('button', { name: 'Add these rows' }));
  expect(shown.work.store.getState().design.readings).toEqual([{ kind: 'diameter', seat: 'shallow', part: 'bush', value: 21.998, sigma: 0.001, station: -2 }]);
});

test('no sideways scroll at any width, and an axe scan is clean in both themes', async () => {
  shown.work.change((d) => ({ ...d, readings: notebookOf(d) }));
  await expectNoSidewaysScroll();
  await expectAccessible();
});
