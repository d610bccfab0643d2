/**
 * What parts, planned or as they stand, leave of a film's tolerance for all that may go wrong in the making: less by as
 * much as their film itself is off the target.
 */
import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import type { CutReport } from './definition.ts';

/** mm, 0 or more; undefined where the film has no tolerance. */
export function toleranceLeft({ seats }: Design, films: CutReport['films'], seat: string): number | undefined {
  const wanted = seats.find(({ name }) => name === seat)?.film;
  if (!wanted?.tolerance) return undefined;
  return Math.max(0, wanted.tolerance - Math.abs((films[seat] ?? wanted.target) - wanted.target));
}

/** The design with every film wanted just as the plan gives it, to within what is left of its tolerance. */
export const withPlannedFilms = (design: Design, films: CutReport['films']): Design => ({
  ...design,
  seats: design.seats.map((seat) => {
    const left = toleranceLeft(design, films, seat.name);
    return left ? { ...seat, film: { target: films[seat.name] ?? seat.film!.target, tolerance: left } } : seat;
  }),
});

/** Of a tolerance: with less left of it there is nothing that a drawing could share among size, angle and form. */
const NOTHING_TO_SHARE = 0.05;

type Films = readonly { name: string; leastFilm: Millimetres | null }[];

/** Seats whose film as drawn, within its tolerance or out of it, leaves nothing to share. */
export const withoutTolerance = (design: Design, films: Films): Design['seats'] =>
  design.seats.filter(({ name, film }) => {
    if (!film?.tolerance) return false;
    const now = films.find((one) => one.name === name)?.leastFilm ?? null;
    if (now === null) return true;
    return toleranceLeft(design, { [name]: now }, name)! < NOTHING_TO_SHARE * film.tolerance;
  });

/** The design with every film wanted as the parts have it drawn; without a tolerance where nothing of it is left. */
export function withDrawnFilms(design: Design, films: Films): Design {
  const without = withoutTolerance(design, films);
  const { seats } = withPlannedFilms(
    design,
    Object.fromEntries(films.flatMap(({ name, leastFilm }) => (leastFilm === null ? [] : [[name, leastFilm]]))),
  );
  return {
    ...design,
    seats: seats.map((seat, i) =>
      without.includes(design.seats[i]!) ? { ...seat, film: { target: seat.film!.target } } : seat,
    ),
  };
}
