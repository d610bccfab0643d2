/** The running spindle in a machinist's words: a headline and a few sentences, made from the report alone. */

import { besideText } from '../../design/beside.ts';
import type { Design } from '../../design/definition.ts';
import { fineText, placeText, type System } from '../../design/units.ts';
import { FULL_FILM, SMALL_MOTOR } from '../../engine/heat/guidance.ts';
import { OIL_LASTS } from '../../engine/run/limits.ts';
import type { Verdict } from '../fit/verdict.ts';
import { listed } from '../listed.ts';
import { stopSentence, thrustSentence } from './axialSentences.ts';
import type { FilmReport } from './definition.ts';
import { celsius, digits, minutes, newtons, rounded, watts } from './figures.ts';
import { BARELY, neededFilm, RUBBING, TOO_THIN } from './neededFilm.ts';

/** N: round-off */
const NOTHING = 1e-6;
/** °C far beyond what oil lasts, near its flash point. @source Handbooks */
const OIL_BURNS = 150;
/** mm: less is a touch. */
export const TOUCHING = 1e-6;
/** The greatest error of the forces that is kept silent about. */
const ROUGH_ANSWER = 0.02;

export function filmVerdict(design: Design, film: FilmReport, system: System): Verdict {
  const failed = failedVerdict(design, film, system);
  if (failed) return failed;
  const sentences = [
    backOffSentence(design, film, system),
    thrustSentence(design, film, system),
    stopSentence(design, film, system),
    turnSentence(film, system),
    whirlSentence(film),
    warmSentence(film, system),
    guidanceSentence(design, film, system),
    doubtSentence(film),
    unreachedSentence(film),
  ].filter((s) => s !== '');
  const ratio = film.guidance?.filmRatio ?? Number.POSITIVE_INFINITY;
  const seizes = film.warmUpEnd === 'contact';
  const touches = film.turn?.touches === true;
  const warm = warmRatio(film);
  const worst = Math.min(ratio, warm);
  const mending =
    worst < FULL_FILM ||
    warmUnknown(film) ||
    whirls(film) ||
    unloaded(film) ||
    hottest(film) > OIL_LASTS ||
    (film.power ?? 0) > SMALL_MOTOR ||
    (film.status === 'stopped' && !design.adjuster);
  const tone = worst < RUBBING || seizes || touches || hottest(film) > OIL_BURNS ? 'stop' : mending ? 'mend' : 'good';
  return { tone, headline: headline(film, system, ratio, warm, seizes), sentences };
}

/** Least film over combined roughness once it no longer warms; as it starts where that is not known. */
export function warmRatio({ guidance, steady, leastFilm }: FilmReport): number {
  const ratio = guidance?.filmRatio ?? Number.POSITIVE_INFINITY;
  return steady && leastFilm ? (ratio * steady.leastFilm) / leastFilm : ratio;
}

/** °C: the warmest of parts and oil once it no longer warms. */
export const hottest = ({ steady }: FilmReport) =>
  steady
    ? Math.max(steady.journal, steady.bush, ...steady.seats.map(({ temperature }) => temperature))
    : Number.NEGATIVE_INFINITY;
/** Given up before it was known where the warming ends. */
export const warmUnknown = ({ unreached, steady }: FilmReport) =>
  steady === null && (unreached.includes('warmUp') || unreached.includes('steady'));
export const whirls = ({ whirl, steady }: FilmReport) => whirl !== null && (!whirl.stable || steady?.calm === false);
/** It turns, and the oil presses it nowhere. */
export const unloaded = ({ whirl, seats }: FilmReport) =>
  whirl !== null && seats.every(({ force }) => force !== null && Math.hypot(force.x, force.y, force.z) < NOTHING);

