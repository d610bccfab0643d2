/**
 * What takes seconds: begins once the design rests, shows every point as it comes, gives way to another design, and can
 * be stopped by hand. What stands is kept until the next has something to say.
 */
import { useCallback, useEffect, useRef, useState } from 'react';
import { faultText } from './useNewest.ts';
import { useRested } from './useRested.ts';

/** ms without a change */
const REST = 350;

export interface Begun {
  stage: string;
  fault: string | null;
}

export type Tell<W> = (change: (work: W) => W) => void;
/** `tell` says nothing any more once the signal is given. */
type WorkOut<D, W> = (design: D, tell: Tell<W>, signal: AbortSignal) => Promise<void>;

export interface ByHand {
  stop(): void;
  start(): void;
}

/** `workOut` stays the same function; it leads to the stage `done`, by hand or by a fault to `stopped`. */
export function useLongWork<D, W extends Begun>(design: D, nothing: W, workOut: WorkOut<D, W>): W & ByHand {
  const rested = useRested(design, REST);
  const [work, setWork] = useState(nothing);
  const [held, setHeld] = useState(false);
  /** how often it was begun by hand */
  const [turn, setTurn] = useState(0);
  const control = useRef<AbortController | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: begun by hand, the same is worked out once more
  useEffect(() => {
    if (held) return;
    const mine = new AbortController();
    control.current = mine;
    const tell: Tell<W> = (change) => {
      if (!mine.signal.aborted) setWork(change);
    };
    workOut(rested, tell, mine.signal).catch((error: unknown) =>
      tell((before) => ({ ...before, fault: faultText(error), stage: 'stopped' })),
    );
    return () => mine.abort();
  }, [rested, held, turn, workOut]);
  const stop = useCallback(() => {
    control.current?.abort();
    setHeld(true);
    setWork((before) => ({ ...before, stage: 'stopped' }));
  }, []);
  const start = useCallback(() => {
    setHeld(false);
    setTurn((times) => times + 1);
  }, []);
  return { ...work, stop, start };
}
