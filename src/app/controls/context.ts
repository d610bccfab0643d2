/** What the controls on a screen edit, and how large the pictures really draw the gaps. */
import { createContext, useContext } from 'react';
import type { Work } from '../state/store.ts';

export const WorkContext = createContext<Work | null>(null);

export const DrawnFactorContext = createContext<number | null>(null);

export function useWork(): Work {
  const work = useContext(WorkContext);
  if (!work) throw new Error('a control stands outside a screen');
  return work;
}
