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

async function workOut(design: Design, tell: Tell<Odds>, signal: AbortSignal): Promise<void> {
  tell((before) => ({ ...before, stage: 'now', done: 0, count: 0, fault: null }));
  const report = await job('odds', design, {
    signal,
    tell: (point) => tell((before) => withPoint(before, design, point)),
  });
  tell((before) => ({
    ...before,
    report,
    of: design,
    stage: 'done',
    pictures: before.of === design ? before.pictures : {},
  }));
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
