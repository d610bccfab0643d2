/** What the last trial did to the doubt, and what would make it surer still, in a machinist's words. */

import type { Design } from '../../design/definition.ts';
import { doubtText, type System } from '../../design/units.ts';
import { lookAfter, OTHERWISE } from './advice.ts';
import type { CutReport } from './definition.ts';
import { isUnsure, leftOf } from './left.ts';
import { NOTHING } from './listed.ts';
import { openTrials } from './openTrials.ts';
import { surerWays, worthSentence } from './worthText.ts';

/** What the last trial did to the doubt. */
export function learntSentence({ relation }: NonNullable<CutReport['trials']>[number]): string[] {
  if (!relation) return [];
  const { before, after } = relation;
  return [
    `This trial ${changeText(relation)}${after < HARDLY * before ? `: ${percentText(after / before)} of the doubt before it is left` : ''}.`,
  ];
}

const percentText = (share: number) => `${Math.round(100 * share)} %`;

const changeText = ({ before, after }: { before: number; after: number }) =>
  after < HARDLY * before
    ? 'made it surer'
    : after > before / HARDLY
      ? 'made it less sure, as metal that comes off does'
      : 'changed little';

/** Before it and since: that each trial makes it surer, or metal off less sure. */
export function learntText({ before, after }: { before: number; after: number }, system: System): string {
  const known = `how the cones stand to each other was known to ${doubtText(before, system)}, now it is to ${doubtText(after, system)}`;
  return `${changeText({ before, after })}: ${known}`;
}

/** Less of a change than this is none. */
const HARDLY = 0.95;

/**
 * What would make it surer: as it was worked out where it was, so that nothing is asked for that would tell nothing;
 * else what the trials have not looked at.
 */
export function surerSentences(
  { cut: wanted }: Design,
  { remaining, worth }: Pick<CutReport, 'remaining' | 'worth'>,
  system: System,
): string[] {
  const left = remaining ? leftOf(remaining, system) : [];
  const unsure = left.filter(isUnsure).sort((a, b) => a.share - b.share)[0];
  const worked = worthSentence({ worth, remaining }, system);
  if (!unsure) return worked === '' ? [] : [worked];
  const most = `Most of the doubt is in the film of the ${unsure.doubted} seat`;
  const part = left.some(({ taken }) => taken >= NOTHING);
  if (worth) {
    const goesOn = part && lookAfter({ worth }, remaining!, system)?.when === 'then';
    const instead = goesOn
      ? 'Take the safe part and try again.'
      : `${part ? 'What is safe is too little for a cut: taken and tried again, as little would be safe. ' : ''}Three ways are left: ${OTHERWISE}; leave them as they are; or see on Odds how often they would work were all of it cut now, and decide.`;
    return [`${most}.`, worked, ...(surerWays(worth, system).length === 0 ? [instead] : [])];
  }
  const trials = wanted ? openTrials(wanted) : [];
  const ways = [
    ...(trials.some(({ shake }) => shake) ? [] : ['read the shake']),
    ...(trials.some(({ blue }) => blue?.some(({ seat }) => seat === unsure.doubted)) ? [] : ['look at the blue there']),
  ];
  const surer = ways.length > 0 ? `${ways.join(' or ')} to be surer` : part ? 'take the safe part and try again' : '';
  return [surer === '' ? `${most}.` : `${most}: ${surer}.`];
}
