/**
 * Ranges in which no answer can lie, or every one: what counts as right, and a slip that is made of all numbers between
 * two. A range is for those who made one mistake; where it takes in whoever is not right it names nothing.
 */
import type { DealtQuestion } from './deal.ts';
import type { Question } from './definition.ts';
import type { Doubt } from './doubts.ts';
import { triedBy } from './tried.ts';

export const LENGTHS = new Set(['fine', 'reckoned', 'tenths', 'micrometres', 'length']);

/** As figures are told and typed: mm, or degrees. */
const TYPED = { mm: 5e-6, degrees: 5e-5 };
const UPRIGHT = 90;
/** Of what is right: from so little to so much is all that is too little, or too much, and further nobody goes. */
const FROM_NOTHING = 0.1;
const NEARLY = 0.5;
const BEYOND = 2;
const FAR = 100;

/** Where no answer can lie: narrower than anybody types, no angle of a cone, or nothing that can be carried out. */
export function rangeDoubts(question: Question, dealt: DealtQuestion): Doubt[] {
  const { answer } = question;
  if (answer.kind === 'choice') return [];
  const angle = answer.kind === 'number' && answer.as === 'angle';
  const least = angle ? TYPED.degrees : answer.kind === 'move' || LENGTHS.has(answer.as) ? TYPED.mm : 0;
  const right = Number(dealt.right);
  const doubts: Doubt[] = [];
  const within = withinText(dealt, least, right);
  if (within !== null) doubts.push({ path: 'answer.within', message: within });
  const noAngle = (value: number) => angle && !(value > 0 && value < UPRIGHT);
  if (noAngle(right)) doubts.push({ path: 'answer.right', message: 'no cone leans so: 0 to 90 degrees' });
  for (const { index, value, to } of dealt.slips) {
    if (to === undefined) continue;
    const [from, end] = [Number(value), to];
    const message =
      narrowText(from, end, least) ??
      ([from, end].every(noAngle)
        ? 'no answer can lie there: no cone leans so'
        : question.try && !reached(question, dealt, from, end)
          ? `no answer of “${question.mistakes[index]!.name}” can be carried out: it makes no pair`
          : wideText(from, end, right));
    if (message !== null) doubts.push({ path: `mistakes[${index}].to`, message });
  }
  return doubts;
}

/** What is wrong with how far off is right still; null: nothing. */
function withinText({ within }: DealtQuestion, least: number, right: number): string | null {
  if (within < least) return 'nobody can type it so near: let more count as right';
  // Of nothing that is asked for there is no share; of all else it is more than whoever leaves it at 0 is off.
  return right !== 0 && within >= Math.abs(right)
    ? 'so much counts as right that 0 does, and the other sign: let less count'
    : null;
}

/** What is wrong with a range in which nobody's answer has room; null: nothing. */
function narrowText(from: number, to: number, least: number): string | null {
  if (to === from) return 'both ends are the same: no other answer lies between them';
  return Math.abs(to - from) < least ? 'nobody can type a number between the two ends: set them further apart' : null;
}

/** What is wrong with a range where no learner comes, or that takes in whoever is not right; null: nothing. */
function wideText(from: number, to: number, right: number): string | null {
  if (right === 0) return null;
  // Of what is right, and on its side of nought: the other side is a slip of its own.
  const [low, high] = [Math.min(from / right, to / right), Math.max(from / right, to / right)];
  if (low >= FAR || high <= -FAR)
    return `no learner comes there: it is more than ${FAR} times what is right from end to end`;
  if (low > 0 && low < BEYOND && high >= FAR) return 'every answer that is too much is this slip: it names none';
  return low <= FROM_NOTHING && high < 1 && high > NEARLY
    ? 'every answer that is too little is this slip: it names none'
    : null;
}

/** Whether anything from one end to the other can be carried out. */
const reached = (question: Question, dealt: DealtQuestion, from: number, to: number): boolean =>
  [from, (from + to) / 2, to].some((one) => triedBy(question, dealt, one) !== null);
