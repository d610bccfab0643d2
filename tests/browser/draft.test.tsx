/**
 * Numbers that go together only once all are typed: kept in their fields, told above, taken as one step.
 *
 * @module-tag long
 */
import { flushSync } from 'react-dom';
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { sayAngles } from '../../src/app/state/angles.ts';
import { numbersUnder, withAssumed } from '../../src/design/assumed.ts';
import { expectAccessible, expectNoSidewaysScroll, page } from './page.tsx';

const shown = page('#fit');
const design = () => shown.work.store.getState().design;
const journal = () => design().seats[0]!.journal;
const row = (path: string) => document.querySelector<HTMLElement>(`[data-path="${path}"]`)!;
const input = (path: string) => row(path).querySelector('input')!;
const line = () => document.querySelector('.drafts')?.textContent ?? '';
const open = async () => {
  await expect.poll(() => document.querySelectorAll('.controls details').length).toBeGreaterThan(2);
  flushSync(() => {
    for (const details of document.querySelectorAll<HTMLDetailsElement>('.controls details')) details.open = true;
  });
  await expect.poll(() => row('seats[0].journal.from')).toBeTruthy();
};
const type = async (path: string, text: string) => {
  await userEvent.fill(input(path), text);
  await userEvent.keyboard('{Enter}');
};
const from = 'seats[0].journal.from';
const to = 'seats[0].journal.to';

test('an end beyond the other waits for it; nothing is praised meanwhile; both are one step to undo', async () => {
  shown.open('correct');
  await open();
  const before = design();
  await type(from, '5');
  expect(design()).toBe(before);
  expect(input(from).value).toBe('5.000 mm');
  expect(input(from).getAttribute('aria-invalid')).toBe('true');
  expect(row(from).textContent).toMatch(/Not taken yet\.Nose end: found 0\.000 mm, which is not noseward/);
  expect(line()).toMatch(
    /^1 number is not taken yet: shallow journal rear end \(5\.000 mm\)\. What stands below is of what was taken last\./,
  );
  const verdict = document.querySelector<HTMLElement>('.verdict.good')!;
  const good = getComputedStyle(document.documentElement).getPropertyValue('--good');
  expect(good).not.toBe('');
  const probe = document.body.appendChild(document.createElement('i'));
  probe.style.color = 'var(--rule)';
  expect(getComputedStyle(verdict).borderLeftColor).toBe(getComputedStyle(probe).color);
  probe.remove();
  // In the other units it is the same number.
  flushSync(() => shown.work.store.setState({ system: 'inch' }));
  expect(line()).toMatch(/0\.1968504 in/);
  flushSync(() => shown.work.store.setState({ system: 'metric' }));
  const steps = shown.steps();
  await type(to, '30');
  expect(journal()).toMatchObject({ from: 5, to: 30 });
  expect(line()).toBe('');
  expect(shown.steps()).toBe(steps + 1);
  await userEvent.click(browser.getByRole('button', { name: 'Undo' }));
  expect(design()).toEqual(before);
});

test('a draft outlives another screen, is put back by Escape, by its button, or all at once', async () => {
  shown.open('correct');
  await open();
  await type(from, '5');
  await type('seats[1].journal.diameter', 'thick');
  expect(line()).toMatch(/^2 numbers are not taken yet/);
  window.location.hash = '#cut';
  await expect.poll(() => document.querySelector('.controls')).toBeNull();
  expect(line()).toMatch(/^2 numbers/);
  window.location.hash = '#fit';
  await open();
  expect(input(from).value).toBe('5.000 mm');
  expect(input('seats[1].journal.diameter').value).toBe('thick');
  input(from).focus();
  await userEvent.keyboard('{Escape}');
  await expect.poll(line).toMatch(/^1 number is not taken yet: steep journal diameter \(thick\)/);
  expect(input(from).value).toBe('−26.000 mm');
  await userEvent.click(row('seats[1].journal.diameter').querySelector('.leave')!);
  await expect.poll(line).toBe('');
  await type(from, '5');
  await type('seats[1].journal.from', '50');
  await userEvent.click(browser.getByRole('button', { name: 'Put them back' }));
  await expect.poll(line).toBe('');
  expect(input(from).value).toBe('−26.000 mm');
});

test('with drafts open the page is accessible and holds on every width', async () => {
  shown.open('correct');
  await open();
  await type(from, '5');
  await expectNoSidewaysScroll();
  await expectAccessible();
});

test('what is assumed is marked; typing it, or saying that it is so, ends that; undo brings it back', async () => {
  shown.open('correct');
  await open();
  flushSync(() => shown.work.change((d) => withAssumed(d, numbersUnder(d, 'seats[0].bush'))));
  await expect
    .poll(() => document.querySelector('.verdict')!.textContent)
    .toMatch(/Assumed, never measured: 5 numbers/);
  expect(document.querySelector('.verdict.good')).toBeNull();
  const diameter = 'seats[0].bush.diameter';
  expect(input(diameter).className).toBe('assumed');
  await type(diameter, '22.006');
  expect(design().assumed).not.toContain(diameter);
  expect(input(diameter).className).toBe('');
  await userEvent.click(browser.getByRole('button', { name: 'Undo' }));
  expect(design().assumed).toContain(diameter);
  await userEvent.click(row(diameter).querySelector('button')!);
  expect(design().assumed).toHaveLength(4);
  expect(design().seats[0]!.bush.diameter).toBe(22.005);
  // Enter on the number as it stands says so too.
  input('seats[0].bush.halfAngle').focus();
  await userEvent.keyboard('{Enter}');
  expect(design().assumed).toHaveLength(3);
});

