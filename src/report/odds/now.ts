/** How often the pair works, in a few words: the first line a person reads, before any why. */
import type { Design } from '../../design/definition.ts';
import type { OddsReport } from './definition.ts';
import { timesText } from './times.ts';
import { chanceOf, isTold, isWanted } from './words.ts';

/** `look`: what Cut says is to be looked at before all of it comes off (cut/advice.ts); `left`: it is best left. */
export function oddsNow(design: Design, report: OddsReport | null, look = '', left = false): string {
  if (!isTold(report)) return 'No pair goes with what was read.';
  if (report.notAsRead === 'contradict') return 'Readings contradict each other.';
  if (report.notAsRead === 'trials') return 'What was read at a trial does not go with the rest.';
  if (!isWanted(design)) return 'No film is asked for.';
  const chance = timesText(chanceOf(report, left));
  // Where not all is to come off yet no one shall take the chance for that of the cut that is advised.
  const cut = look === '' ? 'If cut now, it works' : 'Were all of it cut now, it would work';
  const now = left ? `As it stands it works ${chance}.` : `${report.planned ? cut : 'It works'} ${chance}.`;
  // Pairs are drawn as they were read, whatever the drawing says.
  return report.notAsRead ? `As read: ${now}` : now;
}
