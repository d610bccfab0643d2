/**
 * What an answer was: right, a mistake that has a name, or something else. To name and refute the mistake just made
 * helps more than to tell what is right.
 * @source SchroederKucera
 */
import type { DealtQuestion } from './deal.ts';
import { endsOf, type Slip } from './slips.ts';

export type Found =
  | { kind: 'right' }
  /** `index`: its place among the mistakes of the question */
  | { kind: 'mistake'; index: number }
  | { kind: 'other' };

/** Deal gives no numbers by which an answer could be two of these (`confused` there). */
export function recognised(answer: number | string, { right, within, slips }: DealtQuestion): Found {
  const asked = { index: -1, value: right, within };
  const found = [asked, ...slips].find((one) => counts(answer, one));
  if (!found) return { kind: 'other' };
  return found === asked ? { kind: 'right' } : { kind: 'mistake', index: found.index };
}

function counts(answer: number | string, one: Slip): boolean {
  if (typeof one.value !== 'number' || typeof answer !== 'number') return answer === one.value;
  const [low, high] = endsOf(one);
  return low <= answer && answer <= high;
}
