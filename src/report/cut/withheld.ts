/**
 * What may be said of the pair at all: the one rule that every screen asks before it tells, draws or advises anything
 * by what was believed. It is withheld while trials that are written down do not go together, while one is told in a
 * form and was refused, and while metal is off that nothing here knows of yet. What else stands is of before it.
 */
import type { NotAsRead } from '../belief/notAsRead.ts';
import type { CutReport } from './definition.ts';

export type Withheld = 'clash' | 'refused' | 'metal';

/** Whether what was read at the trials that are written down does not go together. */
export function isUnsettled({ trials = [] }: Pick<CutReport, 'trials'>): boolean {
  const last = trials[trials.length - 1];
  return last !== undefined && (last.status !== 'updated' || (last.clashes ?? []).length > 0);
}

interface Known {
  cut?: Pick<CutReport, 'trials'> | null | undefined;
  /** as the belief or the odds have it */
  notAsRead?: NotAsRead | null | undefined;
}

/** `form`: what stands against it in a trial that is being written. */
export const withheldBy = (form: Withheld | null, { cut, notAsRead }: Known): Withheld | null =>
  form ?? ((cut && isUnsettled(cut)) || notAsRead === 'trials' ? 'clash' : null);

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
};

const HEADLINE: Record<Withheld, string> = {
  clash: 'What was read at a trial does not go with the rest: nothing is safe to take until it does.',
  refused: 'A trial is not written down because it does not go with the rest: nothing is safe to take until it does.',
  metal: WITHHELD_NOW.metal,
};

const MORE: Record<Withheld, string> = {
  clash: 'What most likely is wrong, and what would make all agree, stands on Cut.',
  refused: 'What stands against it, and what would make all agree, stands with the trial on Cut.',
  metal: 'It stands in the trial on Cut. Write that down first; what else stands here is of before it.',
};

/** The same on Cut itself, where the trial stands below. */
const HERE: Record<Withheld, string> = {
  clash: 'What most likely is wrong, and what would make all agree, stands at the trial below.',
  refused: 'What stands against it, and what would make all agree, stands at the trial below.',
  metal: 'It stands in the trial below. Write that down first; what else stands here is of before it.',
};

/** The same verdict without anything that it advises. `here`: on the screen where the trial stands. */
export const behindTrial = <V extends Verdict>(verdict: V, why: Withheld | null, here = false): V =>
  why === null
    ? verdict
    : { ...verdict, tone: 'stop', headline: HEADLINE[why], sentences: [(here ? HERE : MORE)[why]] };