/** `ratio` and `warm`: least film over combined roughness as it starts, and when it no longer warms. */
function headline(film: FilmReport, system: System, ratio: number, warm: number, seizes: boolean): string {
  const thin = film.guidance!.seat;
  const least = fineText(film.leastFilm!, system);
  if (ratio < RUBBING && film.load)
    return `To carry this load cold the film of the ${thin} seat would have to be ${least}, ${TOO_THIN}.`;
  if (ratio < RUBBING) return `Cold, the film of the ${thin} seat, ${least}, is ${TOO_THIN}.`;
  if (seizes) return `It runs cold, but as it warms the films close and it seizes.`;
  if (Math.min(ratio, warm) < FULL_FILM) return thinText(film, system, { ratio, warm });
  if (hottest(film) > OIL_LASTS)
    return `It runs on oil, but warm it stands at ${celsius(hottest(film), system)}: hotter than oil lasts.`;
  if ((film.power ?? 0) > SMALL_MOTOR)
    return `It runs on oil, but cold its drag takes ${watts(film.power!)}: more than a small lathe’s motor gives.`;
  if (unloaded(film))
    return 'The films part the surfaces, but nothing loads the spindle: it stands on the edge of whirl.';
  if (film.whirl?.stable === false) return `The films carry, but the spindle whirls at this speed.`;
  if (whirls(film)) return 'The films carry, but warm the spindle whirls at this speed.';
  if (warmUnknown(film))
    return `Cold, the spindle runs on oil everywhere, the thinnest film ${least} in the ${thin} seat; whether it still does once warm was not worked out.`;
  const times = Number((Math.min(ratio, warm) / FULL_FILM).toPrecision(2));
  return `The spindle runs on oil everywhere, at worst ${times} times what parts the surfaces; the thinnest film is ${least}, in the ${thin} seat.`;
}

/** Each state with its own film and what it ought to be, the worse first: they do not contradict each other. */
function thinText(film: FilmReport, system: System, { ratio, warm }: { ratio: number; warm: number }): string {
  const cold = film.leastFilm!;
  const needed = (cold * FULL_FILM) / ratio;
  const [coldText, coldNeeded] = besideText(cold, needed, system);
  const steady = film.steady?.leastFilm ?? null;
  const enough = (share: number) => (share < FULL_FILM ? '' : ', which is enough');
  if (steady !== null && warm < ratio) {
    const [warmText, warmNeeded] = besideText(steady, needed, system);
    const is = warm < RUBBING ? 'is thinner than the surfaces are rough' : `${BARELY} (${warmNeeded} would)`;
    return `Warm, the thinnest film is ${warmText}, which ${is}; cold it is ${coldText}${enough(ratio)}.`;
  }
  const then = steady === null ? '' : `; warm the thinnest is ${besideText(steady, needed, system)[0]}${enough(warm)}`;
  return `Cold, the film of the ${film.guidance!.seat} seat, ${coldText}, ${BARELY} (${coldNeeded} would)${then}.`;
}

function failedVerdict(design: Design, film: FilmReport, system: System): Verdict | null {
  const seat = film.contact?.seat;
  const where = film.contact ? ` at station ${placeText(film.contact.station, system)}` : '';
  switch (film.status) {
    case 'contact': {
      if (film.load === null) {
        const into = film.contact!.film < -TOUCHING ? `is ${fineText(-film.contact!.film, system)} into` : 'touches';
        return { tone: 'stop', headline: `Held there, the ${seat} journal ${into} its bush${where}.`, sentences: [] };
      }
      return {
        tone: 'stop',
        headline: `No film carries this load: the journal sinks until it touches in the ${seat} seat${where}.`,
        sentences: [
          film.backOff ? backOffSentence(design, film, system) : sunkSentence(design, film, system),
          unreachedSentence(film),
        ].filter((s) => s !== ''),
      };
    }
    case 'apart':
      return {
        tone: 'stop',
        headline: 'A journal does not reach its bush there, so no oil carries it.',
        sentences: [],
      };
    case 'noRoom':
      return {
        tone: 'stop',
        headline: noRoomText(design, film, system),
        sentences: [
          film.backOff
            ? backOffSentence(design, film, system)
            : film.unreached.includes('backOff')
              ? unreachedSentence(film)
              : noWayText(design),
        ].filter((s) => s !== ''),
      };
    case 'standing':
      return {
        tone: 'stop',
        headline: `Standing still the spindle rests on metal${seat ? `, hardest in the ${seat} seat${where}` : ''}: it is its turning that makes the oil carry.`,
        sentences: [],
      };
    case 'notConverged':
      return {
        tone: 'stop',
        headline: 'Where the spindle runs under this load could not be worked out; please report this design.',
        sentences: [],
      };
    case 'givenUp':
      return {
        tone: 'stop',
        headline: 'Where this spindle runs takes more work to find than is spent on one design, and was given up.',
        sentences: [],
      };
    default:
      return null;
  }
}

