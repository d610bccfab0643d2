/**
 * What an answer costs: told by the learner's own number, and worked by the engine of the design that it makes. Carried
 * out, what is right gives just what was wanted.
 */
import { describe, expect, test } from 'vitest';
import { type DealtQuestion, deal } from '../../src/lessons/deal.ts';
import { worked } from '../../src/lessons/formula.ts';
import { answerSaid, costSaid, NO_PAIR } from '../../src/lessons/sheets.ts';
import { spoken } from '../../src/lessons/template.ts';
import { triedBy } from '../../src/lessons/tried.ts';
import { exampleDesign, LESSON_FILES, lessonOf } from './lessons.ts';

const SLOW = /(before|after)\.(cut|run|film|odds)\b/;
const all = LESSON_FILES.flatMap((file) => {
  const lesson = lessonOf(file);
  const seeds = SLOW.test(JSON.stringify(lesson)) ? [1] : [1, 14, 27, 40];
  const dealt = seeds.map((seed) => {
    const found = deal(lesson, seed, exampleDesign);
    if (!found.ok) throw new Error(found.message);
    return found.value;
  });
  return lesson.questions.map((question, i) => ({
    is: `${file} ${i + 1}`,
    question,
    all: dealt.map(({ questions }) => questions[i]!),
  }));
});
const numbers = all.filter(({ question }) => question.answer.kind !== 'choice');

/** Every slip, and two answers that are none. */
const wrong = ({ right, slips }: DealtQuestion): number[] => [
  ...slips.map(({ value }) => Number(value)),
  1.37 * Number(right),
  0.63 * Number(right),
];

test.each(numbers)('$is tells what the number given would have cost', ({ question, all: dealt }) => {
  expect(question.cost).toBeDefined();
  for (const mine of dealt)
    for (const system of ['metric', 'inch'] as const) {
      const speech = { system, way: 'half' } as const;
      const told = wrong(mine).map((answer) => {
        const tried = triedBy(question, mine, answer);
        const cost = costSaid(question, mine, answer, tried?.report, speech);
        expect(cost).not.toMatch(/[{}]|NaN|Infinity|undefined/);
        const own = answerSaid(question.answer, answer, mine, speech);
        // What is told as ± has no sign.
        expect(cost.includes(own) || cost.includes(own.replace('−', '')), `${own} in “${cost}”`).toBe(true);
        // And by a figure beside it.
        if (!cost.endsWith(NO_PAIR)) expect(cost.match(/\d[\d.,]*/g)!.length).toBeGreaterThan(1);
        return cost;
      });
      // Another answer, another cost, as far as the two are told apart at all.
      const pairs = told.filter((cost) => !cost.endsWith(NO_PAIR));
      const owns = wrong(mine).map((answer) => answerSaid(question.answer, answer, mine, speech));
      expect(new Set(told).size).toBeGreaterThanOrEqual(new Set(owns).size);
      expect(pairs.length).toBeGreaterThan(told.length / 2);
    }
});

test.each(numbers)('$is works the cost by the engine', ({ question }) => {
  const by = question.try || question.answer.kind === 'move' ? /tried\./ : /(after|before)\.|\bright\b/;
  expect(question.cost).toMatch(by);
});

/** What each question that asks for an act wants: of the design made by what is right. */
const WANTED: Record<string, readonly [is: string, of: string]> = {
  'tenth 2': ['tried.fit.seats[0].leastFilm', 'want'],
  'one-cone 1': ['tried.fit.seats[0].leastFilm', 'right'],
  'one-cone 2': ['tried.fit.seats[0].leastFilm', 'want'],
  'two-cones 1': ['tried.fit.seats.steep.leastFilm', 'before.fit.seats.steep.leastFilm + open'],
  'two-cones 2': ['tried.fit.seats.shallow.leastFilm', 'before.fit.seats.shallow.leastFilm + next'],
  'touches-first 2': ['max(abs(tried.fit.seats.shallow.leastFilm), abs(tried.fit.seats.steep.leastFilm))', '0'],
  'wedge 2': ['tan(tried.design.seats[0].bush.halfAngle)', 'friction'],
  'no-copy 1': ['tried.fit.seats.shallow.leastFilm', 'film'],
  'no-copy 2': ['tried.fit.seats.steep.leastFilm', 'film'],
  'blue 2': ['tried.fit.seats[0].greatestFilm - tried.fit.seats[0].leastFilm', '0'],
  'rolls 1': ['tried.fit.seats[0].greatestFilm - tried.fit.seats[0].leastFilm', '0'],
  'plan-a-cut 1': ['tried.fit.seats.steep.leastFilm', '0.0025'],
  'plan-a-cut 2': [
    'tried.fit.seats.steep.leastFilm - tried.fit.position * tried.fit.seats.steep.sensitivity',
    '0.0025',
  ],
  'real-pair 1': ['tried.fit.seats.steep.leastFilm', '0'],
  'real-pair 2': ['tried.fit.seats.steep.leastFilm', 'film'],
  'real-pair 3': ['tried.fit.seats.steep.leastFilm', 'film'],
};
/** mm: a thousandth of a micrometre, and less than anybody is told */
const NOTHING = 2e-6;

describe('what is right, carried out, is what was wanted', () => {
  const acts = numbers.filter(({ question }) => question.try || question.answer.kind === 'move');
  test('of every question that has an act', () => {
    expect(acts.map(({ is }) => is).sort()).toEqual(Object.keys(WANTED).sort());
  });
  test.each(acts)('$is', ({ is, question, all: dealt }) => {
    for (const mine of dealt) {
      const tried = triedBy(question, mine, mine.right);
      const scope = { ...mine.scope, ...tried, tried: { ...tried!.report, design: tried!.design } };
      const [got, wanted] = WANTED[is]!.map((formula) => worked(formula, scope));
      if (!got!.ok || !wanted!.ok) throw new Error(JSON.stringify([got, wanted]));
      expect(Math.abs(Number(got!.value) - Number(wanted!.value))).toBeLessThan(NOTHING);
    }
  });
});

test('the numbers of a lesson, by hand: a dial that stops at half takes half the metal off', () => {
  const { question, all: dealt } = all.find(({ is }) => is === 'plan-a-cut 1')!;
  const mine = dealt[0]!;
  const right = Number(mine.right);
  const film = (answer: number) =>
    Number(
      (triedBy(question, mine, answer)!.report as { fit: { seats: { leastFilm: number }[] } }).fit.seats[1]!.leastFilm,
    );
  const steep = Number(mine.scope.steep);
  // Of the metal that is left on, the film has just so much less.
  expect(film(right) - film(right / 2)).toBeCloseTo((right / 4) * Math.cos((steep * Math.PI) / 180), 6);
});

test('a cone that was to be pushed softly or hard does in the cost what it does', () => {
  for (const { question, all: dealt } of all.filter(({ is }) => is === 'wedge 1'))
    for (const { scope, right } of dealt) {
      const cost = question.mistakes.find(({ is }) => is === "'force'")!.cost;
      const found = spoken(cost, scope, { system: 'metric', way: 'half' });
      expect(found.ok && found.value).toMatch(right === 'sticks' ? /seizes all the same/ : /lets go all the same/);
    }
});
