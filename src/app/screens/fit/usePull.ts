/** The spindle as it lies when its nose is pulled, its axial position held. */
import { useEffect, useMemo, useState } from 'react';
import type { Pulled } from '../../../report/play/pulling.ts';
import type { State } from '../../state/store.ts';

let loaded: typeof import('../../../report/play/pulling.ts') | null = null;
/** Null where it does not come: what else needs it says so (PlayPanel). */
const load = async () => {
  loaded ??= await import('../../../report/play/pulling.ts').catch(() => null);
  return loaded;
};

/** Null while the nose is let go, and where it cannot be pulled. */
export function usePull(design: State['design'], pull: State['pull']): Pulled | null {
  const [solver, setSolver] = useState(loaded);
  useEffect(() => void load().then(setSolver), []);
  const pulling = pull !== null;
  const body = useMemo(() => (pulling && solver ? solver.bodyOf(design) : null), [design, pulling, solver]);
  return useMemo(() => (body && pull && solver ? solver.pulledTo(body, pull) : null), [body, pull, solver]);
}