/** A seat that is shut where the adjuster stands. */
function noRoomText(design: Design, film: FilmReport, system: System): string {
  const { contact } = film;
  if (!contact) return 'There is no room for oil at any position near this one.';
  const place = `at station ${placeText(contact.station, system)}`;
  if (!design.adjuster) return `There is no room for oil in the ${contact.seat} seat at any position near this one.`;
  const into = contact.film < -1e-6 ? `${fineText(-contact.film, system)} into its bush` : 'on metal';
  return `Set at ${fineText(film.pose.z, system)} the ${contact.seat} journal is ${into} ${place}: there is no room for oil.`;
}

const noWayText = (design: Design) =>
  design.adjuster
    ? 'No position within reach of the adjuster carries this load on a film that parts the surfaces.'
    : '';

/** Where the adjuster would have to stand. */
function backOffSentence(design: Design, { backOff, pose, status }: FilmReport, system: System): string {
  if (!backOff) return '';
  const from = status === 'stopped' || status === 'noRoom' ? pose.z : (design.position ?? 0);
  const move = backOff.position - from;
  const turns = design.adjuster
    ? `, ${((Math.abs(move) / design.adjuster.pitch) * 360).toFixed(1)}° of the adjuster`
    : '';
  return `Set ${fineText(Math.abs(move), system)} further ${move > 0 ? 'noseward' : 'rearward'}, at ${fineText(backOff.position, system)}${turns}, the films part the surfaces under this load, cold.`;
}

/** Why thrust may find no film: cones that run true have no wedge. */
function sunkSentence(design: Design, film: FilmReport, system: System): string {
  const thrust = film.load!.force.z;
  const sideways = Math.hypot(film.load!.force.x, film.load!.force.y);
  if (Math.abs(thrust) < sideways / 2)
    return 'A thinner film carries more, but here it would have to be under a hundredth of a micrometre: thinner than metal can be made smooth.';
  const cones = design.seats.some((seat) => seat.bush.halfAngle !== 0);
  return cones
    ? `A cone that runs true drags oil round without wedging it, and lifts next to nothing: with ${newtons(thrust, system)} of thrust to ${newtons(sideways, system)} sideways there is too little to push it off centre. A groove, lobes or a thrust bearing must carry the thrust.`
    : 'A straight bearing carries no thrust.';
}

function turnSentence({ turn, leastFilm }: FilmReport, system: System): string {
  if (!turn) return '';
  if (turn.touches) return 'Its lobes touch the bush in the course of a turn.';
  return turn.leastFilm! < leastFilm! - 1e-6
    ? `Over a turn the journal’s lobes bring the film down to ${fineText(turn.leastFilm!, system)}.`
    : '';
}

function whirlSentence(film: FilmReport): string {
  const { whirl } = film;
  if (!whirl) return '';
  if (unloaded(film))
    return 'A spindle that runs true with no load has nothing to keep it in its place: a little sideways load calms it.';
  if (!whirl.stable)
    return `It whirls, at ${digits(whirl.ratio)} of the speed of turning: thicker oil, less clearance or more load calms it.`;
  if (film.steady?.calm === false)
    return 'Warm, its oil thinner, it whirls: thicker oil, less clearance or more load calms it.';
  return whirl.threshold === null || whirl.threshold === 0
    ? ''
    : `Cold, whirl sets in at ${rounded(whirl.threshold)} rev/min.`;
}

