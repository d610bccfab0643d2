/** A film where the journal is set, as Fit or Cut tells it: Odds says the same of it, in the same words. */
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import type { BeliefReport } from '../../../report/belief/definition.ts';
import { filmTold } from '../../../report/belief/filmTold.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { filmText } from '../../../report/cut/mayStop.ts';
import { fitOf } from '../../../report/fit/fitOf.ts';
import type { OddsReport } from '../../../report/odds/definition.ts';

interface Known {
  report: OddsReport | null;
  /** which pair is looked at */
  which: 'now' | 'planned';
  cut: CutReport | null;
  belief: BeliefReport | null;
}

/** Empty where neither tells a ± of it. */
export function filmsThere(design: Design, { report, which, cut, belief }: Known, system: System) {
  const remaining = cut?.remaining;
  const all = which === 'planned' || report?.setBy === 'plan';
  return (name: string): string => {
    if (!all) return filmTold(belief, fitOf(design), name, system)?.text ?? '';
    if (remaining?.sigmas?.[name] === undefined) return '';
    return filmText(remaining.films[name], remaining.sigmas[name], system, remaining.limits?.[name]);
  };
}
