/** "Close until it touches": runs the journal to a position at an even pace; can be paused; one step to undo. */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Work } from './store.ts';

const SECONDS = 3;

export function useClosing(work: Work, goal: number | null, still: boolean) {
  const [running, setRunning] = useState(false);
  const frame = useRef(0);
  const stop = useCallback(() => {
    cancelAnimationFrame(frame.current);
    if (frame.current !== 0) work.dragEnd();
    frame.current = 0;
    setRunning(false);
  }, [work]);
  useEffect(() => stop, [stop]);

  const start = () => {
    if (goal === null) return;
    const from = work.store.getState().design.position ?? 0;
    if (still) return work.moveTo(goal);
    const begun = performance.now();
    work.dragStart();
    setRunning(true);
    const tick = (now: number) => {
      if (!work.dragging()) return stop();
      const part = Math.min(1, Math.max(0, (now - begun) / 1000 / SECONDS));
      work.moveTo(part === 1 ? goal : from + (goal - from) * part);
      if (part === 1) stop();
      else frame.current = requestAnimationFrame(tick);
    };
    frame.current = requestAnimationFrame(tick);
  };
  return { running, toggle: running ? stop : start };
}
