/** Whether what was read at a trial is what the parts as believed would read: remarked on before it is written down. */

import type { Millimetres } from '../../design/dimension.ts';
import { COVER, plusMinusText, type System } from '../../design/units.ts';

interface Told {
  value: Millimetres;
  sigma: Millimetres;
}

/** What is expected, and, of something read, whether it is further from that than 19 times in 20. */
export function expectedText(expected: Told, read: Told | null, system: System): string {
  const told = `Expected: ${plusMinusText(expected.value, expected.sigma, system)}.`;
  if (read === null) return told;
  const off = read.value - expected.value;
  if (Math.abs(off) <= COVER * Math.hypot(read.sigma, expected.sigma)) return told;
  return `${told} What is typed is ${off < 0 ? 'less' : 'more'} than that allows 19 times in 20: read it again before it is written down.`;
}
