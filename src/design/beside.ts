/** Figures held against a limit. */
import type { Millimetres } from './dimension.ts';
import { fineText, fineUnit, type System } from './units.ts';

/** No film is told to less than a picometre. */
const MOST_DECIMALS = 6;

/**
 * A film and the limit it is held against (mm), with as many digits more as it takes to see on which side it is:
 * 0.998 µm of 1.000 µm.
 */
export function besideText(mm: Millimetres, limit: Millimetres, system: System): [film: string, limit: string] {
  const plain: [string, string] = [fineText(mm, system), fineText(limit, system)];
  const { size, name } = fineUnit(system);
  // A large one is told as a length, with its digits.
  if (mm === limit || plain[0] !== plain[1] || !plain[0].endsWith(name)) return plain;
  const told = (film: Millimetres, decimals: number) => `${(film / size).toFixed(decimals).replace('-', '−')} ${name}`;
  for (let decimals = 3; decimals <= MOST_DECIMALS; decimals++) {
    const [one, other] = [told(mm, decimals), told(limit, decimals)];
    if (one !== other) return [one, other];
  }
  return [`${mm < limit ? 'just under' : 'just over'} ${plain[0]}`, plain[1]];
}
