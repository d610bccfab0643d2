/** What the readings tell, worked out beside the screen; the last answer stays until the next one is there. */
import { useCallback, useEffect, useRef } from 'react';
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import type { MeasureReport } from '../../../report/measure/definition.ts';
import { giveUpMeasuring, measured } from '../../../worker/solverClient.ts';
import { type Solved, useNewest } from '../../state/useNewest.ts';

/** ms: an answer that takes longer is given up where another is wanted. */
const PATIENCE = 300;

/** `tools`: the system of the tools that are proposed for what to read next. */
export function useMeasured(design: Design, tools: System): Solved<MeasureReport> {
  const ask = useCallback((of: Design) => measured(of, tools), [tools]);
  const read = design.readings && design.readings.length > 0 ? design : null;
  const begun = useRef(0);
  // Before useNewest asks: what is still under way then is of another design.
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew for each of them
  useEffect(() => {
    const now = performance.now();
    if (now - begun.current > PATIENCE) giveUpMeasuring();
    begun.current = now;
  }, [read, ask]);
  useEffect(() => giveUpMeasuring, []);
  return useNewest<MeasureReport>(ask, read);
}
