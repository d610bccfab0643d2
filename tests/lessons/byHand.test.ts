/**
 * Who computes along by hand, with nothing but the figures that a lesson tells, comes to the figure it tells as
 * right: in both systems of units, for a hundred seeds.
 */
import { describe, expect, test } from 'vitest';
import { fineUnit } from '../../src/design/units.ts';
import { type DealtQuestion, deal } from '../../src/lessons/deal.ts';
import type { Question, ToldAs } from '../../src/lessons/definition.ts';
import { type Scope, worked } from '../../src/lessons/formula.ts';
import { answerSaid, said } from '../../src/lessons/sheets.ts';
import { holesOf, told } from '../../src/lessons/template.ts';
import { exampleDesign, LESSON_FILES, lessonOf } from './lessons.ts';

/** The figures of a text, in their order. */
const figuresIn = (text: string) => (text.match(/(?<![\d.])\d+(?:\.\d+)?/g) ?? []).map(Number);
const root = (a: number, b: number) => Math.sqrt(a * a + b * b);

/** What the hand does with the figures of why it is so and of the question, by lesson and question. */
const HAND: Record<string, (why: number[], ask: number[]) => number> = {
  'one-cone 1': ([, sine, travel]) => travel! * sine!,
  'one-cone 2': ([film, sine]) => film! / sine!,
  'two-cones 1': ([, , ratio, film]) => film! / ratio!,
  'two-cones 2': ([, travel, sine]) => travel! * sine!,
  'touches-first 2': ([a, b, , sine]) => Math.abs(a! - b!) * sine!,
  'no-copy 1': ([, travel, sine]) => travel! * sine!,
  'no-copy 2': ([a, b]) => a! - b!,
  'plan-a-cut 1': ([, cosine], [, metal]) => (2 * metal!) / cosine!,
  'plan-a-cut 2': ([metal, sine]) => metal! / sine!,
  'real-pair 1': ([half, tangent]) => half! / tangent!,
  'real-pair 2': ([, , travel, sine]) => travel! * sine!,
  'real-pair 3': ([, , left, sine]) => left! * sine!,
  'odds 1': ([a, b]) => root(a!, b!),
  'odds 2': ([a, b]) => root(a!, b!),
};
/** Where no formula leads to what is right, the steps of help do, as near as counts. */
const BY_HELP: Record<string, (help: number[][]) => number> = {
  'film-carries 1': ([, , last]) => last![1]! - last![0]!,
  'film-carries 2': ([, , last]) => last![0]!,
  'warms-up 1': ([, , last]) => (last![0]! * last![1]!) / last![2]!,
  'warms-up 2': ([, , last]) => last![2]! - (last![1]! - last![0]!),
};
/** Every step of a text that says what one figure over another makes. */
const OVER = /([\d.]+) (?:µm|tenths) (?:over|divided by) ([\d.]+) (?:is|makes) ([\d.]+) (µm|tenths)/g;

const SLOW = /(before|after)\.(cut|run|odds)\b/;
describe.each(LESSON_FILES)('%s', (file) => {
  const lesson = lessonOf(file);
  const seeds = SLOW.test(JSON.stringify(lesson)) ? 12 : 100;
  const all = Array.from({ length: seeds }, (_, seed) => deal(lesson, seed + 1, exampleDesign)).flatMap((found) =>
    found.ok ? [found.value] : [],
  );

  test.each(lesson.questions.map((question, i) => [`${file} ${i + 1}`, question, i] as const))(
    '%s: the figures told lead to the one told as right',
    (name, question, i) => {
      expect(all).toHaveLength(seeds);
      for (const { questions, seed } of all)
        for (const system of ['metric', 'inch'] as const) byHand(name, question, questions[i]!, system, seed);
    },
  );
});

