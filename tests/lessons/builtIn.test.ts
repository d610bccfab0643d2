/** Every built-in lesson by a hundred seeds: solvable, its reveal the engine's, no mistake taken for another. */
import { describe, expect, test } from 'vitest';
import { ASKED_NAMES, asking } from '../../src/lessons/asked.ts';
import { type Dealt, type DealtQuestion, deal, designOf } from '../../src/lessons/deal.ts';
import type { Lesson } from '../../src/lessons/definition.ts';
import { worked } from '../../src/lessons/formula.ts';
import { recognised } from '../../src/lessons/recognise.ts';
import { answerSaid, said } from '../../src/lessons/sheets.ts';
import { endsOf } from '../../src/lessons/slips.ts';
import { spoken } from '../../src/lessons/template.ts';
import { LONG } from '../long.ts';
import { exampleDesign, LESSON_FILES, lessonOf } from './lessons.ts';

/** Those that plan a cut or run a spindle take seconds for a seed: fewer of them every day. */
const SLOW = /(before|after)\.(cut|run|film|odds)\b/;
const seedsOf = (lesson: Lesson) =>
  SLOW.test(JSON.stringify(lesson)) && LONG === 1 ? (/\.cut\b/.test(JSON.stringify(lesson)) ? 12 : 3) : 100;

/** A hair within an end. */
const inside = (end: number, other: number) => end + (other - end) * 1e-6;

const dealtOf = (lesson: Lesson, seed: number): Dealt => {
  const dealt = deal(lesson, seed, exampleDesign);
  if (!dealt.ok) throw new Error(dealt.message);
  return dealt.value;
};

describe.each(LESSON_FILES)('%s', (file) => {
  const lesson = lessonOf(file);
  const named = (side: string) =>
    ASKED_NAMES.filter((name) => new RegExp(`${side}\\.${name}\\b`).test(JSON.stringify(lesson)));
  const all = Array.from({ length: seedsOf(lesson) }, (_, i) => dealtOf(lesson, 1 + 13 * i));
  const questions = all.flatMap((dealt) =>
    dealt.questions.map((question, i) => ({ dealt, question, asked: lesson.questions[i]! })),
  );

  test('has fresh numbers from most seeds', () => {
    expect(new Set(all.map(({ numbers }) => JSON.stringify(numbers))).size).toBeGreaterThan(all.length / 2);
  });

  test('what is right is what the report of the design says, made anew', () => {
    // All of them in the long run: they are what they were dealt by.
    for (const { dealt, question, asked } of LONG === 1 ? questions.filter((_, i) => i % 7 < 2) : questions) {
      const scope = {
        ...dealt.numbers,
        before: asking()(question.from, named('before')),
        after: asking()(question.to, named('after')),
      };
      const again = worked(asked.answer.right, scope);
      expect(again).toEqual({ ok: true, value: question.right });
      expect(recognised(question.right, question)).toEqual({ kind: 'right' });
    }
  }, 120_000);

  test('every mistake is known by its own formula, and by nothing near it', () => {
    const seen = new Set<string>();
    for (const { question } of questions)
      for (const slip of question.slips) {
        const { index, value } = slip;
        seen.add(`${index}`);
        const [low, high] = endsOf(slip);
        const near =
          typeof value === 'number' ? [value, (low + high) / 2, inside(low, high), inside(high, low)] : [value];
        for (const answer of near) expect(recognised(answer, question)).toEqual({ kind: 'mistake', index });
      }
    expect(seen.size).toBeGreaterThan(0);
    // None is written in vain: with some numbers each can be made.
    for (const [i, { mistakes }] of lesson.questions.entries()) {
      const made = new Set(all.flatMap((dealt) => dealt.questions[i]!.slips.map(({ index }) => index)));
      expect(mistakes.filter((_, k) => !made.has(k)).map(({ name }) => name)).toEqual([]);
    }
  });

  test('a point slipped by one place is named, either way, wherever a number is asked for and it can be told', () => {
    for (const { question, asked } of questions) {
      const { answer, mistakes } = asked;
      if (answer.kind === 'choice' || typeof question.right !== 'number') continue;
      for (const [times, named] of [
        [10, /factor of ten|thou for a tenth/],
        [0.1, /tenth of it/],
      ] as const) {
        const found = recognised(times * question.right, question);
        const name = found.kind === 'mistake' ? mistakes[found.index]!.name : found.kind;
        // Where another slip gives the same it is that one, or neither: never “right”.
        const other = mistakes.some(({ name: one, when }) => named.test(one) && when !== undefined);
        if (!other) expect(name, `${times} times ${question.right}`).toMatch(named);
        expect(name).not.toBe('right');
      }
    }
  });

  test('what is neither right nor a mistake is told as neither', () => {
    for (const { question } of questions)
      if (typeof question.right === 'number') {
        const reach = [{ value: question.right, within: question.within }, ...question.slips].map(
          (one) => endsOf(one)[1],
        );
        const most = Math.max(...reach);
        expect(recognised(most + 0.01 * Math.abs(most) + 1e-9, question)).toEqual({ kind: 'other' });
      }
  });

  test('no step of help has the answer in it', () => {
    for (const { dealt, question, asked } of questions.slice(0, 40))
      for (const system of ['metric', 'inch'] as const) {
        const { answer, help, ask } = asked;
        if (answer.kind !== 'number') continue;
        const speech = { system, way: 'half' } as const;
        const right = answerSaid(answer, question.right, question, speech);
        const asks = said(ask, question, speech);
        for (const step of help)
          if (!asks.includes(right))
            expect(said(step, question, speech), `seed ${dealt.seed}`).not.toMatch(
              new RegExp(`(?<![\\d.])${right.replaceAll('.', '\\.')}`),
            );
      }
  });

  test('every text can be told, in both systems of units, and leaves no hole', () => {
    for (const { dealt, question, asked } of questions.slice(0, 20))
      for (const system of ['metric', 'inch'] as const)
        for (const text of textsOf(lesson, asked, question)) {
          const told = spoken(text, { ...question.scope, answer: question.right }, { system, way: 'half' });
          if (!told.ok) throw new Error(`seed ${dealt.seed}: ${told.message}`);
          expect(told.value).not.toMatch(/[{}]|NaN|Infinity|undefined|−0(\.0+)? /);
        }
  });
});

const textsOf = (lesson: Lesson, asked: Lesson['questions'][number], { slips }: DealtQuestion): string[] => [
  ...(asked === lesson.questions[0] ? [...lesson.story, lesson.carry] : []),
  asked.ask,
  asked.because,
  asked.saw.ask,
  ...asked.saw.options.map(({ text }) => text),
  ...asked.help,
  ...(asked.answer.kind === 'choice' ? asked.answer.options.map(({ text }) => text) : []),
  ...(asked.view.notes ?? []).map(({ text }) => text),
  ...slips.flatMap(({ index }) => [asked.mistakes[index]!.says, asked.mistakes[index]!.cost]),
];

/** What calls a film wanted: a text that says so, or a place of the design where it is put. */
const NAMES_WANTED = /wanted|\.film\.target/;

test.each(LESSON_FILES)('%s: a film is called too thick or as wanted only where the lesson names one', (file) => {
  const lesson = lessonOf(file);
  const design = designOf(lesson, exampleDesign);
  if (!design.ok) throw new Error(design.message);
  const drawn = lesson.questions.some(({ view }) => view.section || view.lenses);
  const wants = design.value.seats.some(({ film }) => film !== undefined);
  const { design: _, ...said } = lesson;
  if (drawn && wants) expect(JSON.stringify(said)).toMatch(NAMES_WANTED);
});
