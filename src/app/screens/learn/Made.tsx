/** What a class made of a question: who was sure and wrong, and the slips that were made. */
import { type CalledOut, type ClassAnswer, sureAndRight } from '../../../lessons/classAnswer.ts';
import type { DealtQuestion } from '../../../lessons/deal.ts';
import type { Question } from '../../../lessons/definition.ts';
import { recognised } from '../../../lessons/recognise.ts';
import { said } from '../../../lessons/sheets.ts';
import type { Speech } from '../../../lessons/template.ts';
import { SURE_WORDS } from './Ask.tsx';

/** Of a hand that was counted nobody may have asked. */
export const CALLED_WORDS: Record<CalledOut, string> = { ...SURE_WORDS, unsaid: 'Not asked' };
/** Behind a number of learners. */
export const SHORT_WORDS: Record<CalledOut, string> = {
  sure: 'sure',
  think: 'think so',
  guess: 'a guess',
  unsaid: 'not asked',
};

/** Who is sure and wrong has learnt something that is not so: that is what is talked about first. */
export function SureOf({ dealt, answers }: Pick<SlipsProps, 'dealt' | 'answers'>) {
  const all = sureAndRight(answers, ({ answer }) => recognised(answer, dealt).kind === 'right');
  const sure = all.find((one) => one.sure === 'sure');
  if (all.length === 0) return null;
  return (
    <>
      {sure && (
        <p className="sure-and-wrong">
          <strong>
            Sure and wrong: {sure.of - sure.right} of {answers.length}.
          </strong>
        </p>
      )}
      <p className="fine">
        Right by how sure they were:{' '}
        {all.map(({ sure: one, right, of }) => `${SHORT_WORDS[one]} ${right} of ${of}`).join(', ')}.
      </p>
    </>
  );
}

interface SlipsProps {
  question: Question;
  dealt: DealtQuestion;
  answers: readonly ClassAnswer[];
  speech: Speech;
}

/** What the class did, the most frequent first, each slip with what was done and what it costs. */
export function SlipsMade({ question: { mistakes }, dealt, answers, speech }: SlipsProps) {
  const made = new Map<number | 'right' | 'other', { count: number; sure: number; answer: number | string }>();
  for (const { answer, sure } of answers) {
    const found = recognised(answer, dealt);
    const key = found.kind === 'mistake' ? found.index : found.kind;
    // The explanation speaks of the first that was given so.
    const before = made.get(key) ?? { count: 0, sure: 0, answer };
    made.set(key, { ...before, count: before.count + 1, sure: before.sure + (sure === 'sure' ? 1 : 0) });
  }
  if (made.size === 0) return null;
  return (
    <ul className="slips-made">
      {[...made]
        .sort(([, a], [, b]) => b.count - a.count)
        .map(([key, { count, sure, answer }]) => {
          const words = (text: string) => said(text, { ...dealt, scope: { ...dealt.scope, answer } }, speech);
          const slip = typeof key === 'number' ? mistakes[key]! : null;
          return (
            <li key={key}>
              <strong>
                {count} of {answers.length}: {slip?.name ?? (key === 'right' ? 'right' : 'something else')}
                {sure > 0 && `, ${sure} of them sure`}
              </strong>
              {slip && (
                <>
                  {' '}
                  {words(slip.says)} <strong>In metal:</strong> {words(slip.cost)}
                </>
              )}
            </li>
          );
        })}
    </ul>
  );
}
