/**
 * Numbers of one sheet, or of a lesson gone through, have answers that are told apart: who has found one of them has
 * not found the next. Choices are few, so one may be right twice.
 */
import type { Dealt } from './deal.ts';
import type { Lesson } from './definition.ts';

/** A number that was right, and how near to it counts. */
export interface Right {
  /** as what it is told: figures in other units are told apart by them */
  as: string;
  right: number;
  within: number;
}

/** At least so far apart are two numbers, as a share of the greater. */
const LEAST = 0.02;

export const rightsOf = ({ questions }: Lesson, dealt: Dealt): Right[] =>
  dealt.questions.flatMap(({ right, within }, i) => {
    const { answer } = questions[i]!;
    if (typeof right !== 'number' || answer.kind === 'choice') return [];
    return [{ as: answer.kind === 'move' ? 'sided' : answer.as, right, within }];
  });

const alike = (a: Right, b: Right): boolean =>
  a.as === b.as &&
  Math.abs(a.right - b.right) <= Math.max(a.within, b.within, LEAST * Math.max(Math.abs(a.right), Math.abs(b.right)));

/** Whether each of these is told apart from all that were right before, and from one another. */
export const allApart = (these: readonly Right[], before: readonly Right[]): boolean =>
  these.every((one, i) => ![...these.slice(i + 1), ...before].some((other) => alike(one, other)));
