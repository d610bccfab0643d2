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
  // Left before it is there, it is there all the same: what is half way is no place that anybody chose.
  const goal = useRef(0);
  useEffect(
    () => () => {
      if (frame.current !== 0 && work.dragging()) work.moveTo(goal.current);
      stop();
    },
    [work, stop],
  );

  const start = (to: number) => {
    const from = work.store.getState().design.position ?? 0;
    if (still) return work.moveTo(to);
    goal.current = to;
    const begun = performance.now();
    work.dragStart();
    setRunning(to);
    const tick = (now: number) => {
      if (!work.dragging()) return stop();
      const part = Math.min(1, Math.max(0, seconds(now - begun) / SECONDS));
      work.moveTo(part === 1 ? to : from + (to - from) * part);
      if (part === 1) stop();
      else frame.current = requestAnimationFrame(tick);
    };
    frame.current = requestAnimationFrame(tick);
  };
  /** `running` is the position it goes to; asked again for the same, or for another while it runs, it pauses. */
  return { running, toggle: (to: number) => (running === null ? start(to) : stop()) };
}
