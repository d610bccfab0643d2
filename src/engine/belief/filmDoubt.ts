/**
 * How sure the readings are of the films: the covariance of the least films of all seats about a design's own,
 *
 *   C_ij = g_iᵀ·C·g_j + (film_i as read - film_i of the design)·(film_j …)
 *
 * g_i how the film of seat i follows the numbers (filmGradient.ts), C their covariance. The second term is there
 * because a plan goes by the design: where that is other than what was read, by so much it may be wrong.
 * @source JCGM 100:2008, 5.2.2
 */
import { leastFilm } from '../contact/film.ts';
import { type SeatInput, seatLines } from '../contact/fit.ts';
import type { Belief } from './belief.ts';
import { unread } from './consequences.ts';
import { covarianceOf, uncertaintyOf } from './decomposition.ts';
import { followed } from './quantities.ts';
import { gradientOf } from './unknowns.ts';

/** By seat and seat (m²), at a position (m); null in the rows and columns of seats that the readings leave open. */
export function filmDoubt(belief: Belief, design: readonly SeatInput[], position: number): (number | null)[][] {
  const { seats, unknowns, decomposition } = belief;
  const told = seats.map((_, seat) => {
    const found = followed({ of: 'film', seat }, seats, position);
    const drawn = leastFilm(seatLines(design[seat]!).gap, position);
    if (!found || drawn === null || unread(belief, found.influences).length > 0) return null;
    const gradient = gradientOf(found.influences, seats, unknowns);
    return uncertaintyOf(decomposition, gradient) === null ? null : { gradient, off: found.value - drawn };
  });
  return told.map((a) =>
    told.map((b) => (a && b ? covarianceOf(decomposition, a.gradient, b.gradient) + a.off * b.off : null)),
  );
}
