/** How it runs in a few words: the first line a person reads, before any why. */
import { besideText } from '../../design/beside.ts';
import { fineText, type System } from '../../design/units.ts';
import { FULL_FILM, SMALL_MOTOR } from '../../engine/heat/guidance.ts';
import { OIL_LASTS } from '../../engine/run/limits.ts';
import type { FilmReport } from './definition.ts';
import type { RunFields } from './fields.ts';
import { celsius, watts } from './figures.ts';
import { RUBBING } from './neededFilm.ts';
import { hottest, TOUCHING, unloaded, warmRatio, warmUnknown, whirls } from './verdict.ts';

const OUTSIDE = 'A journal stands outside its bush.';
const STANDING = 'Standing still, on metal.';

const intoText = (seat: string, film: number, system: System) =>
  film < -TOUCHING ? `${seat} is ${fineText(-film, system)} into its bush` : `${seat} touches`;

/**
 * `asWanted`: whether Fit finds every film as it is wanted where the journal is set. A running film is never judged by
 * the figures told here: these are the least there are, of a journal that lies aside.
 */
export function runsNow(film: FilmReport, system: System, asWanted = true): string {
  const { contact } = film;
  const touch = contact && intoText(contact.seat, contact.film, system);
  switch (film.status) {
    case 'contact':
      return film.load === null
        ? `Held so, ${touch}.`
        : `No film carries it: metal touches in the ${contact!.seat} seat.`;
    case 'apart':
      return OUTSIDE;
    case 'noRoom':
      return touch === null ? 'No room for oil.' : `No room for oil: ${touch}.`;
    case 'standing':
      return STANDING;
    case 'notConverged':
    case 'givenUp':
      return 'Where it runs is not known.';
    default:
      return carriedNow(film, system, asWanted);
  }
}

/** As the headline of the verdict asks, one after the other. */
function carriedNow(film: FilmReport, system: System, asWanted: boolean): string {
  const { filmRatio: ratio, seat } = film.guidance!;
  const warm = warmRatio(film);
  // Held against what parts the surfaces: on which side it is can be read.
  const needed = (film.leastFilm! * FULL_FILM) / ratio;
  const cold = besideText(film.leastFilm!, needed, system)[0];
  const warmed = film.steady ? `${besideText(film.steady.leastFilm, needed, system)[0]} warm` : '';
  const there = film.steady ? thinnest(film.steady.seats) : seat;
  if (ratio < RUBBING) return `Metal runs on metal: ${seat} film ${cold} cold.`;
  if (film.warmUpEnd === 'contact') return 'Runs on oil cold, seizes as it warms.';
  if (warm < RUBBING) return `Metal runs on metal: ${there} film ${warmed}.`;
  if (warm < FULL_FILM && warm < ratio) return `Barely on oil: ${there} film ${warmed}.`;
  if (ratio < FULL_FILM) return `Barely on oil as it starts, cold: ${seat} film ${cold}.`;
  if (film.turn?.touches) return 'Its lobes touch the bush as it turns.';
  if (hottest(film) > OIL_LASTS) return `Too hot: ${celsius(hottest(film), system)} once warm.`;
  if ((film.power ?? 0) > SMALL_MOTOR) return `Too much drag: ${watts(film.power!)} cold.`;
  if (unloaded(film)) return 'On the edge of whirl: nothing loads it.';
  if (film.whirl?.stable === false) return 'It whirls at this speed.';
  if (whirls(film)) return 'It whirls once warm.';
  if (warmUnknown(film)) return `Runs on oil cold: ${seat} film ${cold}.`;
  const runs = asWanted ? `Runs on oil: ${seat} film` : `On oil, not set as wanted: ${seat} film`;
  return warmed === '' ? `${runs} ${cold}.` : `${runs} ${cold} cold, ${there === seat ? '' : `${there} `}${warmed}.`;
}

const thinnest = (seats: NonNullable<FilmReport['steady']>['seats']) =>
  seats.reduce((a, b) => (b.leastFilm < a.leastFilm ? b : a)).name;

/**
 * The headline as it stands below that line, without the film that the line tells; null: there the headline repeats
 * nothing.
 */
export function underNow(film: FilmReport, system: System): string | null {
  if (!film.guidance || film.leastFilm === null || film.warmUpEnd === 'contact') return null;
  const { filmRatio: ratio, seat } = film.guidance;
  const warm = warmRatio(film);
  if (ratio < RUBBING)
    return film.load ? 'To carry this load cold it would have to be so thin.' : 'Cold, nothing parts the surfaces.';
  if (warm < RUBBING) return null;
  const worst = Math.min(ratio, warm);
  if (worst < FULL_FILM) return partingText(film, system, warm < ratio);
  const plain = hottest(film) <= OIL_LASTS && (film.power ?? 0) <= SMALL_MOTOR && !unloaded(film) && !whirls(film);
  if (!plain || warmUnknown(film) || film.turn?.touches) return null;
  return `At worst that is ${Number((worst / FULL_FILM).toPrecision(2))} times what parts the surfaces, in the ${seat} seat.`;
}

/** What would part them, and how it stands in the other state than the worse one. */
function partingText(film: FilmReport, system: System, warmer: boolean): string {
  const ratio = film.guidance!.filmRatio;
  const needed = (film.leastFilm! * FULL_FILM) / ratio;
  const steady = film.steady?.leastFilm ?? null;
  const [here, there] = warmer ? [steady!, film.leastFilm!] : [film.leastFilm!, steady];
  const would = `It takes ${besideText(here, needed, system)[1]} to part the surfaces`;
  if (there === null) return `${would}.`;
  const enough = there >= needed ? ', which is enough' : '';
  return `${would}; ${warmer ? 'cold' : 'warm'} it is ${besideText(there, needed, system)[0]}${enough}.`;
}

/** The same of the films that follow the hand. */
export function runsNowLive({ status, seats }: RunFields, system: System): string {
  if (seats.length === 0) return OUTSIDE;
  const thin = seats.reduce((a, b) => (b.leastFilm < a.leastFilm ? b : a));
  switch (status) {
    case 'standing':
      return STANDING;
    case 'contact':
    case 'noRoom':
    case 'apart':
      return thin.leastFilm < 0
        ? `Metal meets metal: ${intoText(thin.name, thin.leastFilm, system)}.`
        : `Metal touches in the ${thin.name} seat.`;
    case 'notConverged':
      return 'Where it runs is being worked out.';
    default:
      return `Cold: ${thin.name} film about ${fineText(thin.leastFilm, system)}.`;
  }
}