describe.each(LESSON_FILES)('%s', (file) => {
  const lesson = lessonOf(file);
  test.each(['metric', 'inch'] as const)('a number stands in a question in one form, in %s units', (system) => {
    for (const seed of SLOW.test(JSON.stringify(lesson)) || /\.run\b/.test(JSON.stringify(lesson))
      ? [3]
      : [3, 16, 29]) {
      const found = deal(lesson, seed, exampleDesign);
      if (!found.ok) throw new Error(found.message);
      for (const [i, question] of lesson.questions.entries()) {
        const { scope } = found.value.questions[i]!;
        const forms = formsOf([...(i === 0 ? lesson.story : []), ...textsOf(question)], scope, system);
        // Within one text a figure may be led to another that it happens to be, by one with fewer decimals.
        for (const a of forms)
          for (const b of forms)
            if (a.of !== b.of && Math.abs(a.value - b.value) <= 1e-6 * Math.abs(a.value) && unitOf(a) === unitOf(b))
              expect(a.form, `question ${i + 1}`).toBe(b.form);
      }
    }
  });
});

const textsOf = ({ ask, because, help, saw, view: { notes = [] }, mistakes }: Question): string[] => [
  ask,
  because,
  saw.ask,
  ...help,
  ...notes.flatMap(({ text, after = '' }) => [text, after]),
  ...mistakes.flatMap(({ says, cost }) => [says, cost]),
];
/** `of`: which of the texts */
interface Form {
  of: number;
  value: number;
  form: string;
}
const unitOf = ({ form }: Form) => form.replaceAll(/[\d.]/g, '');

/** Every figure of texts and how it is told; what hangs on the answer given is the learner's own. */
const formsOf = (texts: string[], scope: Scope, system: 'metric' | 'inch'): Form[] =>
  texts.flatMap((text, of) =>
    holesOf(text).flatMap(({ formula, as }) => {
      const found = worked(formula, scope);
      return found.ok && typeof found.value === 'number'
        ? [{ of, value: found.value, form: told(found.value, (as ?? 'number') as ToldAs, { system, way: 'half' }) }]
        : [];
    }),
  );

function byHand(name: string, question: Question, dealt: DealtQuestion, system: 'metric' | 'inch', seed: number) {
  const speech = { system, way: 'half' } as const;
  const why = said(question.because, dealt, speech);
  for (const text of [why, ...question.help.map((step) => said(step, dealt, speech))])
    for (const [step, over, under, told] of text.matchAll(OVER))
      expect(off(Number(over) / Number(under), told!), `${step}, seed ${seed}`).toBeLessThan(STEP);
  const help = BY_HELP[name];
  if (help) {
    const steps = question.help.map((step) => figuresIn(said(step, dealt, speech)));
    const taken =
      name === 'film-carries 2' ? figuresIn(said(question.ask, dealt, speech)).at(-1)! - help(steps) : help(steps);
    const [right, near] = [dealt.right, dealt.within].map((value) => answerFigure(question, Number(value), system));
    expect(Math.abs(taken - right!), `${name}, seed ${seed}`).toBeLessThan(near!);
    if (name.startsWith('film-carries')) {
      // Figure for figure: two that are told lead to the third.
      const told = answerSaid(question.answer, dealt.right, dealt, speech).match(/[\d.]+/)![0];
      expect(off(taken, told), `${name}, seed ${seed}`).toBeLessThan(EDGE);
    }
  }
  const hand = HAND[name];
  if (!hand) return;
  const told = answerSaid(question.answer, dealt.right, dealt, speech).match(/[\d.]+/)![0];
  const found = hand(figuresIn(why), figuresIn(said(question.ask, dealt, speech)));
  expect(off(found, told), `${name}, seed ${seed}: ${why}`).toBeLessThan(ANSWER);
}

/** In the unit that it is told in: a film, or by how much it gets warmer. */
const answerFigure = ({ answer }: Question, value: number, system: 'metric' | 'inch'): number =>
  answer.kind === 'number' && answer.as === 'warmer'
    ? value * (system === 'inch' ? 9 / 5 : 1)
    : value / fineUnit(system).size;

/** In units of the last decimal told. */
const off = (value: number, told: string) => Math.abs(value - Number(told)) * 10 ** (told.split('.')[1] ?? '').length;
/** An answer is met but for the edge of its rounding; a step on the way has more figures than the answer. */
const ANSWER = 0.55;
const STEP = 1.5;
const EDGE = 0.01;
