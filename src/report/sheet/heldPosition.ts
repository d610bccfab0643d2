/**
 * Where the journal stands on a sheet: where it is, or, where that leaves a film out of its tolerance, in the middle of
 * where none is.
 */

import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import { fitSection } from '../fit/section.ts';

/** mm: a position this near to the end of a stretch is within it. */
const ROUNDING = 1e-9;

/** mm, and whether every film wanted is within its tolerance there */
export function heldPosition(design: Design): { position: Millimetres; good: boolean } {
  const { position, permitted, seats } = fitSection(design);
  if (permitted === null) {
    // None that an axial move could find; straight seats may have their films all the same, and seats that want none
    // are content.
    const good = design.seats.every(
      ({ film }, i) =>
        film === undefined ||
        (seats[i]!.leastFilm !== null &&
          Math.abs(seats[i]!.leastFilm - film.target) <= (film.tolerance ?? 0) + ROUNDING),
    );
    return { position, good };
  }
  const within = position >= permitted.from - ROUNDING && position <= permitted.to + ROUNDING;
  return { position: within ? position : (permitted.from + permitted.to) / 2, good: true };
}
