/**
 * What stands before any verdict of the design's shapes: that the readings of the bench contradict each other, that
 * what was read at a trial does not go with the rest, or that they tell of other parts than are drawn.
 */
export type NotAsRead = 'contradict' | 'trials' | 'other';

interface Verdict {
  tone: 'good' | 'mend' | 'stop' | 'plain';
  headline: string;
  sentences: string[];
}

/** Trials that do not go together are told of by cut/withheld.ts. */
export const NOT_AS_READ: { [why in NotAsRead]?: string } = {
  contradict: 'Readings of the bench contradict each other: settle that on Measure first.',
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
  const headline = why && NOT_AS_READ[why];
  if (!headline) return verdict;
  return {
    ...verdict,
    tone: why === 'other' && verdict.tone !== 'stop' ? 'mend' : 'stop',
    headline,
    sentences: [`${of}: ${verdict.headline}`, ...verdict.sentences],
  };
}
