/** What the readings say, in a machinist's words: made from the report alone. */

import type { Design } from '../../design/definition.ts';
import { type AngleWay, COVER, fineText, lengthText, type System } from '../../design/units.ts';
import type { FitReport } from '../fit/definition.ts';
import type { Verdict } from '../fit/verdict.ts';
import { listed } from '../listed.ts';
import type { ConsequenceReport, FaultReport, MeasureReport, SuggestionReport } from './definition.ts';
import { faultText } from './faultText.ts';
import { kindOf } from './kinds.ts';
import { entryText, valueText } from './readingText.ts';
import { slipText } from './slipText.ts';
import { angleOf, taperSentence, tapersAsked } from './tapers.ts';

/** Chance of a chi-square so great (or, told the other way, so small) that the stated uncertainties are doubted. */
export const DOUBT = 0.01;
/** A seat that touches first in more than this share of all cases is said to. */
const SURE = 0.975;

/** @param fit of the parts as measured (fitMeasured) · way how the person says angles */
export function measureVerdict(
  design: Design,
  measure: MeasureReport,
  fit: FitReport,
  system: System,
  way: AngleWay = 'half',
): Verdict {
  const faults = measure.impossible.map((fault) => faultSentence(design, fault, system));
  if (measure.readings.length === 0)
    return {
      tone: faults.length > 0 || measure.aside.length === 0 ? 'stop' : 'mend',
      headline:
        faults.length > 0 || measure.aside.length === 0 ? 'None of the readings can be used.' : 'Not enough read yet.',
      sentences: [...faults, overtakenSentence(measure), ...asideSentences(design, measure)].filter((s) => s !== ''),
    };
  const tapers = tapersAsked(measure).map((found) => taperSentence(design, found, system, way));
  const allowed = allowanceOf(measure, fit);
  const doubt = disagreeSentence(design, measure, system);
  const sentences = [
    allowed?.text(system) ?? '',
    doubt,
    ...tapers,
    ...faults,
    overtakenSentence(measure),
    ...asideSentences(design, measure),
    unreadSentence(design, measure),
    openSentence(measure, system),
    firstSentence(measure),
    nextSentence(measure, system),
  ].filter((s) => s !== '');
  if (!measure.settled && measure.disagreeing.length === 0) return { tone: 'stop', headline: RESTLESS, sentences };
  const wrong =
    measure.disagreeing.length > 0 ||
    measure.impossible.length > 0 ||
    (measure.freedom > 0 && measure.probability < DOUBT) ||
    tapers.length > 0;
  const good = allowed ? allowed.within === true : measure.consequences.firstPosition?.sigma != null;
  const told = headlineOf(design, measure, system, way);
  // A reading in doubt comes before what follows from it.
  if (wrong && doubt !== '')
    return {
      tone: 'stop',
      headline: doubt,
      sentences: [
        ...(measure.settled ? [] : [RESTLESS]),
        `As they are read, ${lowered(told)}`,
        ...sentences.filter((s) => s !== doubt),
      ],
    };
  // So does a question that only the person can answer.
  const [asked] = tapers;
  if (asked !== undefined && doubt === '')
    return {
      tone: 'mend',
      headline: asked,
      sentences: [`Held straight, ${lowered(told)}`, ...sentences.filter((s) => s !== asked)],
    };
  return { tone: wrong ? 'stop' : good ? 'good' : 'mend', headline: told, sentences };
}

const RESTLESS = 'The estimate did not come to rest; one of the readings must be far out.';

function faultSentence(design: Design, fault: FaultReport, system: System): string {
  const why = faultText(fault, system);
  if (!fault.possibleAsDrawn) return `${entryText(design, fault.index)} cannot be used: ${why}.`;
  return `${entryText(design, fault.index)} cannot be used at the shape the others tell: ${why}. On the parts as drawn it could.`;
}

/** Readings of a line that was cut away: kept, and said to be. */
function overtakenSentence({ overtaken }: MeasureReport): string {
  if (overtaken.length === 0) return '';
  const surfaces = [...new Set(overtaken.flatMap((old) => old.surfaces.map(({ seat, part }) => `${seat} ${part}`)))];
  const one = overtaken.length === 1;
  return `${one ? `Reading ${overtaken[0]!.index + 1} is` : `${overtaken.length} readings are`} of the old line of the ${listed(surfaces)}, cut to a new one since: kept, and not used.`;
}

/** Stand-offs that may be those of one seat or another. */
const asideSentences = (design: Design, { aside }: MeasureReport): string[] =>
  aside.map(({ index, touched, unread }) => {
    const seats = Object.entries(touched).map(([seat, chance]) => `the ${seat} (${Math.round(100 * chance)} in 100)`);
    const never = listed(unread.map(({ seat, part }) => `${seat} ${part}`));
    return `${entryText(design, index)} waits: it may have been ${seats.join(' or ')} that touched, and nobody has read the ${never}. Once ${unread.length === 1 ? 'that is' : 'those are'} read it counts; told as a trial on Cut it counts at once, and the blue tells which seat it was.`;
  });

