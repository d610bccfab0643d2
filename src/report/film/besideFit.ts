/**
 * Run beside Fit. A spindle may run on oil with its journal where the films are not those wanted: that is told on both
 * screens, and praised on neither.
 */
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import { offHeadline } from '../fit/agreement.ts';
import { fitOf } from '../fit/fitOf.ts';
import { isAsWanted, type Verdict } from '../fit/verdict.ts';

/** What Fit says of the films where the journal is set; null: every film is as wanted, or none is wanted. */
export function filmsOff(design: Design, system: System): string | null {
  const fit = fitOf(design);
  const off = fit.seats.some((seat, i) => !isAsWanted(seat, design.seats[i]?.film));
  return off ? offHeadline(design, fit, system) : null;
}

/** The verdict of a run where they are not. */
export function behindFit<V extends Verdict>(verdict: V, off: string | null): V {
  if (off === null || verdict.tone !== 'good') return verdict;
  return { ...verdict, tone: 'mend', headline: `Fit: ${off}`, sentences: [verdict.headline, ...verdict.sentences] };
}
