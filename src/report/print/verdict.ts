/** What a marking-blue print means, in a machinist's words. */
import type { Design } from '../../design/definition.ts';
import { fineText, type System } from '../../design/units.ts';
import type { Verdict } from '../fit/verdict.ts';
import type { PrintReport, PrintShapeReport } from './definition.ts';

export function printVerdict(design: Design, print: PrintReport, system: System): Verdict {
  if (print.status !== 'solved') {
    const why = {
      unbounded: 'nothing stops the journal going home',
      infeasible: 'the journal does not go in',
      stalled: 'the journal finds no seat',
    }[print.status];
    return { tone: 'stop', headline: `No print: ${why}.`, sentences: [] };
  }
  const bushes = print.press.filter((shape) => shape.part === 'bush');
  const good = bushes.every((shape) => shape.word === 'whole');
  return {
    tone: good ? 'good' : 'mend',
    headline: headlineOf(design, bushes, print, system),
    sentences: bushes.map((shape) => meaning(design, shape, print, system)),
  };
}

function headlineOf(design: Design, bushes: readonly PrintShapeReport[], print: PrintReport, system: System): string {
  const blue = `With ${fineText(print.thickness, system)} of blue`;
  const marked = bushes.filter((shape) => shape.word !== 'none');
  if (marked.length === 0) return `${blue} nothing prints.`;
  const clean = bushes.filter((shape) => shape.word === 'none').map((shape) => shape.seat);
  const partly = marked.filter((shape) => shape.word !== 'whole');
  const faults = partly.map((shape) => `the ${shape.seat} ${inPart(design, shape)}`);
  if (clean.length > 0) {
    const but = faults.length === 0 ? '' : `; ${listed(faults)}`;
    return `The ${listed(marked.map((s) => s.seat))} seat${marked.length > 1 ? 's print' : ' prints'}; the ${listed(clean)} stay${clean.length > 1 ? '' : 's'} clean${but}.`;
  }
  const [only] = bushes;
  if (only && bushes.length === 1)
    return faults.length === 0
      ? `${blue} the ${only.seat} seat prints along its whole length.`
      : `${blue} the ${only.seat} seat prints, but ${inPart(design, only)}.`;
  return faults.length === 0
    ? `${blue} every seat prints along its whole length.`
    : `${blue} every seat prints, but ${listed(faults)}.`;
}

/** The fault of a print, after the name of its seat. */
function inPart(design: Design, { seat, word, bare, side }: PrintShapeReport): string {
  const { small, large } = endsOf(design, seat);
  switch (word) {
    case 'smallEnd':
      return `is bare toward its ${large} end, over ${aboutText(bare.large)} of its length`;
    case 'largeEnd':
      return `is bare toward its ${small} end, over ${aboutText(bare.small)} of its length`;
    case 'bothEnds':
      return `is bare in its middle, over ${aboutText(bare.middle)} of its length`;
    case 'band':
      return `is bare at both ends, over ${aboutText(bare.small + bare.large)} of its length in all`;
    case 'lobes':
      return 'only in patches round';
    case 'oneSide':
      return `only on the side at ${side.toFixed(0)}°`;
    case 'crossed':
      return 'on opposite sides at its two ends';
    case 'uneven':
      return 'not all over';
    case 'whole':
      return 'all over';
    case 'none':
      return 'nowhere';
  }
}

const isStraight = (design: Design, name: string) => design.seats.find((s) => s.name === name)!.bush.halfAngle === 0;
const endsOf = (design: Design, name: string) =>
  isStraight(design, name) ? { small: 'rear', large: 'nose' } : { small: 'small', large: 'large' };

/** One sentence a seat: what is seen, and what it says about the parts. */
function meaning(design: Design, shape: PrintShapeReport, print: PrintReport, system: System): string {
  const { seat, word, coveredOverlap, films } = shape;
  const ends = endsOf(design, seat);
  const seen = `${capital(seat)}: ${percent(coveredOverlap)} blue`;
  const run = films
    ? ` With the spindle home its film is ${fineText(films.small, system)} at the ${ends.small} end and ${fineText(films.large, system)} at the ${ends.large} end.`
    : '';
  switch (word) {
    case 'none':
      return `${capital(seat)}: no blue; its film is more than ${fineText(print.thickness, system)} all over when the spindle is home.`;
    case 'whole':
      return `${seen}, all along and all round: the two surfaces agree to the thickness of the blue.`;
    case 'smallEnd':
    case 'largeEnd':
      return `${seen}; it ${inPart(design, shape)}: ${towardEnd(design, shape)}${shape.bare.middle > SHORT ? ' It is bare between as well.' : ''}${run}`;
    case 'bothEnds':
      return `${seen}, bare between its two ends over ${aboutText(shape.bare.middle)} of its length: one of the two lines is hollow.`;
    case 'band':
      return `${seen}, a band part way along: ${bandText(shape, ends)}${run}`;
    case 'lobes':
      return `${seen}, in ${shape.patches} patches round: out of round. ${onWhich(seat, print)}`;
    case 'oneSide':
      return `${seen}, on the side at ${shape.side.toFixed(0)}° only: the journal is pressed over to that side.`;
    case 'crossed':
      return `${seen}, at the ${ends.small} end on one side and at the ${ends.large} end on the other: the two axes cross; the seats are out of line.`;
    case 'uneven':
      return `${seen}, bare in places but nowhere all round: out of round, or not quite in line.`;
  }
}

