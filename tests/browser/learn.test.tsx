/**
 * Learn as a person meets it: every lesson walked to its end by keyboard and by touch, the job left as it was, and
 * nothing told before an answer is committed.
 */
import { expect, test, vi } from 'vitest';
import { page as browser, userEvent } from 'vitest/browser';
import { ENTRIES, loadLesson } from '../../src/app/screens/learn/builtIn.ts';
import { forgetLesson, keepLesson } from '../../src/app/screens/learn/ownLessons.ts';
import { checksum } from '../../src/jobs/checksum.ts';
import { rightsOf } from '../../src/lessons/apart.ts';
import { type Dealt, deal } from '../../src/lessons/deal.ts';
import type { Lesson } from '../../src/lessons/definition.ts';
import { ASIDE, NONE, visited, writeProgress } from '../../src/lessons/progress.ts';
import { seedOf } from '../../src/lessons/runner.ts';
import { answerSaid, said } from '../../src/lessons/sheets.ts';
import { expectAccessible, expectNoSidewaysScroll, giveLesson, page, still } from './page.tsx';

const shown = page('#learn');

const $ = <E extends Element>(selector: string) => document.querySelector<E>(selector);
const there = async <E extends Element>(selector: string): Promise<E> => {
  await expect.poll(() => $(selector), { timeout: 60_000 }).not.toBeNull();
  return $<E>(selector)!;
};

async function opened(id: string, visit: 'first' | 'again' = 'first'): Promise<Lesson> {
  localStorage.clear();
  // The numbers of one that comes back are drawn; here the ones of a seed.
  vi.spyOn(Math, 'random').mockReturnValue(0);
  if (visit === 'again') {
    // What is kept is read as the screen is opened.
    window.location.hash = '#jobs';
    await expect.poll(() => $('.learn')).toBeNull();
    writeProgress(localStorage, visited(NONE, id, { right: 1, of: 1 }, 1), checksum);
  }
  window.location.hash = `#learn/${id}`;
  await there('.ask');
  return loadLesson(id);
}

/** A round's numbers: its answers are told apart from those of the rounds before. */
function dealtOf(lesson: Lesson, round: number): Dealt {
  const before = Array.from({ length: round }, (_, one) => rightsOf(lesson, dealtOf(lesson, one))).flat();
  const found = deal(lesson, seedOf(1, round), () => undefined, before);
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
  } else await brought(Number(right), how);
  await press[how](document.querySelectorAll<HTMLInputElement>('.sure input')[1]!);
  await press[how]($<HTMLButtonElement>('.ask button.main')!);
}

/** The mark moved to a place (mm) on the scale: by arrow keys, a micrometre each, or by a finger. */
async function brought(to: number, how: keyof typeof press): Promise<void> {
  const mark = await there<SVGGElement>('.place-mark');
  const stood = $('.lesson-picture .section .journal')!.getAttribute('aria-valuenow');
  const now = () => Number($('.place-mark')!.getAttribute('aria-valuenow'));
  if (how === 'keyboard') {
    await tabTo(mark);
    const steps = Math.round(to * 1000 - now());
    const key = steps < 0 ? 'ArrowLeft' : 'ArrowRight';
    await userEvent.keyboard(`{Shift>}${`{${key}}`.repeat(Math.floor(Math.abs(steps) / 10))}{/Shift}`);
    // Of tens there is nothing left over.
    if (steps % 10 !== 0) await userEvent.keyboard(`{${key}}`.repeat(Math.abs(steps) % 10));
  } else {
    mark.setPointerCapture = () => {};
    const at = (x: number) => ({ bubbles: true, pointerId: 1, button: 0, clientX: 100 + x, clientY: 300 });
    let far = Math.sign(to * 1000 - now()) * 4;
    const begins = now();
    mark.dispatchEvent(new PointerEvent('pointerdown', at(0)));
    // What a pixel moves is found on the way, as a hand finds it.
    for (let times = 0; times < 6 && Math.abs(now() - to * 1000) >= 0.5; times++) {
      const before = now();
      mark.dispatchEvent(new PointerEvent('pointermove', at(far)));
      await expect.poll(now).not.toBe(before);
      far *= (to * 1000 - begins) / (now() - begins);
    }
    mark.dispatchEvent(new PointerEvent('pointerup', at(far)));
  }
  await expect.poll(() => Math.abs(now() - to * 1000)).toBeLessThan(0.6);
  // What it would come to is let go, and not seen before.
  expect($('.lesson-picture .section .journal')!.getAttribute('aria-valuenow')).toBe(stood);
}

