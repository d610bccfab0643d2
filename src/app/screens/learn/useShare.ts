/** How far what is let go has gone. */
import { useEffect, useState } from 'react';
import { useMedia } from '../../pictures/useMedia.ts';
import { OVER, type Shown, STOOD, shownAt } from './release.ts';

/** frozen: still · released: it moves and then stands · free: the hand's */
export type Phase = 'frozen' | 'released' | 'free';

/** `again`: how often it was let go again, to be looked at once more; `tried`: an answer is carried out first */
export function useShown(phase: Phase, again: number, tried = false): Shown {
  const still = useMedia('(prefers-reduced-motion: reduce)');
  const begins = phase === 'frozen' ? STOOD : still || (phase === 'free' && again === 0) ? OVER : shownAt(0, tried);
  const key = `${phase} ${again} ${tried}`;
  const [state, setState] = useState({ key, shown: begins });
  const moves = phase !== 'frozen' && begins !== OVER;
  useEffect(() => {
    if (!moves) return;
    let frame = 0;
    let begun: number | null = null;
    const tick = (now: number) => {
      begun ??= now;
      const shown = shownAt(now - begun, tried);
      setState({ key, shown });
      if (!shown.over) frame = requestAnimationFrame(tick);
    };
    frame = requestAnimationFrame(tick);
    return () => cancelAnimationFrame(frame);
  }, [key, moves, tried]);
  return state.key === key ? state.shown : begins;
}

export const useShare = (phase: Phase, again: number): number => useShown(phase, again).share;
