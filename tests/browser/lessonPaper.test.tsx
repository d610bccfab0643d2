/**
 * Lessons on paper and in a class: nothing is printed before its numbers are there, a code counts once and says so, the
 * drawing of the rolls tells no angle, and every picture says how it is drawn.
 */
import { expect, test, vi } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { loadLesson } from '../../src/app/screens/learn/builtIn.ts';
import { angleSaid } from '../../src/design/units.ts';
import { deal } from '../../src/lessons/deal.ts';
import type { Lesson } from '../../src/lessons/definition.ts';
import { seedOf } from '../../src/lessons/runner.ts';
import { page } from './page.tsx';

page('#learn');

const $ = <E extends Element>(selector: string) => document.querySelector<E>(selector);
const all = <E extends Element>(selector: string) => [...document.querySelectorAll<E>(selector)];
const there = async <E extends Element>(selector: string): Promise<E> => {
  await expect.poll(() => $(selector), { timeout: 60_000 }).not.toBeNull();
  return $<E>(selector)!;
};
const dealt = (lesson: Lesson, seed: number) => {
  const found = deal(lesson, seedOf(seed, 0), () => undefined);
  if (!found.ok) throw new Error(found.message);
  return found.value.questions;
};

test('Print waits for the numbers', { timeout: 90_000 }, async () => {
  const print = vi.spyOn(window, 'print').mockImplementation(() => {});
  // What plans a cut takes longer than a look.
  window.location.hash = '#learn/plan-a-cut/sheet/3';
  const button = () => $<HTMLButtonElement>('.work-sheet .buttons button.main')!;
  await expect.poll(button, { timeout: 30_000, interval: 5 }).not.toBeNull();
  expect($('.work-sheet .loading')!.textContent).toBe('The numbers are being worked out.');
  expect(button().disabled).toBe(true);
  button().click();
  await there('.paper-leaf.answers');
  expect(print).not.toHaveBeenCalled();
  expect(button().disabled).toBe(false);
  await userEvent.click(button());
  await expect.poll(() => print.mock.calls.length).toBe(1);
});

test('a code that is opened twice counts once, and the second time says so', { timeout: 60_000 }, async () => {
  localStorage.clear();
  const taken = async () => (await there('.taken')).textContent;
  const away = async () => {
    window.location.hash = '#learn';
    await there('.path');
  };
  const code = (mark: string) => `#learn/one-cone/class/1/answer=0.02,sure,q0,${mark}`;
  window.location.hash = code('k3f9');
  expect(await taken()).toContain('One answer was counted.');
  await away();
  window.location.hash = code('k3f9');
  expect(await taken()).toContain('This answer was counted before.');
  await away();
  // Another learner may have answered the same.
  window.location.hash = code('zz01');
  expect(await taken()).toContain('One answer was counted.');
  await userEvent.click($('.taken a')!);
  await there('.class-typed');
  expect(all('.spread [role=img] .by-sure')).toHaveLength(2);
  expect($('.spread figcaption')!.textContent).toBe('2 answers');
  localStorage.clear();
});

test('rolls on paper: both set-ups are drawn with what they read, and lean otherwise than what is asked for', {
  timeout: 60_000,
}, async () => {
  const lesson = await loadLesson('rolls');
  window.location.hash = '#learn/rolls/sheet/3';
  await there('.paper-leaf.answers');
  const asked = '.paper-leaf:not(.answers) .leaf-question';
  const drawings = $(asked)!.querySelectorAll('.set-ups svg');
  expect(drawings).toHaveLength(lesson.questions[0]!.view.setUps!.length);
  for (const drawing of drawings) {
    const { width, height } = drawing.getBoundingClientRect();
    expect(Math.min(width, height)).toBeGreaterThan(60);
  }
  expect($(`${asked} .paper-picture`)!.textContent).toContain('Not to scale');
  const [one] = dealt(lesson, 3);
  const right = angleSaid(Math.round(100 * Number(one!.right)) / 100, 'half');
  expect($(asked)!.textContent).not.toContain(right);
  expect($('.paper-leaf.answers .leaf-question')!.textContent).toContain(right);
  // Where it is told there is nothing left to measure off.
  expect(all('.paper-leaf.answers .set-ups')).toHaveLength(0);
});

async function answered(id: string, seed: number): Promise<void> {
  localStorage.clear();
  vi.spyOn(Math, 'random').mockReturnValue((seed - 1) / 1_000_000);
  window.location.hash = `#learn/${id}`;
  const { title } = await loadLesson(id);
  await expect.poll(() => $('.lesson-head h2')?.textContent, { timeout: 20_000 }).toBe(title);
  await there('.ask');
}

async function toWhy(give: () => Promise<void>): Promise<void> {
  await give();
  await userEvent.click(all('.sure input')[1]!);
  await userEvent.click($('.ask button.main')!);
  await userEvent.click(await there('.saw-options button'));
  await there('.why');
}

test('every picture says under it how it is drawn', { timeout: 120_000 }, async () => {
  await browser.viewport(1440, 900);
  const caption = () => $('.lesson-picture .picture figcaption')!.textContent!.trim();
  await answered('one-cone', 1);
  // The gap is drawn so many times as large, and the sides lean as they do.
  await expect.poll(caption).toMatch(/^Gaps drawn ×[\d.\u202f ]+$/);
  await answered('blue', 1);
  await toWhy(() => userEvent.click($('.choices input')!));
  await expect.poll(caption).toMatch(/^Gaps drawn ×[\d.\u202f ]+, so the sides lean otherwise than they do$/);
  await answered('touches-first', 1);
  await toWhy(() => userEvent.click($('.choices input')!));
  const [shallow, steep] = all('.triangle figcaption').map((one) => one.textContent!);
  expect(shallow).toBe('Of the shallow cone: one gap, told in three ways (the side is drawn steeper than it is)');
  const leans = Number(dealt(await loadLesson('touches-first'), 1)[0]!.scope.steep);
  expect(steep!.includes('less steep than it is')).toBe(leans > 56);
  await answered('tenth', 1);
  expect($('.layer figcaption')!.textContent).not.toContain('grown');
  await toWhy(() => userEvent.fill($('.answer-field input')!, '3 µm'));
  const [{ from, to }] = [dealt(await loadLesson('tenth'), 1)[0]!.layer!];
  const grown = (1000 * (to - from)).toFixed(2);
  await expect.poll(() => $('.layer figcaption')!.textContent).toContain(`grown by ${grown} µm`);
  localStorage.clear();
});
