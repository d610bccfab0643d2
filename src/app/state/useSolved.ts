/** A section worked out by the worker that all screens share, following a design as it changes. */
import { useCallback } from 'react';
import type { Design } from '../../design/definition.ts';
import type { Solvers } from '../../worker/solver.ts';
import { sections } from '../../worker/solverClient.ts';
import { type Solved, useNewest } from './useNewest.ts';

/** Those that ask for a design alone. */
type Name = Exclude<keyof Solvers, 'measure'>;
type Section<K extends Name> = NonNullable<ReturnType<Solvers[K]>>;

export function useSolved<K extends Name>(name: K, design: Design | null): Solved<Section<K>> {
  const ask = useCallback((of: Design) => sections.ask((solver) => (solver[name] as unknown as (design: Design) => Promise<Section<K> | undefined>)(of)), [name]);
  return useNewest(ask, design);
}
