/** What is believed of the parts, in a machinist's words. */
import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import { doubtText, fineText, type System } from '../../design/units.ts';
import { openTrials, tellsAnything } from '../cut/openTrials.ts';
import { fitOf } from '../fit/fitOf.ts';
import { listed } from '../listed.ts';
import type { BeliefReport } from './definition.ts';
import { type FilmTold, filmTold, isSettled } from './filmTold.ts';
import { GUESS_DOUBT, guessesOf } from './guesses.ts';

/** What is to be settled before any of it is believed. */
function unsettled(belief: BeliefReport): string | null {
  if (isSettled(belief)) return null;
  return belief.disagreeing.length > 0 ? CONTRADICT : NOT_TOGETHER;
}

const CONTRADICT =
  'Readings of the bench contradict each other, so it is not known how sure this is: settle that on Measure first.';
const NOT_TOGETHER = 'What was read and what came off do not go together: see Cut, before any of it is believed.';

/** The films as believed, which seat touches first, and what nobody has read; with the films as they are drawn. */
export function beliefSentences(design: Design, belief: BeliefReport, system: System): string[] {
  const before = unsettled(belief);
  if (before !== null) return [before];
  return [filmsSentence(design, belief, system), firstSentence(belief), assumedSentence(belief)].filter(
    (sentence) => sentence !== '',
  );
}

/** How far films that are told elsewhere may be off, by how well the parts are known; and what they are instead. */
export function offSentences(design: Design, belief: BeliefReport, system: System): string[] {
  const before = unsettled(belief);
  if (before !== null) return [before];
  const films = toldFilms(design, belief, system);
  return [
    films.length === 0 ? '' : films.some(({ drawn }) => drawn !== null) ? shiftSentence(films) : offSentence(films),
    assumedSentence(belief),
  ].filter((sentence) => sentence !== '');

  function shiftSentence(films: readonly Told[]) {
    const drawn = films.map((film) => `${film.name} ${fineText(film.here, system)}`);
    return `Where the journal is set the films are, as drawn, ${listed(drawn)}, and by that all here goes; by all that is known and assumed they are ${textsOf(films)} (19 times in 20).`;
  }

  function offSentence(films: readonly Told[]) {
    return `Where the journal is set the films are ${textsOf(films)} by how well the parts are known (19 times in 20), and so far may all films told here be off.`;
  }
}

interface Told extends FilmTold {
  name: string;
  /** mm, as it is drawn */
  here: number;
}

/** Every film of which something is known, in the order of the design. */
function toldFilms(design: Design, belief: BeliefReport, system: System): Told[] {
  const fit = fitOf(design);
  return fit.seats.flatMap(({ name, leastFilm }) => {
    const film = filmTold(belief, fit, name, system);
    return film ? [{ ...film, name, here: leastFilm! }] : [];
  });
}

const textsOf = (films: readonly Told[]) => listed(films.map(({ name, text }) => `${name} ${text}`));

function filmsSentence(design: Design, belief: BeliefReport, system: System): string {
  const films = toldFilms(design, belief, system);
  if (films.length === 0) return '';
  const others = films.filter(({ drawn }) => drawn !== null);
  const drawn = others.map(({ name, here }) => `the ${name} film is ${fineText(here, system)}`);
  const note =
    others.length === 0
      ? ''
      : `; as drawn here ${listed(drawn)}${(design.readings ?? []).length > 0 ? ', until Measure’s shapes are used' : ''}`;
  const by = isStatedAlone(design) ? 'By the doubt that is stated of the parts as drawn' : 'By all that was read';
  return `${by} the films here are ${textsOf(films)} (19 times in 20)${note}.`;
}

/** Of parts of which nothing is known. */
export const unknownSentence = (design: Design, system: System) =>
  guessesOf(design).length > 0
    ? guessSentence(system)
    : `Assumed, never measured: the films are as drawn. Until something is read, or stated as “Doubt” on Cut, each is taken there and on Odds to be known to ${doubtText(defaultAt('cut.doubt'), system)} (19 times in 20).`;

/** Of sizes that are guesses. */
export const guessSentence = (system: System) =>
  `Some sizes are neither read nor drawn: each is taken to be known to ${doubtText(GUESS_DOUBT, system)} square to its line (19 times in 20), unless you state another on Measure, or a “Doubt” on Cut.`;

/** Whether nothing was read or tried, and the doubt is what the person states. */
const isStatedAlone = ({ readings = [], priors = [], cut }: Design) =>
  readings.length + priors.length === 0 && !(cut && openTrials(cut).some(tellsAnything));

function firstSentence({ first }: BeliefReport): string {
  const [seat, chance] = Object.entries(first ?? {}).reduce(([a, p], [b, q]) => (q > p ? [b, q] : [a, p]), ['', 0]);
  return seat === '' ? '' : `The ${seat} seat touches first, ${chanceText(chance)}.`;
}

/** A chance as one says it: 19 times in 20. */
export function chanceText(chance: number): string {
  if (chance > 0.995) return 'almost surely';
  const out = chance >= 0.9 ? 20 : 10;
  const times = Math.round(chance * out);
  return times >= out ? `more than ${out - 1} times in ${out}` : `${times} times in ${out}`;
}

/** Surfaces of which some number was never read. */
export function assumedSentence({ assumed }: Pick<BeliefReport, 'assumed'>): string {
  const names = [
    ...new Set(assumed.map(({ seat, part, of }) => `the ${seat} ${part}${of === 'halfAngle' ? '’s angle' : ''}`)),
  ];
  const whole = names.filter(
    (name) => !name.endsWith('’s angle') || !names.includes(name.slice(0, -'’s angle'.length)),
  );
  return whole.length === 0 ? '' : `Never read, so taken as drawn and in doubt: ${listed(whole)}.`;
}
