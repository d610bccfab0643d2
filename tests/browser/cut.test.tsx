/** The Cut screen in Chromium: the plan as the report has it, ticked, reordered, tried, taken as done. */
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { divisionsText } from '../../src/app/screens/cut/Steps.tsx';
import { DEMOS } from '../../src/app/state/demos.ts';
import { fineText, readingText } from '../../src/design/units.ts';
import { cutNow } from '../../src/report/cut/now.ts';
import { cutSection } from '../../src/report/cut/section.ts';
import { fitSection } from '../../src/report/fit/section.ts';
import { expectAccessible, expectNoSidewaysScroll, page } from './page.tsx';

const shown = page('#cut');
const design = () => shown.work.store.getState().design;
/** Of the plan; how it would run is told beside it. */
const verdict = () => document.querySelector('.verdict:not([aria-label])')?.textContent ?? '';
const open = (file: string) =>
  shown.work.open(file, { ok: true, design: DEMOS.find((demo) => demo.file === file)!.design });
const SHALLOW = 'shallow-first.conepair.json';
const STEEP = 'steep-first.conepair.json';
const solved = { timeout: 20_000 };

test('the steps on the screen are those of the report, with every figure', async () => {
  open(SHALLOW);
  await expect.poll(verdict, solved).toMatch(/off the shallow bush/);
  const { steps } = cutSection(design())!;
  const cards = [...document.querySelectorAll('.steps > li')];
  expect(cards.length).toBe(steps.length);
  expect(steps.length).toBeGreaterThan(1);
  for (const [i, step] of steps.entries()) {
    const said = cards[i]!.textContent!;
    for (const text of [
      `${i + 1}. ${fineText(step.normal, 'metric')} off the ${step.seat} ${step.part}`,
      `${fineText(Math.abs(step.diameter), 'metric')} ${step.diameter < 0 ? 'less' : 'more'}`,
      fineText(step.crossFeed, 'metric'),
      divisionsText(step.crossDivisions),
      fineText(step.axialFeed!, 'metric'),
      fineText(step.slideFeed!, 'metric'),
      fineText(step.standOff.stop!, 'metric'),
      step.reason,
    ])
      expect(said).toContain(text);
    for (const gauge of step.gauges)
      for (const mm of [gauge.before, gauge.safe === undefined ? gauge.half : gauge.safe, gauge.stop])
        expect(said).toContain(readingText(mm!, 'metric'));
  }
  expect(document.querySelectorAll('[data-stock]').length).toBe(steps.length);
  expect(document.querySelector('main')!.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
});

test('ticks and the order of work are kept in the design, one undo each', async () => {
  await expect.poll(() => document.querySelectorAll('.order li').length, solved).toBeGreaterThan(10);
  await userEvent.click(browser.getByRole('checkbox', { name: /off the steep journal/ }));
  expect(design().cut!.work!.done).toEqual(['cut 1 journal']);
  await expect.poll(() => document.querySelectorAll('.order li.done').length).toBe(1);
  await userEvent.click(browser.getByRole('button', { name: /^Later: Read the machine/ }));
  expect(design().cut!.work!.order!.slice(2, 4)).toEqual(['guards', 'manual']);
  await expect.poll(() => document.querySelectorAll('.order li')[2]!.textContent, solved).toMatch(/^ ?Guards on/);
  await userEvent.click(browser.getByRole('button', { name: 'Undo' }));
  expect(design().cut!.work!.order).toBeUndefined();
  expect(design().cut!.work!.done).toEqual(['cut 1 journal']);
});

test('the plan taken as done gives every seat its film, and one undo takes it back', async () => {
  open(SHALLOW);
  await expect.poll(verdict, solved).toMatch(/off the shallow bush/);
  const take = browser.getByRole('button', { name: 'Take the plan as done' });
  await expect.poll(() => take.query()?.matches(':enabled'), solved).toBe(true);
  // The filled button is what the advice says: that is a trial before the rest of it.
  expect(cutNow(cutSection(design())!, { mustNotRun: false }, 'metric')).toMatch(/then a trial/);
  expect(take.element().className).not.toMatch(/main/);
  const before = design();
  await userEvent.click(browser.getByRole('button', { name: 'Take the plan as done' }));
  for (const [i, seat] of fitSection(design()).seats.entries())
    expect(seat.leastFilm).toBeCloseTo(before.seats[i]!.film!.target, 9);
  await expect.poll(verdict, solved).toMatch(/Nothing need be cut/);
  expect(document.querySelectorAll('.steps > li').length).toBe(0);
  await userEvent.click(browser.getByRole('button', { name: 'Undo' }));
  expect(design()).toEqual(before);
});

test('where nothing may be cut yet, one button makes a plausible list; a limit in the way is let go', {
  tags: ['long'],
}, async () => {
  shown.work.change(({ cut: _, ...rest }) => rest);
  await expect.poll(verdict).toMatch(/What may be cut\? Proposed: the \d ticked/);
  await userEvent.click(browser.getByRole('button', { name: 'Plan the cut' }));
  await expect.poll(verdict, solved).toMatch(/off the steep journal/);
  await userEvent.click(browser.getByRole('checkbox', { name: /off the steep journal/ }));
  await userEvent.click(browser.getByRole('checkbox', { name: /^Read the machine/ }));
  expect(design().cut!.work!.done).toEqual(['cut 1 journal', 'manual']);
  await userEvent.click(browser.getByRole('checkbox', { name: 'steep journal', exact: true }));
  // The tick of a step does not pass to another.
  expect(design().cut!.work!.done).toEqual(['manual']);
  await expect
    .poll(verdict, solved)
    .toMatch(/Within these limits the films cannot be had.*the steep journal may not be cut/);
  await userEvent.click(browser.getByRole('button', { name: /Let the steep journal lose/ }));
  await expect.poll(verdict, solved).toMatch(/off the steep journal .* gives every seat its film/);
});

/** The day it is written down. */
const DATED = { date: expect.stringMatching(/^\d{4}-\d\d-\d\d$/) };
const form = () => document.querySelector('.trial-form');
const typed = async (name: string, text: string) => {
  await userEvent.fill(browser.getByLabelText(name, { exact: true }), text);
  await userEvent.keyboard('{Tab}');
};
const writeDown = () => userEvent.click(browser.getByRole('button', { name: 'Write it down' }));

test('a trial starts empty, is refused where it cannot be, and agreeing leaves the plan where it is however often', async () => {
  open(STEEP);
  await expect.poll(verdict, solved).toMatch(/off the steep journal/);
  const planned = cutSection(design())!.steps[0]!.normal;
  await userEvent.click(browser.getByRole('button', { name: 'Write down a trial' }));
  const [day, ...others] = [...form()!.querySelectorAll('input')]
    .map(({ value }) => value)
    .sort()
    .reverse();
  expect(day).toMatch(/^\d{4}-\d\d-\d\d$/);
  expect(others.join('')).toBe('');
  await writeDown();
  await expect.poll(() => form()!.textContent).toMatch(/Nothing was read/);
  await typed('Off the steep journal', '-5 µm');
  await expect.poll(() => form()!.textContent).toMatch(/must be at least 0\.00 µm/);
  await writeDown();
  await expect.poll(() => form()!.textContent).toMatch(/First finish what is typed: Off the steep journal/);
  await typed('Off the steep journal', '');
  // Metal may have come off where the plan takes none.
  await userEvent.selectOptions(browser.getByLabelText('Off another surface too'), 'steep bush');
  await typed('Off the steep bush', '-5 µm');
  await expect.poll(() => form()!.textContent).toMatch(/at least 0/);
  await typed('Off the steep bush', '');
  await typed('Stand-off', '900 µm');
  await writeDown();
  await expect
    .poll(() => form()!.textContent)
    .toMatch(/should touch first about .*, not 900\.0 µm noseward of the datum/);
  expect(design().cut!.trials).toBeUndefined();
  // While it stands refused nothing else is advised.
  await expect.poll(verdict).toMatch(/Trial and parts do not go together: take nothing\..*until it does/);
  await typed('Stand-off', '-4 µm');
  await expect.poll(verdict).not.toMatch(/do not go together/);
  await writeDown();
  await expect.poll(() => document.querySelectorAll('.trial').length).toBe(1);
  expect(design().cut!.trials![0]).toEqual({ ...DATED, standOff: { value: -0.004, sigma: 0.001 } });
  await expect
    .poll(verdict, solved)
    .toMatch(/You are 108\.2 µm short along the axis: most likely 77 \(0 to 2\d\d\) µm off the steep journal\./);
  expect(cutSection(design())!.remaining!.steps[0]!.normal).toBeCloseTo(planned, 9);
  shown.work.change((d) => ({ ...d, cut: { ...d.cut!, trials: [d.cut!.trials![0]!, d.cut!.trials![0]!] } }));
  await expect.poll(() => document.querySelectorAll('.told-by').length, solved).toBe(2);
  expect(cutSection(design())!.remaining!.steps[0]!.normal).toBeCloseTo(planned, 9);
  await expect.poll(verdict, solved).toMatch(/77 \(\d+ to \d+\) µm|77 ± \d+ µm/);
});

test('a trial first: its button is the filled one, its part the first; what is typed last is written by the same press', async () => {
  open(STEEP);
  await expect.poll(verdict, solved).toMatch(/^A trial with its shake first; then most likely 76\.53 µm/);
  await expect
    .poll(() => document.querySelector('.verdict.short button.main')?.textContent, solved)
    .toBe('Write down the trial');
  expect([...document.querySelectorAll('.cut-screen button.main')]).toHaveLength(1);
  expect(document.querySelector('.cut-screen .part h2')?.textContent).toBe('Trial and correct');
  expect(document.querySelector('.order li')?.textContent).toMatch(/Before anything is cut: clean/);
  await userEvent.click(browser.getByRole('button', { name: 'Write down the trial' }));
  await typed('Stand-off', '-14 µm');
  await typed('Off the steep journal', '-7 µm');
  await expect.poll(() => form()!.textContent).toMatch(/must be at least 0\.00 µm/);
  // What is wrong of it goes as it is left: the button that is pressed for a while moves away from under the finger.
  await userEvent.fill(browser.getByLabelText('Off the steep journal', { exact: true }), '7 µm');
  const write = browser.getByRole('button', { name: 'Write it down' }).element();
  const down = new MouseEvent('mousedown', { bubbles: true, cancelable: true });
  write.dispatchEvent(down);
  expect(down.defaultPrevented).toBe(true);
  expect(document.activeElement?.matches('input')).toBe(true);
  write.dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true }));
  await expect.poll(() => design().cut!.trials?.length, solved).toBe(1);
  expect(design().cut!.trials![0]).toMatchObject({
    taken: [{ seat: 'steep', part: 'journal', normal: 0.007 }],
    standOff: { value: -0.014 },
  });
});

