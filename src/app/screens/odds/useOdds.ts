/** The odds of a design as they come. */
import type { Design } from '../../../design/definition.ts';
import type { OddsReport } from '../../../report/odds/definition.ts';
import type { Pictures } from '../../../report/odds/pictures.ts';
import type { OddsSoFar, Stage } from '../../../report/odds/work.ts';
import { job } from '../../../worker/pool.ts';
import { type ByHand, type Tell, useLongWork } from '../../state/useLongWork.ts';

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

export const useOdds = (design: Design): Odds & ByHand => useLongWork(design, NOTHING, workOut);

/** What was worked out in full, by design: it stands at once when one comes back to it. */
const known = new WeakMap<Design, Odds>();

async function workOut(design: Design, tell: Tell<Odds>, signal: AbortSignal): Promise<void> {
  let now = known.get(design) ?? NOTHING;
  if (now !== NOTHING) return tell(() => now);
  const show = (next: Odds) => {
    now = next;
    if (next.stage === 'done') known.set(design, next);
    tell(() => next);
  };
  tell((before) => ({ ...before, stage: 'now', done: 0, count: 0, fault: null }));
  const report = await job('odds', design, { signal, tell: (point) => show(withPoint(now, design, point)) });
  show({ ...now, report, of: design, stage: 'done' });
}

/** Points come by a way of their own: one that comes after the answer has nothing to say but its pictures. */
function withPoint(before: Odds, of: Design, { stage, done, of: count, report, pictures }: OddsSoFar): Odds {
  const drawn = { ...before.pictures, ...pictures };
  if (before.stage === 'done') return { ...before, pictures: drawn };
  return { ...before, of, stage, done, count, report, pictures: drawn };
}
