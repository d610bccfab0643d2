/**
 * What stands on the page of a new job: it belongs to no job until it becomes one. Kept on the device with what can be
 * undone of it, and undone by itself, apart from the job that is open.
 */
import { createStore } from 'zustand/vanilla';
import { asStep, createHistory, type Steps } from '../../jobs/history.ts';
import type { Patch } from '../../jobs/patch.ts';

export interface Begun {
  /** null: nothing is begun */
  written: unknown;
  steps: { back: number; forth: number };
  /** whether it was given up just now, and nothing else was begun since */
  givenUp: boolean;
}

/** As it is kept: the steps are written whole with it, so no more than these. */
const KEPT_STEPS = 100;

interface Kept {
  written: unknown;
  undo: { at: number; steps: readonly Patch[] };
}

/** @param keep writes it down, for when the page is loaded anew · `now`: ms, of a clock that only goes on */
export function createBegun(found: unknown, keep: (written: unknown) => void, now: () => number) {
  const kept = keptOf(found);
  const history = createHistory(kept.steps);
  const stepsNow = () => ({ back: history.at - history.first, forth: history.end - history.at });
  const store = createStore<Begun>()(() => ({ written: kept.written, steps: stepsNow(), givenUp: false }));
  const put = (written: unknown, givenUp = false) => {
    store.setState({ written, steps: stepsNow(), givenUp });
    keep({ written, undo: history.last(KEPT_STEPS) } satisfies Kept);
  };
  return {
    store,
    write(written: unknown, givenUp = false) {
      history.push(store.getState().written, written, now());
      put(written, givenUp);
    },
    /** What undo would take back, in a word or two: the field, or the kind of choice. */
    lastStep: () => {
      const [first] = history.done ?? [];
      return first && String(first.at[1] ?? first.at[0]);
    },
    undo: () => put(history.undo(store.getState().written)),
    redo: () => put(history.redo(store.getState().written)),
  };
}

const isGroup = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isPatch = (value: unknown): value is Patch =>
  Array.isArray(value) && value.every((one) => isGroup(one) && Array.isArray(one.at));

/** What was kept; by a program before this one without its steps, and of steps that are none nothing. */
function keptOf(found: unknown): { written: unknown; steps?: Steps } {
  if (!isGroup(found) || !isGroup(found.undo)) return { written: found ?? null };
  const { at, steps } = found.undo;
  const written = found.written ?? null;
  if (
    !Array.isArray(steps) ||
    !steps.every(isPatch) ||
    !(Number.isInteger(at) && Number(at) >= 0 && Number(at) <= steps.length)
  )
    return { written };
  return { written, steps: { first: 0, steps: steps.map(asStep), at: Number(at) } };
}
