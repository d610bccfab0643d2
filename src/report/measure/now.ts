/** What the readings come to, in a few words: the first line a person reads, before any why. */
import { fineText, type System } from '../../design/units.ts';
import type { ConsequenceReport, MeasureReport } from './definition.ts';
import { tapersAsked } from './tapers.ts';
import { DOUBT, reachOf } from './verdict.ts';

export function measuredNow(measure: MeasureReport, system: System): string {
  const { readings, disagreeing, impossible, aside, settled, freedom, probability } = measure;
  if (readings.length === 0)
    return aside.length > 0 && impossible.length === 0 ? 'Not enough read yet.' : 'No reading can be used.';
  const [one, ...others] = disagreeing;
  if (one)
    return others.length === 0
      ? `Reading ${one.index + 1} does not go with the others.`
      : 'Some readings contradict each other.';
  if (!settled) return 'Some reading must be far out.';
  if (tapersAsked(measure).length > 0) return 'Drawn straight, read tapered.';
  if (freedom > 0 && probability < DOUBT) return 'The readings scatter too much.';
  const { relation, firstPosition } = measure.consequences;
  // The sentence below tells it without a sign too.
  if (relation?.sigma != null) return `Cones wrong by ${within(Math.abs(relation.value), relation, system)}.`;
  if (relation === null && firstPosition?.sigma != null)
    return `First touch at ${within(firstPosition.value, firstPosition, system)}.`;
  return 'Not enough read yet.';
}

const within = (value: number, found: ConsequenceReport, system: System) =>
  `${fineText(value, system)}, give or take ${fineText(reachOf(found), system)}`;
