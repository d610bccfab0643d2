/** Pressure and film of the warm spindle: those of the steady state that was worked out for this very design. */
import { useEffect, useState } from 'react';
import type { Design } from '../../design/definition.ts';
import type { FilmReport } from '../../report/film/definition.ts';
import type { RunFields } from '../../report/film/fields.ts';
import { runFollower } from '../../worker/runClient.ts';

type Steady = NonNullable<FilmReport['steady']>;

/** Null while nobody asks, where there is no steady state, and until they are worked out. */
export function useWarmFields(asked: boolean, design: Design, steady: Steady | null): RunFields | null {
  const [found, setFound] = useState<{ fields: RunFields; steady: Steady } | null>(null);
  useEffect(() => {
    if (!asked || steady === null) return;
    let wanted = true;
    runFollower()
      .warmFields(design, steady)
      .then((fields) => {
        if (wanted && fields) setFound({ fields, steady });
      });
    return () => {
      wanted = false;
    };
  }, [asked, design, steady]);
  return asked && found !== null && found.steady === steady ? found.fields : null;
}
