/** The spindle as it lies when its nose is pulled, its axial position held. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import type { Body } from '../../../engine/play/body.ts';
import type { SeatContact } from '../../../engine/play/contacts.ts';
import { reachToward } from '../../../engine/play/reach.ts';
import { heldAt } from '../../../engine/play/shake.ts';
import type { Pose } from '../../../engine/spindle/pose.ts';
import { metres } from '../../../report/convert.ts';
import { toSpindle } from '../../../report/play/toPlay.ts';
import type { Work } from '../../state/store.ts';

export interface Pulled {
  /** m, rad */
  pose: Pose;
  contacts: SeatContact[];
}

/** The body of poses the spindle can take at its position now. */
export const bodyOf = (design: Design): Body => heldAt(toSpindle(design), metres(design.position ?? 0));

/** Null while the nose is let go, and where it cannot be: the journal in its bush. */
export function usePull(work: Work): Pulled | null {
  const design = useStore(work.store, (state) => state.design);
  const pull = useStore(work.store, (state) => state.pull);
  const pulling = pull !== null;
  const body = useMemo(() => (pulling ? bodyOf(design) : null), [design, pulling]);
  return useMemo(() => {
    if (!body || !pull) return null;
    const reach = reachToward(body, metres(pull.station), metres(pull.x), metres(pull.y));
    return reach.status === 'solved' ? { pose: reach.pose, contacts: reach.contacts } : null;
  }, [body, pull]);
}