/** A film in figures or touching, after a seat's name or a lens'; what is given of a seat may stand there. */
const FILM_TOLD = /^\S+ (?:[−\d.]+\s?(?:µm|tenths)|touches)|film [−\d]/;

async function walk(id: string, how: keyof typeof press, visit: 'first' | 'again'): Promise<void> {
  const lesson = await opened(id, visit);
  const rounds = visit === 'first' ? 3 : 1;
  for (let round = 0; round < rounds; round++) {
    const dealt = dealtOf(lesson, round);
    for (const [index, question] of lesson.questions.entries()) {
      await there('.ask');
      expect($('.why'), 'nothing is told yet').toBeNull();
      for (const told of document.querySelectorAll('.lesson-picture .lens .travel'))
        expect(getComputedStyle(told).display, 'what a move gives is the answer').toBe('none');
      expect(document.querySelectorAll('.ask .help li').length).toBe(
        [0, 1, 2].map((r) => (r === 0 ? 0 : Math.min(question.help.length, most(lesson) + 1 - r)))[round],
      );
      await answer(lesson, dealt, index, how);
      await there('.saw-options button');
      expect($('.why'), 'what was seen is asked before').toBeNull();
      for (const told of document.querySelectorAll('.lesson-picture .film-now'))
        expect(getComputedStyle(told).visibility, 'what was seen is not read off').toBe('hidden');
      for (const told of document.querySelectorAll('.lesson-picture :is(.section .note, .lens svg[role])'))
        expect(`${told.ariaLabel ?? told.textContent}`, 'nor out').not.toMatch(FILM_TOLD);
      await press[how](
        document.querySelectorAll<HTMLButtonElement>('.saw-options button')[dealt.questions[index]!.saw]!,
      );
      const why = await there('.why');
      expect(why.querySelector('h3')!.textContent, `${id}, round ${round}, question ${index}`).toMatch(/^Right:/);
      expect(why.querySelector('.seen-wrong')).toBeNull();
      expect($('.round .asked')!.textContent, 'what was asked stands there still').not.toBe('');
      expect(why.querySelectorAll('.triangle').length).toBe(question.view.triangles?.length ?? 0);
      expect(document.activeElement).toBe(why.querySelector('h3'));
      expect(document.querySelector('main')!.innerHTML).not.toMatch(/NaN|Infinity|undefined/);
      await press[how](why.querySelector<HTMLButtonElement>('button.main')!);
    }
  }
  const account = await there('.account');
  const after = ENTRIES[ENTRIES.findIndex((entry) => entry.id === id) + 1];
  expect(account.querySelector('a')?.getAttribute('href') ?? null).toBe(after ? `#learn/${after.id}` : null);
}

const most = (lesson: Lesson) => Math.max(...lesson.questions.map(({ help }) => help.length));

test.each([0, 1])(
  'every lesson goes to its end by keyboard, and by touch on a phone: by turns, from %i',
  {
    tags: ['long'],
    timeout: 400_000,
  },
  async (from) => {
    const before = shown.work.store.getState();
    for (const [i, { id }] of ENTRIES.entries()) {
      const how = (i + from) % 2 === 0 ? 'keyboard' : 'touch';
      await browser.viewport(how === 'touch' ? 390 : 1440, 844);
      await walk(id, how, i < 2 ? 'first' : 'again');
      window.location.hash = '#learn';
      await there('.path');
    }
    const after = shown.work.store.getState();
    expect(after.design).toBe(before.design);
    expect(after.steps).toBe(before.steps);
  },
);

test('a place is answered by a mark on the scale, moved with the arrow keys', { timeout: 60_000 }, async () => {
  await browser.viewport(1440, 900);
  await walk('one-cone', 'keyboard', 'again');
});

