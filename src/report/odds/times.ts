/** A chance in words. */

/** From here on a pair is said to work. A choice, no more. */
export const GOOD = 0.95;

/** How often, as one says it: 7 times in 10. `beside`: another chance that is told with it. */
export function timesText(chance: number, beside = 0.5): string {
  if (chance > 0.995) return 'almost always';
  if (chance < 0.005) return 'hardly ever';
  // Small chances are told in hundredths, and so is what is compared with them.
  const small = chance < 0.095 || (beside < 0.095 && beside >= 0.005 && chance < 0.5);
  const out = small ? 100 : chance >= 0.9 ? 20 : 10;
  const times = Math.min(out - 1, Math.max(1, Math.round(chance * out)));
  return `${times} ${times === 1 ? 'time' : 'times'} in ${out}`;
}
