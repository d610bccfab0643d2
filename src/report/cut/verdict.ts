/** The plan in a machinist's words: one headline and a few sentences, made from the report alone. */
import type { Design } from '../../design/definition.ts';
import {
  type AngleWay,
  COVER,
  doubtedText,
  fineText,
  plusMinusText,
  type System,
  turnText,
} from '../../design/units.ts';
import { partsAre } from '../assumed.ts';
import type { Verdict } from '../fit/verdict.ts';
import type { CutReport, CutStepReport } from './definition.ts';
import { lapSentence } from './lapSentence.ts';
import { trialSentences } from './leftVerdict.ts';
import { limitText, wayOutText } from './limitText.ts';
import { listed, NOTHING } from './listed.ts';
import { setUpSentences } from './setUpSentences.ts';
import { toleranceLeft } from './toleranceLeft.ts';
import { unevenAfter } from './uneven.ts';
import { worthSentence } from './worthText.ts';

/** `way`: how the person says angles. */
export function cutVerdict(design: Design, cut: CutReport, system: System, way: AngleWay = 'half'): Verdict {
  const reached = isReached(cut) || cut.inTolerance;
  const rest = [
    moveSentence(design, cut, system),
    ...(reached ? setUpSentences(design, cut, system, way) : []),
    ...trialSentences(design, cut, system),
    lapSentence(cut, system),
  ].filter((s) => s !== '');
  switch (cut.status) {
    case 'nothingWanted':
      return {
        tone: 'mend',
        headline: 'No seat says which film it should have, so there is nothing to cut toward.',
        sentences: [],
      };
    case 'apart':
      return {
        tone: 'stop',
        headline: `The ${listed(cut.apart)} journal does not reach its bush where the others have their film; no cut can mend that.`,
        sentences: [],
      };
    case 'stalled':
      return {
        tone: 'stop',
        headline: 'No plan was found: the lines are too far from straight to reckon with.',
        sentences: [],
      };
    case 'infeasible':
    case 'planned':
      if (!reached) return unreachedVerdict(design, cut, rest, system);
      return nothingToCut(cut) ? nothingVerdict(design, cut, system) : workVerdict(design, cut, rest, system);
  }
}

/** Whether every film is what the plan aims at, as nearly as anybody could cut it. */
export const isReached = ({ status, feasible, missed, limits }: CutReport) =>
  feasible ||
  (status === 'infeasible' &&
    limits.every(({ what }) => what !== 'cleanup') &&
    missed.every(({ by }) => Math.abs(by) < NOTHING));

function unreachedVerdict(design: Design, cut: CutReport, rest: readonly string[], system: System): Verdict {
  return {
    tone: 'stop',
    headline: `Within these limits the films cannot be had: ${nearestText(design, cut, system)}.`,
    sentences: [
      ...nearestSentence(cut, system),
      ...limitSentences(cut, system),
      ...touchingSentence(design, cut),
      ...rest,
    ],
  };
}

/** What the doubt of the parts leaves unsure of the steps, before any trial. */
function doubtSentence(design: Design, { steps }: CutReport, system: System): string {
  const unsure = steps.filter((s) => s.sigma !== undefined && s.normal >= NOTHING && s.sigma >= NOTHING);
  if (unsure.length === 0) return '';
  const told = listed(
    unsure.map(
      ({ seat, part, normal, sigma, limits }) =>
        `${doubtedText(normal, sigma!, system, limits)} off the ${seat} ${part}`,
    ),
  );
  const safe = unsure
    .filter((s) => (s.safe ?? 0) >= NOTHING)
    .map(({ seat, part, safe }) => `${fineText(safe!, system)} off the ${seat} ${part}`);
  const first =
    safe.length > 0
      ? `take no more than ${listed(safe)} before a trial assembly makes it surer`
      : 'assemble for a trial before anything is cut, to be surer';
  const doubted = partsAre(design) === 'measured' ? 'the measurements' : `the parts as ${partsAre(design)}`;
  return `By the doubt of ${doubted} that is ${told} (19 times in 20): ${first}.`;
}

function nothingVerdict(design: Design, cut: CutReport, system: System): Verdict {
  const uneven = unevenAfter(design, cut, system);
  const sentences = [
    ...uneven,
    unsureSentence(design, cut, system),
    ...missedSentences(cut, system),
    moveSentence(design, cut, system),
  ].filter((s) => s !== '');
  if (uneven.length > 0)
    return {
      tone: 'mend',
      headline: 'Every least film is right, but not every film is even along its seat.',
      sentences,
    };
  const unsure = unsureSentence(design, cut, system);
  const has =
    aimOf(cut) === 'target' && isReached(cut) ? 'every seat has its film' : 'every film is within its tolerance';
  return {
    tone: unsure === '' ? 'good' : 'mend',
    headline: `Nothing need be cut: ${has} at one position already.`,
    sentences,
  };
}

