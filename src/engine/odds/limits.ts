/**
 * How sure a share is that was counted: k of n draws.
 *
 *   limits   [p + z²/2n ± z·√(p(1 - p)/n + z²/4n²)]/(1 + z²/n)        p = k/n
 *
 * They hold the chance 95 times in 100 (z = 1.96) when draws are independent; scrambled points are more even than that,
 * and the limits then hold it oftener. How many draws a wanted half width w takes is the same read backwards.
 * @source Wilson1927
 */
import { normalQuantile } from '../belief/distributions.ts';

export interface Chance {
  share: number;
  low: number;
  high: number;
}

export const Z95 = normalQuantile(0.975);

export function chanceOf(times: number, of: number, z = Z95): Chance {
  if (of === 0) return { share: Number.NaN, low: 0, high: 1 };
  const share = times / of;
  const middle = share + (z * z) / (2 * of);
  const half = halfOf(share, of, z) * (1 + (z * z) / of);
  const by = 1 + (z * z) / of;
  return {
    share,
    low: times === 0 ? 0 : Math.max(0, (middle - half) / by),
    high: times === of ? 1 : Math.min(1, (middle + half) / by),
  };
}

const halfOf = (share: number, of: number, z: number) =>
  (z * Math.sqrt((share * (1 - share)) / of + (z * z) / (4 * of * of))) / (1 + (z * z) / of);