/** Surfaces that no reading tells of at all, by name. */
export const unreadOf = (design: Design, { surfaces }: MeasureReport): string[] =>
  design.seats.flatMap(({ name }) =>
    (['journal', 'bush'] as const).flatMap((part) =>
      surfaces.some((s) => s.seat === name && s.part === part) ? [] : [`${name} ${part}`],
    ),
  );

function unreadSentence(design: Design, measure: MeasureReport): string {
  const unread = unreadOf(design, measure);
  return unread.length === 0
    ? ''
    : `Nothing was read of the ${listed(unread)}: what is told of ${unread.length === 1 ? 'it' : 'them'} is the drawing.`;
}

/**
 * What speaks against taking the fitted shape into the design; nothing where the readings agree and tell the whole of
 * it.
 */
export function doubtsOf(design: Design, measure: MeasureReport): string[] {
  const { readings, disagreeing, impossible, settled, freedom, probability, undetermined } = measure;
  if (readings.length === 0) return ['None of the readings can be used yet, so these are the shapes as drawn.'];
  const [one, ...others] = disagreeing;
  const doubts = [];
  if (one)
    doubts.push(
      others.length === 0
        ? `Reading ${one.index + 1} does not go with the others and bends these shapes: read it again or strike it out first.`
        : `Readings ${listed(disagreeing.map(({ index }) => `${index + 1}`))} contradict each other, and nothing tells which is wrong: read them again first.`,
    );
  else if (!settled) doubts.push('The estimate did not come to rest.');
  else if (freedom > 0 && probability < DOUBT && tapersAsked(measure).length === 0)
    doubts.push('The readings scatter more than their uncertainties allow.');
  const tapered = tapersAsked(measure);
  if (tapered.length > 0)
    doubts.push(
      `The ${listed(tapered.map(({ seat, part }) => `${seat} ${part}`))} ${tapered.length === 1 ? 'stays' : 'stay'} straight, which the readings deny.`,
    );
  if (impossible.length > 0)
    doubts.push(
      `${impossible.length === 1 ? 'A reading' : `${impossible.length} readings`} that cannot be used ${impossible.length === 1 ? 'is' : 'are'} left out.`,
    );
  const unread = unreadOf(design, measure);
  if (unread.length > 0)
    doubts.push(
      `Nothing was read of the ${listed(unread)}; ${unread.length === 1 ? 'it stays' : 'they stay'} as drawn.`,
    );
  if (undetermined.length > 0) doubts.push('What the readings leave open stays as drawn.');
  return doubts;
}

/**
 * Whether the relation is within what the tolerances of the films allow, as far as the readings tell; null where they
 * tell no relation.
 */
function allowanceOf(
  measure: MeasureReport,
  fit: FitReport,
): { within: boolean | null; text: (system: System) => string } | null {
  const { relation } = measure.consequences;
  const allowance = fit.relation?.allowance;
  if (!relation || relation.sigma === null || !allowance) return null;
  const [error, reach] = [Math.abs(relation.value), reachOf(relation)];
  const limit = (system: System) => `the ${fineText(allowance, system)} the tolerances of the films allow`;
  if (error + reach <= allowance) return { within: true, text: (system) => `That is within ${limit(system)}.` };
  if (error - reach > allowance) return { within: false, text: (system) => `That is beyond ${limit(system)}.` };
  return { within: null, text: (system) => `Whether that is within ${limit(system)} the readings do not yet tell.` };
}

function headlineOf(design: Design, measure: MeasureReport, system: System, way: AngleWay): string {
  const { relation, relationBetween, firstPosition } = measure.consequences;
  const cones = relationBetween && `${relationBetween[0]} and ${relationBetween[1]} cones`;
  if (relation && relation.sigma !== null) {
    const error = fineText(Math.abs(relation.value), system);
    return `The ${cones} stand ${error} wrong to each other, ${sureText(relation, system)}.`;
  }
  if (relation) return `The readings do not yet tell how the ${cones} stand to each other.`;
  if (firstPosition && firstPosition.sigma !== null)
    return `The journal touches first at ${fineText(firstPosition.value, system)}, ${sureText(firstPosition, system)}.`;
  const told = measure.surfaces.filter((s) => s.sigma.halfAngle !== null && s.sigma.diameter !== null);
  const [first] = told;
  if (told.length === 1 && first?.straight)
    return `The ${first.seat} ${first.part} is straight, with a diameter of ${lengthText(first.diameter, system)}.`;
  if (told.length === 1 && first)
    return `The ${first.seat} ${first.part} has ${angleOf(first.halfAngle, way)} and a diameter of ${lengthText(first.diameter, system)}.`;
  return told.length === 0
    ? 'The readings do not yet tell any surface wholly.'
    : `${told.length} of ${2 * design.seats.length} surfaces are told wholly.`;
}

