/** A section worked out beside the screen, following a design as it changes. */
import { useCallback } from 'react';
import type { Design } from '../../design/definition.ts';
import type { Input, JobName, Result } from '../../worker/jobs.ts';
import { type Solved, useNewest } from './useNewest.ts';

/** Those that ask for a design alone. */
type OfDesign = { [K in JobName]: Design extends Input<K> ? K : never }[JobName];

/** Loaded after the first picture, which needs no work beside it. */
let pool: Promise<typeof import('../../worker/pool.ts')> | null = null;
const loaded = () => {
  pool ??= import('../../worker/pool.ts').catch(() => {
    pool = null;
    throw new Error('the part of the program that works it out could not be loaded');
  });
  return pool;
};

export function useSolved<K extends OfDesign>(name: K, design: Design | null): Solved<NonNullable<Result<K>>> {
  const ask = useCallback(
    async (of: Design, signal: AbortSignal) => {
      const { job } = await loaded();
      return (await job(name, of as Input<K>, { signal })) as NonNullable<Result<K>> | null | undefined;
    },
    [name],
  );
  return useNewest(ask, design);
}
