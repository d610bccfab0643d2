/** What a print depends on: the parts, what is free to move, and the blue, thin where the design gives none. Not the position. */
import { useMemo } from 'react';
import type { Design } from '../../design/definition.ts';

/** Blue that shows (mm): a thin rub; common practice, no source. */
const THIN = 0.002;

export function useBlued({ seats, play, print }: Design): Design {
  return useMemo(() => ({ conepair: 1, seats, ...(play && { play }), print: print ?? { thickness: THIN } }), [seats, play, print]);
}
