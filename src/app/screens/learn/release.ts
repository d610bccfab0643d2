/**
 * What a reveal shows when: first what the learner's own answer makes of the picture, then, from where it stood, what
 * is so. An answer that is right, or that is no act, has the second leg alone.
 */

/** ms: a leg, how long the first is looked at, and the way back to where it stood */
const LEG = 2400;
const OWN = 1800;
const LOOKED_AT = 1500;
const BACK = 500;

export interface Shown {
  /** `yours`: on the way to what was answered, or back from it · `right`: to what is let go */
  leg: 'yours' | 'right';
  /** how much of the way */
  share: number;
  over: boolean;
}

export const STOOD: Shown = { leg: 'right', share: 0, over: false };
export const OVER: Shown = { leg: 'right', share: 1, over: true };

/** ms since it was let go. */
export function shownAt(since: number, tried: boolean): Shown {
  const ofYours = tried ? OWN + LOOKED_AT + BACK : 0;
  if (since >= ofYours) {
    const share = Math.min(1, (since - ofYours) / LEG);
    return { leg: 'right', share, over: share === 1 };
  }
  const back = since - OWN - LOOKED_AT;
  return { leg: 'yours', share: back > 0 ? 1 - back / BACK : Math.min(1, since / OWN), over: false };
}
