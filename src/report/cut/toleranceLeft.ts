/**
 * What a plan leaves of a film's tolerance for all that may go wrong in the cutting: less by as much as the plan itself
 * is off the target.
 */
import type { Design } from '../../design/definition.ts';
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
