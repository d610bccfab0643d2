/** A lesson in the making: a new one goes over every example, and what is wrong is told at its place. */
import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { carriedText, lessonLink } from '../../src/app/screens/learn/ownLessons.ts';
import { LONGEST_LINK } from '../../src/app/takeAlong/link.ts';
import { deal } from '../../src/lessons/deal.ts';
import type { Lesson } from '../../src/lessons/definition.ts';
import { draftOf, exampleAt, newLesson, pressedIn } from '../../src/lessons/draft.ts';
import { numbersIn } from '../../src/lessons/named.ts';
import { triedLesson } from '../../src/lessons/tries.ts';
import { validateLesson } from '../../src/lessons/validate.ts';
import { fitOf } from '../../src/report/fit/fitOf.ts';
import { exampleDesign, LESSON_FILES, lessonOf } from './lessons.ts';

const designs = readdirSync(new URL('../../assets/designs', import.meta.url)).map((file) => exampleDesign(file)!);
const made = () => newLesson(exampleDesign('correct.conepair.json')!);

test('a new lesson goes over every example, as it is', () => {
  expect(designs.length).toBeGreaterThan(6);
  for (const design of designs) {
    const lesson = newLesson(design);
    expect(validateLesson(lesson, exampleDesign, false)).toMatchObject({ ok: true });
    expect(deal(lesson, 1, exampleDesign)).toMatchObject({ ok: true });
  }
});

/** Its question made one of a choice. */
const asChoice = (lesson: Lesson, right: string) =>
  Object.assign(lesson.questions[0]!, {
    answer: {
      kind: 'choice',
      label: 'It',
      options: [
        { key: 'more', text: 'grows' },
        { key: 'less', text: 'shrinks' },
      ],
      right,
    },
    mistakes: [{ ...lesson.questions[0]!.mistakes[0]!, is: "'less'" }],
  });

test.each<[string, (lesson: Lesson) => void, string, RegExp]>([
  [
    'two that coincide',
    (l) => (l.questions[0]!.mistakes[0]!.is = 'right'),
    'questions[0].mistakes[0].is',
    /told apart/,
  ],
  [
    'a value that no report has',
    (l) => (l.questions[0]!.mistakes[0]!.is = 'after.fit.nothing'),
    'questions[0].mistakes[0].is',
    /there is no/,
  ],
  [
    'what is right has no value',
    (l) => (l.questions[0]!.answer.right = '1 / 0'),
    'questions[0].answer.right',
    /finite/,
  ],
  [
    'what is let go has none',
    (l) => (l.questions[0]!.release[0]!.is = 'x'),
    'questions[0].release[0].is',
    /there is no/,
  ],
  ['a place has none', (l) => l.where.push({ path: 'position', is: 'x' }), 'where[0].is', /there is no/],
  [
    'nothing that was seen is so',
    (l) => (l.questions[0]!.saw.options[0]!.is = 'false'),
    'questions[0].saw',
    /0 are so/,
  ],
  [
    'no answer is near enough to be right',
    (l) => Object.assign(l.questions[0]!.answer, { within: '-0.04 * abs(right)' }),
    'questions[0].answer.within',
    /above 0/,
  ],
  [
    'what is right is none of the choices',
    (l) => asChoice(l, "'most'"),
    'questions[0].answer.right',
    /none of the choices/,
  ],
  [
    'a slip gives none of them',
    (l) => {
      asChoice(l, "'more'").mistakes[0]!.is = "'mroe'";
    },
    'questions[0].mistakes[0].is',
    /none of the choices/,
  ],
  ['a condition is never so', (l) => l.keep.push('by > 1'), 'keep[0]', /is not so/],
])('%s: told at its field', (_, edit, at, message) => {
  const lesson = made();
  edit(lesson);
  const { seeds: tried } = triedLesson(lesson, 3);
  expect(tried.map(({ seed }) => seed)).toEqual([1, 2, 3]);
  for (const { fault } of tried) expect(fault).toMatchObject({ at, message: expect.stringMatching(message) });
});

