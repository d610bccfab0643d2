/** Whether what was read at a trial is what the parts as believed would read: remarked on before it is written down. */

import type { Millimetres } from '../../design/dimension.ts';
import { COVER, fineText, isLopsided, plusMinusText, type System } from '../../design/units.ts';
import type { ExpectedShake, ExpectedTouch } from './expectedShake.ts';

interface Told {
  value: Millimetres;
  sigma: Millimetres;
}

/** The stand-off that is expected, and, of one read, whether it is further from that than 19 times in 20. */
export function expectedText({ value, low, high }: ExpectedTouch, read: Told | null, system: System): string {
  const sided = (at: Millimetres) => `${fineText(Math.abs(at), system)} ${at < 0 ? 'rearward' : 'noseward'}`;
  const told = isLopsided(value, [low, high])
    ? `about ${sided(value)} of the datum, 19 times in 20 between ${sided(low)} and ${sided(high)}`
    : `${plusMinusText(Math.abs(value), (high - low) / 2 / COVER, system)} ${value < 0 ? 'rearward' : 'noseward'} of the datum`;
  return `Expected: ${told}.${beyondText(value, [value - low, high - value], read, ['further rearward', 'further noseward'])}`;
}

/** The same of a shake, whose two sides are not alike. */
export function expectedShakeText({ value, low, high }: ExpectedShake, read: Told | null, system: System): string {
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
