/**
 * How far films may be off what they most likely are: over the pairs drawn, as all screens tell it.
 *
 *   σ_i² = Σ w_k·(e_ik - e_i)²      e_ik of pair k, e_i the most likely; w_k its share
 *
 * About the most likely, not about the mean of the pairs: it is the most likely that is told and planned with.
 */
import type { Metres } from '../../design/dimension.ts';
import { valuesOf } from '../../engine/belief/quantities.ts';
import type { SeatInput } from '../../engine/contact/fit.ts';
import { filmsMore } from '../../engine/cutting/leftToCut.ts';
import type { PairsDrawn } from '../../engine/cutting/pairsDrawn.ts';
import { believed } from '../../engine/cutting/trialReadings.ts';

/** Where fewer pairs than this count, they tell no spread. */
export const FEWEST_DRAWN = 20;

/** Share of pairs beyond each end of what is told as 19 in 20. */
export const BEYOND = 1 / 40;

/** Between which of these values all but so few pairs have theirs, by their shares; null where too few have one. */
export const limitsOf = (values: readonly (number | null)[], weights: readonly number[]): [number, number] | null =>
  quantilesOf(values, weights, [BEYOND, 1 - BEYOND]) as [number, number] | null;

/** The values that these shares of the pairs do not pass; null where too few have one. */
export function quantilesOf(
  values: readonly (number | null)[],
  weights: readonly number[],
  shares: readonly number[],
): number[] | null {
  const each = values
    .flatMap((value, k) => (value === null ? [] : [{ value, weight: weights[k]! }]))
    .sort((a, b) => a.value - b.value);
  const all = each.reduce((sum, { weight }) => sum + weight, 0);
  if (all < 1 - BEYOND) return null;
  return shares.map((share) => {
    let sum = 0;
    for (const { value, weight } of each) {
      sum += weight;
      if (sum >= share * all) return value;
    }
    return each[each.length - 1]!.value;
  });
}

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

/**
 * The same (m) of the axial relation of the first two seats that ask for a film: of one number, as it is of each pair,
 * so that what the two films have in common counts once. Null too where some pair has no such relation.
 */
export function relationSpread(
  parts: readonly SeatInput[],
  likely: readonly number[],
  { pairs, weights, effective }: PairsDrawn,
  fewest = FEWEST_DRAWN,
): number | null {
  if (effective < fewest) return null;
  const relationOf = (pair: readonly SeatInput[]) => valuesOf(pair, 0)[0] ?? null;
  const about = relationOf(believed(parts, likely));
  const each = pairs.map(relationOf);
  if (about === null || each.includes(null)) return null;
  return Math.sqrt(weights.reduce((sum, weight, k) => sum + weight * (each[k]! - about) ** 2, 0));
}