function warmSentence(film: FilmReport, system: System): string {
  const last = film.warmUp[film.warmUp.length - 1];
  if (!last) return '';
  if (film.warmUpEnd === 'contact')
    return `After ${minutes(last.time)}, at ${celsius(last.journal, system)}, the film is nothing left of ${fineText(film.warmUp[0]!.leastFilm, system)}.`;
  if (!film.steady)
    return last.journal - film.warmUp[0]!.journal > 1
      ? `After ${minutes(last.time)} the journal is at ${celsius(last.journal, system)} and still changing.`
      : '';
  const { steady } = film;
  const change = steady.leastFilm - film.leastFilm!;
  return `Warm, the journal runs at ${celsius(steady.journal, system)} with ${watts(steady.power)} of friction (${watts(film.power!)} cold), and the thinnest film is ${fineText(steady.leastFilm, system)}, ${fineText(Math.abs(change), system)} ${change < 0 ? 'less' : 'more'} than cold${whyText(steady, change)}.`;
}

/** °C: parts so near to each other grow alike. */
const ALIKE = 1;

/** Why warm is another thing than cold. @param change of the thinnest film (mm) */
function whyText({ journal, bush }: NonNullable<FilmReport['steady']>, change: number): string {
  if (change > 0) return ': the parts have grown so that it opens by more than the thinner oil gives way';
  const grown = journal > bush + ALIKE ? ', and the journal, the warmer, has grown more than its bush' : '';
  return `: the oil is thinner${grown}`;
}

/** What published guidance asks for, and which film counts where another one is wanted: said here alone. */
function guidanceSentence({ run, seats }: Design, film: FilmReport, system: System): string {
  const { guidance } = film;
  if (!guidance || film.leastFilm! >= guidance.film) return '';
  const asked = `${besideText(film.leastFilm!, guidance.film, system)[1]}${guidance.within ? '' : ' of a somewhat larger shaft'}`;
  const targets = seats.flatMap((seat) => seat.film?.target ?? []);
  const [wanted, parting] = [Math.min(...targets), neededFilm(run!)];
  if (targets.length === 0 || wanted >= guidance.film)
    return `Published guidance (ISO 7902-3) asks for ${asked} where surfaces are ground; fine lapping and clean oil allow less.`;
  const [one, other] = besideText(wanted, parting, system);
  return wanted >= parting
    ? `The film wanted on Fit counts, ${one}: as fine as these surfaces are, ${other} parts them. Published guidance (ISO 7902-3), ${asked}, is for ground ones.`
    : `Run counts: ${one}, the film wanted on Fit, does not part surfaces as rough as these; ${other} would. Published guidance (ISO 7902-3) asks for ${asked} where they are ground.`;
}

const UNREACHED: Record<FilmReport['unreached'][number], string> = {
  pose: 'where it runs',
  whirl: 'from what speed on it whirls',
  warmUp: 'the rest of its warm-up',
  steady: 'where it ends once warm',
  backOff: 'whether another position would do',
};

/** What is not told, since it takes too much work. */
const unreachedSentence = ({ unreached }: FilmReport) =>
  unreached.length === 0
    ? ''
    : `Not worked out to the end, for the work it takes: ${listed(unreached.map((what) => UNREACHED[what]))}.`;

function doubtSentence(film: FilmReport): string {
  if (film.accuracy!.imbalance > 1e-4)
    return 'The oil does not balance to the last drop here: take these figures with care.';
  const doubt = Math.max(film.accuracy!.force, film.accuracy!.torque);
  return doubt > ROUGH_ANSWER
    ? `At so thin a film these figures are good to about ${Math.ceil(doubt * 100)} % only.`
    : '';
}
