/**
 * The odds of the run: begun by hand, for they take every core a while; stopped by hand, or by another design. They go
 * on while other screens are looked at.
 */
import { useCallback, useEffect, useState } from 'react';
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

/** What is under way, whatever screen is looked at: it takes every core, so there is one at most. */
interface UnderWay {
  design: Design;
  control: AbortController;
  work: RunningWork;
}
const underWay: { now: UnderWay | null; tell: ((work: RunningWork) => void) | null } = { now: null, tell: null };

/** What was stopped stays as far as it came. */
const atRest = (work: RunningWork): RunningWork => (work.stage === 'working' ? { ...work, stage: 'stopped' } : work);

function stopIt(): void {
  underWay.now?.control.abort();
  underWay.now = null;
}

function startIt(design: Design): void {
  stopIt();
  const control = new AbortController();
  const mine: UnderWay = {
    design,
    control,
    work: { ...NOTHING, stage: 'working', of: design, since: performance.now() },
  };
  underWay.now = mine;
  const set = (change: (before: RunningWork) => RunningWork) => {
    if (control.signal.aborted) return;
    mine.work = change(mine.work);
    if (mine.work.shown) known.set(design, atRest(mine.work));
    if (mine.work.stage !== 'working') underWay.now = null;
    underWay.tell?.(mine.work);
  };
  set((work) => work);
  runningOdds(
    { design, now: false, draws: drawsOf(design) },
    (done, count, shown) => set((before) => ({ ...before, done, count, shown: shown ?? before.shown })),
    control.signal,
  )
    .then((shown) => set((before) => ({ ...before, stage: 'done', shown })))
    .catch((error: unknown) => set((before) => ({ ...before, stage: 'stopped', fault: faultText(error) })));
}

const foundOf = (design: Design): RunningWork | undefined =>
  underWay.now?.design === design ? underWay.now.work : known.get(design);

export function useRunning(design: Design): RunningWork & { start(): void; stop(): void } {
  const [work, setWork] = useState(() => foundOf(design) ?? NOTHING);
  // What is under way belongs to the design it began with; it goes on while other screens are looked at.
  useEffect(() => {
    if (underWay.now && underWay.now.design !== design) {
      stopIt();
      setWork(atRest);
    }
    const found = foundOf(design);
    if (found) setWork(found);
    underWay.tell = setWork;
    return () => {
      underWay.tell = null;
    };
  }, [design]);
  const stop = useCallback(() => {
    stopIt();
    setWork(atRest);
  }, []);
  const start = useCallback(() => startIt(design), [design]);
  return { ...work, start, stop };
}
