/** The spindle as it lies when its nose is pulled, its axial position held. */
import { useEffect, useMemo } from 'react';
import { useStore } from 'zustand';
import type { Pulled } from '../../../report/play/pulling.ts';
import { letGo } from '../../pictures/useNoseHand.ts';
import { onceLoaded, useLoaded } from '../../state/onceLoaded.ts';
import type { Work } from '../../state/store.ts';

/** Null where it does not come: what else needs it says so (PlayPanel). */
const pulling = onceLoaded(() => import('../../../report/play/pulling.ts'));

/** Null while the nose is let go. Where it cannot be pulled, the journal in its bush, it goes back by itself. */
export function usePull(work: Work): Pulled | null {
  const { design, pull } = useStore(work.store);
  // There before a hand takes hold.
  const solver = useLoaded(pulling, true);
  const isPulled = pull !== null;
  const body = useMemo(() => (isPulled && solver ? solver.bodyOf(design) : null), [design, isPulled, solver]);
  const pulled = useMemo(() => (body && pull && solver ? solver.pulledTo(body, pull) : null), [body, pull, solver]);
  const held = body !== null && pulled === null;
  useEffect(() => {
    if (held) letGo(work);
  }, [held, work]);
  return pulled;
}
