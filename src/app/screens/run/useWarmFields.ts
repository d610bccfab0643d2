/** Pressure and film of the warm spindle: those of the steady state that was worked out for this very design. */
import { useCallback } from 'react';
import type { Design } from '../../../design/definition.ts';
import type { FilmReport } from '../../../report/film/definition.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import { job } from '../../../worker/pool.ts';
import { type Solved, useNewest } from '../../state/useNewest.ts';

type Steady = NonNullable<FilmReport['steady']>;

/** Their value is null while nobody asks, where there is no steady state, and until they are worked out. */
export function useWarmFields(
  asked: boolean,
  design: Design,
  steady: Steady | null,
): Pick<Solved<RunFields>, 'value' | 'fault' | 'again'> {
  const wanted = asked && steady !== null;
  const ask = useCallback(
    (design: Design, signal: AbortSignal) =>
      steady === null ? Promise.resolve(null) : job('warmFields', { design, steady }, { signal }),
    [steady],
  );
  const { value, fresh, fault, again } = useNewest<RunFields>(ask, wanted ? design : null);
  return { value: wanted && fresh ? value : null, fault: wanted ? fault : null, again };
}
