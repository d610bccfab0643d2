/**
 * What the film of a running seat is held against: the film wanted, by the limits of every other picture (a journal
 * that carries a load lies aside, thinner here than wanted and thicker there), and what it takes to part the metals.
 */
import type { Design } from '../../../design/definition.ts';
import type { Millimetres } from '../../../design/dimension.ts';
import { metres } from '../../../report/convert.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import { neededFilm } from '../../../report/film/neededFilm.ts';
import type { Wanted } from '../../../report/inFrame.ts';

export interface Held {
  /** null: the seat wants none */
  wanted: Wanted | null;
  /** below it the metals rub, whatever film is wanted */
  needed: Millimetres;
}

export function heldAgainst({ seats, run }: Pick<Design, 'seats' | 'run'>, name: string): Held {
  const film = seats.find((seat) => seat.name === name)?.film;
  return {
    wanted: film ? { target: metres(film.target), tolerance: metres(film.tolerance ?? 0) } : null,
    needed: run ? neededFilm(run) : 0,
  };
}

/** Whether oil runs, or nothing is known yet; where none does there is no pressure to show. */
export const flows = (fields: RunFields | null) =>
  fields === null || fields.status === 'held' || fields.status === 'found' || fields.status === 'stopped';
