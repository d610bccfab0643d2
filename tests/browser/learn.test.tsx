/**
 * Learn as a person meets it: every lesson walked to its end by keyboard and by touch, the job left as it was, and
 * nothing told before an answer is committed.
 */
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { ENTRIES, loadLesson } from '../../src/app/screens/learn/builtIn.ts';
import { type Dealt, deal } from '../../src/lessons/deal.ts';
import type { Lesson } from '../../src/lessons/definition.ts';
import { ASIDE } from '../../src/lessons/progress.ts';
import { seedOf } from '../../src/lessons/runner.ts';
import { expectAccessible, expectNoSidewaysScroll, page } from './page.tsx';

const shown = page('#learn');

/** Those that plan a cut or run a spindle take seconds a round: they are walked once, as ones that come back. */
const SLOW = /(before|after)\.(cut|run)\b/;

const $ = <E extends Element>(selector: string) => document.querySelector<E>(selector);
const there = async <E extends Element>(selector: string): Promise<E> => {
  await expect.poll(() => $(selector), { timeout: 60_000 }).not.toBeNull();
  return $<E>(selector)!;
};

async function opened(id: string): Promise<Lesson> {
  localStorage.clear();
  window.location.hash = `#learn/${id}`;
  await there('.ask');
  return loadLesson(id);
}

function dealtOf(lesson: Lesson, round: number): Dealt {
  const found = deal(lesson, seedOf(1, round), () => undefined);
  if (!found.ok) throw new Error(found.message);
  return found.value;
}

/** Presses Tab until the focus is there. */
async function tabTo(element: Element): Promise<void> {
  for (let i = 0; document.activeElement !== element; i++) {
    expect(i, `no way by Tab to ${element.outerHTML.slice(0, 80)}`).toBeLessThan(80);
    await userEvent.tab();
  }
}

const press = {
  keyboard: async (element: HTMLElement) => {
    if (element instanceof HTMLInputElement && element.type === 'radio') {
      // A group of them is one stop: the arrows choose within it.
      const group = [...document.querySelectorAll<HTMLInputElement>(`input[name="${element.name}"]`)];
      await tabTo(group.find(({ checked }) => checked) ?? group[0]!);
      await userEvent.keyboard(' ');
      for (let i = 0; i < group.indexOf(element); i++) await userEvent.keyboard('{ArrowDown}');
      return;
    }
    await tabTo(element);
    await userEvent.keyboard('{Enter}');
  },
  touch: async (element: HTMLElement) => {
    element.scrollIntoView({ block: 'center' });
    const { left, top, width, height } = element.getBoundingClientRect();
    expect(Math.max(height, element.closest('label')?.getBoundingClientRect().height ?? 0)).toBeGreaterThanOrEqual(
      43.5,
    );
    await userEvent.click(element, { position: { x: width / 2, y: height / 2 } });
    expect([left, top]).toBeDefined();
  },
} as const;

async function answer(lesson: Lesson, dealt: Dealt, index: number, how: keyof typeof press): Promise<void> {
  const question = lesson.questions[index]!;
  const { right } = dealt.questions[index]!;
  const { answer: kind } = question;
  if (kind.kind === 'number') {
    const field = await there<HTMLInputElement>('.answer-field input');
    const unit = ['fine', 'tenths', 'micrometres', 'sided'].includes(kind.as) ? ' mm' : '';
    const scale = kind.as === 'share' ? 100 : kind.as === 'turn' ? 360 : 1;
    if (how === 'keyboard') await tabTo(field);
    else await userEvent.click(field);
    await userEvent.keyboard(`${Number((Number(right) * scale).toPrecision(9))}${kind.as === 'angle' ? '°' : unit}`);
  } else if (kind.kind === 'choice') {
    const at = kind.options.findIndex(({ key }) => key === right);
    await press[how](document.querySelectorAll<HTMLInputElement>('.choices input')[at]!);
  }
  await press[how](document.querySelectorAll<HTMLInputElement>('.sure input')[1]!);
  await press[how]($<HTMLButtonElement>('.ask button.main')!);
}

