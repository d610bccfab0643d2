/** A section worked out beside the screen, following a design as it changes. */
import { useCallback } from 'react';
import type { Design } from '../../design/definition.ts';
import type { Input, JobName, Result } from '../../worker/jobs.ts';
import { job } from '../../worker/pool.ts';
import { type Solved, useNewest } from './useNewest.ts';

/** Those that ask for a design alone. */
type OfDesign = { [K in JobName]: Design extends Input<K> ? K : never }[JobName];

export function useSolved<K extends OfDesign>(name: K, design: Design | null): Solved<NonNullable<Result<K>>> {
  const ask = useCallback(
    (of: Design, signal: AbortSignal) =>
      job(name, of as Input<K>, { signal }) as Promise<NonNullable<Result<K>> | null | undefined>,
    [name],
  );
  return useNewest(ask, design);
}
