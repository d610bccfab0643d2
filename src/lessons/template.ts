/** The texts of a lesson: `{formula}` and `{formula|as}` in them are worked out and told in the person's units. */
import { figures, measureText } from '../design/measures.ts';
import { type AngleWay, angleSaid, fineText, fineUnit, placeText, type System, turnText } from '../design/units.ts';
import { TOLD_AS, type ToldAs } from './definition.ts';
import { formulaOf, type Scope, type Worked, worked } from './formula.ts';

export interface Speech {
  system: System;
  way: AngleWay;
  /** mm: lengths that a round reckons on with, but for those that it asks for; they have these figures wherever told */
  reckoned?: readonly number[];
}

/** A place along the axis, from where the question counts: no lesson speaks of a datum. */
const onAxisText = (value: number, speech: Speech): string =>
  Math.abs(value) < NOTHING
    ? fineText(0, speech.system)
    : `${lessonFine(Math.abs(value), speech)} toward the ${value > 0 ? 'nose' : 'rear'}`;

/** mm */
const NOTHING = 5e-7;

/** One length has one rounding in a round: as it is reckoned on with, where it is. */
function lessonFine(value: number, { system, reckoned = [] }: Speech): string {
  const same = reckoned.find((one) => Math.abs(one - Math.abs(value)) <= SAME * Math.abs(value));
  if (same !== undefined) return reckonedText(Math.sign(value) * same, system);
  const text = fineText(value, system);
  const { size, name } = fineUnit(system);
  // However large, of like length with smaller ones beside it.
  return text.endsWith(name) ? `${decimalsOf(value / size, FILM_DECIMALS)} ${name}` : text;
}
/** Of itself: what the engine solved and what is worked out by hand are one length. */
const SAME = 1e-6;

/** A length that somebody goes on with by hand: finer than what it leads to, never with fewer decimals than a film. */
function reckonedText(value: number, system: System): string {
  const { size, name } = fineUnit(system);
  const length = fineText(value, system);
  if (!length.endsWith(name)) return length;
  const figure = value / size;
  // What is handed on in tenths is seldom a round number of them.
  const most = Math.abs(figure) < 1 ? FIGURES : MOST_DECIMALS[system];
  return `${fiveFigures(figure, FILM_DECIMALS, most)} ${name}`;
}

/** `most`: decimals, so that figures side by side are of like length. */
function fiveFigures(value: number, least: number, most = FINEST): string {
  const short = Number(Number(value.toPrecision(FIGURES)).toFixed(most));
  const decimals = (`${short}`.split('.')[1] ?? '').length;
  return decimalsOf(short, Math.max(least, decimals));
}
const FIGURES = 5;
/** Of a degree: finer no lesson asks. */
const HUNDRED = 100;
const FINEST = 12;
const FILM_DECIMALS = 2;
const MOST_DECIMALS = { metric: 3, inch: 4 };

const TABLED = 2;
const tabled = (value: number): string =>
  Math.abs(value) < 0.1 ? fiveFigures(value, 0) : `${Number(value.toFixed(FIGURES))}`.replace('-', '−');

/** With a real minus, and none before a rounded nought. */
function decimalsOf(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−');
}

const HOLE = /\{([^{}|]+)(?:\|([a-z]+))?\}/gi;

/** A number of a file (mm, degrees, N) in a person's units. */
export function told(value: number, as: ToldAs, speech: Speech): string {
  const { system, way } = speech;
  switch (as) {
    case 'fine':
      return lessonFine(value, speech);
    case 'reckoned':
      // What a round asks for it tells as the answer is told, wherever.
      return speech.reckoned ? lessonFine(value, speech) : reckonedText(value, system);
    case 'ratio':
      // As a table has sines and tangents: five decimals; five figures where that is more, and of what is larger.
      return Math.abs(value) < TABLED ? tabled(value) : fiveFigures(value, 0);
    case 'tenths':
      return fineText(value, 'inch');
    case 'micrometres':
      return fineText(value, 'metric');
    case 'length':
      return placeText(value, system);
    case 'sided':
      return onAxisText(value, speech);
    case 'angle':
      return angleSaid(way === 'half' || way === 'included' ? Math.round(HUNDRED * value) / HUNDRED : value, way);
    case 'turn':
      return turnText(value);
    case 'count':
      return `${Math.round(value)}`.replace('-', '−');
    case 'number':
      return figures(value);
    case 'share':
      return `${Math.round(100 * value)} in 100`;
    case 'speed':
      return `${figures(value)} rev/min`;
    default:
      return measureText(as, value, system);
  }
}

/** Lengths that are told beside what is reckoned of them: what is asked for, what was answered, films. */
const TOLD_LENGTHS = /(?<![\w.'])(?:right|answer|(?:before|after|tried)\.[\w.[\]]*Film)\b/g;

/**
 * What is told of lengths that are told themselves is reckoned of them as they are told: two figures on the screen lead
 * to the third. What is a length of the round for itself keeps its own rounding.
 */
function ofTold(formula: string, exact: number, scope: Scope, speech: Speech): number {
  const own = [...(speech.reckoned ?? []), Math.abs(Number(scope.right))];
  if (own.some((one) => Math.abs(one - Math.abs(exact)) <= SAME * Math.abs(exact))) return exact;
  const found = worked(
    formula.replaceAll(TOLD_LENGTHS, (path) => {
      const length = worked(path, scope);
      return length.ok && typeof length.value === 'number' ? `(${asTold(length.value, speech).toFixed(FINEST)})` : path;
    }),
    scope,
  );
  return found.ok && typeof found.value === 'number' ? found.value : exact;
}

/** mm: as it is read off the screen. */
function asTold(length: number, speech: Speech): number {
  const { size, name } = fineUnit(speech.system);
  const text = lessonFine(length, speech);
  return text.endsWith(name) ? Number(text.slice(0, -name.length).replace('−', '-')) * size : length;
}

/** A text with everything in it told, or the first thing in it that cannot be. */
export function spoken(text: string, scope: Scope, speech: Speech): Worked<string> {
  let wrong: string | null = null;
  const value = text.replaceAll(HOLE, (hole, formula: string, as?: string) => {
    const found = worked(formula, scope);
    if (!found.ok) {
      wrong ??= `${hole}: ${found.message}`;
      return hole;
    }
    if (typeof found.value === 'string') return found.value;
    if (typeof found.value === 'boolean') return found.value ? 'yes' : 'no';
    const value = as === 'fine' || as === 'sided' ? ofTold(formula, found.value, scope, speech) : found.value;
    return told(value, (as ?? 'number') as ToldAs, speech);
  });
  return wrong === null ? { ok: true, value } : { ok: false, message: wrong };
}

export interface Hole {
  formula: string;
  as: string | undefined;
}

export const holesOf = (text: string): Hole[] =>
  [...text.matchAll(HOLE)].map(([, formula, as]) => ({ formula: formula!, as }));

/** What is wrong with the holes of a text, whatever the numbers are. */
export const faultsOfText = (text: string): string[] => [
  ...holesOf(text).flatMap(({ formula, as }) => {
    const read = formulaOf(formula);
    if (!read.ok) return [read.message];
    return as === undefined || (TOLD_AS as readonly string[]).includes(as)
      ? []
      : [`{…|${as}}: a figure is told as ${TOLD_AS.join(', ')}`];
  }),
  ...(/[{}]/.test(text.replaceAll(HOLE, '')) ? ['a { or } stands without the other, or with nothing in it'] : []),
];
