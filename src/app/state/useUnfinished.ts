/**
 * What is being written on a form and not taken yet: kept while its piece of work is open, whatever else is looked at
 * meanwhile.
 */
import { useStore } from 'zustand';
import type { Work } from './store.ts';

/** @param name of the form, no two alike */
export function useUnfinished<T>(work: Work, name: string): [T | null, (value: T | null) => void] {
  const piece = useStore(work.store, (state) => state.piece);
  const value = useStore(work.store, (state) => state.unfinished[name]);
  const set = (written: T | null) => {
    const { [name]: _, ...others } = work.store.getState().unfinished;
    work.store.setState({ unfinished: written === null ? others : { ...others, [name]: { piece, written } } });
  };
  return [value?.piece === piece ? (value.written as T) : null, set];
}
