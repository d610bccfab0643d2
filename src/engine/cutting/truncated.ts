/**
 * A normal variable known to lie between two bounds.
 *   P = Φ(β) - Φ(α)     mean = m + s·(φ(α) - φ(β))/P     variance = s²·[1 + (α·φ(α) - β·φ(β))/P - ((φ(α) - φ(β))/P)²]
 * m, s mean and standard deviation without the bounds · α = (low - m)/s, β = (high - m)/s.
 * @source N. L. Johnson, S. Kotz, N. Balakrishnan: Continuous Univariate Distributions 1, section 13.10 (from memory)
 */
import jStat from 'jstat';

export interface Truncated {
  probability: number;
  mean: number;
  variance: number;
}

/** Below this probability the moments have no digits left; the bounds contradict what was known (6 s). */
export const CONTRADICTED = 1e-9;

const density = (x: number) => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
const weighted = (x: number) => (Number.isFinite(x) ? x * density(x) : 0);
const below = (x: number) => (x === Number.POSITIVE_INFINITY ? 1 : x === Number.NEGATIVE_INFINITY ? 0 : jStat.normal.cdf(x, 0, 1));

export function truncated(mean: number, sd: number, low: number, high: number): Truncated {
  const [a, b] = [(low - mean) / sd, (high - mean) / sd];
  const probability = below(b) - below(a);
  if (probability < CONTRADICTED) return { probability, mean: Math.min(Math.max(mean, low), high), variance: 0 };
  const shift = (density(a) - density(b)) / probability;
  return { probability, mean: mean + sd * shift, variance: Math.max(0, sd * sd * (1 + (weighted(a) - weighted(b)) / probability - shift * shift)) };
}
