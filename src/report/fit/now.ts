/** What is so with the journal where it stands, in a few words: the first line a person reads, before any why. */
import type { Design } from '../../design/definition.ts';
import { fineText, type System } from '../../design/units.ts';
import { listed } from '../listed.ts';
import type { FitReport, SeatFitReport } from './definition.ts';
import { TOUCHING } from './section.ts';
import { UNEVEN } from './uneven.ts';

type Film = Design['seats'][number]['film'];

/** Seats (places) whose parts touch with the journal where it stands, none of them pressed in. */
export const touchingNow = ({ seats }: FitReport): SeatFitReport[] =>
  seats.filter(({ leastFilm }) => leastFilm !== null && Math.abs(leastFilm) <= TOUCHING);

/** The seat that is pressed deepest into its bush with the journal where it stands; null where none is. */
export const deepestNow = ({ seats }: FitReport): SeatFitReport | null =>
  seats
    .filter(({ leastFilm }) => leastFilm !== null && leastFilm < -TOUCHING)
    .reduce<SeatFitReport | null>((most, seat) => (most && most.leastFilm! <= seat.leastFilm! ? most : seat), null);

/** Seats named one by one; of more only how many. */
const FEW = 3;
/** mm: beside a film its tolerance is met to this, as the verdict has it. */
const EDGE = 1e-9;

/**
 * `pulled`: names of the seats that hold the nose pulled aside; null where it is not. `told`: a film as it is told with
 * its doubt, where it has any.
 */
export function standsNow(
  design: Design,
  fit: FitReport,
  system: System,
  pulled: readonly string[] | null,
  told?: (seat: string) => string | undefined,
): string {
  const text = ({ name, leastFilm }: SeatFitReport) => told?.(name) ?? fineText(leastFilm!, system);
  if (pulled) return pulledText(pulled);
  const all = fit.seats.map((seat, i) => ({ ...seat, film: design.seats[i]?.film }));
  const worst = deepestNow(fit);
  if (worst)
    return `${capital(worst.name)} touched and is ${fineText(-worst.leastFilm!, system)} into its bush: metal must give.`;
  const touching = touchingNow(fit);
  if (touching.length > 0) {
    const names = touching.map(({ name }) => name);
    return `${capital(listed(names))} ${names.length > 1 ? 'touch' : 'touches'}.${clearOf(all, names, text)}`;
  }
  const apart = all.filter(({ leastFilm }) => leastFilm === null);
  if (apart.length > 0)
    return `${capital(listed(apart.map(({ name }) => name)))} ${apart.length > 1 ? 'stand' : 'stands'} outside ${apart.length > 1 ? 'their bushes' : 'its bush'}.`;
  return filmsNow(all, text, told !== undefined);
}

const pulledText = (names: readonly string[]) =>
  names.length === 0
    ? 'Nose pulled aside.'
    : `Nose pulled aside until ${listed(names)} ${names.length > 1 ? 'touch' : 'touches'}.`;

type FilmText = (seat: SeatFitReport) => string;

function clearOf(all: readonly SeatFitReport[], touching: readonly string[], text: FilmText): string {
  const clear = all.filter(({ name, leastFilm }) => !touching.includes(name) && leastFilm !== null);
  if (clear.length === 0 || clear.length > FEW) return '';
  const each = clear.map((seat) => `${seat.name} stands ${text(seat)} off`);
  return ` ${capital(listed(each))}.`;
}

interface Now extends SeatFitReport {
  film: Film;
}

const isRight = ({ leastFilm, film }: Now) =>
  !film || Math.abs(leastFilm! - film.target) <= (film.tolerance ?? 0) + EDGE;

/** Right where it is least, and too thick elsewhere by more than would be remarked on. */
const isUneven = ({ greatestFilm, film }: Now) =>
  film !== undefined && greatestFilm !== null && greatestFilm > film.target + (film.tolerance ?? 0) + UNEVEN;