/** Where the parts would do as they are, that comes first. */
function leaveSentence(design: Design, { asTheyAre }: CutReport, system: System): string[] {
  if (!asTheyAre) return [];
  const films = listed(
    Object.entries(asTheyAre.films).map(
      ([name, film]) => `${name} ${film === null ? 'apart' : fineText(film, system)}`,
    ),
  );
  return [
    `As ${partsAre(design)} every film is within its tolerance already, the journal at ${fineText(asTheyAre.position, system)} (${films}): the parts may be left uncut, since a cut only brings the films nearer to what is wanted.`,
  ];
}

/** Films that what was read tells less well than they are to be kept, where nothing is to be cut. */
function unsureSentence({ seats }: Design, { doubt, films }: CutReport, system: System): string {
  const isUnsure = (name: string, tolerance = 0) =>
    tolerance > 0 &&
    films[name] != null &&
    doubt[name] !== undefined &&
    doubt[name].from !== 'default' &&
    COVER * doubt[name].sigma > tolerance;
  const unsure = seats.filter(({ name, film }) => isUnsure(name, film?.tolerance));
  if (unsure.length === 0) return '';
  const told = listed(unsure.map(({ name }) => `${name} ${plusMinusText(films[name]!, doubt[name]!.sigma, system)}`));
  return `What was read so far tells the films no better than ${told} (19 times in 20), beyond their tolerances: measure what was cut, or assemble for a trial, before it is believed.`;
}

const aimOf = ({ aims }: CutReport) => aims.find(({ chosen }) => chosen)?.aim ?? 'target';

function workVerdict(design: Design, cut: CutReport, rest: readonly string[], system: System): Verdict {
  const uneven = unevenAfter(design, cut, system);
  const many = cutsOf(cut) > 1;
  const exact = aimOf(cut) === 'target' && isReached(cut);
  const gives = `${many ? 'give' : 'gives'} every seat its ${uneven.length > 0 ? 'least film at one position, but not every film is even along its seat' : 'film at one position'}`;
  const brings = `${many ? 'bring' : 'brings'} every film within its tolerance${aimOf(cut) === 'tolerance' ? ', with the least stock' : ''}`;
  return {
    tone: cut.inReach && uneven.length === 0 && setUpHolds(design, cut) ? 'good' : 'mend',
    headline: `${workHeadline(cut, system)} ${exact ? gives : brings}.`,
    sentences: [
      ...leaveSentence(design, cut, system),
      ...orderSentence(cut),
      doubtSentence(design, cut, system),
      cut.trials ? '' : worthSentence(cut, system),
      ...missedSentences(cut, system),
      ...limitSentences(cut, system),
      ...uneven,
      ...rest,
    ].filter((s) => s !== ''),
  };
}

/** Films that stay other than wanted though no limit stands in the way. */
function missedSentences({ missed }: Pick<CutReport, 'missed'>, system: System): string[] {
  return missed
    .filter(({ by, why }) => Math.abs(by) >= NOTHING && why !== 'limits')
    .map(({ seat, by, why }) => {
      const off = `The ${seat} film stays ${fineText(Math.abs(by), system)} ${by < 0 ? 'thinner' : 'thicker'} than wanted`;
      if (why === 'metalMissing')
        return `${off}: no cut makes it less without making another wrong, and metal cannot be put back.`;
      return `${off}: to move so straight a seat to its film would take more metal off the others than it is worth.`;
    });
}

/** Whether the errors of the set-up likely stay within what the plan leaves of every tolerance. */
const setUpHolds = (design: Design, { budget, films }: CutReport) =>
  budget.seats.every(({ seat, likely }) => likely <= (toleranceLeft(design, films, seat) ?? Number.POSITIVE_INFINITY));

/** Whether nothing that anybody could take off is to come off. */
export const nothingToCut = (cut: CutReport) =>
  cut.steps.every((s) => s.deepest < NOTHING) && cut.faces.every((f) => Math.abs(f.off) < NOTHING);

const cutsOf = (cut: CutReport) =>
  cut.steps.filter((s) => s.deepest >= NOTHING).length + cut.faces.filter((f) => Math.abs(f.off) >= NOTHING).length;

function surfaceText({ seat, part, normal, deepest, diameter, why }: CutStepReport, system: System): string {
  const on = `off the ${seat} ${part}`;
  const even = deepest - normal < NOTHING;
  const across =
    normal < NOTHING
      ? ''
      : ` (${fineText(Math.abs(diameter), system)} ${diameter < 0 ? 'less' : 'more'} in diameter${even ? '' : ' at its station'})`;
  return `${even ? fineText(normal, system) : `up to ${fineText(deepest, system)}`} ${on}${even && why !== 'newLine' ? across : `, to a new line${across}`}`;
}

