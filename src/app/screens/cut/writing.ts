/** The trial that is being written, and what every screen withholds meanwhile. */
import { type Withheld, withheldBy } from '../../../report/cut/withheld.ts';
import type { Work } from '../../state/store.ts';
import { useUnfinished } from '../../state/useUnfinished.ts';
import { type Draft, tellsMetal } from './trialDraft.ts';

/** A new one, or an old one by its place. */
export interface Writing {
  at: 'new' | number;
  draft: Draft;
  /** why it was not written down as it stands; not there: that was not tried since it was last changed */
  refused?: string;
  /** the one that is gone on with once this is done */
  afterwards?: Writing;
}

export const useWriting = (work: Work) => useUnfinished<Writing>(work, 'trial');

/** The one rule that every screen asks; with what is known there of the trials that are written down already. */
export function useWithheld(work: Work, known: Parameters<typeof withheldBy>[1] = {}): Withheld | null {
  const [writing] = useWriting(work);
  return withheldBy(inForm(writing), known);
}

function inForm(writing: Writing | null): Withheld | null {
  if (!writing) return null;
  const all = [writing, ...(writing.afterwards ? [writing.afterwards] : [])];
  if (all.some(({ refused }) => refused !== undefined)) return 'refused';
  return all.some(({ at, draft }) => at === 'new' && tellsMetal(draft)) ? 'metal' : null;
}
