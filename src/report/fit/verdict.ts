/**
 * The fit in a machinist's words: one headline and one or two sentences, made from the report alone and right
 * for every kind of design.
 */
import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import { angleText, fineText, placeText, type System, turnText } from '../../design/units.ts';
import { isSelfHolding } from '../../engine/play/selfHolding.ts';
import { radians } from '../toEngine.ts';
import type { FitReport, SeatFitReport } from './definition.ts';

export interface Verdict {
  /** plain: told without praise or blame */
  tone: 'good' | 'mend' | 'stop' | 'plain';
  headline: string;
  sentences: string[];
}

/** A difference of film (mm) along a seat that no one would remark on. */
const UNEVEN = 1e-4;
/** Films (mm) closer than this to nothing are a touch on paper. */
const TOUCHING = 1e-6;

export function fitVerdict(design: Design, fit: FitReport, system: System): Verdict {
  const fine = (mm: number) => fineText(mm, system);
  const interfering = fit.seats.filter((s) => s.leastFilm !== null && s.leastFilm < -TOUCHING);
  const sentences = [firstTouchSentence(design, fit, system), leavesSentence(fit, system), moveSentence(fit, system), permittedSentence(fit, system), relationSentence(fit, system), ...unevenSentences(design, fit, system)].filter(
    (s) => s !== '',
  );

  if (interfering.length > 0) {
    const worst = interfering.reduce((a, b) => (a.leastFilm! < b.leastFilm! ? a : b));
    const impossible = worst.closes === 'never' || worst.seatPosition === null;
    const headline = `The ${worst.name} journal is ${fine(-worst.leastFilm!)} into its bush here${impossible ? ' and no axial move clears it' : ''}.`;
    return { tone: 'stop', headline, sentences: impossible ? [] : sentences };
  }
  const off = fit.seats.filter((s, i) => !inTolerance(s, design.seats[i]?.film));
  const apart = fit.seats.filter((s) => s.leastFilm === null);
  if (apart.length > 0) return { tone: 'mend', headline: `The ${apart.map((s) => s.name).join(' and ')} journal does not reach its bush at this position.`, sentences };
  if (off.length === 0) {
    const uneven = unevenSentences(design, fit, system).length > 0;
    const wanted = fit.seats.some((_, i) => design.seats[i]?.film);
    return {
      tone: wanted && !uneven ? 'good' : 'mend',
      headline: wanted ? (uneven ? 'Every least film is right here, but not every film is even along its seat.' : 'Every seat has the film it should have, here.') : firstTouchSentence(design, fit, system),
      sentences: wanted ? sentences : sentences.slice(1),
    };
  }
  return { tone: 'mend', headline: offHeadline(fit, system), sentences };
}

type Wanted = Design['seats'][number]['film'];

function inTolerance(seat: SeatFitReport, film: Wanted): boolean {
  return !film || (seat.leastFilm !== null && Math.abs(seat.leastFilm - film.target) <= (film.tolerance ?? 0) + 1e-9);
}

function offHeadline(fit: FitReport, system: System): string {
  const { relation } = fit;
  if (!relation) return `The film is not the one wanted: ${fit.seats.map((s) => `${s.name} ${s.leastFilm === null ? 'apart' : fineText(s.leastFilm, system)}`).join(', ')}.`;
  const [one, other] = relation.between;
  if (Math.abs(relation.error) < relation.allowance) return `The two cones agree well enough: some position gives the ${one} and the ${other} seat their film; it is not this one.`;
  return `No one position gives both the ${one} and the ${other} seat their film: the two cones stand ${fineText(Math.abs(relation.error), system)} wrong to each other.`;
}

const END = { small: 'at its small end', large: 'at its large end', middle: 'part way along', whole: 'all along its line' } as const;

function firstTouchSentence(design: Design, fit: FitReport, system: System): string {
  const first = fit.seats.find((s) => s.name === fit.first);
  if (!first || fit.firstPosition === null) {
    const noseward = fit.seats.filter((s) => s.closes === 'noseward' && s.seatPosition !== null);
    return noseward.length > 0 ? `Nothing stops the journal going rearward; going noseward the ${noseward.map((s) => s.name).join(' and ')} seat does.` : 'No axial move makes any of these seats touch.';
  }
  const where = first.contact ? ` ${END[first.contact.end]}${first.contact.end === 'whole' ? '' : ` (diameter ${placeText(first.contact.diameter, system)})`}` : '';
  if (fit.together.length > 1) return `Going home, the ${fit.together.join(' and ')} seats touch together.`;
  return `Going home, the ${first.name} seat touches first${where}: ${effect(design, fit, first)}`;
}

/** How the others stand where the first touches, and how far it is to the other stop. */
function leavesSentence(fit: FitReport, system: System): string {
  if (fit.first === null) return '';
  const others = fit.seats.filter((s) => !fit.together.includes(s.name) && s.closes !== 'never' && fit.filmsAtFirst[s.name] != null);
  const clear = others.map((s) => `the ${s.name} seat ${standing(fit.filmsAtFirst[s.name]!, system)}`).join(' and ');
  const parts = [clear === '' ? '' : `that leaves ${clear}`, endPlayClause(fit, system)].filter((part) => part !== '').join('; ');
  return parts === '' ? '' : `${parts.charAt(0).toUpperCase()}${parts.slice(1)}.`;
}

