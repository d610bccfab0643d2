/**
 * The fit in a machinist's words: one headline and one or two sentences, made from the report alone and right
 * for every kind of design.
 */
import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import { type AngleWay, angleSaid, fineText, placeText, type System, turnText } from '../../design/units.ts';
import { lineOf } from '../../engine/parts/line.ts';
import { isSelfHolding } from '../../engine/play/selfHolding.ts';
import { radians, toSeat } from '../convert.ts';
import { neededFilm } from '../film/neededFilm.ts';
import { listed } from '../listed.ts';
import { offHeadline, relationSentences } from './agreement.ts';
import type { FitReport, SeatFitReport } from './definition.ts';
import { TOUCHING } from './section.ts';
import { UNEVEN } from './uneven.ts';

export interface Verdict {
  /** plain: told without praise or blame */
  tone: 'good' | 'mend' | 'stop' | 'plain';
  headline: string;
  sentences: string[];
  /** the headline tells what is so where the journal stands, and nothing of the pair */
  onlyNow?: true;
}

/** `way`: how the person says angles. */
export function fitVerdict(design: Design, fit: FitReport, system: System, way: AngleWay = 'half'): Verdict {
  const interfering = fit.seats.filter((s) => s.leastFilm !== null && s.leastFilm < -TOUCHING);
  if (interfering.length > 0) return interferingVerdict(design, fit, interfering, system, way);
  const sentences = allSentences(design, fit, system, way);
  const apart = fit.seats.filter((s) => s.leastFilm === null);
  if (apart.length > 0) return apartVerdict(design, fit, apart, sentences, system);
  const off = fit.seats.filter((s, i) => !isAsWanted(s, design.seats[i]?.film));
  if (off.length > 0) return { tone: 'mend', headline: offHeadline(design, fit, system), sentences };
  const uneven = unevenSentences(design, fit, system).length > 0;
  const wanted = fit.seats.some((_, i) => design.seats[i]?.film);
  return {
    tone: wanted && !uneven ? 'good' : 'mend',
    headline: wanted
      ? uneven
        ? 'Every least film is right here, but not every film is even along its seat.'
        : 'Every seat has the film it should have, here.'
      : firstTouchSentence(design, fit, system, way),
    sentences: wanted ? sentences : sentences.slice(1),
  };
}

const allSentences = (design: Design, fit: FitReport, system: System, way: AngleWay) =>
  [
    firstTouchSentence(design, fit, system, way),
    leavesSentence(fit, system),
    moveSentence(fit, system),
    permittedSentence(fit, system),
    ...relationSentences(design, fit, system),
    ...unevenSentences(design, fit, system),
    thinToRun(design, system),
  ].filter((s) => s !== '');

/** A film that is wanted but cannot part the surfaces as they turn: which screen to believe. */
function thinToRun({ run, seats }: Design, system: System): string {
  if (!run) return '';
  const needed = neededFilm(run);
  const thin = seats.filter(({ film }) => film && film.target < needed);
  return thin.length === 0
    ? ''
    : `The film wanted in the ${listed(thin.map(({ name }) => name))} ${plural(thin, 'seat')} is thinner than the ${fineText(needed, system)} that parts surfaces as rough as these: believe Run, which tells what to aim for.`;
}

function interferingVerdict(
  design: Design,
  fit: FitReport,
  interfering: readonly SeatFitReport[],
  system: System,
  way: AngleWay,
): Verdict {
  const worst = interfering.reduce((a, b) => (a.leastFilm! < b.leastFilm! ? a : b));
  const into = `The ${worst.name} journal is ${fineText(-worst.leastFilm!, system)} into its bush here`;
  if (overlaps(fit))
    return {
      tone: 'stop',
      headline: `${into}, and no position clears every seat.`,
      sentences: [overlapSentence(fit, system)],
    };
  if (worst.closes === 'never' || worst.seatPosition === null)
    return { tone: 'stop', headline: `${into} and no axial move clears it.`, sentences: [] };
  return { tone: 'stop', headline: `${into}.`, sentences: allSentences(design, fit, system, way), onlyNow: true };
}

function apartVerdict(
  design: Design,
  fit: FitReport,
  apart: readonly SeatFitReport[],
  sentences: string[],
  system: System,
): Verdict {
  const blocked = blockedText(fit, system);
  if (blocked !== '')
    return {
      tone: 'stop',
      headline: `The spindle does not go home: where the ${listed(fit.together)} ${plural(fit.together, 'seat')} would touch, ${blocked}.`,
      sentences: sentences.slice(1),
    };
  const tooLarge = apart.filter(({ name }) => isTooLarge(design, name));
  if (tooLarge.length > 0)
    return {
      tone: 'stop',
      headline: `The ${listed(tooLarge.map((s) => s.name))} journal is larger than its bush all along: it does not go in.`,
      sentences: [],
    };
  return {
    tone: 'mend',
    headline: `The ${listed(apart.map((s) => s.name))} journal does not reach its bush at this position.`,
    sentences,
  };
}

