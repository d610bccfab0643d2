/**
 * How far films may be off what they most likely are: over the pairs drawn, as all screens tell it.
 *
 *   σ_i² = Σ w_k·(e_ik - e_i)²      e_ik of pair k, e_i the most likely; w_k its share
 *
 * About the most likely, not about the mean of the pairs: it is the most likely that is told and planned with.
 */
import type { Metres } from '../../design/dimension.ts';
import type { SeatInput } from '../../engine/contact/fit.ts';
import { filmsMore } from '../../engine/cutting/leftToCut.ts';
import type { PairsDrawn } from '../../engine/cutting/pairsDrawn.ts';

/** Where fewer pairs than this count, they tell no spread. */
export const FEWEST_DRAWN = 20;

/**
 * m, by seat, at a position (m); null where hardly a pair goes with what was read.
 * @param parts as they are taken to be, and by how much each film is most likely greater (m)
 */
export function filmSpread(
  parts: readonly SeatInput[],
  likely: readonly number[],
  drawn: PairsDrawn,
  position: Metres,
): number[] | null {
  if (drawn.effective < FEWEST_DRAWN) return null;
  const each = filmsMore(parts, drawn, position);
  return parts.map((_, i) =>
    Math.sqrt(each.reduce((sum, { e, weight }) => sum + weight * (e[i]! - likely[i]!) ** 2, 0)),
  );
}
