/** What the lenses show: every seat where its film is thinnest, and how deep they all look. */
import type { Drawn, DrawnSeat } from '../../pictures/drawn.ts';

/** Times the thickest film wanted, with its tolerance, that a lens is deep; of seats without, times their film. */
const DEEP = 4;
const OPEN = 1.5;
/** m */
const LEAST_DEPTH = 4e-6;

/**
 * How deep (m) every lens looks below the bush's edge: it hangs on the films wanted alone, so that it stays what it is
 * whatever moves.
 */
export function lensDepth(seats: readonly DrawnSeat[]): number {
  const wanted = seats.flatMap((seat) => (seat.wanted ? [seat.wanted.target + seat.wanted.tolerance] : []));
  if (wanted.length > 0) return Math.max(LEAST_DEPTH, DEEP * Math.max(...wanted));
  const films = seats.flatMap(({ film }) => film.map((place) => place.film));
  return powerAbove(Math.max(LEAST_DEPTH, OPEN * Math.max(0, ...films)));
}

const powerAbove = (value: number) => 2 ** Math.ceil(Math.log2(value / LEAST_DEPTH)) * LEAST_DEPTH;

const ROUND = 48;

/** Every seat in the half section in which its film is thinnest. */
export function thinnestSections(drawn: Drawn): DrawnSeat[] {
  const { at } = drawn;
  if (!at) return drawn.seats;
  const sections = Array.from({ length: ROUND }, (_, k) => at((2 * Math.PI * k) / ROUND));
  return drawn.seats.map((_, i) =>
    sections.map((seats) => seats[i]!).reduce((thin, seat) => (leastOf(seat) < leastOf(thin) ? seat : thin)),
  );
}

const leastOf = ({ film }: DrawnSeat) =>
  film.reduce((least, place) => Math.min(least, place.film), Number.POSITIVE_INFINITY);
