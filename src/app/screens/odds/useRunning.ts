/** The odds of the run: begun by hand, for they take every core a while; stopped by hand, or by another design. */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import { drawsOf } from '../../../report/odds/pieces.ts';
import type { RunningShown } from '../../../report/odds/runningShown.ts';
import { runningOdds } from '../../state/runningOdds.ts';
import { faultText } from '../../state/useNewest.ts';

export interface RunningWork {
  stage: 'none' | 'working' | 'done' | 'stopped';
  /** the design it belongs to */
  of: Design | null;
  shown: RunningShown | null;
  done: number;
  count: number;
  /** when it began (ms since the page did) */
  since: number;
  fault: string | null;
}

const NOTHING: RunningWork = { stage: 'none', of: null, shown: null, done: 0, count: 0, since: 0, fault: null };

/** What was run, by design, so far as it came: it stands at once when one comes back to it. */
const known = new WeakMap<Design, RunningWork>();

/** What is under way does not go on by itself. */
const atRest = (work: RunningWork): RunningWork => (work.stage === 'working' ? { ...work, stage: 'stopped' } : work);

export function useRunning(design: Design): RunningWork & { start(): void; stop(): void } {
  const [work, setWork] = useState(() => known.get(design) ?? NOTHING);
  const control = useRef<AbortController | null>(null);
  const stop = useCallback(() => {
    control.current?.abort();
    setWork(atRest);
  }, []);
  // What is under way belongs to the design it began with.
  useEffect(() => {
    const found = known.get(design);
    if (found) setWork(found);
    return stop;
  }, [design, stop]);
  const start = useCallback(() => {
    control.current?.abort();
    const mine = new AbortController();
    control.current = mine;
    let now: RunningWork = { ...NOTHING, stage: 'working', of: design, since: performance.now() };
    const set = (change: (before: RunningWork) => RunningWork) => {
      if (mine.signal.aborted) return;
      now = change(now);
      if (now.shown) known.set(design, atRest(now));
      setWork(now);
    };
    setWork(now);
    runningOdds(
      { design, now: false, draws: drawsOf(design) },
      (done, count, shown) => set((before) => ({ ...before, done, count, shown: shown ?? before.shown })),
      mine.signal,
    )
      .then((shown) => set((before) => ({ ...before, stage: 'done', shown })))
      .catch((error: unknown) => set((before) => ({ ...before, stage: 'stopped', fault: faultText(error) })));
  }, [design]);
  return { ...work, start, stop };
}