test('a film is called too thin or as wanted only where the lesson names one, over whatever example', () => {
  const dealt = (lesson: Lesson) => {
    const found = deal(lesson, 1, exampleDesign);
    if (!found.ok) throw new Error(found.message);
    return found.value.questions[0]!;
  };
  const plain = made();
  expect((plain.design as { seats: { film?: unknown }[] }).seats.every(({ film }) => film)).toBe(true);
  for (const design of [dealt(plain).from, dealt(plain).to])
    expect(design.seats.map(({ film }) => film)).toEqual(design.seats.map(() => undefined));
  const named = { ...made(), story: ['A film of {design.seats[0].film.target|fine} is wanted.'] };
  expect(dealt(named).to.seats.every(({ film }) => film !== undefined)).toBe(true);
  expect(dealt(named).right).toBe(dealt(plain).right);
});

test('an empty text is a draft still; another shape is none', () => {
  expect(draftOf({ ...made(), title: '' })).not.toBeNull();
  expect(draftOf({ ...made(), questions: 'none' })).toBeNull();
  expect(draftOf({ ...made(), colour: 'red' })).toBeNull();
  expect(draftOf(null)).toBeNull();
});

test('over a job that was left pressed in, the spindle stands where it first touches', () => {
  for (const design of designs) {
    const { seats } = fitOf(design);
    const in5 = { ...design, position: (fitOf(design).firstPosition ?? 0) - 0.005 };
    expect(pressedIn(in5), design.title ?? '').toBe(true);
    const begun = newLesson(in5).design as typeof design;
    expect(Math.min(...fitOf(begun).seats.map(({ leastFilm }) => leastFilm ?? 1))).toBeCloseTo(0, 9);
    // Any other is taken as it was left.
    const free = seats.every(({ leastFilm }) => leastFilm === null || leastFilm >= 0);
    if (free) expect((newLesson(design).design as typeof design).position).toBe(design.position ?? 0);
  }
});

test('the example shown at a wrong formula is right there', () => {
  const { questions } = made();
  for (const [path, put] of [
    ['questions[0].answer.right', (l: Lesson, text: string) => (l.questions[0]!.answer.right = text)],
    ['questions[0].mistakes[0].is', (l: Lesson, text: string) => (l.questions[0]!.mistakes[0]!.is = text)],
    ['questions[0].mistakes[0].when', (l: Lesson, text: string) => (l.questions[0]!.mistakes[0]!.when = text)],
    ['questions[0].release[0].is', (l: Lesson, text: string) => (l.questions[0]!.release[0]!.is = text)],
    ['questions[0].saw.options[0].is', (l: Lesson, text: string) => (l.questions[0]!.saw.options[0]!.is = text)],
    ['keep[0]', (l: Lesson, text: string) => (l.keep = [text])],
    ['questions[0].because', (l: Lesson, text: string) => (l.questions[0]!.because = text)],
  ] as const) {
    const lesson = made();
    put(lesson, exampleAt(lesson, path));
    expect(validateLesson(lesson, exampleDesign, false), path).toMatchObject({ ok: true });
    expect(deal(lesson, 1, exampleDesign), path).toMatchObject({ ok: true });
  }
  expect(questions).toHaveLength(1);
});

test('places of a design at which a number stands', () => {
  expect(numbersIn(designs[0]!)).toContain('seats[0].bush.diameter');
});

test('a link carries a lesson and gives it back; one cut off gives none; one too long is not made', () => {
  for (const file of LESSON_FILES) {
    const lesson = { ...lessonOf(file), design: designs[0] };
    const link = lessonLink(lesson, 'https://example.org/');
    expect(link, file).not.toBeNull();
    const behind = link!.slice(link!.indexOf('#learn/') + 7);
    expect(JSON.parse(carriedText(behind)!)).toEqual(JSON.parse(JSON.stringify(lesson)));
    expect(carriedText(behind.slice(0, -9))).toBeNull();
  }
  const noise = Array.from({ length: LONGEST_LINK }, (_, i) => ((i * 2654435761) >>> 0).toString(36)).join('');
  expect(lessonLink({ ...made(), carry: noise }, 'https://example.org/')).toBeNull();
});
