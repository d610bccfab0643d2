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

test('an emptied number stays empty and says that it is missing', { timeout: 120_000 }, async () => {
  await browser.viewport(1440, 900);
  await begun();
  const number = await there<HTMLInputElement>('.edit-field.short input[type="number"]');
  for (let of = number.closest('details'); of; of = of.parentElement!.closest('details')) of.open = true;
  const stood = number.value;
  await userEvent.clear(number);
  await expect.poll(standing).toMatch(/in the way/);
  expect(number.value).toBe('');
  expect(number.closest('.edit-field')!.textContent).toMatch(/missing.*it must be a number/);
  await userEvent.fill(number, stood);
  await expect.poll(standing, { timeout: 60_000 }).toBe('The lesson goes.');
});

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
  expect(gives.element().closest('.edit-field')!.textContent).toContain('Right, for example: 2 * right');
  // What is seen beside it is the lesson before, and says so.
  expect($('.edit-preview')!.textContent).toContain('This is the lesson before it.');
  const right = field('What is right');
  const stood = (right.element() as HTMLInputElement).value;
  await userEvent.clear(right);
  await expect
    .poll(() => right.element().closest('.edit-field')!.textContent)
    .toMatch(/nothing stands here.*for example/);
  await userEvent.fill(right, stood);
  // The lesson as it is seen stays beside the fields however far they go.
  await browser.viewport(1440, 900);
  gives.element().scrollIntoView({ block: 'center' });
  await expect.poll(() => Math.round($('.edit-preview')!.getBoundingClientRect().top)).toBe(8);
  await userEvent.fill(gives, 'right');
  await expect
    .poll(() => gives.element().closest('.edit-field')!.textContent, { timeout: 60_000 })
    .toMatch(/cannot be told apart: give .*for example with by = \d/);
  // A press on what is in the way leads to its field.
  (document.activeElement as HTMLElement).blur();
  await userEvent.click(browser.getByRole('button', { name: 'Question 1, slip 1, the answer it gives', exact: true }));
  expect(document.activeElement).toBe(gives.element());
  // So does what is said of it in sight of every field.
  (document.activeElement as HTMLElement).blur();
  await userEvent.click($('.next-fault')!);
  expect(document.activeElement).toBe(gives.element());
  // It lies over no field, neither beside them nor, on a narrow page, at its foot.
  const over = (one: DOMRect, other: DOMRect) =>
    one.left < other.right && other.left < one.right && one.top < other.bottom && other.top < one.bottom;
  for (const width of [1440, 820, 390]) {
    await browser.viewport(width, 900);
    // Where it would be covered: at the foot of the page.
    (document.activeElement as HTMLElement).blur();
    gives.element().scrollIntoView({ block: 'end' });
    (gives.element() as HTMLElement).focus({ preventScroll: true });
    const covered = (part: Element) => over($('.next-fault')!.getBoundingClientRect(), part.getBoundingClientRect());
    // With what is said to be wrong with it.
    await expect.poll(() => covered(gives.element().closest('.edit-field')!)).toBe(false);
    // Of one that is right, it is in sight still.
    const name = field('Its name').element() as HTMLElement;
    name.scrollIntoView({ block: 'end' });
    name.focus({ preventScroll: true });
    await expect.poll(() => covered(name)).toBe(false);
    const { top, bottom, height } = $('.next-fault')!.getBoundingClientRect();
    expect(height).toBeGreaterThan(20);
    expect([top >= 0, bottom <= 900]).toEqual([true, true]);
  }
  await browser.viewport(1440, 900);
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
  // What came from somebody else is kept when asked for, with the day it was given out, and taken out again.
  await userEvent.click(browser.getByRole('button', { name: 'Keep it in the list' }));
  await expect.poll(() => $('.keep-lesson')!.textContent).toContain('under “From others”');
  window.location.hash = '#learn';
  const lists = async () => {
    await there('.own-path');
    return [...document.querySelectorAll('.own-path')].map((list) => list.textContent!);
  };
  expect((await lists())[1]).toMatch(/^From others.*How far does it open\?.*\(given out on \d{4}-\d\d-\d\d\)/);
  await userEvent.click(document.querySelectorAll<HTMLElement>('.own-path')[1]!.querySelector('a')!);
  await there('.ask');
  window.location.hash = '#learn';
  for (const name of ['How far does it open?: take it away', 'How far does it open?: take it away for good'])
    await userEvent.click(browser.getByRole('button', { name, exact: true }).last());
  await expect.poll(() => document.querySelectorAll('.own-path').length).toBe(1);
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

test('on a tablet the lesson as it is seen is one press away, and the field one press back; every part has words', {
  timeout: 120_000,
}, async () => {
  await browser.viewport(820, 1180);
  await begun();
  await userEvent.click($('.picture-form summary')!);
  for (const name of ['One film as a layer of oil', 'A chart on which the answer is marked'])
    await userEvent.click(browser.getByRole('checkbox', { name }));
  for (const name of ['Triangle of travel, across and film: add one', 'Change before it is asked: add one'])
    await userEvent.click(browser.getByRole('button', { name }));
  await expect.poll(standing, { timeout: 60_000 }).toBe('The lesson goes.');
  await expect.poll(() => $('.edit-preview .layer'), { timeout: 60_000 }).not.toBeNull();
  expect($('.edit-preview .mark-chart')).not.toBeNull();
  const label = field('Before the answer stands').element() as HTMLInputElement;
  label.focus();
  await userEvent.click(browser.getByRole('button', { name: 'As it is seen' }));
  await expect.poll(() => $('.edit-preview')!.getBoundingClientRect().top).toBeLessThan(400);
  await userEvent.click(browser.getByRole('button', { name: 'Back to the fields' }));
  await expect.poll(() => document.activeElement).toBe(label);
  // Taken away again they leave nothing behind that is in the way.
  await userEvent.click(browser.getByRole('button', { name: 'Take away: Change before it is asked 1' }));
  await userEvent.click(browser.getByRole('checkbox', { name: 'One film as a layer of oil' }));
  await expect.poll(standing, { timeout: 60_000 }).toBe('The lesson goes.');
  localStorage.clear();
});