function workHeadline(cut: CutReport, system: System): string {
  const surfaces = cut.steps.filter((s) => s.deepest >= NOTHING).map((s) => surfaceText(s, system));
  const faces = cut.faces
    .filter((f) => Math.abs(f.off) >= NOTHING)
    .map((f) =>
      f.off > 0 ? `${fineText(f.off, system)} off ${f.name}` : `${f.name} ${fineText(-f.off, system)} thicker`,
    );
  const text = listed([...surfaces, ...faces]);
  return text === '' ? 'Nothing off' : `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

/** Films against what is wanted of them. */
export function filmsText(design: Design, films: CutReport['films'], system: System): string {
  const wanted = design.seats.flatMap(({ name, film }) =>
    film ? [{ name, target: film.target, film: films[name] ?? null }] : [],
  );
  const told = ({ name, film }: (typeof wanted)[number]) =>
    `${name} ${film === null ? 'apart' : film < 0 ? `pressed in by ${fineText(-film, system)}` : fineText(film, system)}`;
  const alike = wanted.every(({ target }) => target === wanted[0]!.target);
  return alike
    ? `${listed(wanted.map(told))}, wanted ${fineText(wanted[0]?.target ?? 0, system)}`
    : listed(wanted.map((w) => `${told(w)} (wanted ${fineText(w.target, system)})`));
}

/** Whether the parts press into each other whatever is done. */
export const isPressed = ({ films }: Pick<CutReport, 'films'>) =>
  Object.values(films).some((film) => film !== null && film < 0);

function nearestText(design: Design, cut: CutReport, system: System): string {
  const films = filmsText(design, cut.films, system);
  if (isPressed(cut)) return `the parts press into each other, at best ${films}`;
  if (!cut.inReach)
    return `the journal would have to stand at ${fineText(cut.position, system)}, beyond its adjuster and shoulders`;
  if (nothingToCut(cut)) return `leave it; uncut the nearest is ${films}`;
  return `the nearest is ${films}`;
}

/** What brings the films to the nearest there is. */
function nearestSentence(cut: CutReport, system: System): string[] {
  if (nothingToCut(cut) || isPressed(cut) || !cut.inReach) return [];
  return [`${workHeadline(cut, system)} ${cutsOf(cut) > 1 ? 'bring' : 'brings'} them there.`];
}

/** A seat without film. */
function touchingSentence({ seats }: Design, { films }: CutReport): string[] {
  const touching = seats
    .filter(({ name, film }) => film && films[name] != null && Math.abs(films[name]!) < NOTHING)
    .map(({ name }) => name);
  return touching.length === 0
    ? []
    : [
        `There the ${listed(touching)} ${touching.length > 1 ? 'seats have' : 'seat has'} no film at all and would touch: it must not be run so.`,
      ];
}

function orderSentence({ steps }: CutReport): string[] {
  if (steps.length < 2) return [];
  return [`In this order: ${steps.map((s) => `${s.seat} ${s.part}`).join(', then ')}.`];
}

export function limitSentences(cut: CutReport, system: System): string[] {
  const { limits, together } = cut;
  if (isReached(cut)) return [];
  if (limits.length === 0) return cut.inTolerance ? [] : beyondMending(cut, system);
  const sentence = `What stands in the way: ${listed(limits.map((l) => limitText(l, system)))}.`;
  const ways = limits.filter((l) => l.needed !== null).map((l) => wayOutText(l, system));
  if (ways.length > 1) return [sentence, `Any one of these would do: ${ways.join('; ')}.`];
  if (ways.length === 1) return [sentence, `This would do: ${ways[0]}.`];
  if (together.length > 0)
    return [sentence, `Only together would these do: ${listed(together.map((l) => wayOutText(l, system)))}.`];
  return [sentence, 'Letting them go would not bring the films either.'];
}

/** Where no limit is in the way. */
function beyondMending(cut: CutReport, system: System): string[] {
  const told = missedSentences(cut, system);
  return told.length > 0 ? told : ['No limit stands in the way: no cut at all brings these lines nearer.'];
}

function moveSentence({ cut: wanted }: Design, cut: CutReport, system: System): string {
  const { shift, turns, inReach, status } = cut;
  const good = isReached(cut) || cut.inTolerance;
  if (status !== 'planned' && status !== 'infeasible') return '';
  const runs = good ? 'then runs' : 'would then stand';
  if (Math.abs(shift) < NOTHING)
    return good ? 'The journal runs where it stands now.' : 'The journal would stand where it stands now.';
  const way = shift < 0 ? 'rearward' : 'noseward';
  const turn = turns === null ? '' : `, ${turnText(turns)} of the adjuster`;
  const kept = wanted?.prefer?.keepPosition
    ? ' The nose cannot stay where it is, as was wished: this is the least it moves for these films.'
    : '';
  return `The journal ${runs} ${fineText(Math.abs(shift), system)} further ${way}${turn}: nose and shoulders move as much${inReach ? '' : ', further than adjuster and shoulders allow'}.${kept}`;
}
