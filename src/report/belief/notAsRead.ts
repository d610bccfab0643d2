/**
 * What stands before any verdict of the design's shapes: that the readings of the bench contradict each other, that
 * what was read at a trial does not go with the rest, or that they tell of other parts than are drawn.
 */
import * as z from 'zod/mini';

export const notAsRead = z.enum(['contradict', 'trials', 'other']).check(
  z.meta({
    description:
      'Readings contradict each other, what was read at a trial does not go with the rest, or both tell of other parts than are drawn',
  }),
);

export type NotAsRead = z.infer<typeof notAsRead>;

interface Verdict {
  tone: 'good' | 'mend' | 'stop' | 'plain';
  headline: string;
  sentences: string[];
}

export const NOT_AS_READ: Record<NotAsRead, string> = {
  contradict: 'Readings of the bench contradict each other: settle that on Measure first.',
  trials: 'What was read at a trial does not go with the rest: see Cut, before any of it is believed.',
  other: 'The parts were read otherwise than they are drawn here: use Measure’s shapes first.',
};

/** A film of the design this far from what is believed (standard deviations, mm) is another. */
const APART = 2;
const NOTICED = 5e-5;

export const isApart = (off: number, sd: number): boolean => Math.abs(off) > APART * sd + NOTICED;

/** The same verdict behind it; never praise. `of`: the parts it speaks of. */
export function behindReadings<V extends Verdict>(
  verdict: V,
  why: NotAsRead | null | undefined,
  of: 'As drawn' | 'As read' = 'As drawn',
): V {
  if (!why) return verdict;
  return {
    ...verdict,
    tone: why === 'other' && verdict.tone !== 'stop' ? 'mend' : 'stop',
    headline: NOT_AS_READ[why],
    sentences: [`${of}: ${verdict.headline}`, ...verdict.sentences],
  };
}
