/** Runs the journal to a position at an even pace, to the touch or to a film; can be paused; one step to undo. */

import { useCallback, useEffect, useRef, useState } from 'react';
import { seconds } from '../../report/convert.ts';
import type { Work } from '../state/store.ts';

const SECONDS = 3;

export function useClosing(work: Work, still: boolean) {
  const [running, setRunning] = useState<number | null>(null);
  const frame = useRef(0);
  const stop = useCallback(() => {
    cancelAnimationFrame(frame.current);
    if (frame.current !== 0) work.dragEnd();
    frame.current = 0;
    setRunning(null);
  }, [work]);
  useEffect(() => stop, [stop]);

  const start = (goal: number) => {
    const from = work.store.getState().design.position ?? 0;
    if (still) return work.moveTo(goal);
    const begun = performance.now();
    work.dragStart();
    setRunning(goal);
    const tick = (now: number) => {
      if (!work.dragging()) return stop();
      const part = Math.min(1, Math.max(0, seconds(now - begun) / SECONDS));
      work.moveTo(part === 1 ? goal : from + (goal - from) * part);
      if (part === 1) stop();
      else frame.current = requestAnimationFrame(tick);
    };
    frame.current = requestAnimationFrame(tick);
  };
  /** `running` is the position it goes to; asked again for the same, or for another while it runs, it pauses. */
  return { running, toggle: (goal: number) => (running === null ? start(goal) : stop()) };
}
