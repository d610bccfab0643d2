/** Where the journal stands, as a slider tells it: with what touches there. */

import { fineText, type System, sidedText } from '../../design/units.ts';
import { micrometres } from '../../report/convert.ts';
import type { FitReport } from '../../report/fit/definition.ts';
import { deepestNow, touchingNow } from '../../report/fit/now.ts';
import { listed } from '../../report/listed.ts';
import { landmarks, reachOf } from './journalMove.ts';

/** What the axial slider of every picture says of itself, besides its value. */
export function axialValues(fit: FitReport, system: System) {
  const [low, high] = reachOf(fit.position, landmarks(fit));
  return {
    'aria-valuemin': micrometres(low),
    'aria-valuemax': micrometres(high),
    'aria-valuetext': positionText(fit, system),
  };
}

function positionText(fit: FitReport, system: System): string {
  const deepest = deepestNow(fit);
  if (deepest)
    return `${sidedText(fit.position, system)}; ${deepest.name} touched, ${fineText(-deepest.leastFilm!, system)} into its bush`;
  const names = touchingNow(fit).map(({ name }) => name);
  const touch = names.length === 0 ? '' : `; ${listed(names)} ${names.length > 1 ? 'touch' : 'touches'}`;
  return `${sidedText(fit.position, system)}${touch}`;
}
