/** What the answer that was given makes of the picture, worked out beside the screen. */
import { useEffect, useState } from 'react';
import type { DealtQuestion } from '../../../lessons/deal.ts';
import type { Question } from '../../../lessons/definition.ts';
import type { Given } from '../../../lessons/runner.ts';
import type { Tried } from '../../../lessons/tried.ts';

/** Undefined: being worked out. Null: nothing was answered, it is right, or it is nothing that can be carried out. */
export function useTried(question: Question, dealt: DealtQuestion, given: Given | null): Tried | null | undefined {
  const [found, setFound] = useState<{ of: Given; tried: Tried | null } | null>(null);
  const asks = given !== null && given.found.kind !== 'right' && (question.try || question.answer.kind === 'move');
  const answer = given?.answer ?? 0;
  // What was seen is added to it later; the answer stays.
  const key = asks ? `${answer}` : null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: one answer to one question, whatever is added to it
  useEffect(() => {
    if (!given || key === null) return;
    const control = new AbortController();
    const take = (tried: Tried | null) => !control.signal.aborted && setFound({ of: given, tried });
    const ask = async () => {
      const { job } = await import('../../../worker/pool.ts');
      take(await job('lessonAnswer', { question, dealt, answer }, { signal: control.signal }));
    };
    // Without it the reveal goes on, to what is right.
    ask().catch(() => take(null));
    return () => control.abort();
  }, [key, question, dealt]);
  if (!asks) return null;
  return found && found.of.answer === answer ? found.tried : undefined;
}