test('the film that carries goes to its end by touch', { timeout: 120_000 }, async () => {
  await browser.viewport(390, 844);
  await walk('film-carries', 'touch', 'again');
});

test('a slip is named, its cost told, and what was seen wrongly is shown again', async () => {
  await browser.viewport(1440, 900);
  const lesson = await opened('tenth');
  const dealt = dealtOf(lesson, 0).questions[0]!;
  await userEvent.fill($('.answer-field input')!, `${2 * Number(dealt.right)} mm`);
  await userEvent.click(document.querySelectorAll('.sure input')[2]!);
  await userEvent.click($('.ask button.main')!);
  await there('.saw-options button');
  await userEvent.click(document.querySelectorAll('.saw-options button')[dealt.saw === 0 ? 1 : 0]!);
  const why = await there('.why');
  expect(why.textContent).toContain('diameter for radius');
  expect(why.textContent).toContain('In metal:');
  expect(why.textContent).toContain('You were sure');
  expect(why.querySelector('.seen-wrong')).not.toBeNull();
});

const seen = (selector: string) => {
  const { top, bottom } = $(selector)!.getBoundingClientRect();
  return top >= -1 && bottom <= innerHeight + 1;
};

test.each([
  [390, 844],
  [1440, 900],
])(
  'at %i × %i the picture, the question and its answer are in sight together, and then what moves',
  {
    timeout: 240_000,
  },
  async (width, height) => {
    await browser.viewport(width, height);
    // On a desk they stand side by side: three tell it.
    for (const { id } of width < 1000 ? ENTRIES : ENTRIES.slice(0, 3)) {
      window.location.hash = '#learn';
      await there('.path');
      const lesson = await opened(id);
      const { section, lenses, layer, spread, setUps } = lesson.questions[0]!.view;
      const drawn =
        section || lenses || setUps || ((layer || spread) && id !== 'odds') ? '.lesson-picture > :first-child' : null;
      // As it is opened, on a phone: what is asked stands on the first screen, with its picture.
      scrollTo(0, 0);
      for (const part of width < 1000 ? ['.round h3.asked', ...(drawn ? [drawn] : [])] : [])
        await expect.poll(() => seen(part), { message: `${id}: ${part} on the first screen` }).toBe(true);
      $('.ask button.main')!.scrollIntoView({ block: 'end' });
      for (const part of ['.round h3.asked', '.ask button.main', ...(drawn ? [drawn] : [])])
        await expect.poll(() => seen(part), { message: `${id}: ${part}` }).toBe(true);
      // Nor does the one lie over the other.
      if (drawn && width < 1000)
        expect($(drawn)!.getBoundingClientRect().bottom, id).toBeLessThanOrEqual(
          $('.round h3.asked')!.getBoundingClientRect().top + 1,
        );
    }
    const lesson = await opened('two-cones');
    // The mark begins where it tells nothing.
    const mark = Number((await there('.answer-mark')).getAttribute('aria-valuenow'));
    const right = Number(dealtOf(lesson, 0).questions[0]!.right) * 1000;
    expect(Math.abs(mark - right)).toBeGreaterThan(3);
    await answer(lesson, dealtOf(lesson, 0), 0, 'touch');
    await there('.saw-options button');
    await expect.poll(() => seen('.round h3.asked') && seen('.lesson-picture .section')).toBe(true);
  },
);