function filmsNow(all: readonly Now[], text: FilmText, inDoubt: boolean): string {
  const wanted = all.filter(({ film }) => film);
  const off = wanted.filter((seat) => !isRight(seat));
  const uneven = off.length === 0 && !inDoubt ? wanted.filter(isUneven) : [];
  // Where it is least a film is right, and yet not all along its seat.
  if (uneven.length > 0) {
    const { name, greatestFilm } = uneven.reduce((a, b) => (b.greatestFilm! > a.greatestFilm! ? b : a));
    const others = uneven.length > 1 ? `${listed(uneven.map((seat) => seat.name))} are` : `${name} is`;
    return `${capital(others)} as wanted only in part: up to ${text({ ...uneven[0]!, name, leastFilm: greatestFilm })}, too thick.`;
  }
  // What is in doubt is told with its doubt.
  if (wanted.length > 0 && off.length === 0 && !inDoubt)
    return wanted.length === 1
      ? `${capital(wanted[0]!.name)} has its film: ${text(wanted[0]!)}.`
      : `${wanted.length === 2 ? 'Both' : `All ${wanted.length}`} films are as wanted.`;
  if (all.length > FEW) return `${wanted.length - off.length} of ${wanted.length || all.length} films as wanted.`;
  return `${capital(all.map((seat) => `${seat.name} ${text(seat)}${howText(seat)}`).join('; '))}.`;
}

const howText = (seat: Now) =>
  !seat.film ? '' : isRight(seat) ? ', as wanted' : seat.leastFilm! < seat.film.target ? ', too thin' : ', too thick';

/** Which seat touches first as the journal goes home, and after how far, while every seat is open; empty elsewhere. */
function touchesNext({ seats, together, firstPosition, position }: FitReport, system: System, end: string): string {
  const open = seats.every(({ leastFilm }) => leastFilm !== null && leastFilm > TOUCHING);
  if (!open || firstPosition === null || firstPosition > position) return '';
  const how = together.length > 1 ? 'touch together' : 'touches first';
  return `${capital(listed(together))} ${how}, ${fineText(position - firstPosition, system)} rearward${end}`;
}

/** How the others stand while one is pressed into its bush; empty where none is. */
export function besidesNow(fit: FitReport, system: System): string {
  const worst = deepestNow(fit);
  const others = fit.seats.filter(({ name, leastFilm }) => name !== worst?.name && leastFilm !== null);
  if (!worst || others.length === 0 || others.length >= FEW) return '';
  const each = others.map(({ name, leastFilm }) => {
    if (Math.abs(leastFilm!) <= TOUCHING) return `${name} touches`;
    return leastFilm! < 0 ? `${name} is pressed in too` : `${name} stands ${fineText(leastFilm!, system)} off`;
  });
  return `${capital(listed(each))}.`;
}

/** What happens next as the journal goes home, or how the others stand, and how differently the films close. */
export function nextLine(fit: FitReport, system: System): string {
  const besides = besidesNow(fit, system);
  if (besides !== '') return [besides, ratioSentence(fit)].filter((said) => said !== '').join(' ');
  const ratio = ratioOf(fit);
  if (!ratio) return touchesNext(fit, system, '.');
  const { fast, times } = ratio;
  const its = fit.together.length === 1 && fit.first === fast && fit.seats.length === 2;
  const next = touchesNext(fit, system, its ? `; its film changes ${times} times as fast.` : '. ');
  return its && next !== '' ? next : next + ratioSentence(fit);
}

/** The slowest and the fastest film compared; empty where a move opens them alike, or one not at all. */
export function ratioSentence(fit: FitReport): string {
  const ratio = ratioOf(fit);
  return ratio ? `The ${ratio.fast} film changes ${ratio.times} times as fast as the ${ratio.slow} one.` : '';
}

function ratioOf({ seats }: FitReport) {
  const moving = seats.filter(({ sensitivity }) => sensitivity !== null && Math.abs(sensitivity) > 1e-9);
  if (moving.length < 2) return null;
  const [slow, fast] = moving.reduce<[SeatFitReport, SeatFitReport]>(
    ([least, most], seat) => [
      Math.abs(seat.sensitivity!) < Math.abs(least.sensitivity!) ? seat : least,
      Math.abs(seat.sensitivity!) > Math.abs(most.sensitivity!) ? seat : most,
    ],
    [moving[0]!, moving[0]!],
  );
  const times = Math.abs(fast.sensitivity! / slow.sensitivity!);
  return times < 1.05 ? null : { slow: slow.name, fast: fast.name, times: times.toPrecision(3) };
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
