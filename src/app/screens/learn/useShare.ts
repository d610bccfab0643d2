/** How much of the way what is let go has gone: 0 before, 1 once it stands. */
import { useEffect, useState } from 'react';
import { useMedia } from '../../pictures/useMedia.ts';

/** ms that what is let go takes. */
const RELEASE = 2400;

/** frozen: still · byHand: the hand commits by it · released: it moves and then stands · free: the hand's */
export type Phase = 'frozen' | 'byHand' | 'released' | 'free';

/** `again`: how often it was let go again, to be looked at once more */
export function useShare(phase: Phase, again: number): number {
  const still = useMedia('(prefers-reduced-motion: reduce)');
  const asks = phase === 'frozen' || phase === 'byHand';
  const begins = asks ? 0 : still || (phase === 'free' && again === 0) ? 1 : 0;
  const key = `${phase} ${again}`;
  const [state, setState] = useState({ key, share: begins });
  const moves = !asks && begins === 0;
  useEffect(() => {
    if (!moves) return;
    let frame = 0;
    let begun: number | null = null;
    const tick = (now: number) => {
      begun ??= now;
      const share = Math.min(1, (now - begun) / RELEASE);
      setState({ key, share });
      if (share < 1) frame = requestAnimationFrame(tick);
    };
    frame = requestAnimationFrame(tick);
    return () => cancelAnimationFrame(frame);
  }, [key, moves]);
  return state.key === key ? state.share : begins;
}
