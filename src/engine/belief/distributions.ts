/** Tails of the distributions that judge residuals. By jstat; against tables to 1e-9 (tests/engine/gauging). */
import jStat from 'jstat';

/** Probability that chi-square of this freedom is `value` or more by chance; 1 without freedom. */
export const chiSquareTail = (value: number, freedom: number): number =>
  freedom <= 0 ? 1 : 1 - jStat.chisquare.cdf(Math.max(0, value), freedom);

/** Probability that a standard normal variable is `value` or more from 0, either way. */
export const twoSidedTail = (value: number): number => 2 * jStat.normal.cdf(-Math.abs(value), 0, 1);

/** The standard normal variable below which a share of all lies. */
export const normalQuantile = (share: number): number => jStat.normal.inv(share, 0, 1);

/** Probability that a standard normal variable is `value` or less. */
export const normalCdf = (value: number): number => jStat.normal.cdf(value, 0, 1);
