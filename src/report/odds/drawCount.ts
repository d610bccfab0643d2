/**
 * How many pairs are drawn: as many as are asked for, or as an accuracy takes.
 *
 *   n = z²·(1/(4a²) - 1)
 *
 * a how far the limits of a chance of one half may lie off; those of every other chance lie nearer. From Wilson's
 * limits, whose half width is z/(2√(n + z²)) there; z for 19 times in 20.
 * @source derived
 */
import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import { Z95 } from '../../engine/odds/limits.ts';

export function drawCount({ odds }: Design): number {
  const { accuracy, draws = defaultAt('odds.draws') } = odds ?? {};
  if (accuracy === undefined) return draws;
  return Math.max(FEWEST, Math.ceil(Z95 ** 2 * (1 / (4 * accuracy ** 2) - 1)));
}

const FEWEST = 100;

/** How far the limits of a chance of one half lie off, where so many pairs count: the same turned round. */
export const accuracyOf = (pairs: number): number => Z95 / (2 * Math.sqrt(pairs + Z95 ** 2));

/** What accuracy the trials leave to be had, however many pairs are drawn. */
export const reachableText = (effective: number): string =>
  `By the pairs that go with the trials, as much as ${Math.round(effective)} tell, a chance near one half is known to ± ${Number((100 * accuracyOf(effective)).toPrecision(2))} % at best, whatever is asked here: more readings make it surer, not more draws.`;
