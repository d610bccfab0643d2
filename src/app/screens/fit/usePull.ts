/** The spindle as it lies when its nose is pulled, its axial position held. */
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Pulled } from '../../../report/play/pulling.ts';
import { letGo } from '../../pictures/useNoseHand.ts';
import type { Work } from '../../state/store.ts';

let loaded: typeof import('../../../report/play/pulling.ts') | null = null;
/** Null where it does not come: what else needs it says so (PlayPanel). */
const load = async () => {
  loaded ??= await import('../../../report/play/pulling.ts').catch(() => null);
  return loaded;
};

/** Null while the nose is let go. Where it cannot be pulled, the journal in its bush, it goes back by itself. */
export function usePull(work: Work): Pulled | null {
  const { design, pull } = useStore(work.store);
  const [solver, setSolver] = useState(loaded);
  useEffect(() => void load().then(setSolver), []);
  const pulling = pull !== null;
  const body = useMemo(() => (pulling && solver ? solver.bodyOf(design) : null), [design, pulling, solver]);
  const pulled = useMemo(() => (body && pull && solver ? solver.pulledTo(body, pull) : null), [body, pull, solver]);
  const held = body !== null && pulled === null;
  useEffect(() => {
    if (held) letGo(work);
  }, [held, work]);
  return pulled;
}
