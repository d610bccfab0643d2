/** Every formula of a question and its texts: what they name is solved, what they reckon with is known. */
import type { Lesson, Question } from './definition.ts';
import { type Formula, formulaOf, type Scope, workedNumber } from './formula.ts';
import { looksOf } from './seen.ts';
import { holesOf } from './template.ts';

export type Around = Pick<Lesson, 'keep' | 'story' | 'carry'>;

/** Every formula of a question, and of the texts that are told with it. */
export function formulasOf(lesson: Around, question: Question): Formula[] {
  const { notes = [] } = question.view;
  const texts = [question.ask, question.because, lesson.carry, ...question.help].concat(
    question.onPaper ?? [],
    looksOf(question.saw).flatMap(({ ask, options }) => [ask, ...options.map(({ text }) => text)]),
    question.cost ?? [],
    notes.flatMap(({ text, after = '' }) => [text, after]),
    question.mistakes.flatMap(({ says, cost }) => [says, cost]),
    question.answer.kind === 'choice' ? question.answer.options.map(({ text }) => text) : [],
    lesson.story,
  );
  const { answer } = question;
  const formulas = [
    answer.right,
    ...(answer.kind === 'choice' ? [] : [answer.within]),
    ...(answer.kind === 'number' && answer.chart ? [answer.chart.from, answer.chart.to, answer.chart.at] : []),
    ...(question.view.layer ? [question.view.layer.from, question.view.layer.to] : []),
    ...(question.view.triangles ?? []).flatMap(({ angle, travel }) => [angle, travel]),
    ...lesson.keep,
    ...[...(question.set ?? []), ...question.release, ...(question.try ?? [])].map(({ is }) => is),
    ...question.mistakes.flatMap(({ is, to, when }) => [is, to, when].filter((text) => text !== undefined)),
    ...(question.view.spread ? spreadFormulas(question.view.spread) : []),
    ...looksOf(question.saw).flatMap(({ options }) => options.map(({ is }) => is)),
    ...texts.flatMap((text) => holesOf(text).map(({ formula }) => formula)),
  ];
  return formulas.flatMap((text) => {
    const formula = formulaOf(text);
    return formula.ok ? [formula.value] : [];
  });
}

const spreadFormulas = ({ sd, was = sd, parts }: NonNullable<Question['view']['spread']>): string[] => [
  sd,
  was,
  ...parts.map((part) => part.sd),
];

/** mm: the lengths that the texts of a question tell to be reckoned on with, and those of the story. */
export function reckonedIn(story: readonly string[], question: Question, { scope }: { scope: Scope }): number[] {
  return [...new Set([...textsOf(question), ...story].flatMap(reckonedHoles))].flatMap((formula) => {
    const found = workedNumber(formula, scope);
    return found.ok && found.value !== 0 ? [Math.abs(found.value)] : [];
  });
}

const reckonedHoles = (text: string): string[] =>
  holesOf(text).flatMap(({ formula, as }) => (as === 'reckoned' ? [formula] : []));

/** The texts of a question, in which figures may stand. */
const textsOf = ({ ask, onPaper = '', because, saw, view, help, mistakes }: Question): string[] => [
  ask,
  onPaper,
  because,
  ...help,
  ...looksOf(saw).flatMap((look) => [look.ask, ...look.options.map(({ text }) => text)]),
  ...(view.notes ?? []).flatMap(({ text, after = '' }) => [text, after]),
  ...mistakes.flatMap(({ says, cost }) => [says, cost]),
];
