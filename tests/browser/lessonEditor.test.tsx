/** The editor of lessons as an instructor meets it: from nothing to a lesson that is kept, shared and had back. */
import { expect, test } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { expectAccessible, expectNoSidewaysScroll, page } from './page.tsx';

page('#learn');

const $ = <E extends Element>(selector: string) => document.querySelector<E>(selector);
const there = async <E extends Element>(selector: string): Promise<E> => {
  await expect.poll(() => $(selector), { timeout: 60_000 }).not.toBeNull();
  return $<E>(selector)!;
};
const field = (name: string) => browser.getByRole('textbox', { name, exact: true }).first();
const standing = () => $('.editor > .verdict h2')?.textContent;

async function begun(): Promise<void> {
  localStorage.clear();
  window.location.hash = '#learn/edit';
  await there('.editor');
  await expect.poll(standing, { timeout: 60_000 }).toBe('The lesson goes.');
}

test('a fault stands at its field, the preview is the lesson, and what was made is kept and goes by link', {
  timeout: 120_000,
}, async () => {
  await browser.viewport(1440, 900);
  await begun();
  await expectAccessible();
  await userEvent.fill(field('Title'), 'How far does it open?');
  const gives = field('The answer it gives');
  await userEvent.fill(gives, '1 +');
  await expect.poll(standing).toMatch(/in the way/);
  expect(gives.element().getAttribute('aria-invalid')).toBe('true');
  expect(gives.element().closest('.edit-field')!.textContent).toContain('no formula');
  await userEvent.fill(gives, 'right');
  await expect
    .poll(() => gives.element().closest('.edit-field')!.textContent, { timeout: 60_000 })
    .toMatch(/cannot be told apart: give .*seed 1/);
  // A press on what is in the way leads to its field.
  (document.activeElement as HTMLElement).blur();
  await userEvent.click(browser.getByRole('button', { name: 'Question 1, slip 1, the answer it gives' }));
  expect(document.activeElement).toBe(gives.element());
  expect($<HTMLButtonElement>('.take-out button.main')!.disabled).toBe(true);
  await userEvent.fill(gives, '2 * right');
  await expect.poll(standing, { timeout: 60_000 }).toBe('The lesson goes.');
  await expect.poll(() => $('.edit-preview .lesson-head h2')?.textContent).toBe('How far does it open?');
  await there('.edit-preview .ask');
  // What a formula can name is put in by choosing it.
  await userEvent.click(browser.getByRole('button', { name: 'Put in a value… The answer it gives' }).first());
  await userEvent.fill(browser.getByLabelText('Look for a value'), 'tangent shallow');
  await expect
    .poll(() => [...document.querySelectorAll('.values [data-value]')].map((one) => one.textContent))
    .toEqual([expect.stringMatching(/shallow journal: tangent.*0\.052/), expect.stringMatching(/shallow bush/)]);
  await userEvent.fill(browser.getByLabelText('Look for a value'), 'a number of this');
  await expectAccessible();
  await userEvent.click($('.values [data-value="by"]')!);
  await expect.poll(() => (gives.element() as HTMLInputElement).value).toContain('by');
  await userEvent.fill(gives, '2 * right');
  await expect.poll(standing, { timeout: 60_000 }).toBe('The lesson goes.');
  await userEvent.click(browser.getByRole('button', { name: 'Keep on this device' }));
  await userEvent.click(browser.getByRole('button', { name: 'Link' }));
  const link = (await there<HTMLTextAreaElement>('.lesson-link textarea')).value;
  await expectNoSidewaysScroll();
  // Left and come back to, it is the draft that was left.
  window.location.hash = '#fit';
  await there('.fit-screen');
  window.location.hash = '#learn/edit';
  await there('.editor');
  expect((field('Title').element() as HTMLInputElement).value).toBe('How far does it open?');
  window.location.hash = '#learn';
  const own = await there('.own-path');
  expect(own.textContent).toContain('How far does it open?');
  window.location.hash = link.slice(link.indexOf('#'));
  await there('.ask');
  expect($('.lesson-head h2')!.textContent).toBe('How far does it open?');
  window.location.hash = `${link.slice(link.indexOf('#'), -12)}`;
  await expect.poll(() => document.querySelector('.learn')!.textContent, { timeout: 20_000 }).toContain('not whole');
});

test('a copy of a lesson takes the place of the draft, which can be had back; damage is said', {
  timeout: 120_000,
}, async () => {
  await browser.viewport(390, 844);
  await begun();
  await userEvent.fill(field('Title'), 'Mine');
  window.location.hash = '#learn/edit/two-cones';
  await expect
    .poll(() => $('.editor') && (field('Title').element() as HTMLInputElement).value, { timeout: 60_000 })
    .toBe('Two cones: which ratio?');
  await expectNoSidewaysScroll();
  await userEvent.click(browser.getByRole('button', { name: 'Back to the draft before' }));
  expect((field('Title').element() as HTMLInputElement).value).toBe('Mine');
  localStorage.setItem('conepair.lessonDraft', '1 {"lesson":1}');
  window.location.hash = '#fit';
  await there('.fit-screen');
  window.location.hash = '#learn/edit';
  await there('.editor');
  expect($('.editor')!.textContent).toContain('could not be read');
  expect(localStorage.getItem('conepair.lessonDraft.aside')).toBe('1 {"lesson":1}');
  localStorage.clear();
});
