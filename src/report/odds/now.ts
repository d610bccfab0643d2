/** How often the pair works, in a few words: the first line a person reads, before any why. */
import type { Design } from '../../design/definition.ts';
import type { OddsReport } from './definition.ts';
import { chanceOf, isTold, isWanted, timesText } from './words.ts';

export function oddsNow(design: Design, report: OddsReport | null): string {
  if (!isTold(report)) return 'No pair goes with what was read.';
  if (report.notAsRead === 'contradict') return 'Readings contradict each other.';
  if (report.notAsRead === 'trials') return 'What was read at a trial does not go with the rest.';
  if (!isWanted(design)) return 'No film is asked for.';
  const now = `${report.planned ? 'If cut now, it works' : 'It works'} ${timesText(chanceOf(report))}.`;
  // Pairs are drawn as they were read, whatever the drawing says.
  return report.notAsRead ? `As read: ${now}` : now;
}
