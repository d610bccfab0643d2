/**
 * Learn from one day to the next and from one screen to another: a lesson comes back when it is due, one that is not
 * kept is gone on with, the mark is in sight as the line is drawn, and what contradicts itself is said in the editor.
 */
import { afterEach, expect, test, vi } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { loadLesson } from '../../src/app/screens/learn/builtIn.ts';
import { type Right, rightsOf } from '../../src/lessons/apart.ts';
import { type DealtQuestion, deal } from '../../src/lessons/deal.ts';
import { seedOf } from '../../src/lessons/runner.ts';
import { giveLesson, page } from './page.tsx';

page('#learn');
afterEach(() => {
  vi.useRealTimers();
});

const $ = <E extends Element>(selector: string) => document.querySelector<E>(selector);
const there = async <E extends Element>(selector: string): Promise<E> => {
  await expect.poll(() => $(selector), { timeout: 60_000 }).not.toBeNull();
  return $<E>(selector)!;
};
const list = async () => {
  window.location.hash = '#jobs';
  await expect.poll(() => $('.learn')).toBeNull();
  window.location.hash = '#learn';
  await there('.path');
};

/** What is typed, how sure, and let go. */
async function said(text: string): Promise<void> {
  await there('.ask');
  await userEvent.fill($('.answer-field input')!, text);
  await userEvent.click(document.querySelectorAll('.sure input')[1]!);
  await userEvent.click($('.ask button.main')!);
  await there('.saw-options button');
}

/** A whole visit to the lesson on rolls, every answer right, or every one wrong. */
async function visit(rounds: number, right = true): Promise<void> {
  vi.spyOn(Math, 'random').mockReturnValue(0);
  const lesson = await loadLesson('rolls');
  window.location.hash = '#learn/rolls';
  const before: Right[] = [];
  for (let round = 0; round < rounds; round++) {
    const dealt = deal(lesson, seedOf(1, round), () => undefined, before);
    if (!dealt.ok) throw new Error(dealt.message);
    before.push(...rightsOf(lesson, dealt.value));
    const one: DealtQuestion = dealt.value.questions[0]!;
    await said(`${right ? Number(one.right).toFixed(4) : '1'}°`);
    await userEvent.click(document.querySelectorAll('.saw-options button')[one.saw]!);
    await userEvent.click(await there('.why button.main'));
  }
  await there('.account');
}

const DAY = 86_400_000;
const standing = () => $('.path a[href="#learn/rolls"] .standing')!.textContent;

test('learnt, it comes back after a day, three days and a week, by the clock; then it is learnt', {
  timeout: 240_000,
}, async () => {
  await browser.viewport(1440, 900);
  localStorage.clear();
  const began = new Date(2026, 2, 2, 10, 0).getTime();
  // Only the clock is moved: the page's own timers go on.
  vi.useFakeTimers({ toFake: ['Date'], now: began });
  await list();
  expect(standing()).toBe('new');
  await visit(3);
  const told = () => $('.account')!.textContent;
  let day = 0;
  for (const [after, text] of [
    [1, 'done; back tomorrow'],
    [3, 'done; back in 3 days'],
    [7, 'done; back in 7 days'],
  ] as const) {
    expect(told()).toContain(`It comes back ${after === 1 ? 'tomorrow' : `in ${after} days`}, with other numbers.`);
    await list();
    expect(standing()).toBe(text);
    // Not a day sooner.
    vi.setSystemTime(began + (day + after - 1) * DAY);
    await list();
    expect(standing()).not.toBe('comes back today');
    day += after;
    vi.setSystemTime(began + day * DAY);
    await list();
    expect(standing()).toBe('comes back today');
    expect($('.verdict h2')!.textContent).toMatch(/^One lesson comes back today: Balls and rolls/);
    await visit(1);
  }
  expect(told()).toContain('You have learnt it: it does not come back.');
  await list();
  expect(standing()).toBe('learnt');
  localStorage.clear();
});

test('what was not right comes back tomorrow, whenever it was', { timeout: 120_000 }, async () => {
  localStorage.clear();
  vi.useFakeTimers({ toFake: ['Date'], now: new Date(2026, 2, 2, 10, 0) });
  await list();
  await visit(3);
  vi.setSystemTime(new Date(2026, 2, 3, 10, 0));
  await list();
  await visit(1, false);
  await list();
  expect(standing()).toBe('done; back tomorrow');
  localStorage.clear();
});

test('on a phone the mark is in sight with the line as it is let go, above what leads on', {
  timeout: 120_000,
}, async () => {
  await browser.viewport(390, 844);
  for (const id of ['one-cone', 'no-copy']) {
    localStorage.clear();
    window.location.hash = `#learn/${id}`;
    await there('.ask');
    expect($('.mark-chart .as-it-is circle'), 'it begins with what is so').not.toBeNull();
    await said('7 µm');
    const sights = ['.mark-chart .answer-mark .handle', '.mark-chart .engine-curve'];
    for (const part of sights)
      await expect
        .poll(() => {
          const { top, bottom } = $(part)!.getBoundingClientRect();
          return top >= 0 && bottom <= innerHeight;
        })
        .toBe(true);
    await userEvent.click(await there('.saw-options button'));
    const on = await there('.why button.main');
    expect($('.mark-chart')!.getBoundingClientRect().bottom).toBeLessThan(on.getBoundingClientRect().top);
    window.location.hash = '#learn';
    await there('.path');
  }
});

