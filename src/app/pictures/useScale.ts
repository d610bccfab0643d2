/**
 * The factor of a picture, held while anything in it moves: what is drawn then grows and shrinks as it truly does. Once
 * all has stood still for a moment it changes by no more than it must (restingFactor), seen and said; never while it is
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
  /** what stands there: the same for as long as nothing moves */
  standing: unknown;
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
/** The picture may be drawn this many times smaller than suits it before it grows, and then by no more than that. */
const ROOMY = 2.5;

/**
 * The factor at rest: the one there was, unless the picture no longer fits, or little is left to see. Then it goes to
 * the nearest that will do, so that of two rests the one with the deeper gap is never drawn with the less: with g the
 * deepest gap and R the room for it `suits` is R / g, and what is drawn of g is held between R / ROOMY and R.
 * @source derived
 */
export const restingFactor = (factor: number, suits: number): number =>
  Math.min(suits, Math.max(factor, suits / ROOMY));

/** A factor on its way, at a share of the time: even steps of its logarithm, slow at both ends. */
export function easedFactor(from: number, to: number, share: number): number {
  const t = Math.min(1, Math.max(0, share));
  return t === 1 ? to : from * (to / from) ** (t * t * (3 - 2 * t));
}

export function useScale({ suits, standing, of, locked, still, held }: Asked): Scale {
  const [scale, setScale] = useState({ of, factor: suits, before: null as number | null });
  const shown = scale.of === of ? scale : { of, factor: suits, before: null };
  if (shown !== scale) setScale(shown);
  const { factor, before } = shown;
  const goal = locked ? factor : restingFactor(factor, suits);
  const settled = goal === factor;
  const latest = useLatest({ factor, goal, held });
  // While the factor will do nothing waits for what moves to stand still.
  const waits = settled ? null : standing;
  // biome-ignore lint/correctness/useExhaustiveDependencies: whatever moves begins the rest anew
  useEffect(() => {
    if (settled) return;
    let timer: ReturnType<typeof setTimeout>;
    let frame = 0;
    const rested = () => {
      if (latest.current.held()) {
        timer = setTimeout(rested, REST);
        return;
      }
      const { factor: from, goal: to } = latest.current;
      const begun = performance.now();
      const step = (now: number) => {
        const share = still ? 1 : (now - begun) / EASE;
        setScale((is) => (is.of === of ? { of, factor: easedFactor(from, to, share), before: from } : is));
        if (share < 1) frame = requestAnimationFrame(step);
      };
      frame = requestAnimationFrame(step);
    };
    timer = setTimeout(rested, REST);
    return () => {
      clearTimeout(timer);
      cancelAnimationFrame(frame);
    };
  }, [waits, settled, of, still]);
  useEffect(() => {
    if (before === null || !settled) return;
    const timer = setTimeout(() => setScale((is) => ({ ...is, before: null })), SAID);
    return () => clearTimeout(timer);
  }, [before, settled]);
  return shown;
}
