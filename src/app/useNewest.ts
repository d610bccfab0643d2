/**
 * An answer worked out beside the screen, following a design as it changes: while one is on its way only the newest
 * design waits, so that a drag is answered at the pace of the solver and never queued up.
 */
import { useEffect, useRef, useState } from 'react';
import type { Design } from '../design/definition.ts';

export interface Solved<T> {
  /** for the design of `of`; null before the first answer, and where the design lacks what it needs */
  value: T | null;
  /** the design the value belongs to */
  of: Design | null;
  /** why the solver failed: a fault of ours */
  fault: string | null;
}

/** `ask` stays the same function for as long as the same is asked; nothing is asked for no design. */
export function useNewest<T>(ask: (design: Design) => Promise<T | null | undefined>, design: Design | null): Solved<T> {
  const [solved, setSolved] = useState<Solved<T>>({ value: null, of: null, fault: null });
  const wanted = useRef(design);
  wanted.current = design;
  const busy = useRef(false);
  const shown = useRef(true);
  useEffect(() => {
    shown.current = true;
    return () => {
      shown.current = false;
    };
  }, []);
  // Runs for every design that comes while nothing is under way; what comes meanwhile is taken by the loop.
  // biome-ignore lint/correctness/useExhaustiveDependencies: `design` is read through `wanted`, which is the newest
  useEffect(() => {
    if (busy.current) return;
    const run = async () => {
      for (let of: Design | null = null; shown.current && wanted.current !== null && of !== wanted.current; ) {
        of = wanted.current;
        const value = await ask(of);
        if (shown.current) setSolved({ value: value ?? null, of, fault: null });
      }
    };
    busy.current = true;
    run()
      .catch((error: unknown) => {
        if (shown.current) setSolved({ value: null, of: wanted.current, fault: error instanceof Error ? error.message : String(error) });
      })
      .finally(() => {
        busy.current = false;
      });
  }, [ask, design]);
  return solved;
}
