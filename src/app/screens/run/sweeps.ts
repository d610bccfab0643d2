/** At which speeds and clearances the running spindle is looked at. */
import type { Design } from '../../../design/definition.ts';
import { neededFilm } from '../../../report/film/neededFilm.ts';
import { fitSection } from '../../../report/fit/section.ts';

export type Running = Design & { run: NonNullable<Design['run']> };

/** rev/min where the spindle stands still now */
const SOME = 600;
const MOST = 200_000;

/**
 * From eight times the speed down to an eighth of it, in steps of the square root of two; turning the way it turns.
 * Downward, because each is sought from the one before: without an adjuster, a spindle that fast oil drives off its
 * seats is not then found floating far off in slow oil.
 */
export function speedsOf({ run }: Running): number[] {
  const now = run.speed === 0 ? SOME : run.speed;
  return Array.from({ length: 13 }, (_, i) => now * 2 ** ((6 - i) / 2)).filter((speed) => Math.abs(speed) <= MOST);
}

/** Shares of the film there is that are taken away, and of the film wanted that are added. */
const TIGHTER = [-0.85, -0.7, -0.55, -0.4, -0.25, -0.1];
const LOOSER = [0, 0.25, 0.5, 1, 1.5, 2, 3, 4];
/** mm, where a design does not say what film it wants; and where there is none to take from */
const WANTED = 0.0025;
const THIN = 0.001;

/** mm of film added to every seat. */
export function clearancesOf(design: Running): number[] {
  const films = fitSection(design).seats.flatMap(({ leastFilm }) => (leastFilm === null ? [] : [leastFilm]));
  const film = Math.max(THIN, Math.min(...films));
  const wanted = Math.max(...design.seats.map((seat) => seat.film?.target ?? WANTED), THIN);
  return [...TIGHTER.map((share) => share * film), ...LOOSER.map((share) => share * wanted)];
}

/** Preferred numbers, series R10 (ISO 3). */
const R10 = [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8];

/** mm: films from the one that just parts the surfaces up to some ten times as much, and past the one wanted. */
export function filmsOf({ run, seats }: Running): number[] {
  const least = neededFilm(run);
  const most = Math.max(10 * least, ...seats.map(({ film }) => 2 * (film?.target ?? 0)));
  const all = [-4, -3, -2].flatMap((power) => R10.map((step) => step * 10 ** power));
  return all.filter((film) => film > 0.8 * least && film < 1.3 * most);
}