/** How far (mm) the range that holds 95 in 100 reaches to its farther side. */
export const reachOf = ({ value, sigma, interval }: ConsequenceReport) =>
  interval ? Math.max(value - interval[0], interval[1] - value) : COVER * sigma!;
const sureText = (found: ConsequenceReport, system: System) =>
  `give or take ${fineText(reachOf(found), system)} (19 times in 20)`;

function disagreeSentence(design: Design, measure: MeasureReport, system: System): string {
  const { disagreeing, probability, freedom, readings } = measure;
  const [one, ...others] = disagreeing;
  const rest =
    one && one.probabilityWithout < DOUBT
      ? ' Even so the rest would scatter more than the uncertainties allow: another one may be wrong too.'
      : '';
  if (one && others.length === 0)
    return `${entryText(design, one.index)} (${valueText(design.readings![one.index]!, system)}) does not go with the others${offText(design, one.index, readings, system)}. ${slipsSentence(design, one, system)}${rest}`;
  if (one)
    return `These readings contradict each other, and nothing tells which is wrong: ${disagreeing.map(({ index }) => lowered(entryText(design, index))).join(' or ')}${rest === '' ? `; without ${others.length === 1 ? 'either' : 'any one'} of them the rest agrees` : ''}. Read them again.${rest}`;
  // A taper that is asked after is the reason enough.
  if (freedom > 0 && probability < DOUBT && tapersAsked(measure).length === 0)
    return 'The readings scatter more than their uncertainties allow: these are stated too small, or something moved between the readings.';
  return freedom === 0 ? 'No reading checks another: each number is told just once.' : '';
}

/** The likely slip, named; where none is, to read it again is all there is to say. */
function slipsSentence(
  design: Design,
  { index, slips = [] }: MeasureReport['disagreeing'][number],
  system: System,
): string {
  const [likely] = slips;
  return likely ? `${slipText(design, index, likely, system)} Look, or read it again.` : 'Read it again.';
}

/** How far a reading lies from the fitted shape, and what that is of its stated uncertainty. */
function offText(design: Design, index: number, readings: MeasureReport['readings'], system: System): string {
  const found = readings.find((r) => r.index === index);
  if (!found) return '';
  const off = Math.abs(found.residual);
  const times = off / design.readings![index]!.sigma;
  return `: it lies ${fineText(off, system)} off, ${times.toFixed(times < 10 ? 1 : 0)} times its uncertainty`;
}

function openSentence({ undetermined }: MeasureReport, system: System): string {
  if (undetermined.length === 0) return '';
  const what = undetermined.map(
    ({ seat, part, of }) => `the ${of === 'halfAngle' ? 'half angle' : of} of the ${seat} ${part}`,
  );
  const shown = what.length > 4 ? [...what.slice(0, 3), `${what.length - 3} more`] : what;
  const settling = undetermined.find((u) => u.next && u.next.sigma !== null);
  const next = settling?.next
    ? ` ${suggestionText(settling.next, system)} would settle ${what[undetermined.indexOf(settling)]}.`
    : '';
  return `The readings leave open ${listed(shown)}; nothing is made up for ${undetermined.length === 1 ? 'it' : 'them'}.${next}`;
}

function firstSentence({ consequences: { first } }: MeasureReport): string {
  if (!first) return '';
  const [most, ...rest] = Object.entries(first).sort((a, b) => b[1] - a[1]);
  if (!most || rest.length === 0) return '';
  if (most[1] >= SURE) return `The ${most[0]} seat touches first.`;
  return `Which seat touches first is not sure: the ${most[0]} one in ${Math.round(100 * most[1])} cases of 100, the ${rest[0]![0]} one in ${Math.round(100 * rest[0]![1])}.`;
}

function nextSentence({ next }: MeasureReport, system: System): string {
  const [best] = next?.suggestions ?? [];
  if (!next || !best) return '';
  const wanted = next.quantity === 'relation' ? 'the relation of the cones' : 'the first touch';
  if (best.sigma === null) return `To tell ${wanted}, begin with ${lowered(suggestionText(best, system))}.`;
  if (next.sigma === null)
    return `${suggestionText(best, system)} would tell ${wanted}, to ± ${fineText(COVER * best.sigma, system)} (19 times in 20).`;
  return best.sigma < SHRINKS * next.sigma
    ? `Read next: ${lowered(suggestionText(best, system))}; that tells ${wanted} to ± ${fineText(COVER * best.sigma, system)} instead of ± ${fineText(COVER * next.sigma, system)} (19 times in 20).`
    : '';
}

/** A further reading worth a sentence shrinks the uncertainty by a tenth. */
const SHRINKS = 0.9;
const lowered = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

/** A set-up in words. */
export const suggestionText = ({ reading }: SuggestionReport, system: System): string =>
  kindOf(reading).proposed(reading, 'seat' in reading ? `the ${reading.seat} ${reading.part}` : '', system);
