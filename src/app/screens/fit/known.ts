/** What Fit says of a design in which sizes are assumed: behind what is to be measured first. */
import { asAssumed, measuredFirst, partsAre } from '../../../report/assumed.ts';
import type { Known } from './fitLines.ts';

export const KNOWN: Known = {
  verdict: (plain, design) => measuredFirst(asAssumed(plain, design, ['seats']), design, 'mend'),
  isGuess: (design) => partsAre(design) === 'assumed',
};