test('seats come, change places and go: what names one is told before it is lost', async () => {
  shown.open('correct');
  await open();
  const press = (name: string) => userEvent.click(browser.getByRole('button', { name, exact: true }));
  const names = () => design().seats.map(({ name }) => name);
  await press('+ straight bearing');
  expect(names()).toEqual(['shallow', 'steep', 'straight']);
  expect(design().assumed).toHaveLength(12);
  await press('List straight earlier');
  expect(names()).toEqual(['shallow', 'straight', 'steep']);
  expect(design().assumed!.every((path) => path.startsWith('seats[1].'))).toBe(true);
  const steps = shown.steps();
  await press('Remove the shallow seat');
  await expect
    .poll(() => document.querySelector('.asked-first')?.textContent)
    .toMatch(/With the shallow seat goes 1 groove\./);
  expect(names()).toHaveLength(3);
  await press('Leave it');
  expect(document.querySelector('.asked-first')).toBeNull();
  await press('Remove the shallow seat');
  await press('Remove all of it');
  expect(names()).toEqual(['straight', 'steep']);
  expect(design().run!.supply).toEqual([]);
  expect(design().assumed!.every((path) => path.startsWith('seats[0].'))).toBe(true);
  expect(shown.steps()).toBe(steps + 1);
  await press('Undo');
  expect(names()).toEqual(['shallow', 'straight', 'steep']);
  expect(design().run!.supply).toHaveLength(1);
});

test('where nought is, in the person’s own turns', async () => {
  shown.open('steep-first');
  await open();
  const told = () => document.querySelector('.where-zero')!.textContent!;
  expect(told()).toMatch(/first seat touches/);
  const away = design().adjuster ? /0 is [\d.]+ µm (noseward|rearward), [\d.]+° of the adjuster/ : /0 is/;
  expect(told()).toMatch(away);
});

test('a table of two columns pasted from a spreadsheet is a line as measured', async () => {
  shown.open('correct');
  await open();
  const area = document.querySelector<HTMLElement>('[data-path="seats[0].journal.profile"] textarea')!;
  await userEvent.fill(area, 'station\tproud\n-26\t0.4\n-10\t-1\n0\t0');
  area.blur();
  await expect
    .poll(() => journal().profile)
    .toEqual([
      [-26, 0.0004],
      [-10, -0.001],
      [0, 0],
    ]);
  await userEvent.fill(area, '-26\t0.4\n-30\t0');
  area.blur();
  await expect.poll(line).toMatch(/shallow journal line as measured/);
});

test('a seat name that another seat has waits in its field, over another screen too', async () => {
  shown.open('correct');
  await open();
  const [first, second] = design().seats.map(({ name }) => name);
  const path = 'seats[0].name';
  await type(path, second!);
  expect(design().seats[0]!.name).toBe(first);
  expect(input(path).value).toBe(second);
  expect(row(path).textContent).toMatch(/Not taken yet\..*a second time/);
  expect(line()).toMatch(new RegExp(`^1 entry is not taken yet: name of the ${first} seat \\(${second}\\)`));
  window.location.hash = '#run';
  await expect.poll(() => document.querySelector('.controls')).toBeNull();
  window.location.hash = '#fit';
  await open();
  expect(input(path).value).toBe(second);
  await userEvent.click(input(path));
  await userEvent.keyboard('{Escape}');
  await expect.poll(line).toBe('');
  expect(input(path).value).toBe(first);
});

test('angles are said one way: in the headings, the fields and at the arcs of the drawing', async () => {
  await browser.viewport(1440, 900);
  shown.open('correct');
  sayAngles('included');
  await open();
  const heading = () => document.body.textContent!;
  expect(heading()).toMatch(/shallow seat: 6\.0° incl, its sizes/);
  expect(input('seats[0].journal.halfAngle').labels![0]!.textContent).toBe('Included angle');
  await userEvent.click(browser.getByRole('group', { name: 'Dimensions' }).getByRole('button', { name: 'Bush' }));
  await expect.poll(() => document.querySelector('.section')!.textContent).toMatch(/90\.0° incl/);
  expect(document.querySelector('.section')!.textContent).not.toMatch(/45\.0°/);
  await type('seats[0].journal.halfAngle', '3.1 half');
  expect(design().seats[0]!.journal.halfAngle).toBe(3.1);
  await type('seats[0].journal.halfAngle', '6 included');
  expect(design().seats[0]!.journal.halfAngle).toBe(3);
  sayAngles('half');
});
