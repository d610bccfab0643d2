/**
 * What stands before any verdict of the design's shapes: that the readings of the bench contradict each other, or that
 * they tell of other parts than are drawn.
 */
import type { Design } from '../../design/definition.ts';
import { fitSection } from '../fit/section.ts';
import type { BeliefReport } from './definition.ts';

export type NotAsRead = 'contradict' | 'other';

interface Verdict {
  tone: 'good' | 'mend' | 'stop' | 'plain';
  headline: string;
  sentences: string[];
}

const HEADLINE: Record<NotAsRead, string> = {
  contradict: 'Readings of the bench contradict each other: settle that on Measure first.',
  other: 'The parts were read otherwise than they are drawn here: use Measure’s shapes first.',
};

/** A film of the design this far from what is believed (standard deviations, mm) is another. */
const APART = 2;
const NOTICED = 5e-5;

export const isApart = (off: number, sd: number): boolean => Math.abs(off) > APART * sd + NOTICED;

/** Of the parts as drawn, where the position is that of the belief; trials tell of parts that were cut since. */
export function notAsRead(design: Design, belief: BeliefReport | null | undefined): NotAsRead | null {
  if (!belief) return null;
  if (belief.disagreeing.length > 0) return 'contradict';
  if (belief.method === 'draws') return null;
  const { seats } = fitSection({ ...design, position: belief.position });
  const other = seats.some(({ name, leastFilm }) => {
    const film = belief.films[name];
    return film != null && leastFilm !== null && isApart(leastFilm - film.mean, film.sd);
  });
  return other ? 'other' : null;
}

/** The same verdict behind it; never praise. */
export function behindReadings<V extends Verdict>(verdict: V, why: NotAsRead | null | undefined): V {
  if (!why) return verdict;
  return {
    ...verdict,
    tone: why === 'contradict' || verdict.tone === 'stop' ? 'stop' : 'mend',
    headline: HEADLINE[why],
    sentences: [`As drawn: ${verdict.headline}`, ...verdict.sentences],
  };
}
