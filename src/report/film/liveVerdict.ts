/**
 * What can be said of a run while the hand still moves: from the films that follow it, before whirl, warm-up and sweeps
 * are worked out.
 */
import type { Design } from '../../design/definition.ts';
import { fineText, type System } from '../../design/units.ts';
import type { Verdict } from '../fit/verdict.ts';
import type { RunFields } from './fields.ts';
import { neededFilm } from './neededFilm.ts';
import type { Run } from './toSpindle.ts';

const LATER = 'Warm-up, whirl and limits follow once nothing moves.';

export function liveVerdict({ run }: Design & { run: Run }, { status, seats }: RunFields, system: System): Verdict {
  if (seats.length === 0) return { tone: 'stop', headline: 'A journal does not reach its bush there.', sentences: [] };
  const thin = seats.reduce((a, b) => (b.leastFilm < a.leastFilm ? b : a));
  const film = fineText(thin.leastFilm, system);
  switch (status) {
    case 'standing':
      return { tone: 'stop', headline: 'Standing still the spindle rests on metal.', sentences: [] };
    case 'contact':
    case 'noRoom':
    case 'apart':
      return {
        tone: 'stop',
        headline:
          thin.leastFilm < 0
            ? `Metal meets metal: the ${thin.name} journal is ${fineText(-thin.leastFilm, system)} into its bush.`
            : `No film carries this: metal touches in the ${thin.name} seat.`,
        sentences: [LATER],
      };
    case 'notConverged':
      return { tone: 'mend', headline: 'Where the spindle runs is being worked out.', sentences: [] };
    default: {
      const parts = thin.leastFilm >= neededFilm(run);
      return {
        tone: parts ? 'good' : 'stop',
        headline: parts
          ? `Cold, the thinnest film is ${film}, in the ${thin.name} seat.`
          : `Cold, the film of the ${thin.name} seat, ${film}, does not part the surfaces.`,
        sentences: [LATER],
      };
    }
  }
}
