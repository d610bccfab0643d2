/** The numbers of a round, drawn and solved beside the screen. */
import { useEffect, useState } from 'react';
import type { Right } from '../../../lessons/apart.ts';
import type { Dealt } from '../../../lessons/deal.ts';
import type { Lesson } from '../../../lessons/definition.ts';
import { faultText } from '../../state/useNewest.ts';

interface Answer {
  dealt: Dealt | null;
  fault: string | null;
}

const FIRST: readonly Right[] = [];
const NONE: Answer = { dealt: null, fault: null };

/** `before`: what was right in the rounds before; null: these are not dealt yet, and it waits for them. */
export function useDealt(
  lesson: Lesson,
  seed: number,
  before: readonly Right[] | null = FIRST,
): Answer & { again(): void } {
  const [turn, setTurn] = useState(0);
  const known = before && JSON.stringify(before);
  const asked = `${seed} ${turn} ${known}`;
  const [answer, setAnswer] = useState<Answer & { lesson: Lesson | null; asked: string }>({
    ...NONE,
    lesson: null,
    asked: '',
  });
  useEffect(() => {
    if (known === null) return;
    const control = new AbortController();
    const take = (found: Answer) => !control.signal.aborted && setAnswer({ ...found, lesson, asked });
    const ask = async () => {
      const { job } = await import('../../../worker/pool.ts');
      const found = await job(
        'lesson',
        { lesson, seed, before: JSON.parse(known) as Right[] },
        { signal: control.signal },
      );
      take(found.ok ? { dealt: found.value, fault: null } : { dealt: null, fault: found.message });
    };
    ask().catch((error: unknown) => take({ dealt: null, fault: faultText(error) }));
    return () => control.abort();
  }, [lesson, seed, known, asked]);
  // What was dealt for a round before is not shown for this one.
  const mine = answer.lesson === lesson && answer.asked === asked ? answer : NONE;
  return { dealt: mine.dealt, fault: mine.fault, again: () => setTurn((times) => times + 1) };
}
