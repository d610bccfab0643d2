/**
 * How a lesson goes, as a state machine without a screen: a question and a commitment, what was let go, what was seen,
 * why; the same again with fresh numbers and one step less help.
 *
 * The first round has no help: to try before being told helps, and so does to predict before watching; what was seen is
 * asked for before anything is explained, since one demonstration in five is seen wrongly.
 * @source SinhaKapur (trying first); CrouchFagen (predicting first); MillerLasry (seen wrongly)
 */
import type { Dealt } from './deal.ts';
import type { Lesson } from './definition.ts';
import { type Found, recognised } from './recognise.ts';

export const SURE = ['guess', 'think', 'sure'] as const;
export type Sure = (typeof SURE)[number];

/** `ask`: nothing is committed yet · `released`: the picture moves, and what was seen is asked · `told`: why */
export type Stage = 'ask' | 'released' | 'told';

export interface Given {
  answer: number | string;
  sure: Sure;
  found: Found;
  /** which of what may have been seen was chosen; null: not asked yet */
  seen: number | null;
}

/** What became of one question, for the account at the end. */
export interface Outcome extends Given {
  round: number;
  question: number;
  sawRight: boolean;
}

export interface Course {
  /** steps of help that are shown, round by round */
  help: readonly number[];
  round: number;
  question: number;
  stage: Stage;
  given: Given | null;
  log: readonly Outcome[];
  done: boolean;
}

export type Step = { do: 'commit'; answer: number | string; sure: Sure } | { do: 'saw'; option: number } | { do: 'on' };

/** All of the help, in the most there is to a question. */
const mostHelp = ({ questions }: Lesson) => Math.max(...questions.map(({ help }) => help.length));

/** A first visit tries without help, then with all of it, then with a step less; one that comes back has none. */
export function begun(lesson: Lesson, visit: 'first' | 'again'): Course {
  const all = mostHelp(lesson);
  return {
    help: visit === 'first' ? [0, all, all - 1] : [0],
    round: 0,
    question: 0,
    stage: 'ask',
    given: null,
    log: [],
    done: false,
  };
}

/** The same course where a step does not belong there: a key pressed twice takes nothing with it. */
export function stepped(course: Course, step: Step, dealt: Dealt): Course {
  const question = dealt.questions[course.question];
  if (course.done || !question) return course;
  if (step.do === 'commit' && course.stage === 'ask') {
    const found = recognised(step.answer, question);
    return { ...course, stage: 'released', given: { answer: step.answer, sure: step.sure, found, seen: null } };
  }
  if (step.do === 'saw' && course.stage === 'released' && course.given) {
    const given = { ...course.given, seen: step.option };
    const entry = { ...given, round: course.round, question: course.question, sawRight: step.option === question.saw };
    return { ...course, stage: 'told', given, log: [...course.log, entry] };
  }
  if (step.do === 'on' && course.stage === 'told') return next(course, dealt);
  return course;
}

function next(course: Course, dealt: Dealt): Course {
  const fresh = { ...course, stage: 'ask', given: null } as const;
  if (course.question + 1 < dealt.questions.length) return { ...fresh, question: course.question + 1 };
  if (course.round + 1 < course.help.length) return { ...fresh, question: 0, round: course.round + 1 };
  return { ...fresh, done: true };
}

/** Rounds have numbers of their own; the same visit has the same ones again. */
export const seedOf = (first: number, round: number): number => first + APART * round;
/** Seeds that a round may pass over without coming to those of the next. */
const APART = 997;

/** How many of the last round were right, of how many: by that a lesson comes back sooner or later. */
export function lastRound({ log, help }: Course): { right: number; of: number } {
  const last = log.filter(({ round }) => round === help.length - 1);
  return { right: last.filter(({ found }) => found.kind === 'right').length, of: last.length };
}

/** Of those that were sure how many were right, and so on: what one's own certainty is worth. */
export function bySure(log: readonly Outcome[]): { sure: Sure; right: number; of: number }[] {
  return SURE.map((sure) => {
    const all = log.filter((entry) => entry.sure === sure);
    return { sure, right: all.filter(({ found }) => found.kind === 'right').length, of: all.length };
  }).filter(({ of }) => of > 0);
}
