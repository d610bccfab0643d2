/**
 * Whether readings contradict a surface that was drawn straight. It is estimated straight; beside that its half angle
 * is fitted freely, with a of standard uncertainty u:
 *
 *   z = a/u        chance of a straight surface to read so far off, or farther:  p = 2·Φ(-|z|)
 *
 * Every uncertainty is stated, so z is standard normal where the surface is straight; two micrometer readings a
 * division apart are nothing. Below one case in a hundred it is asked after, and never taken over by itself.
 * @source NIST-SEMATECH 7.2.2.1 (one parameter, its standard deviation known); practice (the level)
 */

import type { Metres, Radians } from '../../design/dimension.ts';
import { type Decomposition, uncertaintyOf, unit } from '../belief/decomposition.ts';
import { twoSidedTail } from '../belief/distributions.ts';
import type { On, Unknowns } from '../belief/unknowns.ts';
import type { SeatInput } from '../contact/fit.ts';

export interface Taper extends On {
  /** rad, fitted freely, and its standard uncertainty */
  halfAngle: Radians;
  sigma: number;
  /** m: the radius fitted with it */
  radius: Metres;
  /** p of the equations above */
  significance: number;
}

/** Chance below which a straight surface is doubted. */
const LEVEL = 0.01;

export const isTapered = ({ significance }: Pick<Taper, 'significance'>): boolean => significance < LEVEL;

/** Of these surfaces those whose half angle a free fit tells. */
export function tapersOf(
  surfaces: readonly On[],
  seats: readonly SeatInput[],
  { list }: Unknowns,
  decomposition: Decomposition,
): Taper[] {
  return surfaces.flatMap(({ seat, part }) => {
    const place = list.findIndex((u) => u.seat === seat && u.part === part && u.of === 'halfAngle');
    const sigma = place < 0 ? null : uncertaintyOf(decomposition, unit(list.length, place));
    const { halfAngle, radius } = seats[seat]![part];
    return sigma === null
      ? []
      : [{ seat, part, halfAngle, sigma, radius, significance: twoSidedTail(halfAngle / sigma) }];
  });
}
