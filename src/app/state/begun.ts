/**
 * What stands on the page of a new job: it belongs to no job until it becomes one. Kept on the device, and undone by
 * itself, apart from the job that is open.
 */
import { createStore } from 'zustand/vanilla';
import { createHistory } from '../../jobs/history.ts';

export interface Begun {
  /** null: nothing is begun */
  written: unknown;
  steps: { back: number; forth: number };
}

/** @param keep writes it down, for when the page is loaded anew · `now`: ms, of a clock that only goes on */
export function createBegun(found: unknown, keep: (written: unknown) => void, now: () => number) {
  const history = createHistory();
  const stepsNow = () => ({ back: history.at - history.first, forth: history.end - history.at });
  const store = createStore<Begun>()(() => ({ written: found ?? null, steps: stepsNow() }));
  const put = (written: unknown) => {
    store.setState({ written, steps: stepsNow() });
    keep(written);
  };
  return {
    store,
    write(written: unknown) {
      history.push(store.getState().written, written, now());
      put(written);
    },
    undo: () => put(history.undo(store.getState().written)),
    redo: () => put(history.redo(store.getState().written)),
  };
}