/** How a seat stands where another touches first; one that closes the other way may be pressed in there. */
const standing = (film: number, system: System) => (film < -TOUCHING ? `${fineText(-film, system)} into its bush` : `still ${fineText(film, system)} clear`);

const endPlayClause = (fit: FitReport, system: System) => (fit.endPlay === null ? '' : fit.endPlay >= 0 ? `end play is ${fineText(fit.endPlay, system)}` : `the two stops overlap by ${fineText(-fit.endPlay, system)}, so it cannot go in`);

/** What it does that this seat touches first. */
function effect(design: Design, fit: FitReport, first: SeatFitReport): string {
  const { bush, journal } = design.seats.find((s) => s.name === first.name)!;
  const halfAngle = bush.halfAngle || journal.halfAngle;
  const friction = design.friction ?? defaultAt('friction');
  if (isSelfHolding(radians(halfAngle), friction)) return `at ${angleText(halfAngle)} it wedges and sticks once pressed home.`;
  const loose = fit.seats.filter((s, i) => s !== first && s.closes === 'rearward' && isLoose(fit.filmsAtFirst[s.name], design.seats[i]?.film));
  if (loose.length > 0) return `it stops the journal before the ${loose.map((s) => s.name).join(' and ')} seat is home, so the spindle is loose in ${loose.length > 1 ? 'those' : 'that one'}.`;
  return `at ${angleText(halfAngle)} it stops the journal without sticking.`;
}

/** A film that runs from thin to thick, by more than its tolerance: a mismatch of angle, or wear. */
export function unevenSentences(design: Design, fit: FitReport, system: System): string[] {
  return fit.seats.flatMap((seat, i) => {
    const { leastFilm: least, greatestFilm: greatest } = seat;
    if (least === null || greatest === null || greatest - least <= (design.seats[i]?.film?.tolerance ?? 0) + UNEVEN) return [];
    return [`The ${seat.name} film is uneven: ${fineText(least, system)} where it is least, ${fineText(greatest, system)} where it is greatest.`];
  });
}

/** Whether a seat stands clear by more than the film it should have. */
const isLoose = (film: number | null | undefined, wanted: Wanted) => film != null && (!wanted || film > wanted.target + (wanted.tolerance ?? 0));

/** How far to move for the film of the seat that matters first, and what the others then have. */
function moveSentence(fit: FitReport, system: System): string {
  const movers = fit.seats.filter((s) => s.positionForTarget !== null && s.shiftToTarget !== null);
  const seat = movers.find((s) => s.name === fit.first) ?? movers[0];
  if (!seat) return '';
  const shift = seat.shiftToTarget!;
  const others = Object.entries(seat.filmsAtTarget ?? {}).filter(([name, film]) => name !== seat.name && film !== null && fit.seats.find((s) => s.name === name)?.closes !== 'never');
  if (Math.abs(shift) < 5e-5) return `The ${seat.name} seat stands at its film now.`;
  const turns = seat.turnsToTarget === null ? '' : ` (${turnText(seat.turnsToTarget)} of the adjuster)`;
  const after = others.map(([name, film]) => `the ${name} then has ${fineText(film!, system)}`).join(', ');
  return `For its film the ${seat.name} seat wants the journal ${fineText(Math.abs(shift), system)} ${shift < 0 ? 'rearward' : 'noseward'}${turns}${after === '' ? '' : `; ${after}`}.`;
}

/** Where the adjuster may stand with every film right. */
function permittedSentence({ permitted, position, seats }: FitReport, system: System): string {
  if (!permitted || permitted.to - permitted.from < 5e-5) return '';
  const pitch = seats.find((s) => s.turnsToTarget !== null && s.shiftToTarget !== null && Math.abs(s.turnsToTarget) > 1e-9);
  const turns = pitch ? ` (${turnText(((permitted.to - permitted.from) * pitch.turnsToTarget!) / pitch.shiftToTarget!)} of the adjuster)` : '';
  const range = `${fineText(permitted.to - permitted.from, system)} of travel${turns}`;
  if (position < permitted.from || position > permitted.to) return `Over ${range} every film is within its tolerance.`;
  return `It may go ${fineText(position - permitted.from, system)} rearward or ${fineText(permitted.to - position, system)} noseward of here with every film still within its tolerance.`;
}

function relationSentence(fit: FitReport, system: System): string {
  const { relation } = fit;
  if (!relation || relation.allowance === 0) return '';
  const { between, error, allowance } = relation;
  const [one, other] = between;
  if (Math.abs(error) < 5e-5) return `One position gives the ${one} and the ${other} seat their film.`;
  const beyond = Math.abs(error) >= allowance;
  return `The ${one} seat reaches its film ${fineText(Math.abs(error), system)} ${error < 0 ? 'rearward' : 'noseward'} of where the ${other} does; that is ${beyond ? 'beyond' : 'within'} the ${fineText(allowance, system)} the tolerances allow${beyond ? '. The Cut screen tells what to take off which surface' : ''}.`;
}
