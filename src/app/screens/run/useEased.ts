/**
 * A value for a picture that may be dear to draw: the newest, but at most half the time goes into drawing, and where a
 * single drawing takes longer than a hand would bear, it waits until the hand lets go.
 */
import { useEffect, useRef, useState } from 'react';
import { useLatest } from '../../state/useLatest.ts';

/** ms */
const BEARABLE = 100;

export function useEased<T>(value: T, dragging: () => boolean): T {
  const [shown, setShown] = useState(value);
  const newest = useLatest(value);
  const gone = useRef(false);
  const turn = useRef<'idle' | 'busy'>('idle');
  const took = useRef(0);
  useEffect(() => {
    gone.current = false;
    return () => {
      gone.current = true;
    };
  }, []);
  useEffect(() => {
    if (turn.current === 'busy' || shown === value) return;
    turn.current = 'busy';
    const show = () => {
      if (gone.current) return;
      if (took.current > BEARABLE && dragging()) return void setTimeout(show, BEARABLE);
      const begun = performance.now();
      const last = newest.current;
      setShown(last);
      // Two frames on, the first has been drawn.
      requestAnimationFrame(() =>
        requestAnimationFrame(() => {
          took.current = performance.now() - begun;
          setTimeout(() => {
            if (newest.current !== last) show();
            else turn.current = 'idle';
          }, took.current);
        }),
      );
    };
    show();
  }, [value, shown, dragging]);
  return shown;
}
