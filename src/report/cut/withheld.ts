/**
 * What is withheld on every screen while a trial is told in a form and not written down: that it does not go with the
 * rest, or that metal is off which nothing here knows of yet. What else stands there is of before it, so none of it is
 * advised.
 */

export type Withheld = 'refused' | 'metal';

interface Verdict {
  tone: 'good' | 'mend' | 'stop' | 'plain';
  headline: string;
  sentences: string[];
}

/** The first line of a screen that would tell what to do. */
export const WITHHELD_NOW: Record<Withheld, string> = {
  refused: 'Trial and parts do not go together: take nothing.',
  metal: 'Metal is off that is not written down yet: take nothing more.',
};

const HEADLINE: Record<Withheld, string> = {
  refused: 'A trial is not written down because it does not go with the rest: nothing is safe to take until it does.',
  metal: WITHHELD_NOW.metal,
};

const MORE: Record<Withheld, string> = {
  refused: 'What stands against it, and what would make all agree, is said at the trial on the Cut screen.',
  metal: 'It stands in the trial on the Cut screen. Write that down first; what else stands here is of before it.',
};

/** The same verdict without anything that it advises. */
export const behindTrial = <V extends Verdict>(verdict: V, why: Withheld | null): V =>
  why === null ? verdict : { ...verdict, tone: 'stop', headline: HEADLINE[why], sentences: [MORE[why]] };