/** Whether the least radius of a journal is more than the greatest of its bush. */
function isTooLarge(design: Design, name: string): boolean {
  const { journal, bush } = toSeat(design.seats.find((seat) => seat.name === name)!);
  return Math.min(...lineOf(journal, 'inside').r) > Math.max(...lineOf(bush, 'outside').r);
}

/** The two stops are the wrong way round. */
const overlaps = ({ endPlay }: FitReport) => endPlay !== null && endPlay < -TOUCHING;
const overlapSentence = ({ endPlay }: FitReport, system: System) =>
  `The two stops overlap by ${fineText(-endPlay!, system)}, so it cannot go in.`;

const plural = (items: readonly unknown[], word: string) => (items.length > 1 ? `${word}s` : word);

/** Which seats are in their bush where the first would touch; empty where none is. */
const blockedText = (fit: FitReport, system: System) =>
  listed(
    fit.blocked.map((name) => `the ${name} journal is ${fineText(-fit.filmsAtFirst[name]!, system)} into its bush`),
  );

type Wanted = Design['seats'][number]['film'];

/** A seat that wants no film has what it wants. */
export function isAsWanted(seat: SeatFitReport, film: Wanted): boolean {
  return !film || (seat.leastFilm !== null && Math.abs(seat.leastFilm - film.target) <= (film.tolerance ?? 0) + 1e-9);
}

const END = {
  small: 'at its small end',
  large: 'at its large end',
  middle: 'part way along',
  whole: 'all along its line',
} as const;

function firstTouchSentence(design: Design, fit: FitReport, system: System, way: AngleWay): string {
  const first = fit.seats.find((s) => s.name === fit.first);
  if (!first || fit.firstPosition === null) {
    const noseward = fit.seats.filter((s) => s.closes === 'noseward' && s.seatPosition !== null);
    return noseward.length > 0
      ? `Nothing stops the journal going rearward; going noseward the ${noseward.map((s) => s.name).join(' and ')} seat does.`
      : 'No axial move makes any of these seats touch.';
  }
  const at = first.contact
    ? ` ${END[first.contact.end]}${first.contact.end === 'whole' ? '' : ` (diameter ${placeText(first.contact.diameter, system)})`}`
    : '';
  const seats =
    fit.together.length > 1
      ? `the ${listed(fit.together)} seats would touch together`
      : `the ${first.name} seat would touch first${at}`;
  if (fit.blocked.length > 0) return `Going home, ${seats}, but there ${blockedText(fit, system)}.`;
  if (overlaps(fit)) return `Going home, ${seats}.`;
  const travel = fit.firstPosition - fit.position;
  // Nobody goes home noseward: pressed in, it has been there.
  if (travel >= HERE) {
    const there = awayText(travel, system);
    return fit.together.length > 1
      ? `The ${listed(fit.together)} seats touched together, ${there}.`
      : `The ${first.name} seat touched first${at}, ${there}: ${effect(design, fit, first, way)}`;
  }
  const away = awayText(travel, system);
  if (fit.together.length > 1) return `Going home, the ${listed(fit.together)} seats touch together, ${away}.`;
  return `Going home, the ${first.name} seat touches first${at}, ${away}: ${effect(design, fit, first, way)}`;
}

/** Travel (mm) that no text shows. */
const HERE = 5e-6;

/** Where another position is, so that what is said of it is not taken for what is so now. */
const awayText = (travel: number, system: System) =>
  Math.abs(travel) < HERE
    ? 'where it stands now'
    : `${fineText(Math.abs(travel), system)} ${travel < 0 ? 'rearward' : 'noseward'} of here`;

/** How the others stand where the first touches, and how far it is to the other stop: said of there, not of now. */
function leavesSentence(fit: FitReport, system: System): string {
  if (fit.first === null) return '';
  const others = fit.seats.filter(
    (s) =>
      !fit.together.includes(s.name) &&
      !fit.blocked.includes(s.name) &&
      s.closes !== 'never' &&
      fit.filmsAtFirst[s.name] != null,
  );
  const clear = others
    .map((s) => `the ${s.name} seat is still ${fineText(Math.max(0, fit.filmsAtFirst[s.name]!), system)} clear`)
    .join(' and ');
  const parts = [clear === '' ? '' : `there ${clear}`, endPlayClause(fit, system)]
    .filter((part) => part !== '')
    .join('; ');
  return parts === '' ? '' : `${parts.charAt(0).toUpperCase()}${parts.slice(1)}.`;
}

