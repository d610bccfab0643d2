/**
 * A worker and what is asked of it. Every question is answered, or fails: with the worker's own fault, or because the
 * worker could not be loaded or was ended. The next one to ask after that starts another worker.
 */
import { type Remote, releaseProxy, wrap } from 'comlink';
import { watch } from './alive.ts';

class WorkerLost extends Error {
  constructor() {
    super('the part of the program that works it out could not be loaded, or was ended by the browser');
  }
}

interface Live<S> {
  solver: Remote<S>;
  ready: Promise<void>;
  /**
   * Fails each question that waits, once the worker is lost. No promise of the loss stands in their place: as long as
   * the worker lives it would hold on to every answer that was raced against it.
   */
  waiting: Set<(lost: WorkerLost) => void>;
  end(): void;
}

/** ms: a worker that is not loaded by then will not be. */
const LOADING = 30_000;

export function createThread<S>(start: () => Worker) {
  let live: Live<S> | null = null;

  function begin(): Live<S> {
    const worker = start();
    const ready = promised<void>();
    let lost = false;
    const mine: Live<S> = {
      solver: wrap<S>(worker),
      ready: ready.promise,
      waiting: new Set(),
      end: () => {
        if (lost) return;
        lost = true;
        clearTimeout(late);
        worker.terminate();
        // Else the worker, and with it whoever asked, would stay for as long as the page does.
        mine.solver[releaseProxy]();
        if (live === mine) live = null;
        for (const fail of mine.waiting) fail(new WorkerLost());
      },
    };
    const late = setTimeout(mine.end, LOADING);
    for (const kind of ['error', 'messageerror']) worker.addEventListener(kind, mine.end);
    watch(
      worker,
      () => {
        clearTimeout(late);
        ready.resolve();
      },
      mine.end,
    );
    return mine;
  }

  return {
    async ask<R>(call: (solver: Remote<S>) => Promise<R>): Promise<R> {
      live ??= begin();
      const { solver, ready, waiting } = live;
      const { promise, resolve, reject } = promised<R>();
      waiting.add(reject);
      // Asked before it is ready, it might be too busy to say that it is.
      ready.then(() => call(solver)).then(resolve, reject);
      try {
        return await promise;
      } finally {
        waiting.delete(reject);
      }
    },
    /** Says something to the worker if there is one. */
    tell(call: (solver: Remote<S>) => Promise<unknown>): void {
      if (live) call(live.solver).catch(() => {});
    },
    /** Ends what the worker is at, which then fails; the next one to ask starts another. */
    end: () => live?.end(),
    /** The same, where it is at anything. */
    giveUp: () => {
      if (live && live.waiting.size > 0) live.end();
    },
  };
}

/** A promise, and the ways to settle it. */
export function promised<T>() {
  let [resolve, reject] = [(_: T) => {}, (_: Error) => {}];
  const promise = new Promise<T>((...settle) => {
    [resolve, reject] = settle;
  });
  return { promise, resolve, reject };
}

export type Thread<S> = ReturnType<typeof createThread<S>>;