async function walk(id: string, how: keyof typeof press): Promise<void> {
  const lesson = await opened(id);
  for (let round = 0; round < 3; round++) {
    const dealt = dealtOf(lesson, round);
    for (const [index, question] of lesson.questions.entries()) {
      await there('.ask');
      expect($('.why'), 'nothing is told yet').toBeNull();
      expect(document.querySelectorAll('.ask .help li').length).toBe(
        [0, 1, 2].map((r) => (r === 0 ? 0 : Math.min(question.help.length, most(lesson) + 1 - r)))[round],
      );
      await answer(lesson, dealt, index, how);
      await there('.saw');
      expect($('.why'), 'what was seen is asked before').toBeNull();
      await press[how](
        document.querySelectorAll<HTMLButtonElement>('.saw-options button')[dealt.questions[index]!.saw]!,
      );
      const why = await there('.why');
      expect(why.querySelector('h3')!.textContent, `${id}, round ${round}, question ${index}`).toMatch(/^Right:/);
      expect(why.querySelector('.seen-wrong')).toBeNull();
      expect(document.activeElement).toBe(why.querySelector('h3'));
      expect(document.querySelector('main')!.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
      await press[how](why.querySelector<HTMLButtonElement>('button.main')!);
    }
  }
  await there('.account');
}

const most = (lesson: Lesson) => Math.max(...lesson.questions.map(({ help }) => help.length));

const quick = async () => {
  const all = await Promise.all(ENTRIES.map(async ({ id }) => ({ id, text: JSON.stringify(await loadLesson(id)) })));
  return all.filter(({ text }) => !SLOW.test(text)).map(({ id }) => id);
};

test('every lesson goes to its end by keyboard, and by touch on a phone', { timeout: 300_000 }, async () => {
  const before = shown.work.store.getState();
  for (const [i, id] of (await quick()).entries()) {
    const how = i % 2 === 0 ? 'keyboard' : 'touch';
    await browser.viewport(how === 'touch' ? 390 : 1440, 844);
    await walk(id, how);
  }
  const after = shown.work.store.getState();
  expect(after.design).toBe(before.design);
  expect(after.steps).toBe(before.steps);
});

test('a slip is named, its cost told, and what was seen wrongly is shown again', async () => {
  await browser.viewport(1440, 900);
  const lesson = await opened('tenth');
  const dealt = dealtOf(lesson, 0).questions[0]!;
  await userEvent.fill($('.answer-field input')!, `${2 * Number(dealt.right)} mm`);
  await userEvent.click(document.querySelectorAll('.sure input')[2]!);
  await userEvent.click($('.ask button.main')!);
  await there('.saw');
  await userEvent.click(document.querySelectorAll('.saw-options button')[dealt.saw === 0 ? 1 : 0]!);
  const why = await there('.why');
  expect(why.textContent).toContain('diameter for radius');
  expect(why.textContent).toContain('In metal:');
  expect(why.textContent).toContain('You were sure');
  expect(why.querySelector('.seen-wrong')).not.toBeNull();
});

test('without an answer, or without how sure, nothing is let go; a wrong unit is said', async () => {
  await opened('tenth');
  const go = () => userEvent.click($('.ask button.main')!);
  await go();
  await expect.poll(() => $('.ask .error')?.textContent).toMatch(/type your answer/);
  await userEvent.fill($('.answer-field input')!, '3 furlongs');
  await go();
  await expect.poll(() => $('.ask .error')?.textContent).toMatch(/furlongs/);
  await userEvent.fill($('.answer-field input')!, '3 tenths');
  await go();
  await expect.poll(() => $('.ask .error')?.textContent).toMatch(/how sure/);
  expect($('.saw')).toBeNull();
});

test('the mark on the chart and the field are one answer; the picture holds still until then', async () => {
  await browser.viewport(1440, 900);
  await opened('one-cone');
  const mark = await there<SVGGElement>('.answer-mark');
  expect($('.engine-curve')).toBeNull();
  mark.focus();
  await userEvent.keyboard('{ArrowUp}{ArrowUp}{ArrowUp}');
  const typed = $<HTMLInputElement>('.answer-field input')!.value;
  expect(typed).toMatch(/µm$/);
  expect($('.answer-mark')!.getAttribute('aria-valuetext')).not.toBe('no mark yet');
  await userEvent.fill($('.answer-field input')!, '1 µm');
  await expect.poll(() => $('.answer-mark')!.getAttribute('aria-valuetext')).toBe('1.00 µm');
  const journal = $<SVGGElement>('.section .journal')!;
  journal.focus();
  await userEvent.keyboard('{ArrowRight}{ArrowRight}');
  expect(journal.getAttribute('aria-valuenow')).toBe('0');
});

test('what was learnt is kept, damaged records are set aside and said', async () => {
  localStorage.clear();
  localStorage.setItem('conepair.learnt', '12 {"version":1,"lessons":{}}');
  window.location.hash = '#fit';
  await there('.fit-screen');
  window.location.hash = '#learn';
  await there('.path');
  expect(document.querySelector('.learn')!.textContent).toContain('could not be read');
  expect(localStorage.getItem(ASIDE)).toContain('12 {');
  localStorage.clear();
});

test('the path and a lesson, from question to why: nothing wider than the page, and accessible in both themes', {
  timeout: 120_000,
}, async () => {
  await there('.path');
  await expectNoSidewaysScroll();
  await expectAccessible();
  const lesson = await opened('one-cone');
  await expectNoSidewaysScroll();
  await expectAccessible();
  await answer(lesson, dealtOf(lesson, 0), 0, 'keyboard');
  await there('.saw');
  await expectAccessible();
  await userEvent.click(document.querySelectorAll('.saw-options button')[0]!);
  await there('.why');
  await expectNoSidewaysScroll();
  await expectAccessible();
});
