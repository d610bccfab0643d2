/** At which speeds and clearances the running spindle is looked at. */
import type { Design } from '../../design/definition.ts';
import { fitSection } from '../../report/fit/section.ts';

export type Running = Design & { run: NonNullable<Design['run']> };

/** rev/min where the spindle stands still now */
const SOME = 600;
const MOST = 200_000;

/** From an eighth of the speed to eight times it, in steps of the square root of two; turning the way it turns. */
export function speedsOf({ run }: Running): number[] {
  const now = run.speed === 0 ? SOME : run.speed;
  return Array.from({ length: 13 }, (_, i) => now * 2 ** ((i - 6) / 2)).filter((speed) => Math.abs(speed) <= MOST);
}

/** Shares of the film there is, taken away or added. */
const SHARES = [-0.8, -0.6, -0.4, -0.2, 0, 0.25, 0.5, 0.75, 1, 1.5, 2, 2.5, 3];
/** mm, where there is no film to take from */
const THIN = 0.001;

/** mm of film added to every seat. */
export function clearancesOf(design: Running): number[] {
  const films = fitSection(design).seats.flatMap(({ leastFilm }) => (leastFilm === null ? [] : [leastFilm]));
  const film = Math.max(THIN, Math.min(...films));
  return SHARES.map((share) => share * film);
}
