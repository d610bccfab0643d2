/**
 * Numbers of one sheet, or of a lesson gone through, have answers that are told apart: who has found one of them has
 * not found the next. Choices are few, so one may be right twice; but not every time.
 */
import type { Dealt } from './deal.ts';
import type { Lesson } from './definition.ts';

/** A number that was right, and how near to it counts. */
export interface Right {
  /** as what it is told: figures in other units are told apart by them */
  as: string;
  right: number;
  within: number;
  /** of a choice: which question it is of, and what was right */
  chosen?: string | undefined;
}

/** At least so far apart are two numbers, as a share of the greater. */
const LEAST = 0.02;

export const rightsOf = ({ questions }: Lesson, dealt: Dealt): Right[] =>
  dealt.questions.flatMap(({ right, within }, i): Right[] => {
    const { answer } = questions[i]!;
    if (answer.kind === 'choice') return [{ as: `choice ${i}`, right: 0, within: 0, chosen: String(right) }];
    if (typeof right !== 'number') return [];
    return [{ as: answer.kind === 'move' ? 'sided' : answer.as, right, within }];
  });

/** Every time so far the same was right. */
function known({ as, chosen }: Right, before: readonly Right[]): boolean {
  const all = before.filter((one) => one.as === as);
  return all.length > 0 && all.every((one) => one.chosen === chosen);
}

const alike = (a: Right, b: Right): boolean =>
  a.as === b.as &&
  Math.abs(a.right - b.right) <= Math.max(a.within, b.within, LEAST * Math.max(Math.abs(a.right), Math.abs(b.right)));

/** Whether each of these is told apart from all that were right before, and from one another. */
export const allApart = (these: readonly Right[], before: readonly Right[]): boolean =>
  these.every((one, i) =>
    one.chosen === undefined
      ? ![...these.slice(i + 1), ...before].some((other) => alike(one, other))
      : !known(one, before),
  );
