/** What the readings tell, worked out beside the screen; the last answer stays until the next one is there. */
import { useCallback } from 'react';
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import type { MeasureReport } from '../../../report/measure/definition.ts';
import { job } from '../../../worker/pool.ts';
import { type Solved, useNewest } from '../../state/useNewest.ts';

/** ms: an answer that takes longer is given up where another is wanted. */
const PATIENCE = 300;

/** `tools`: the system of the tools that are proposed for what to read next. */
export function useMeasured(design: Design, tools: System): Solved<MeasureReport> {
  const ask = useCallback(
    (of: Design, signal: AbortSignal) => job('measure', { design: of, tools }, { signal }),
    [tools],
  );
  return useNewest<MeasureReport>(ask, design.readings && design.readings.length > 0 ? design : null, PATIENCE);
}
