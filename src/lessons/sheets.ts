/**
 * A lesson on paper: the questions with blanks and numbers of their own, and by themselves the answers with what each
 * named mistake would have given, so that a whole class can be read at a glance.
 */
import type { Design } from '../design/definition.ts';
import type { Dealt, DealtQuestion } from './deal.ts';
import type { Answer, Lesson, Question } from './definition.ts';
import { formulaOf, type Scope } from './formula.ts';
import { type Speech, spoken, told } from './template.ts';

/** What the drawing of a question on a work sheet shows. */
export interface Shown {
  design: Design;
  /** as the question itself begins; else as it stood before a question whose answer that would be */
  own: boolean;
  /** gaps are not enlarged: so much of them would be read off */
  asIs: boolean;
}

/**
 * The pair is drawn as it is known: as the question before left it, or as what is set by the report makes it, it would
 * show what that question asks for, and be read off with a rule.
 */
export function shownOnPaper({ questions }: Lesson, dealt: readonly DealtQuestion[], at: number): Shown {
  let known = at;
  while (known > 0 && !isKnown(questions[known]!)) known--;
  return { design: dealt[known]!.from, own: known === at, asIs: questions[known]!.view.trueFirst === true };
}

/** Degrees: what a cone leans on paper whose half angle is asked for, that no protractor reads it off. */
const LEANS = { little: 12, much: 30 };
const BETWEEN = 20;

/** The pair with cones that lean otherwise than what is right. */
export const notToScale = (design: Design, right: number): Design => {
  const halfAngle = right > BETWEEN ? LEANS.little : LEANS.much;
  return {
    ...design,
    seats: design.seats.map((seat) => ({
      ...seat,
      journal: { ...seat.journal, halfAngle },
      bush: { ...seat.bush, halfAngle },
    })),
  };
};

/** Set anew by numbers and sizes alone. */
const isKnown = ({ set = [] }: Question): boolean =>
  set.length > 0 &&
  set.every(({ is }) => {
    const read = formulaOf(is);
    return read.ok && !read.value.names.some((name) => /^before\b/.test(name));
  });

export interface Asked {
  ask: string;
  /** before the blank; or what to tick */
  label: string;
  choices: string[] | null;
}

export interface Answered {
  right: string;
  /** how far off is right still, in words; '' of a choice */
  near: string;
  because: string;
  slips: { name: string; gives: string }[];
}

/** One set of numbers. */
export interface SheetRound {
  seed: number;
  story: string[];
  asked: Asked[];
  answered: Answered[];
}

export function sheetRound(lesson: Lesson, dealt: Dealt, speech: Speech): SheetRound {
  const first = dealt.questions[0]!;
  return {
    seed: dealt.seed,
    story: lesson.story.map((text) => said(text, first, speech)),
    asked: lesson.questions.map((question, i) => askedOf(question, dealt.questions[i]!, speech)),
    answered: lesson.questions.map((question, i) => answeredOf(question, dealt.questions[i]!, speech)),
  };
}

function askedOf({ ask, onPaper = ask, answer }: Question, dealt: DealtQuestion, speech: Speech): Asked {
  return {
    ask: said(onPaper, dealt, speech),
    label: answer.label,
    choices: answer.kind === 'choice' ? answer.options.map(({ text }) => said(text, dealt, speech)) : null,
  };
}

const answeredOf = ({ answer, because, mistakes }: Question, dealt: DealtQuestion, speech: Speech): Answered => ({
  right: answerSaid(answer, dealt.right, dealt, speech),
  near: nearSaid(answer, dealt, speech),
  because: said(because, dealt, speech),
  slips: dealt.slips.map(({ index, value, to }) => ({
    name: mistakes[index]!.name,
    gives: [value, ...(to === undefined ? [] : [to])].map((one) => answerSaid(answer, one, dealt, speech)).join(' to '),
  })),
});

/** A length that the round reckons on with has the same figures wherever it is told. */
export const speechIn = ({ reckoned }: Pick<DealtQuestion, 'reckoned'>, speech: Speech): Speech => ({
  ...speech,
  reckoned,
});

/** An answer in words: a number in its unit, or what was chosen. */
export function answerSaid(answer: Answer, value: number | string, dealt: DealtQuestion, speech: Speech): string {
  if (answer.kind === 'choice') {
    const option = answer.options.find(({ key }) => key === value);
    return option ? said(option.text, dealt, speech) : String(value);
  }
  return told(Number(value), answer.kind === 'move' ? 'sided' : answer.as, speechIn(dealt, speech));
}

/** How far off an answer may be; '' where it is one of a choice. */
export function nearSaid(answer: Answer, { within }: DealtQuestion, speech: Speech): string {
  if (answer.kind === 'choice' || within === 0) return '';
  return `Up to ${told(within, answer.kind === 'move' || answer.as === 'sided' ? 'fine' : answer.as, speech)} off is right.`;
}

/** A text told; what is wrong with it stands in its place, for who writes the lesson. */
export function said(
  text: string,
  { scope, reckoned }: Pick<DealtQuestion, 'scope' | 'reckoned'>,
  speech: Speech,
): string {
  const found = spoken(text, scope, speechIn({ reckoned }, speech));
  return found.ok ? found.value : `[${found.message}]`;
}

/** What an answer would have cost, by its own number and by what the engine makes of it; '' where nothing is told. */
export function costSaid(
  { cost, answer: asked }: Pick<Question, 'cost' | 'answer'>,
  dealt: DealtQuestion,
  answer: number | string,
  tried: Scope | undefined,
  speech: Speech,
): string {
  if (cost === undefined) return '';
  const found = spoken(cost, { ...dealt.scope, answer, tried }, speechIn(dealt, speech));
  // What the engine has no figure for is no pair any more.
  return found.ok ? found.value : `With your ${answerSaid(asked, answer, dealt, speech)} ${NO_PAIR}`;
}
export const NO_PAIR = 'no pair can be made at all: the two parts no longer meet.';