test('a trial written down changes the estimate and what is left, is corrected, and stays in the history', async () => {
  open(STEEP);
  await expect.poll(verdict, solved).toMatch(/off the steep journal/);
  await userEvent.click(browser.getByRole('button', { name: 'Write down a trial' }));
  await typed('Stand-off', '-4 µm');
  await userEvent.selectOptions(form()!.querySelector<HTMLSelectElement>('.blue-seen select')!, 'stays clean');
  await writeDown();
  await expect
    .poll(() => document.querySelector('.trial')!.textContent, solved)
    .toMatch(/clean on shallow.*steep seat that touched, more than 99 in 100/);
  const left = () =>
    Number(/most likely left ([\d.]+) [±(]/.exec(document.querySelector('.remaining')?.textContent ?? '')?.[1]);
  const first = left();
  // It touches 10 µm earlier than the parts as measured would: more has to come off, sin 45° of that at most.
  await userEvent.click(browser.getByRole('button', { name: 'Correct trial 1' }));
  // The side is a choice of its own: a size typed stays on it.
  await userEvent.selectOptions(browser.getByLabelText('Stand-off: which way'), 'noseward of the datum');
  await typed('Stand-off', '6 µm');
  await writeDown();
  await expect.poll(left, solved).toBeGreaterThan(first + 3);
  expect(left()).toBeLessThan(first + 7.6);
  expect(left()).toBeCloseTo(
    cutSection(design())!.remaining!.steps.find(({ seat }) => seat === 'steep')!.normal * 1000,
    -0.5,
  );
  expect(design().cut!.trials).toEqual([
    { ...DATED, standOff: { value: 0.006, sigma: 0.001 }, blue: [{ seat: 'shallow', prints: false }] },
  ]);
  const takeDone = () =>
    [...document.querySelectorAll<HTMLButtonElement>('button')].find(
      ({ textContent }) => textContent === 'Take the plan as done all the same',
    );
  await expect.poll(() => takeDone()?.disabled, solved).toBe(false);
  await userEvent.click(browser.getByRole('button', { name: 'Take the plan as done' }));
  const [tried, done] = design().cut!.trials!;
  expect(tried).toEqual({
    ...DATED,
    inShapes: true,
    standOff: { value: 0.006, sigma: 0.001 },
    blue: [{ seat: 'shallow', prints: false }],
  });
  expect(done).toMatchObject({ inShapes: true, note: 'The plan, taken as done' });
  await expect
    .poll(() => [...document.querySelectorAll('.trial')].map((entry) => entry.textContent), solved)
    .toEqual([
      expect.stringMatching(/^Trial 1\. first touch at 6\.00 µm; clean on shallow History:/),
      expect.stringMatching(/^Trial 2\. The plan, taken as done; .*off the steep journal History:/),
    ]);
});

test('where no plan is possible nothing says that it gives the films, and the nearest is taken only by its name', async () => {
  open(STEEP);
  shown.work.change((d) => ({ ...d, cut: { ...d.cut!, allow: [{ seat: 'steep', part: 'journal', limit: 0.05 }] } }));
  await expect
    .poll(verdict, solved)
    .toMatch(/cannot be had: the nearest is shallow 4\.46 µm and steep 2\.50 µm, wanted 2\.50 µm/);
  const said = document.querySelector('main')!.textContent!;
  expect(said).not.toMatch(
    /Opens the film to what is wanted|Brings this cone to where both cones have their film|[^0-9.]0(\.0+)?° of error|pressed in/,
  );
  expect(document.querySelector('.steps')!.textContent).toMatch(
    /nearer to what is wanted, as far as the limits let, but not to it/,
  );
  expect(document.querySelector('.falls-short')!.textContent).toMatch(
    /do not give the films that are wanted: after them shallow 4\.46 µm and steep 2\.50 µm, wanted 2\.50 µm.*uncut, at best shallow/,
  );
  expect(document.body.textContent).not.toMatch(/Take the plan as done/);
  await userEvent.click(browser.getByRole('button', { name: /^Take the nearest as done: shallow 4\.46 µm/ }));
  expect(fitSection(design()).seats.map(({ leastFilm }) => leastFilm!.toFixed(5))).toEqual(['0.00446', '0.00250']);
});

test('a tool off the centre shows its hollow flank, and a spacer its part in plan and trial', {
  tags: ['long'],
}, async () => {
  await expect.poll(() => document.querySelector('.hollow .flank'), solved).toBeTruthy();
  shown.work.change((d) => ({
    ...d,
    cut: {
      ...d.cut!,
      allow: [],
      faces: [{ name: 'collar', part: 'bush', seats: ['steep'], moves: 'rearward', limit: 0.2 }],
      machine: { toolHeight: 1 },
    },
  }));
  await expect.poll(verdict, solved).toMatch(/off collar gives every seat its film/);
  const { faces } = cutSection(design())!;
  expect(document.querySelector('.steps > li')!.textContent).toContain(
    `1. ${fineText(faces[0]!.off, 'metric')} off collar`,
  );
  await userEvent.click(browser.getByRole('button', { name: 'Write down a trial' }));
  await typed('Off collar', '10 µm');
  await typed('Stand-off', '-14 µm');
  await writeDown();
  expect(design().cut!.trials![0]!.faces).toEqual([{ name: 'collar', off: 0.01 }]);
  await expect.poll(() => document.querySelector('.remaining')?.textContent, solved).toMatch(/off collar/);
  shown.work.change((d) => ({
    ...d,
    cut: { ...d.cut!, trials: [], allow: [{ seat: 'steep', part: 'journal', limit: 0.2 }] },
  }));
  await expect
    .poll(() => document.querySelector('[aria-label="Setting the angle"]')?.textContent, solved)
    .toMatch(/A tool 1\.000 mm off the centre leaves the flank hollow by 0\.\d\d µm/);
});

test('lapping is simulated, with the place to stop', async () => {
  open(SHALLOW);
  await expect.poll(() => document.querySelector('.lap-stop'), solved).toBeTruthy();
  const { lap } = cutSection(design())!;
  await expect
    .element(
      browser.getByText(
        `Travel ${fineText(lap!.states[0]!.position - lap!.states[lap!.stop.at]!.position, 'metric')}`,
        { exact: false },
      ),
    )
    .toBeVisible();
});

test('no sideways scroll at any width, and an axe scan is clean in both themes with all details open', {
  tags: ['long'],
  timeout: 120_000,
}, async () => {
  open(SHALLOW);
  await expect.poll(() => document.querySelector('.lap-stop'), solved).toBeTruthy();
  await userEvent.click(browser.getByRole('button', { name: 'Write down a trial' }));
  await typed('Stand-off', `${fitSection(design()).firstPosition! * 1000} µm`);
  await writeDown();
  await expect.poll(() => document.querySelector('.told-by'), solved).toBeTruthy();
  await userEvent.click(browser.getByRole('button', { name: 'Write down a trial' }));
  await userEvent.click(browser.getByRole('button', { name: '+ Face or spacer' }));
  for (const details of document.querySelectorAll('details')) details.open = true;
  await expectNoSidewaysScroll();
  await expectAccessible();
  shown.work.change((d) => ({
    ...d,
    cut: { ...d.cut!, faces: [], trials: [], allow: [{ seat: 'shallow', part: 'journal', limit: 0.001 }] },
  }));
  await expect.poll(() => document.querySelector('.falls-short'), solved).toBeTruthy();
  await expectNoSidewaysScroll();
  await expectAccessible();
});

test('what is wrong with a figure is told in the unit of its field', async () => {
  const cleanup = browser.getByLabelText('Cleanup', { exact: true }).first();
  await expect.element(cleanup).toBeVisible();
  await userEvent.fill(cleanup, '120');
  await userEvent.keyboard('{Enter}');
  await expect.element(browser.getByText('found 120.00 µm, which is more than the limit (100.00 µm)')).toBeVisible();
});