test.each([390, 820, 1440])('at %i px the way back to all lessons stands at the edge', async (width) => {
  await browser.viewport(width, 1000);
  for (const at of ['one-cone', 'one-cone/sheet/7', 'one-cone/class/7', 'edit']) {
    localStorage.clear();
    window.location.hash = `#learn/${at}`;
    await there('.lesson-head button');
    const head = $('.lesson-head')!.getBoundingClientRect();
    const back = [...document.querySelectorAll('.lesson-head button')].at(-1)!;
    expect(back.textContent, at).toBe('All lessons');
    const { left, right } = back.getBoundingClientRect();
    expect(Math.min(head.right - right, left - head.left), `${at}: at an edge`).toBeLessThan(3);
    window.location.hash = '#learn';
    await there('.path');
  }
});

test('one from a file that is not kept is gone on with; kept, it is gone on with too', {
  timeout: 120_000,
}, async () => {
  await browser.viewport(1440, 900);
  localStorage.clear();
  sessionStorage.clear();
  await list();
  const lesson = await loadLesson('one-cone');
  $<HTMLDetailsElement>('.instructors')!.open = true;
  giveLesson(JSON.stringify({ ...lesson, title: 'Mine' }));
  await said('7 µm');
  const story = $('.round .asked')!.textContent;
  const back = () => userEvent.click(browser.getByRole('button', { name: 'All lessons' }));
  await back();
  await userEvent.click(browser.getByRole('button', { name: 'Open it again' }));
  await there('.saw-options button');
  expect($('.goes-on')).not.toBeNull();
  expect($('.round .asked')!.textContent).toBe(story);
  await back();
  await userEvent.click(browser.getByRole('button', { name: 'Keep it in the list' }));
  await userEvent.click(await there('.own-path li a'));
  await there('.saw-options button');
  expect($('.round .asked')!.textContent).toBe(story);
  await list();
  expect($('.own-path li')!.textContent).toContain('· begun');
  localStorage.clear();
  sessionStorage.clear();
});

test('kept as it is read, the tab of the screen leads from it to the list it is kept in, and back to it', {
  timeout: 120_000,
}, async () => {
  await browser.viewport(1440, 900);
  localStorage.clear();
  sessionStorage.clear();
  await list();
  $<HTMLDetailsElement>('.instructors')!.open = true;
  giveLesson(JSON.stringify({ ...(await loadLesson('one-cone')), title: 'Mine' }));
  await there('.ask');
  const learn = () => userEvent.click(browser.getByRole('link', { name: 'Learn', exact: true }));
  // Not kept, it lies at the head of the list.
  await learn();
  expect((await there('.keep-lesson')).textContent).toContain('“Mine” is not kept');
  expect($('.path')).not.toBeNull();
  window.history.back();
  await there('.ask');
  await userEvent.click(browser.getByRole('button', { name: 'Keep it in the list' }));
  await expect.poll(() => $('.keep-lesson')!.textContent).toContain('under “From others”');
  await learn();
  expect((await there('.own-path')).textContent).toContain('Mine');
  expect($('.ask')).toBeNull();
  localStorage.clear();
  sessionStorage.clear();
});

test('a lesson that contradicts itself is doubted at its field, and before it is shared', {
  timeout: 120_000,
}, async () => {
  await browser.viewport(1440, 900);
  localStorage.clear();
  window.location.hash = '#learn/edit';
  const standing = () => $('.editor > .verdict h2')?.textContent;
  await there('.editor');
  await expect.poll(standing, { timeout: 60_000 }).toBe('The lesson goes.');
  const field = browser.getByRole('textbox', { name: 'What is right', exact: true }).first();
  const [after, before] = (field.element() as HTMLInputElement).value.split(' - ');
  await userEvent.fill(field, `${before} - ${after}`);
  await expect.poll(standing, { timeout: 60_000 }).toBe('The lesson goes, but it contradicts itself in 1 place.');
  expect($('.editor > .verdict')!.className).not.toMatch(/good|stop/);
  expect(field.element().closest('.edit-field')!.textContent).toMatch(
    /Is it meant so\? Carried out, it goes the other/,
  );
  expect($('.take-out')!.textContent).toContain('Before you share it: it contradicts itself');
  (document.activeElement as HTMLElement).blur();
  await userEvent.click(browser.getByRole('button', { name: 'Question 1, what is right', exact: true }));
  expect(document.activeElement).toBe(field.element());
  await userEvent.fill(field, `${after} - ${before}`);
  await expect.poll(standing, { timeout: 60_000 }).toBe('The lesson goes.');
  localStorage.clear();
});
