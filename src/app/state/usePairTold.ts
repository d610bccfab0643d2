/**
 * Which pair a screen draws and tells of, and how that is said: as drawn, as it is believed since its trials, or as
 * drawn while nothing may be believed (report/cut/withheld.ts). Fit and Run ask here, so that they speak of one pair.
 */

import { useStore } from 'zustand';
import type { Design } from '../../design/definition.ts';
import type { BeliefReport } from '../../report/belief/definition.ts';
import type { Withheld } from '../../report/cut/withheld.ts';
import { useSlip } from '../screens/cut/useSlip.ts';
import { useWithheld } from '../screens/cut/writing.ts';
import { isBefore } from './isBefore.ts';
import type { Work } from './store.ts';
import { useAsBelieved } from './useAsBelieved.ts';
import type { Solved } from './useNewest.ts';

/** `plain`: no trial told anything, so there is one pair alone; `waits`: what they tell is being worked out. */
export type Stands = 'plain' | 'drawn' | 'believed' | 'waits';

export interface PairTold {
  /** with the pair that is drawn and told of */
  work: Work;
  /** none while it is withheld */
  belief: Solved<BeliefReport>;
  stands: Stands;
  withheld: Withheld | null;
  /** what most likely is wrong then */
  slip: string;
  isOther: boolean;
  asDrawn: boolean;
  /** of the believed pair, whichever is chosen */
  other: Design['seats'] | null;
}

export function usePairTold(own: Work, found: Solved<BeliefReport>, tried: boolean): PairTold {
  const design = useStore(own.store, (state) => state.design);
  const waits = tried && found.value === null && found.of === null && found.fault === null;
  const before = waits || (found.fault === null && isBefore(found.of, design));
  const withheld = useWithheld(own, { notAsRead: found.value?.notAsRead, before });
  const slip = useSlip(own, withheld);
  const belief = withheld ? { ...found, value: null } : found;
  const { work, isOther, asDrawn, other } = useAsBelieved(own, belief);
  const shown = useStore(work.store, (state) => state.design);
  // Once the parts are changed it is the drawn pair again until what is believed of them is known.
  const chosen = asDrawn ? 'drawn' : shown === design ? 'waits' : 'believed';
  const stands = isOther ? chosen : before && tried ? 'waits' : 'plain';
  return { work, belief, stands, withheld, slip, isOther, asDrawn, other };
}

/** How the first line begins: which pair it is of. */
export const ofPair = (stands: Stands, now: string): string =>
  stands === 'plain' || /^As (drawn|assumed|believed): /.test(now)
    ? now
    : `As ${stands === 'believed' ? 'believed' : 'drawn'}: ${now}`;
