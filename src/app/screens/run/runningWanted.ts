/**
 * What a film is to a seat that runs, for the pictures: too thin where it does not part the surfaces; too thick where
 * it is more than a journal right to one side leaves opposite, in a seat with the film wanted; as wanted between.
 *
 *   h(φ) = c - e·cos φ,  |e| ≤ c   →   h ≤ 2·c,   c the film of the journal on its axis
 */
import type { Design } from '../../../design/definition.ts';
import { metres } from '../../../report/convert.ts';
import { neededFilm } from '../../../report/film/neededFilm.ts';
import type { Wanted } from '../../../report/inFrame.ts';

/** m: in a seat that wants none, no film is too thick */
const ANY = 1;

export function runningWanted({ seats, run }: Pick<Design, 'seats' | 'run'>, name: string): Wanted {
  const film = seats.find((seat) => seat.name === name)?.film;
  const low = run ? metres(neededFilm(run)) : 0;
  const high = Math.max(low, film ? 2 * (metres(film.target) + metres(film.tolerance ?? 0)) : ANY);
  return { target: (low + high) / 2, tolerance: (high - low) / 2 };
}
