/** A pair that no cut makes likelier to work is left as it stands: one account for every screen. */
import type { Design } from '../../design/definition.ts';
import { fineText, type System } from '../../design/units.ts';
import { GOOD, timesText } from '../odds/times.ts';
import type { CutReport } from './definition.ts';
import { listed } from './listed.ts';
import { surerWays, type Way } from './worthText.ts';

type Told = Pick<CutReport, 'works' | 'worth' | 'remaining' | 'asTheyAre'>;

export const isLeft = ({ works }: Pick<CutReport, 'works'>): boolean => works?.leave === true;

/**
 * Whether it is not known that a pair works of which nothing more is most likely to come off: metal written down as off
 * that no trial has looked at leaves it so.
 */
export const isUnproven = ({ works }: Pick<CutReport, 'works'>): boolean => works !== undefined && works.now < GOOD;

/** What is to be done then: what the last trial did not look at, or another. */
export function unprovenSentence({ cut }: Design, { now }: NonNullable<CutReport['works']>): string {
  const { standOff, blue = [], shake } = cut?.trials?.at(-1) ?? {};
  const unread = [
    ...(standOff ? [] : ['the stand-off']),
    ...(blue.length > 0 ? [] : ['the blue']),
    ...(shake ? [] : ['the shake']),
  ];
  const look = `read ${listed(unread)}`;
  const doing = ['try it once more', `at the same trial ${look} too`, `at the same trial ${look} too`];
  return `By what is known it works ${timesText(now)}: ${doing[unread.length] ?? `assemble it dry and ${look}`}.`;
}

/** What would tell more of a pair that is left, where that is not good enough yet; null where nothing would. */
export function wayBeforeLeft({ works, worth }: Told, system: System): Way | null {
  if (!works || works.now >= GOOD || !worth) return null;
  return surerWays(worth, system)[0] ?? null;
}

/** The first line. @param doing what is to be looked at first; null where nothing tells more */
export function leaveNow({ works }: Told, doing: string | null): string {
  const now = `as it stands it works ${timesText(works!.now)}`;
  return doing === null ? `Leave it: ${now}.` : `Cut nothing: ${now}, and no cut makes that likelier; first ${doing}.`;
}

/** How often it works as it stands and with all of it off: beside metal of which none is safe; empty where not told. */
export function worksText({ works }: Pick<CutReport, 'works'>): string {
  if (!works) return '';
  return `as it stands it works ${timesText(works.now, works.all)}, with all of it off ${timesText(works.all, works.now)}`;
}

interface Verdict {
  tone: 'good' | 'mend' | 'stop' | 'plain';
  headline: string;
  sentences: string[];
}

/** The same verdict where the pair is best left: nothing of it is asked to come off. `known`: what else is told. */
export function behindLeave<V extends Verdict>(
  verdict: V,
  cut: Told,
  doing: string | null,
  system: System,
  known: readonly string[] = [],
): V {
  const { works } = cut;
  if (!works || !isLeft(cut)) return verdict;
  const good = works.now >= GOOD;
  const at = (cut.remaining?.asTheyAre ?? cut.asTheyAre)?.position;
  return {
    ...verdict,
    tone: good ? 'good' : 'mend',
    headline: `Leave it as it stands: every film can be brought within its tolerance ${timesText(works.now)}, and no cut makes that likelier.`,
    sentences: [
      ...(at === undefined ? [] : [`Most likely they are so with the journal at ${fineText(at, system)}.`]),
      ...known,
      `Were all cut that is most likely left, it would work ${timesText(works.all, works.now)}; metal cannot be put back.`,
      ...(doing === null
        ? []
        : [`To be surer first ${doing}; then more may be worth taking off, or it is known to be right.`]),
      ...(doing === null && !good ? ['Nothing that the program knows of would tell more.'] : []),
    ],
  };
}