test('what was answered is carried out first, by the engine; once told, it can be seen again beside what happens', {
  timeout: 60_000,
}, async () => {
  await browser.viewport(390, 844);
  const lesson = await opened('plan-a-cut');
  const { slips } = dealtOf(lesson, 0).questions[0]!;
  await userEvent.fill($('.answer-field input')!, `${slips[0]!.value} mm`);
  await userEvent.click(document.querySelectorAll('.sure input')[2]!);
  await userEvent.click($('.ask button.main')!);
  await there('.saw');
  await expect.poll(() => $('.whose')?.textContent, { timeout: 10_000 }).toMatch(/^As you said: \d/);
  // What was seen is asked of what is so, and not of what was answered.
  expect($('.saw-options')).toBeNull();
  // Half of the cut: the steep cone still stands in its bush.
  await expect.poll(() => $('.lesson-picture .section .within-bush')).not.toBeNull();
  await expect.poll(() => $('.whose')?.textContent, { timeout: 15_000 }).toBe('What happens');
  await userEvent.click(await there('.saw-options button'));
  const cost = (await there('.why .cost')).textContent!;
  // As it is told wherever else: it is reckoned on with.
  const asked = dealtOf(lesson, 0).questions[0]!;
  const speech = { system: 'metric', way: 'half' } as const;
  expect(cost).toContain(answerSaid(lesson.questions[0]!.answer, slips[0]!.value, asked, speech));
  const film = () => document.querySelectorAll('.lesson-picture .film-now')[1]!.textContent!;
  const happened = film();
  await userEvent.click(browser.getByRole('button', { name: /^As you said/ }));
  await expect.poll(film).not.toBe(happened);
  // The picture and the words say one thing.
  expect(cost).toContain(film().replace('−', ''));
  await userEvent.click(browser.getByRole('button', { name: 'What happens' }));
  await expect.poll(film).toBe(happened);
});

