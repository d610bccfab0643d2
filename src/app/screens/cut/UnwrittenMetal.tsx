/**
 * Said above everything while metal is off that is told in a form and not written down: what else stands here is of
 * before it.
 */

import type { Work } from '../../state/store.ts';
import { useUnfinished } from '../../state/useUnfinished.ts';
import { type Draft, tellsMetal } from './trialDraft.ts';

/** The trial that is being written: a new one, or an old one by its place. */
export interface Writing {
  at: 'new' | number;
  draft: Draft;
}

export const useWriting = (work: Work) => useUnfinished<Writing>(work, 'trial');

export function UnwrittenMetal({ work }: { work: Work }) {
  const [writing] = useWriting(work);
  if (writing?.at !== 'new' || !tellsMetal(writing.draft)) return null;
  return (
    <section className="verdict stop" aria-live="polite">
      <h2>Metal is off that is not written down yet: take nothing more.</h2>
      <p>
        It stands in the trial on the Cut screen. Write that down first; what is said here of what may be taken is of
        before it.
      </p>
    </section>
  );
}
