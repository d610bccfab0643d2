/** The `odds` section of the report, of a design that asks for it. */
import type { Design } from '../../design/definition.ts';
import type { OddsReport } from './definition.ts';
import { runningTold } from './running.ts';
import { oddsWork } from './work.ts';

export function oddsSection(design: Design): OddsReport | undefined {
  const told = design.odds && oddsTold(design);
  const running = told && design.odds?.running && runningTold(design);
  return told && running ? { ...told, running } : told;
}

/** The same of any design, but how it runs; a trial first is left out, which takes many plans. */
export function oddsTold(design: Design): OddsReport | undefined {
  const work = oddsWork(design, false);
  for (;;) {
    const next = work.next();
    if (next.done) return next.value ?? undefined;
  }
}