test('a link to no lesson leads to the list', async () => {
  window.location.hash = '#learn/ratio';
  await expect.poll(() => $('.learn .fault')?.textContent).toContain('no lesson ratio');
  await userEvent.click($('.learn a.button.main')!);
  await there('.path');
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
  // The number is not what is missing.
  expect($('.answer-field input')!.getAttribute('aria-invalid')).toBe('false');
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

test('while a place is asked for the picture stands still, and no key or end of the scale tells which is right', async () => {
  await browser.viewport(390, 844);
  for (const id of ['one-cone', 'real-pair']) {
    const lesson = await opened(id, 'again');
    const at = lesson.questions.findIndex(({ answer: { kind } }) => kind === 'move');
    const dealt = dealtOf(lesson, 0);
    for (let index = 0; index < at; index++) {
      await answer(lesson, dealt, index, 'touch');
      await userEvent.click(await there('.saw-options button'));
      await userEvent.click(await there('.why button.main'));
    }
    await there('.ask');
    const mark = await there<SVGGElement>('.place-mark');
    const stands = mark.getAttribute('aria-valuenow');
    expect(Number(mark.getAttribute('aria-valuemin'))).toBe(-Number(mark.getAttribute('aria-valuemax')));
    mark.focus();
    for (const key of ['PageDown', 'PageUp', 'Home', 'End']) {
      await userEvent.keyboard(`{${key}}`);
      expect($('.place-mark')!.getAttribute('aria-valuenow'), `${id}: ${key}`).toBe(stands);
    }
    // Laid out for the question: it had more room before.
    await still();
    const picture = $('.lesson-picture .section')!.innerHTML;
    await userEvent.keyboard('{ArrowRight}');
    await expect.poll(() => $('.place-mark')!.getAttribute('aria-valuenow')).not.toBe(stands);
    expect($('.lesson-picture .section')!.innerHTML).toBe(picture);
    const journal = $<SVGGElement>('.section .journal')!;
    journal.focus();
    await userEvent.keyboard('{ArrowRight}{PageDown}');
    expect($('.lesson-picture .section')!.innerHTML).toBe(picture);
  }
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
  tags: ['long'],
  timeout: 120_000,
}, async () => {
  await there('.path');
  await expectNoSidewaysScroll();
  await expectAccessible();
  const lesson = await opened('one-cone');
  await expectNoSidewaysScroll();
  await expectAccessible();
  const factor = () => /×[\d ]+/.exec($('.lesson-picture .picture figcaption')!.textContent!)![0];
  const before = factor();
  await answer(lesson, dealtOf(lesson, 0), 0, 'keyboard');
  await there('.saw-options button');
  await expect.poll(() => $('.section .journal')!.getAttribute('aria-valuenow'), { timeout: 10_000 }).not.toBe('0');
  expect(factor(), 'one factor before and after').toBe(before);
  await expectAccessible();
  await userEvent.click(document.querySelectorAll('.saw-options button')[0]!);
  await there('.why');
  await expectNoSidewaysScroll();
  await expectAccessible();
});

test('a class: answers typed and sent by link are one spread, and what is right stands nowhere before', {
  timeout: 120_000,
}, async () => {
  await browser.viewport(1440, 900);
  localStorage.clear();
  window.location.hash = '#learn/one-cone/class/1';
  await there('.class-typed');
  const right = dealtOf(await loadLesson('one-cone'), 0).questions[0]!;
  const type = async (text: string) => {
    await userEvent.fill($('.class-typed input')!, text);
    await userEvent.click($('.class-typed button')!);
  };
  await type('1 furlong');
  await expect.poll(() => $('.class-typed .error')?.textContent).toMatch(/furlong/);
  const dots = () => document.querySelectorAll('.spread [role=img] circle').length;
  const sure = (name: string) => userEvent.click(browser.getByRole('radio', { name }));
  await sure('A guess');
  await type(`${right.right} mm`);
  await sure('I am sure');
  await type(`${right.slips[0]!.value} mm`);
  await expect.poll(dots).toBe(2);
  expect($('.spread')!.textContent).toContain('I am sure: 1');
  // A learner's device, and its code read by the instructor's.
  window.location.hash = '#learn/one-cone/answer/1';
  await there('.ask');
  expect($('.spread')).toBeNull();
  await answer(await loadLesson('one-cone'), dealtOf(await loadLesson('one-cone'), 0), 0, 'keyboard');
  const link = (await there('.class-link')).textContent!;
  expect($('.why')).toBeNull();
  expect($('.engine-curve')).toBeNull();
  for (let times = 0; times < 2; times++) {
    window.location.hash = link.slice(link.indexOf('#'));
    await there('.taken');
    window.location.hash = '#learn';
    await there('.path');
  }
  window.location.hash = '#learn/one-cone/class/1';
  await expect.poll(dots, { timeout: 20_000 }).toBe(3);
  for (const is of ['by-sure', 'by-think', 'by-guess'])
    expect(document.querySelectorAll(`.spread [role=img] .${is}`), is).toHaveLength(1);
  expect($('.spread .right')).toBeNull();
  expect($('.sure-and-wrong')).toBeNull();
  await expectAccessible();
  await userEvent.click(browser.getByRole('button', { name: 'Show what happens' }));
  await userEvent.click(browser.getByRole('button', { name: 'Show what is right' }));
  expect($('.spread .right')).not.toBeNull();
  expect($('.slips-made')!.textContent).toContain('2 of 3: right');
  expect($('.slips-made')!.textContent).toMatch(/1 of 3: [^.]*, 1 of them sure/);
  expect($('.sure-and-wrong')!.textContent).toBe('Sure and wrong: 1 of 3.');
  await expectNoSidewaysScroll();
  localStorage.clear();
});

test('a class over a lesson of one’s own: its link carries the lesson to a device that has it not', {
  timeout: 120_000,
}, async () => {
  await browser.viewport(1440, 900);
  localStorage.clear();
  const lesson = { ...(await loadLesson('one-cone')), title: 'Mine, for a class' };
  const id = keepLesson(lesson)!;
  window.location.hash = `#learn/${id}/class/1`;
  await there('.class-typed');
  for (const details of document.querySelectorAll('details')) details.open = true;
  const link = (await there<HTMLTextAreaElement>('.link-to-copy')).value;
  expect(link.length).toBeLessThan(32_000);
  expect($('.class-view')!.textContent).toContain(`${link.length.toLocaleString('en')} of at most 32,000 characters`);
  // A device that has nothing of it.
  forgetLesson(id);
  window.location.hash = link.slice(link.indexOf('#'));
  await there('.ask');
  expect($('.lesson-head h2')!.textContent).toBe('Mine, for a class');
  await answer(lesson, dealtOf(lesson, 0), 0, 'touch');
  const code = (await there('.class-link')).textContent!;
  expect(code.length).toBeLessThan(200);
  // And the instructor's, which counts it, and leaves it out once the lesson is another.
  keepLesson(lesson);
  window.location.hash = code.slice(code.indexOf('#'));
  await there('.taken');
  const counted = () => document.querySelectorAll('.spread [role=img] circle').length;
  window.location.hash = `#learn/${id}/class/1`;
  await expect.poll(counted, { timeout: 20_000 }).toBe(1);
  window.location.hash = '#learn';
  await there('.path');
  keepLesson({ ...lesson, about: 'Another.' });
  window.location.hash = `#learn/${id}/class/1`;
  await expect
    .poll(() => $('.class-view')?.textContent, { timeout: 20_000 })
    .toContain('before this lesson was changed');
  expect(counted()).toBe(0);
  localStorage.clear();
});

test('on paper: two leaves, the answers on theirs alone; other numbers when asked for', async () => {
  window.location.hash = '#learn/two-cones/sheet';
  await there('.paper-leaf.answers');
  const leaves = () => [...document.querySelectorAll('.paper-leaf')].map((leaf) => leaf.textContent!);
  expect(leaves()).toHaveLength(2);
  const before = leaves();
  expect(before[0]).not.toContain('both films open alike');
  expect(before[1]).toContain('both films open alike');
  await expectNoSidewaysScroll();
  await expectAccessible();
  await userEvent.click(browser.getByRole('button', { name: 'Other numbers' }));
  await expect.poll(() => leaves()[1] !== undefined && leaves()[1] !== before[1], { timeout: 20_000 }).toBe(true);
});

test('a lesson of one’s own from a file: taken whole, or refused with every place', async () => {
  window.location.hash = '#learn';
  await userEvent.click(await there('.instructors summary'));
  const lesson = structuredClone(await loadLesson('tenth'));
  giveLesson(JSON.stringify({ ...lesson, where: [{ path: 'seats[0].width', is: '1 +' }] }));
  await expect.poll(() => $('.own-lesson .refused')?.textContent).toContain('where[0].is');
  expect($('.own-lesson .refused')!.textContent).toContain('where[0].path');
  giveLesson(JSON.stringify({ ...lesson, title: 'Mine', day: '2026-11-28' }));
  await there('.ask');
  expect($('.lesson-head h2')!.textContent).toBe('Mine');
  expect($('.keep-lesson')!.textContent).toMatch(/^Given out on 2026-11-28\. It came from somebody else/);
  // Left by a press it is not lost.
  await userEvent.click(browser.getByRole('button', { name: 'All lessons' }));
  await there('.path');
  expect($('.keep-lesson')!.textContent).toContain('“Mine” is not kept');
  await userEvent.click(browser.getByRole('button', { name: 'Open it again' }));
  await there('.ask');
  await userEvent.click(browser.getByRole('button', { name: 'All lessons' }));
  await userEvent.click(browser.getByRole('button', { name: 'Keep it in the list' }));
  await expect.poll(() => $('.own-path')?.textContent).toContain('Mine');
  expect($('.keep-lesson')).toBeNull();
  localStorage.clear();
});

test('the head of the path leads to the next lesson; one left after an answer stands as begun, and is the next', async () => {
  const lesson = await opened('one-cone');
  await answer(lesson, dealtOf(lesson, 0), 0, 'touch');
  await there('.saw-options button');
  window.location.hash = '#learn';
  await there('.path');
  const head = $<HTMLAnchorElement>('.verdict h2 a')!;
  expect(head.closest('h2')!.textContent).toBe(`Begun: ${lesson.title}`);
  expect($('.path a.begun .standing')!.textContent).toBe('begun');
  await userEvent.click(head);
  await expect.poll(() => $('.lesson-head h2')?.textContent).toBe(lesson.title);
  localStorage.clear();
});

test('a lesson left half way goes on there, with the numbers it had; from the start it has others', {
  timeout: 120_000,
}, async () => {
  await browser.viewport(1440, 900);
  const lesson = await opened('one-cone');
  expect(document.activeElement, 'opened, the question is read').toBe($('.round h3.asked'));
  const dealt = dealtOf(lesson, 0);
  // Drawn anew it would have other numbers.
  vi.spyOn(Math, 'random').mockReturnValue(0.5);
  const leftAndOpened = async () => {
    window.location.hash = '#learn';
    await there('.path');
    expect($('.verdict h2')!.textContent).toBe(`Begun: ${lesson.title}`);
    await userEvent.click($('.verdict h2 a')!);
  };
  await answer(lesson, dealt, 0, 'touch');
  await there('.saw-options button');
  await leftAndOpened();
  // What was seen is asked, and what was answered stands.
  await there('.saw-options button');
  expect($('.goes-on')).not.toBeNull();
  await userEvent.click(document.querySelectorAll<HTMLButtonElement>('.saw-options button')[dealt.questions[0]!.saw]!);
  expect((await there('.why h3')).textContent).toMatch(/^Right:/);
  expect($('.goes-on'), 'said until something is done').toBeNull();
  await leftAndOpened();
  await userEvent.click(await there('.why button.main'));
  await there('.ask');
  await leftAndOpened();
  const asked = async () => (await there('.round h3.asked')).textContent!;
  expect(await asked()).toBe(said(lesson.questions[1]!.ask, dealt.questions[1]!, { system: 'metric', way: 'half' }));
  expect($('.lesson-head .fine')!.textContent).toContain('question 2 of');
  await userEvent.click(browser.getByRole('button', { name: 'From the start, with other numbers' }));
  await expect.poll(() => $('.lesson-head .fine')?.textContent).toContain('question 1 of');
  const fresh = deal(lesson, 1 + 7919, () => undefined, rightsOf(lesson, dealt));
  if (!fresh.ok) throw new Error(fresh.message);
  await there('.ask');
  expect($('.story')!.textContent).toBe(
    lesson.story.map((text) => said(text, fresh.value.questions[0]!, { system: 'metric', way: 'half' })).join(''),
  );
  localStorage.clear();
});

test('a class and a sheet have numbers of their own, which stand in their address', { timeout: 60_000 }, async () => {
  localStorage.clear();
  const seedsOf = async (address: string, shown: string, draw: number) => {
    vi.spyOn(Math, 'random').mockReturnValue(draw);
    window.location.hash = address;
    await there(shown);
    const { hash } = window.location;
    window.location.hash = '#learn';
    await there('.path');
    return hash;
  };
  const sheet = '#learn/tenth/sheet';
  expect(await seedsOf(sheet, '.paper-leaf.answers', 0.25)).toBe(`${sheet}/25001`);
  expect(await seedsOf(sheet, '.paper-leaf.answers', 0.5)).toBe(`${sheet}/50001`);
  const room = '#learn/tenth/class';
  expect(await seedsOf(room, '.class-typed', 0.25)).toBe(`${room}/25001`);
  // The class under way is found again; another is made by a press.
  expect(await seedsOf(room, '.class-typed', 0.5)).toBe(`${room}/25001`);
  window.location.hash = room;
  await there('.class-typed');
  await userEvent.click(browser.getByRole('button', { name: 'Other numbers' }));
  await expect.poll(() => window.location.hash).toBe(`${room}/50001`);
  await expect.poll(() => localStorage.getItem('conepair.classNumbers.tenth')).toBe('50001');
  window.location.hash = '#learn';
  await there('.path');
  expect(await seedsOf(room, '.class-typed', 0.75)).toBe(`${room}/50001`);
  localStorage.clear();
});

test('where no film is named as wanted none is called so; figures that are asked for next are said to follow', {
  timeout: 60_000,
}, async () => {
  await browser.viewport(1440, 900);
  const lesson = await opened('touches-first', 'again');
  await answer(lesson, dealtOf(lesson, 0), 0, 'touch');
  await userEvent.click(await there('.saw-options button'));
  await there('.why');
  expect($('.lesson-picture')!.textContent).toContain('No figures yet: the next question asks for one.');
  for (const lens of document.querySelectorAll('.lens')) {
    expect(lens.querySelector('.film-is')!.textContent).toMatch(/^(touches)?$/);
    expect(lens.querySelector('.wanted-edge')).toBeNull();
  }
  await userEvent.click($('.why button.main')!);
  await there('.ask');
  expect($('.lesson-picture')!.textContent).not.toContain('No figures yet');
  localStorage.clear();
});
