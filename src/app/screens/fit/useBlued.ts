/**
 * What a print depends on: the parts, what is free to move, and the blue, thin where the design gives none. Not the
 * position.
 */
import { useMemo } from 'react';
import type { Design } from '../../../design/definition.ts';

/** Blue that shows (mm): a thin rub; common practice, no source. */
const THIN = 0.002;

/** @param alone name of the one seat that is blued and tried without the others; null: all of them */
export function useBlued({ seats, play, print }: Design, alone: string | null = null): Design {
  return useMemo(
    () => ({
      conepair: 1,
      seats: alone === null ? seats : seats.filter(({ name }) => name === alone),
      ...(play && { play }),
      print: print ?? { thickness: THIN },
    }),
    [seats, play, print, alone],
  );
}
