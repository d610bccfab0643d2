/**
 * The odds of a design, once it rests: every point is shown as it comes, another design takes its place, and it can be
 * stopped by hand. What stands is kept until the next has something to say.
 */
import { useCallback, useEffect, useRef, useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import type { OddsReport } from '../../../report/odds/definition.ts';
import type { Pictures } from '../../../report/odds/pictures.ts';
import type { OddsSoFar, Stage } from '../../../report/odds/work.ts';
import { job } from '../../../worker/pool.ts';
import { faultText } from '../../state/useNewest.ts';
import { useRested } from '../run/useFields.ts';

export interface Odds {
  /** null while nothing is known, and where what is known goes together in no pair */
  report: OddsReport | null;
  pictures: { now?: Pictures; planned?: Pictures };
  /** the design all of it belongs to; null before the first answer */
  of: Design | null;
  stage: Stage | 'done' | 'stopped';
  /** of the stage */
  done: number;
  count: number;
  fault: string | null;
}

const NOTHING: Odds = { report: null, pictures: {}, of: null, stage: 'now', done: 0, count: 0, fault: null };
/** ms without a change */
const REST = 350;

export function useOdds(design: Design): Odds & { stop(): void; start(): void } {
  const rested = useRested(design, REST);
  const [odds, setOdds] = useState(NOTHING);
  const [held, setHeld] = useState(false);
  /** how often it was begun by hand */
  const [turn, setTurn] = useState(0);
  const control = useRef<AbortController | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: begun by hand, the same is worked out once more
  useEffect(() => {
    if (held) return;
    const mine = new AbortController();
    control.current = mine;
    const { signal } = mine;
    const tell = (change: (odds: Odds) => Odds) => {
      if (!signal.aborted) setOdds(change);
    };
    tell((before) => ({ ...before, stage: 'now', done: 0, count: 0, fault: null }));
    job('odds', rested, { signal, tell: (point) => tell((before) => withPoint(before, rested, point)) })
      .then((report) =>
        tell((before) => ({
          ...before,
          report,
          of: rested,
          stage: 'done',
          pictures: before.of === rested ? before.pictures : {},
        })),
      )
      .catch((error: unknown) => tell((before) => ({ ...before, fault: faultText(error), stage: 'stopped' })));
    return () => mine.abort();
  }, [rested, held, turn]);
  const stop = useCallback(() => {
    control.current?.abort();
    setHeld(true);
    setOdds((before) => ({ ...before, stage: 'stopped' }));
  }, []);
  const start = useCallback(() => {
    setHeld(false);
    setTurn((times) => times + 1);
  }, []);
  return { ...odds, stop, start };
}

/**
 * What is drawn of a design before gives way to the first of this one. Points come by a way of their own: one that
 * comes after the answer has nothing to say but its pictures.
 */
function withPoint(before: Odds, of: Design, { stage, done, of: count, report, pictures }: OddsSoFar): Odds {
  const known = before.of === of ? before.pictures : {};
  if (before.of === of && before.stage === 'done') return { ...before, pictures: { ...known, ...pictures } };
  return { ...before, of, stage, done, count, report, pictures: { ...known, ...pictures } };
}
