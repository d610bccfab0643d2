/**
 * What can be said of a run while the hand still moves: from the films that follow it, before whirl, warm-up and sweeps
 * are worked out.
 */
import type { Design } from '../../design/definition.ts';
import { fineText, type System } from '../../design/units.ts';
import { FULL_FILM } from '../../engine/heat/guidance.ts';
import type { Verdict } from '../fit/verdict.ts';
import type { RunFields } from './fields.ts';
import { BARELY, neededFilm, RUBBING, TOO_THIN } from './neededFilm.ts';
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
    default:
      return { ...thinnest(thin.name, thin.leastFilm / neededFilm(run), film), sentences: [LATER] };
  }
}

/**
 * How far the least film of the grid that follows the hand may be from that of the full one, as a part of it: no demo
 * is further off, with its load and with ten times that (tests/report/film/live.test.ts).
 */
export const LIVE_DOUBT = 0.1;

/** `share`: of the film that keeps the metals apart. What the full answer may turn is not said yet. */
function thinnest(seat: string, share: number, film: string): Pick<Verdict, 'tone' | 'headline'> {
  const off = (limit: number) => share / limit - 1;
  const [rubbing, parted] = [off(RUBBING / FULL_FILM), off(1)];
  const about = `Cold, the film of the ${seat} seat is about ${film}`;
  if (rubbing < -LIVE_DOUBT) return { tone: 'stop', headline: `${about}, ${TOO_THIN}.` };
  if (rubbing <= LIVE_DOUBT)
    return { tone: 'mend', headline: `${about}: whether metal runs on metal is being worked out.` };
  if (parted < -LIVE_DOUBT) return { tone: 'mend', headline: `${about}: it ${BARELY}.` };
  if (parted <= LIVE_DOUBT)
    return { tone: 'mend', headline: `${about}: whether it parts the surfaces is being worked out.` };
  return { tone: 'good', headline: `Cold, the thinnest film is about ${film}, in the ${seat} seat.` };
}
