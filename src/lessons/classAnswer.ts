/**
 * One answer of a class in the fragment of a link: which lesson, which numbers, which question, what was answered and
 * how sure. Nobody's name is in it, and what stands behind the # of an address goes to no server.
 *
 *   #learn/one-cone/class/1/answer=0.0125,think,q0,k3f9
 *
 * The sign after the question tells one opening from another, so that a link opened twice counts once. Behind it, of a
 * lesson that can be changed, stands which form of it was answered.
 */
import { SURE } from './runner.ts';

/** How sure each was; of one that was called out it may not have been asked. */
export const CALLED_OUT = [...SURE, 'unsaid'] as const;
export type CalledOut = (typeof CALLED_OUT)[number];

export interface ClassAnswer {
  lesson: string;
  seed: number;
  question: number;
  answer: number | string;
  sure: CalledOut;
  /** made anew for every answer */
  mark: string;
  /** the checksum of the lesson as it was asked, where it is one that can be changed */
  of?: string;
}

const LONGEST = 160;
const FRAGMENT =
  /^([a-z0-9-]{1,60})\/class\/(\d{1,9})\/answer=([^,]{1,30}),([a-z]+),q(\d),([a-z0-9]{1,12})(?:,([a-z0-9]{1,12}))?$/;

export const fragmentOf = ({ lesson, seed, question, answer, sure, mark, of }: ClassAnswer): string =>
  `${lesson}/class/${seed}/answer=${[
    typeof answer === 'number' ? Number(answer.toPrecision(9)) : answer,
    sure,
    `q${question}`,
    mark,
    ...(of === undefined ? [] : [of]),
  ].join(',')}`;

/** What a fragment carries (behind `#learn/`); null where it is not one of these, or was altered on the way. */
export function classAnswerOf(fragment: string): ClassAnswer | null {
  const found = fragment.length <= LONGEST ? FRAGMENT.exec(fragment) : null;
  if (!found) return null;
  const [, lesson, seed, given, sure, question, mark, of] = found as unknown as string[];
  if (!(CALLED_OUT as readonly string[]).includes(sure!)) return null;
  const number = Number(given);
  const answer = Number.isFinite(number) ? number : given!;
  if (typeof answer === 'string' && !/^[a-z][A-Za-z0-9]{0,23}$/.test(answer)) return null;
  const read = { lesson: lesson!, seed: Number(seed), question: Number(question), answer, sure: sure as CalledOut };
  return { ...read, mark: mark!, ...(of === undefined ? {} : { of }) };
}

/** With one more; one that is there already counts once, and no class is larger than this. */
export const MOST_ANSWERS = 200;
export const withAnswer = (all: readonly ClassAnswer[], one: ClassAnswer): ClassAnswer[] =>
  isAmong(all, one) || all.length >= MOST_ANSWERS ? [...all] : [...all, one];
export const isAmong = (all: readonly ClassAnswer[], one: ClassAnswer): boolean =>
  all.some(({ mark, question }) => mark === one.mark && question === one.question);

/** Of those that were sure how many were right, and so on, the surest first; who said nothing of it is left out. */
export const sureAndRight = (answers: readonly ClassAnswer[], isRight: (one: ClassAnswer) => boolean) =>
  SURE.toReversed()
    .map((sure) => {
      const all = answers.filter((one) => one.sure === sure);
      return { sure, right: all.filter(isRight).length, of: all.length };
    })
    .filter(({ of }) => of > 0);
