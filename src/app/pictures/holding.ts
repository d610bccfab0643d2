/** Where the seats hold a journal that is pulled aside, for the labels that say they touch. */
import type { Drawn, DrawnForce, FilmPlace, Point } from './drawn.ts';
import { amid, middleOf } from './SeatNotes.tsx';

/** The contact of a seat; of several the one that presses hardest. */
export const holdOf = ({ forces }: Drawn, seat: string): DrawnForce | null =>
  forces.filter((force) => force.seat === seat).sort((a, b) => b.share - a.share)[0] ?? null;

/**
 * Where a label of the section ends, as seen from the side: on what holds; of a journal pulled aside where the film is
 * least of both halves, else amid the film of the upper half.
 */
export function noteEnd(drawn: Drawn, seat: number): Point {
  const held = holdOf(drawn, drawn.seats[seat]!.name);
  if (held) return [held.at[0], held.at[1] * Math.sin(held.angle)];
  if (!drawn.pulled) return middleOf(drawn.seats[seat]!);
  const [up, down] = [drawn.seats, drawn.below].map((half) =>
    half[seat]!.oil.reduce<FilmPlace | null>(
      (least, place) => (least && least.film <= place.film ? least : place),
      null,
    ),
  );
  const below = !!down && !(up && up.film <= down.film);
  const thin = below ? down : up;
  if (!thin) return middleOf(drawn.seats[seat]!);
  const [z, r] = amid(thin);
  return [z, below ? -r : r];
}
