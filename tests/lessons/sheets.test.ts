/** A lesson on paper, and the answers of a class: what stands on which leaf, and what a link carries. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Design } from '../../src/design/definition.ts';
import { type Right, rightsOf } from '../../src/lessons/apart.ts';
import {
  CALLED_OUT,
  type ClassAnswer,
  classAnswerOf,
  fragmentOf,
  MOST_ANSWERS,
  sureAndRight,
  withAnswer,
} from '../../src/lessons/classAnswer.ts';
import { deal, dealOnce, designOf } from '../../src/lessons/deal.ts';
import { recognised } from '../../src/lessons/recognise.ts';
import { seedOf } from '../../src/lessons/runner.ts';
import { nearSaid, notToScale, sheetRound, shownOnPaper } from '../../src/lessons/sheets.ts';
import { fitOf } from '../../src/report/fit/fitOf.ts';
import { exampleDesign, LESSON_FILES, lessonOf } from './lessons.ts';

const QUICK = ['tenth', 'one-cone', 'two-cones', 'touches-first', 'wedge', 'no-copy', 'blue', 'rolls', 'real-pair'];
const hundred = Array.from({ length: 100 }, (_, i) => i + 1);
const roundOf = (file: string, seed: number, system: 'metric' | 'inch' = 'metric') => {
  const lesson = lessonOf(file);
  const dealt = deal(lesson, seed, exampleDesign);
  if (!dealt.ok) throw new Error(dealt.message);
  return { lesson, round: sheetRound(lesson, dealt.value, { system, way: 'half' }) };
};

describe.each(QUICK)('%s on paper', (file) => {
  test('the work sheet gives no answer away, and the answer sheet has every one with its slips', () => {
    for (const seed of [1, 5, 9]) {
      const { lesson, round } = roundOf(file, seed);
      expect(round.asked).toHaveLength(lesson.questions.length);
      for (const [i, { right, slips }] of round.answered.entries()) {
        const { answer } = lesson.questions[i]!;
        const asked = [...round.story, round.asked[i]!.ask].join(' ');
        if (answer.kind === 'choice') expect(round.asked[i]!.choices).toContain(right);
        else expect(asked).not.toContain(right);
        expect(new Set([right, ...slips.map(({ gives }) => gives)]).size).toBe(1 + slips.length);
      }
    }
  });

  test('on one sheet, and from one round to the next, no two numbers asked for are the same as they are told', () => {
    const lesson = lessonOf(file);
    for (let sheet = 1; sheet <= 25; sheet++) {
      const before: Right[] = [];
      const told: string[] = [];
      for (const round of [0, 1, 2]) {
        const dealt = deal(lesson, seedOf(31 * sheet, round), exampleDesign, before);
        if (!dealt.ok) throw new Error(dealt.message);
        for (const one of before)
          for (const other of rightsOf(lesson, dealt.value))
            if (one.as === other.as && one.chosen === undefined)
              expect(Math.abs(one.right - other.right)).toBeGreaterThan(one.within);
        before.push(...rightsOf(lesson, dealt.value));
        const { answered } = sheetRound(lesson, dealt.value, { system: 'metric', way: 'half' });
        told.push(
          ...answered.filter((_, i) => lesson.questions[i]!.answer.kind !== 'choice').map(({ right }) => right),
        );
      }
      expect(new Set(told).size, `sheet ${31 * sheet}: ${told.join(', ')}`).toBe(told.length);
    }
  });

  test('of forty seeds eight are given at least: numbers that hardly ever go together are not fresh', () => {
    const lesson = lessonOf(file);
    const design = designOf(lesson, exampleDesign);
    if (!design.ok) throw new Error(design.message);
    const given = Array.from({ length: 40 }, (_, k) => dealOnce(lesson, design.value, k + 1)).filter(({ ok }) => ok);
    expect(given.length).toBeGreaterThanOrEqual(8);
  });

  test('the same seed makes the same sheet, another one another', () => {
    expect(roundOf(file, 3)).toEqual(roundOf(file, 3));
    expect(roundOf(file, 40).round.answered).not.toEqual(roundOf(file, 3).round.answered);
  });
});

describe.each(LESSON_FILES)('%s: a work sheet answers none of its questions', (file) => {
  const lesson = lessonOf(file);
  const seeds = /(before|after)\.(cut|run|film|odds)\b/.test(JSON.stringify(lesson)) ? [1, 2] : hundred;
  const all = seeds.map((seed) => {
    const found = deal(lesson, seed, exampleDesign);
    if (!found.ok) throw new Error(found.message);
    return found.value;
  });

  test('no text of it tells a number that another question asks for', () => {
    for (const dealt of all)
      for (const system of ['metric', 'inch'] as const) {
        const { story, asked, answered } = sheetRound(lesson, dealt, { system, way: 'half' });
        for (const [j, { right }] of answered.entries()) {
          if (lesson.questions[j]!.answer.kind === 'choice') continue;
          const figure = new RegExp(`(?<![\\d.])${right.replaceAll('.', '\\.')}(?!\\d)`);
          for (const [i, { ask }] of asked.entries())
            expect(`${story.join(' ')} ${ask}`, `seed ${dealt.seed}: ${j + 1} in ${i + 1}`).not.toMatch(figure);
        }
      }
  });

  test('the words of a question hang on what is given, and on no choice that was right before', () => {
    const words = (text: string) => text.replaceAll(/[\d.]+/g, '#');
    const byGiven = new Map<string, string>();
    for (const dealt of all) {
      const { story, asked } = sheetRound(lesson, dealt, { system: 'metric', way: 'half' });
      const [given, later] = [words(story.join(' ')), words(asked.map(({ ask }) => ask).join(' '))];
      expect(later, `seed ${dealt.seed}`).toBe(byGiven.get(given) ?? later);
      byGiven.set(given, later);
    }
  });

  test('no drawing of it shows what a question before it lets go', () => {
    for (const { seed, questions } of all)
      for (const i of questions.keys()) {
        const { design } = shownOnPaper(lesson, questions, i);
        for (const [j, { from, to, right, within }] of questions.slice(0, i).entries()) {
          const films = (one: Design) => fitOf(one).seats.map(({ leastFilm }) => leastFilm ?? 0);
          for (const [seat, film] of films(design).entries()) {
            const changed = Math.abs(films(to)[seat]! - films(from)[seat]!) > 1e-6;
            const where = `seed ${seed}: question ${j + 1} in the drawing of ${i + 1}`;
            if (changed && lesson.questions[i]!.set === undefined)
              expect(Math.abs(film - films(to)[seat]!), where).toBeGreaterThan(1e-7);
            const given = films(questions[0]!.from).some((one) => Math.abs(one - film) <= 1e-6);
            if (typeof right === 'number' && !given && Math.abs(film) > 1e-6)
              expect(Math.abs(film - right), where).toBeGreaterThan(within);
          }
        }
      }
  });
});

describe('an answer in a link', () => {
  const some = fc.record<ClassAnswer>({
    lesson: fc.constantFrom('tenth', 'one-cone'),
    seed: fc.integer({ min: 1, max: 999_999_999 }),
    question: fc.integer({ min: 0, max: 3 }),
    answer: fc.oneof(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((x) => Number((x || 0).toPrecision(9))),
      fc.constantFrom('shallow', 'both'),
    ),
    sure: fc.constantFrom(...CALLED_OUT),
    mark: fc.constantFrom('k3f9', 'a', 'zz09'),
  });
  const ofOwn = fc.tuple(some, fc.constantFrom('1a2b3c', 'z')).map(([one, of]) => ({ ...one, lesson: 'own-mine', of }));

  test('is read as it was made, and nothing else of it is there', () => {
    fc.assert(
      fc.property(fc.oneof(some, ofOwn), (one) => {
        expect(classAnswerOf(fragmentOf(one))).toEqual(one);
      }),
      { numRuns: 300, seed: 3 },
    );
  });

  test.each([
    '',
    'one-cone',
    'one-cone/class/1',
    'one-cone/class/1/answer=0.1,think,q0',
    'one-cone/class/1/answer=0.1,certain,q0,k3',
    'own-mine/class/1/answer=0.1,think,q0,k3,',
    'own-mine/class/1/answer=0.1,think,q0,k3,a,b',
    'one-cone/class/1/answer=<b>,think,q0,k3',
    'one-cone/class/1/answer=Hello there,think,q0,k3',
    '../x/class/1/answer=0.1,think,q0,k3',
    `one-cone/class/1/answer=0.1,think,q0,k3${'9'.repeat(200)}`,
  ])('%s is none', (fragment) => expect(classAnswerOf(fragment)).toBeNull());

  test('counts once, however often it is opened; a class has its bounds', () => {
    const one = classAnswerOf('one-cone/class/1/answer=0.015,guess,q0,k3')!;
    expect(withAnswer(withAnswer([], one), one)).toHaveLength(1);
    expect(withAnswer(withAnswer([], one), { ...one, question: 1 })).toHaveLength(2);
    const full = Array.from({ length: MOST_ANSWERS }, (_, i) => ({ ...one, mark: `m${i}` }));
    expect(withAnswer(full, one)).toHaveLength(MOST_ANSWERS);
  });

  test('what being sure was worth in a class: everybody who said so counts once, nobody who was not asked', () => {
    fc.assert(
      fc.property(fc.array(some, { maxLength: 40 }), (answers) => {
        const isRight = ({ seed }: ClassAnswer) => seed % 2 === 0;
        const all = sureAndRight(answers, isRight);
        const asked = answers.filter(({ sure }) => sure !== 'unsaid');
        const sum = (of: readonly number[]) => of.reduce((a, b) => a + b, 0);
        expect(sum(all.map(({ of }) => of))).toBe(asked.length);
        expect(sum(all.map(({ right }) => right))).toBe(asked.filter(isRight).length);
        for (const { sure, right, of } of all) {
          expect(of).toBe(answers.filter((one) => one.sure === sure).length);
          expect(right).toBeLessThanOrEqual(of);
        }
      }),
      { numRuns: 200, seed: 5 },
    );
  });
});

describe.each(LESSON_FILES)('%s', (file) => {
  const lesson = lessonOf(file);

  test('a step that says how near is right says what counts', () => {
    for (const { answer, help } of lesson.questions)
      for (const step of help) {
        const said = /Up to (\d+) in 100 off is right/.exec(step)?.[1];
        if (said) expect(answer.kind !== 'choice' && answer.within).toBe(`0.0${said} * right`);
      }
  });
});

test('how far off an answer may be is told in its own unit, and is just what counts', () => {
  const lesson = lessonOf('two-cones');
  const dealt = deal(lesson, 3, exampleDesign);
  if (!dealt.ok) throw new Error(dealt.message);
  for (const [i, { answer }] of lesson.questions.entries()) {
    const mine = dealt.value.questions[i]!;
    if (answer.kind === 'choice') {
      expect(nearSaid(answer, mine, { system: 'metric', way: 'half' })).toBe('');
      continue;
    }
    expect(nearSaid(answer, { ...mine, within: 0.00025 }, { system: 'metric', way: 'half' })).toContain(
      answer.kind === 'number' && answer.as !== 'fine' && answer.as !== 'sided' ? 'off is right' : '0.25 µm',
    );
    const right = Number(mine.right);
    expect(recognised(right + 0.999 * mine.within, mine).kind).toBe('right');
    expect(recognised(right + 1.001 * mine.within, mine).kind).not.toBe('right');
  }
});

test('an answer sheet says how far off is right still, as the screen does', () => {
  for (const file of QUICK) {
    const { lesson, round } = roundOf(file, 5);
    const dealt = deal(lesson, 5, exampleDesign);
    if (!dealt.ok) throw new Error(dealt.message);
    for (const [i, { near }] of round.answered.entries()) {
      const { answer } = lesson.questions[i]!;
      expect(near).toBe(nearSaid(answer, dealt.value.questions[i]!, { system: 'metric', way: 'half' }));
      if (answer.kind !== 'choice') expect(near).toMatch(/^Up to .*\d.* off is right\.$/);
    }
  }
});

describe('a picture on paper is not measured for its answer', () => {
  test.each(hundred)('a cone whose angle is asked for leans otherwise by degrees, seed %i', (seed) => {
    const found = deal(lessonOf('rolls'), seed, exampleDesign);
    if (!found.ok) throw new Error(found.message);
    const { from, right } = found.value.questions[0]!;
    for (const { journal, bush } of notToScale(from, Number(right)).seats)
      for (const { halfAngle } of [journal, bush]) expect(Math.abs(halfAngle - Number(right))).toBeGreaterThan(3);
  });
  test('where a gap stays open is no larger than it is, in both questions of the wrong angle', () => {
    const { lesson } = roundOf('blue', 3);
    const found = deal(lesson, 3, exampleDesign);
    if (!found.ok) throw new Error(found.message);
    for (const at of [0, 1]) expect(shownOnPaper(lesson, found.value.questions, at).asIs).toBe(true);
    expect(shownOnPaper(lessonOf('two-cones'), found.value.questions, 0).asIs).toBe(false);
  });
});
