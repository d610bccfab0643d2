/**
 * What may be said of the pair at all: the one rule that every screen asks before it tells, draws or advises anything
 * by what was believed. It is withheld while trials that are written down do not go together, while one is told in a
 * form and was refused, while metal is off that nothing here knows of yet, and while what is known is worked out anew.
 * What else stands is of before it.
 */
import type { NotAsRead } from '../belief/notAsRead.ts';
import type { CutReport } from './definition.ts';

export type Withheld = 'clash' | 'refused' | 'metal' | 'working';

/** Whether what was read at the trials that are written down does not go together. */
export function isUnsettled({ trials = [] }: Pick<CutReport, 'trials'>): boolean {
  const last = trials[trials.length - 1];
  return last !== undefined && (last.status !== 'updated' || (last.clashes ?? []).length > 0);
}

interface Known {
  cut?: Pick<CutReport, 'trials'> | null | undefined;
  /** as the belief or the odds have it */
  notAsRead?: NotAsRead | null | undefined;
  /** whether all that is of another history than that of now */
  before?: boolean;
}

/** `form`: what stands against it in a trial that is being written. */
export const withheldBy = (form: Withheld | null, { cut, notAsRead, before }: Known): Withheld | null =>
  form ?? (before ? 'working' : (cut && isUnsettled(cut)) || notAsRead === 'trials' ? 'clash' : null);

interface Verdict {
  tone: 'good' | 'mend' | 'stop' | 'plain';
  headline: string;
  sentences: string[];
}

/** The first line of a screen that would tell what to do. */
export const WITHHELD_NOW: Record<Withheld, string> = {
  clash: 'Trial and parts do not go together: take nothing.',
  refused: 'Trial and parts do not go together: take nothing.',
  metal: 'Metal is off that is not written down yet: take nothing more.',
  working: 'What is known now is being worked out.',
};

const HEADLINE: Record<Withheld, string> = {
  clash: 'What was read at a trial does not go with the rest: nothing is safe to take until it does.',
  refused: 'A trial is not written down because it does not go with the rest: nothing is safe to take until it does.',
  metal: WITHHELD_NOW.metal,
  working: 'Until then all that stands here is of before the last change.',
};

const MORE: Record<Exclude<Withheld, 'working'>, string> = {
  clash: 'What most likely is wrong, and what would make all agree, stands on Cut.',
  refused: 'What stands against it, and what would make all agree, stands with the trial on Cut.',
  metal: 'It stands in the trial on Cut. Write that down first; what else stands here is of before it.',
};

/** The same on Cut itself, where the trial stands below. */
const HERE: typeof MORE = {
  clash: 'What most likely is wrong, and what would make all agree, stands at the trial below.',
  refused: 'What stands against it, and what would make all agree, stands at the trial below.',
  metal: 'It stands in the trial below. Write that down first; what else stands here is of before it.',
};

/**
 * The same verdict without anything that it advises. `here`: on the screen where the trial stands; `slip`: what most
 * likely is wrong (causeWords.ts), which every screen names.
 */
export function behindTrial<V extends Verdict>(verdict: V, why: Withheld | null, here = false, slip = ''): V {
  if (why === null) return verdict;
  if (why === 'working') return { ...verdict, tone: 'plain', headline: HEADLINE.working, sentences: [] };
  const headline = slip === '' ? HEADLINE[why] : `${HEADLINE[why]} ${slip}`;
  return { ...verdict, tone: 'stop', headline, sentences: [(here ? HERE : MORE)[why]] };
}
