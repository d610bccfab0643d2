/** The `odds` section of the report, of a design that asks for it. */
import type { Design } from '../../design/definition.ts';
import type { OddsReport } from './definition.ts';
import { oddsWork } from './work.ts';

export const oddsSection = (design: Design): OddsReport | undefined => (design.odds ? oddsTold(design) : undefined);

/** The same of any design; a trial first is left out, which takes many plans. */
export function oddsTold(design: Design): OddsReport | undefined {
  const work = oddsWork(design, false);
  for (;;) {
    const next = work.next();
    if (next.done) return next.value ?? undefined;
  }
}
