/**
 * Tolerances that do least work for a wanted spread, for a quantity that follows its inputs evenly.
 *
 *   y = Σ g_i·x_i        Σ g_i²·σ_i² = σ²        least Σ c_i/σ_i^k
 *   σ_i = λ·(c_i/g_i²)^{1/(k + 2)}                λ such that the spread is the wanted one
 *
 * c_i difficulty of an input: what halving its spread costs beside another. k how fast difficulty grows, 1: as the
 * reciprocal. For a chance p that |y| stays within a band T when y is normal about 0: σ = T/z with z the quantile of
 * (1 + p)/2.
 * @source Chase1990 (least cost with reciprocal powers); Chase1999 (scaled in proportion)
 */
import { normalQuantile } from '../../../src/engine/belief/distributions.ts';

/** Spread of y (its unit) that keeps it within ± `band` about 0 with this chance. */
export const spreadFor = (chance: number, band: number): number => band / normalQuantile((1 + chance) / 2);

/** Spread of each input; no limit where it does not matter. */
export function leastDifficulty(
  spread: number,
  gradient: ArrayLike<number>,
  difficulty: ArrayLike<number>,
  power = 1,
): Float64Array {
  const shape = Float64Array.from(gradient, (g, i) =>
    g === 0 ? Number.POSITIVE_INFINITY : (difficulty[i]! / (g * g)) ** (1 / (power + 2)),
  );
  const whole = Math.sqrt(shape.reduce((sum, s, i) => (gradient[i] === 0 ? sum : sum + (gradient[i]! * s) ** 2), 0));
  return shape.map((s) => (s * spread) / whole);
}

/**
 * The one factor on those of the inputs that may change, so that together they have the wanted spread; null: none does.
 */
export function inProportion(spread: number, fixed: ArrayLike<number>, free: ArrayLike<number>): number | null {
  const squares = (of: ArrayLike<number>) => Array.from(of).reduce((sum, t) => sum + t * t, 0);
  const left = spread * spread - squares(fixed);
  return left <= 0 || squares(free) === 0 ? null : Math.sqrt(left / squares(free));
}
