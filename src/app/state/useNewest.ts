/**
 * An answer worked out beside the screen, following a design as it changes: while one is on its way only the newest
 * design waits, so that a drag is answered at the pace of the solver and never queued up.
 */
import { useEffect, useRef, useState } from 'react';
import type { Design } from '../../design/definition.ts';

type Ask<T> = (design: Design, signal: AbortSignal) => Promise<T | null | undefined>;

interface Answer<T> {
  /** for the design of `of`; null before the first answer, and where the design lacks what it needs */
  value: T | null;
  /** the design the value belongs to */
  of: Design | null;
  /** why it could not be worked out: a fault of the solver, or none to be had */
  fault: string | null;
}

export interface Solved<T> extends Answer<T> {
  /** whether the value is of the design of now, asked as it is asked now */
  fresh: boolean;
  /** Asks once more, after a fault. */
  again(): void;
}

interface Question<T> {
  ask: Ask<T>;
  design: Design | null;
  /** how often it was asked once more */
  turn: number;
}

interface Asking {
  /** when it was asked (ms), and the way to give it up; null while nothing is under way */
  since: number;
  control: AbortController | null;
}

/**
 * `ask` stays the same function for as long as the same is asked; nothing is asked for no design.
 * @param patience ms after which a question under way is given up for a newer one
 */
export function useNewest<T>(ask: Ask<T>, design: Design | null, patience = Number.POSITIVE_INFINITY): Solved<T> {
  const [turn, setTurn] = useState(0);
  const [solved, setSolved] = useState<Answer<T> & { by: Ask<T> | null }>({
    value: null,
    of: null,
    fault: null,
    by: null,
  });
  const wanted = useRef<Question<T>>({ ask, design, turn });
  const asking = useRef<Asking>({ since: 0, control: null });
  const shown = useRef(true);
  useEffect(() => {
    shown.current = true;
    return () => {
      shown.current = false;
      asking.current.control?.abort();
    };
  }, []);
  // What comes while a question is under way is taken by its loop.
  useEffect(() => {
    wanted.current = { ask, design, turn };
    const { since, control } = asking.current;
    if (control) {
      if (performance.now() - since > patience) control.abort();
      return;
    }
    const run = async () => {
      for (
        let done: Question<T> | null = null;
        shown.current && wanted.current.design !== null && !same(done, wanted.current);
      ) {
        done = wanted.current;
        const control = new AbortController();
        asking.current = { since: performance.now(), control };
        const answer = await answered(done.ask, wanted.current.design, control.signal);
        // Why a question failed that is asked no more is nobody's concern.
        if (shown.current && (answer.fault === null || same(done, wanted.current)))
          setSolved({ ...answer, by: done.ask });
      }
      // At once, so that no question falls between.
      asking.current = { since: 0, control: null };
    };
    void run();
  }, [ask, design, turn, patience]);
  const again = () => {
    setSolved((before) => ({ ...before, of: null, fault: null }));
    setTurn((times) => times + 1);
  };
  const { by, ...answer } = solved;
  return { ...answer, fresh: answer.of === design && by === ask, again };
}

const same = <T>(a: Question<T> | null, b: Question<T>) =>
  a !== null && a.ask === b.ask && a.design === b.design && a.turn === b.turn;

async function answered<T>(ask: Ask<T>, of: Design, signal: AbortSignal): Promise<Answer<T>> {
  try {
    return { value: (await ask(of, signal)) ?? null, of, fault: null };
  } catch (error) {
    return { value: null, of, fault: faultText(error) };
  }
}

export const faultText = (error: unknown): string => (error instanceof Error ? error.message : String(error));
