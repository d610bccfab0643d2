/** How far the films of a run may be off by how well the parts are known: some pairs drawn, each run. */
import { useCallback } from 'react';
import type { Design } from '../../../design/definition.ts';
import type { RunningReport } from '../../../report/odds/definition.ts';
import { isKnown } from '../../state/belief.ts';
import { runningOdds } from '../../state/runningOdds.ts';
import { type Solved, useNewest } from '../../state/useNewest.ts';

/** Enough for a spread to a tenth or two of itself. */
const DRAWS = 32;

/** Of a design of which nothing is known, and while `asked` is not said, there is none. */
export function useFilmDoubt(design: Design, asked: boolean): Solved<RunningReport> {
  const ask = useCallback(
    async (of: Design, signal: AbortSignal) =>
      (await runningOdds({ design: of, now: true, draws: DRAWS, unchecked: true }, () => {}, signal))?.report ?? null,
    [],
  );
  return useNewest(ask, asked && isKnown(design) ? design : null, 0);
}
