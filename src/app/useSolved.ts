/** A section worked out by the worker that all screens share, following a design as it changes. */
import { useCallback } from 'react';
import type { Design } from '../design/definition.ts';
import { solvers } from '../worker/client.ts';
import type { Solvers } from '../worker/solver.ts';
import { type Solved, useNewest } from './useNewest.ts';

export function useSolved<K extends keyof Solvers>(name: K, design: Design | null): Solved<NonNullable<ReturnType<Solvers[K]>>> {
  type Value = NonNullable<ReturnType<Solvers[K]>>;
  const ask = useCallback((of: Design) => (solvers()[name] as unknown as (design: Design) => Promise<Value | undefined>)(of), [name]);
  return useNewest(ask, design);
}
