/**
 * The factor of a picture, held while anything in it moves: what is drawn then grows and shrinks as it truly does. Once
 * all has stood still for a moment it goes to the factor that suits what stands there, seen and said; never while it is
 * locked.
 */
import { useEffect, useState } from 'react';
import { useLatest } from '../state/useLatest.ts';

export interface Scale {
  factor: number;
  /** what it was before the last time it changed by itself, for as long as that is said */
  before: number | null;
}

interface Asked {
  /** the greatest factor, up to the one asked for, that suits what stands there now */
  suits: number;
  /** of another job, or with another factor asked for, all is drawn anew */
  of: string;
  locked: boolean;
  /** without easing */
  still: boolean;
  /** whether a hand has hold of anything */
  held(): boolean;
}

/** ms: how long all stands still before, how long the change takes, how long it is said. */
const REST = 700;
const EASE = 400;
const SAID = 5000;
/** A factor this many times as great is worth a change; any that is too great is. */
const WORTH = 1.5;

export const isWorthAChange = (factor: number, suits: number): boolean =>
  factor > suits * (1 + 1e-9) || suits >= WORTH * factor;

/** A factor on its way, at a share of the time: even steps of its logarithm, slow at both ends. */
export function easedFactor(from: number, to: number, share: number): number {
  const t = Math.min(1, Math.max(0, share));
  return t === 1 ? to : from * (to / from) ** (t * t * (3 - 2 * t));
}

export function useScale({ suits, of, locked, still, held }: Asked): Scale {
  const [scale, setScale] = useState({ of, factor: suits, before: null as number | null });
  const shown = scale.of === of ? scale : { of, factor: suits, before: null };
  if (shown !== scale) setScale(shown);
  const latest = useLatest({ factor: shown.factor, held });
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout>;
    let frame = 0;
    const say = (factor: number, before: number | null) =>
      setScale((now) => (now.of === of ? { of, factor, before } : now));
    const rested = () => {
      if (latest.current.held()) {
        timer = setTimeout(rested, REST);
        return;
      }
      const from = latest.current.factor;
      if (locked || !isWorthAChange(from, suits)) return;
      const begun = performance.now();
      const step = (now: number) => {
        const share = still ? 1 : (now - begun) / EASE;
        say(easedFactor(from, suits, share), from);
        if (share < 1) frame = requestAnimationFrame(step);
        else timer = setTimeout(() => say(suits, null), SAID);
      };
      frame = requestAnimationFrame(step);
    };
    timer = setTimeout(rested, REST);
    return () => {
      clearTimeout(timer);
      cancelAnimationFrame(frame);
    };
  }, [suits, of, locked, still]);
  return shown;
}
