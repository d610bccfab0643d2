/** Whether what was read at a trial is what the parts as believed would read: remarked on before it is written down. */

import type { Millimetres } from '../../design/dimension.ts';
import { COVER, fineText, isLopsided, plusMinusText, type System, sidedText } from '../../design/units.ts';
import type { Expected } from './expectedAtTrial.ts';

interface Told {
  value: Millimetres;
  sigma: Millimetres;
}

/** Where the journal is expected to touch first. */
export function touchText({ value, low, high }: Expected, system: System): string {
  if (isLopsided(value, [low, high]))
    return `about ${sidedText(value, system)}, 19 times in 20 between ${sidedText(low, system)} and ${sidedText(high, system)}`;
  const side = value < 0 ? 'rearward' : 'noseward';
  return `${plusMinusText(Math.abs(value), (high - low) / 2 / COVER, system)} ${side} of the datum`;
}

/** The stand-off that is expected, and, of one read, whether it is further from that than 19 times in 20. */
export function expectedText(expected: Expected, read: Told | null, system: System): string {
  const { value, low, high } = expected;
  return `Expected: ${touchText(expected, system)}.${beyondText(value, [value - low, high - value], read, ['further rearward', 'further noseward'])}`;
}

/** The same of a shake, whose two sides are not alike. */
export function expectedShakeText({ value, low, high }: Expected, read: Told | null, system: System): string {
  const between = `19 times in 20 between ${fineText(low, system)} and ${fineText(high, system)}`;
  return `Expected: about ${fineText(value, system)}, ${between}.${beyondText(value, [value - low, high - value], read)}`;
}

/** @param halves how far what is expected reaches to either side, 19 times in 20 */
function beyondText(
  expected: Millimetres,
  [less, more]: readonly [number, number],
  read: Told | null,
  [below, above] = ['less', 'more'],
): string {
  if (read === null) return '';
  const off = read.value - expected;
  if (Math.abs(off) <= Math.hypot(COVER * read.sigma, off < 0 ? less : more)) return '';
  return ` What is typed is ${off < 0 ? below : above} than that allows 19 times in 20: read it again before it is written down.`;
}
