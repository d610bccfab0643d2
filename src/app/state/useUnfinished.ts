/**
 * What is being written on a form and not taken yet: kept with its job, whatever else is looked at meanwhile, and when
 * the page is loaded anew.
 */
import { useStore } from 'zustand';
import type { Work } from './store.ts';

/** What is to stand there, or how it follows from what stands there now: two fields may be taken within one frame. */
type Change<T> = T | null | ((now: T | null) => T | null);

/** @param name of the form, no two alike */
export function useUnfinished<T>(work: Work, name: string): [T | null, (value: Change<T>) => void] {
  const piece = useStore(work.store, (state) => state.piece);
  const value = useStore(work.store, (state) => state.unfinished[name]);
  const set = (change: Change<T>) => {
    if (!work.mayWrite()) return;
    const { [name]: before, ...others } = work.store.getState().unfinished;
    const now = before?.piece === piece ? (before.written as T) : null;
    const written = typeof change === 'function' ? (change as (now: T | null) => T | null)(now) : change;
    work.store.setState({ unfinished: written === null ? others : { ...others, [name]: { piece, written } } });
  };
  return [value?.piece === piece ? (value.written as T) : null, set];
}
