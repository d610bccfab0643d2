/**
 * What an answer was: right, a mistake that has a name, or something else. To name and refute the mistake just made
 * helps more than to tell what is right.
 * @source SchroederKucera
 */
import type { DealtQuestion } from './deal.ts';

export type Found =
  | { kind: 'right' }
  /** `index`: its place among the mistakes of the question */
  | { kind: 'mistake'; index: number }
  | { kind: 'other' };

/** Deal gives no numbers by which an answer could be two of these (`confused` there). */
export function recognised(answer: number | string, { right, within, slips }: DealtQuestion): Found {
  const near = (value: number | string, reach: number) =>
    typeof value === 'number' && typeof answer === 'number' ? Math.abs(answer - value) <= reach : answer === value;
  if (near(right, within)) return { kind: 'right' };
  const slip = slips.find(({ value, within: reach }) => near(value, reach));
  return slip ? { kind: 'mistake', index: slip.index } : { kind: 'other' };
}