const endPlayClause = (fit: FitReport, system: System) =>
  fit.endPlay === null
    ? ''
    : overlaps(fit)
      ? overlapSentence(fit, system).slice(0, -1)
      : `end play is ${fineText(Math.max(0, fit.endPlay), system)}`;

/** What it does that this seat touches first. */
function effect(design: Design, fit: FitReport, first: SeatFitReport, way: AngleWay): string {
  const { bush, journal } = design.seats.find((s) => s.name === first.name)!;
  const halfAngle = bush.halfAngle || journal.halfAngle;
  const friction = design.friction ?? defaultAt('friction');
  if (isSelfHolding(radians(halfAngle), friction))
    return `at ${angleSaid(halfAngle, way)} it wedges and sticks once pressed home.`;
  const loose = fit.seats.filter(
    (s, i) =>
      s !== first &&
      s.closes === 'rearward' &&
      isLoose(fit.filmsAtFirst[s.name], design.seats[i]?.film) &&
      // Pressed on until it touches too it is loose no more.
      (s.leastFilm ?? Number.POSITIVE_INFINITY) > TOUCHING,
  );
  if (loose.length > 0)
    return `it stops the journal before the ${loose.map((s) => s.name).join(' and ')} seat is home, so the spindle is loose in ${loose.length > 1 ? 'those' : 'that one'}.`;
  return `at ${angleSaid(halfAngle, way)} it stops the journal without sticking.`;
}

/** A film that runs from thin to thick, by more than its tolerance: a mismatch of angle, or wear. */
export function unevenSentences(design: Design, fit: FitReport, system: System): string[] {
  return fit.seats.flatMap((seat, i) => {
    const { leastFilm: least, greatestFilm: greatest } = seat;
    if (least === null || greatest === null || greatest - least <= (design.seats[i]?.film?.tolerance ?? 0) + UNEVEN)
      return [];
    return [
      `The ${seat.name} film is uneven: ${fineText(least, system)} where it is least, ${fineText(greatest, system)} where it is greatest.`,
    ];
  });
}

/** Whether a seat stands clear by more than the film it should have. */
const isLoose = (film: number | null | undefined, wanted: Wanted) =>
  film != null && (!wanted || film > wanted.target + (wanted.tolerance ?? 0));

/** How far to move for the film of the seat that matters first, and what the others then have. */
function moveSentence(fit: FitReport, system: System): string {
  if (overlaps(fit)) return '';
  const movers = fit.seats.filter((s) => s.positionForTarget !== null && s.shiftToTarget !== null);
  const seat = movers.find((s) => s.name === fit.first) ?? movers[0];
  if (!seat) return '';
  const shift = seat.shiftToTarget!;
  const isTold = (name: string, film: number) =>
    film < -TOUCHING || fit.seats.find((s) => s.name === name)?.closes !== 'never';
  const others = Object.entries(seat.filmsAtTarget ?? {}).filter(
    ([name, film]) => name !== seat.name && film !== null && isTold(name, film),
  );
  if (Math.abs(shift) < 5e-5) return `The ${seat.name} seat stands at its film now.`;
  const turns = seat.turnsToTarget === null ? '' : ` (${turnText(seat.turnsToTarget)} of the adjuster)`;
  const after = others
    .map(
      ([name, film]) =>
        `the ${name} ${film! < -TOUCHING ? `is then ${fineText(-film!, system)} into its bush` : `then has ${fineText(Math.max(0, film!), system)}`}`,
    )
    .join(', ');
  return `For its film the ${seat.name} seat wants the journal ${awayText(shift, system)}${turns}${after === '' ? '' : `; ${after}`}.`;
}

/** Where the adjuster may stand with every film right. */
function permittedSentence({ permitted, position, seats }: FitReport, system: System): string {
  if (!permitted || permitted.to - permitted.from < 5e-5) return '';
  const pitch = seats.find(
    (s) => s.turnsToTarget !== null && s.shiftToTarget !== null && Math.abs(s.turnsToTarget) > 1e-9,
  );
  const turns = pitch
    ? ` (${turnText(((permitted.to - permitted.from) * pitch.turnsToTarget!) / pitch.shiftToTarget!)} of the adjuster)`
    : '';
  const range = `${fineText(permitted.to - permitted.from, system)} of travel${turns}`;
  if (position < permitted.from || position > permitted.to) return `Over ${range} every film is within its tolerance.`;
  return `It may go ${fineText(position - permitted.from, system)} rearward or ${fineText(permitted.to - position, system)} noseward of here with every film still within its tolerance.`;
}