/** A bare stretch (share of the length) not worth a word. */
const SHORT = 0.03;
/** An end that stands off by this many times the other is the one that is worn. @source practice */
const MUCH_FURTHER = 3;
/** A film half way that departs by no more than this share of the difference from the mean of the ends grows evenly. */
const EVENLY = 0.15;

/** Why a print ends short of one end: the film grows evenly, two angles that differ; it grows at the end only, wear. */
function towardEnd(design: Design, { seat, word, films }: PrintShapeReport): string {
  const { small, large } = endsOf(design, seat);
  const [tight, open] = word === 'smallEnd' ? [small, large] : [large, small];
  if (isStraight(design, seat)) return `the bush is tighter at the ${tight} end.`;
  const even =
    films !== null &&
    Math.abs(films.middle - (films.small + films.large) / 2) <= EVENLY * Math.abs(films.large - films.small);
  if (even)
    return word === 'smallEnd'
      ? 'the film opens evenly along it, so the journal is more nearly straight than the bush.'
      : 'the film opens evenly along it, so the journal tapers more than the bush.';
  return word === 'smallEnd'
    ? 'the bush is worn at its mouth, or the journal at its large end.'
    : `the bush is worn at its ${open} end, or the journal is.`;
}

function bandText({ films }: PrintShapeReport, ends: { small: string; large: string }): string {
  if (films && films.large > MUCH_FURTHER * films.small)
    return `it stands much further off at the ${ends.large} end, so the bush is worn ${ends.large === 'large' ? 'at its mouth' : `at its ${ends.large} end`}, or the journal there.`;
  if (films && films.small > MUCH_FURTHER * films.large)
    return `it stands much further off at the ${ends.small} end, so the bush is worn there, or the journal is.`;
  return 'one of the two lines is barrelled, or the bush is worn at both ends.';
}

/** Turned while pressed, a part's own high places keep to patches on it and smear into a ring on the other. */
function onWhich(seat: string, { turned }: PrintReport): string {
  const of = (part: PrintShapeReport['part']) => turned.find((shape) => shape.seat === seat && shape.part === part);
  const [journal, bush] = [(of('journal')?.patches ?? 0) > 1, (of('bush')?.patches ?? 0) > 1];
  if (journal && !bush)
    return 'Turned, the patches stay on the journal and smear to a ring in the bush: it is the journal that is lobed.';
  if (bush && !journal)
    return 'Turned, the patches stay in the bush and smear to a ring on the journal: it is the bush that is lobed.';
  return journal && bush ? 'Turned, both keep their patches: both are lobed.' : 'Turned, both smear to a ring.';
}

const FRACTIONS: readonly [number, string][] = [
  [1 / 20, 'a twentieth'],
  [1 / 10, 'a tenth'],
  [1 / 8, 'an eighth'],
  [1 / 6, 'a sixth'],
  [1 / 5, 'a fifth'],
  [1 / 4, 'a quarter'],
  [1 / 3, 'a third'],
  [2 / 5, 'two fifths'],
  [1 / 2, 'half'],
  [3 / 5, 'three fifths'],
  [2 / 3, 'two thirds'],
  [3 / 4, 'three quarters'],
  [4 / 5, 'four fifths'],
  [9 / 10, 'nine tenths'],
  [1, 'nearly all'],
];

/** A share as a person would say it, the nearest of the common fractions. */
function aboutText(share: number): string {
  const [, words] = FRACTIONS.reduce((best, fraction) =>
    Math.abs(fraction[0] - share) < Math.abs(best[0] - share) ? fraction : best,
  );
  return `about ${words}`;
}

/** Less than all is never said to be 100 %. */
const percent = (share: number) =>
  `${share >= 1 ? 100 : Math.min(99, Number((100 * share).toFixed(share < 0.1 ? 1 : 0)))} %`;
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const listed = (items: readonly string[]) =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} and ${items[items.length - 1]}`;
