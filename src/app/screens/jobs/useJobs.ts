/** The jobs on the device, as they are now: listed anew as one is kept, here or by another window. */
import { useCallback, useEffect, useState } from 'react';
import type { Aside, Head } from '../../../jobs/shelf.ts';
import type { Work } from '../../state/store.ts';

export interface Listed {
  heads: readonly Head[];
  aside: readonly Aside[];
}

/** null: not read yet */
export function useJobs(work: Work): { jobs: Listed | null; refresh(): void } {
  const [jobs, setJobs] = useState<Listed | null>(null);
  const refresh = useCallback(() => {
    const { keeper } = work;
    if (!keeper) return setJobs({ heads: [], aside: [] });
    Promise.all([keeper.shelf.heads(), keeper.shelf.aside()]).then(
      ([heads, aside]) => setJobs({ heads: [...heads].sort((a, b) => (b.worked ?? 0) - (a.worked ?? 0)), aside }),
      () => setJobs({ heads: [], aside: [] }),
    );
  }, [work]);
  useEffect(() => {
    refresh();
    return work.onListed(refresh);
  }, [work, refresh]);
  return { jobs, refresh };
}
