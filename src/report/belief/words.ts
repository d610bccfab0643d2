/** What is believed of the parts, in a machinist's words. */
import type { Design } from '../../design/definition.ts';
import { COVER, fineText, plusMinusText, type System } from '../../design/units.ts';
import { fitOf } from '../fit/fitOf.ts';
import { listed } from '../listed.ts';
import type { BeliefReport, BelievedFilm } from './definition.ts';
import { isApart } from './notAsRead.ts';

/** What is told of a film on every screen (mm): the most likely, and how far it may be off that. */
const likelyOf = ({ likely, mean }: BelievedFilm) => likely ?? mean;
const offOf = ({ off, sd }: BelievedFilm) => off ?? sd;

/** Fewer pairs than this tell no spread: what was read at the trials hardly goes together. */
const FEW = 50;

/** What is to be settled before any of it is believed. */
function unsettled({ disagreeing, effective }: BeliefReport): string | null {
  if (disagreeing.length > 0) return CONTRADICT;
  return effective !== undefined && effective < FEW ? NOT_TOGETHER : null;
}

const CONTRADICT =
  'Readings of the bench contradict each other, so it is not known how sure this is: settle that on Measure first.';
const NOT_TOGETHER = 'What was read and what came off do not go together: see Cut, before any of it is believed.';

/** The films as believed, which seat touches first, and what nobody has read; with the films as they are drawn. */
export function beliefSentences(
  design: Design,
  belief: BeliefReport,
  drawn: Record<string, number | null>,
  system: System,
): string[] {
  const before = unsettled(belief);
  if (before !== null) return [before];
  return [filmsSentence(design, belief, drawn, system), firstSentence(belief), assumedSentence(belief)].filter(
    (sentence) => sentence !== '',
  );
}

/** How far films that are told elsewhere may be off, by how well the parts are known. */
export function offSentences(design: Design, belief: BeliefReport, system: System): string[] {
  const before = unsettled(belief);
  if (before !== null) return [before];
  const off = design.seats.flatMap(({ name }) => {
    const film = belief.films[name];
    return film ? [`${name} ${fineText(COVER * offOf(film), system)}`] : [];
  });
  // What is told elsewhere is of other parts than were read or tried: how far it is off is no matter of doubt.
  if (belief.notAsRead === 'other' || isOther(design, belief))
    return [
      `By all that was read the films here are ${listed(
        design.seats.flatMap(({ name }) => {
          const film = belief.films[name];
          return film ? [`${name} ${plusMinusText(likelyOf(film), offOf(film), system)}`] : [];
        }),
      )} (19 times in 20), and not those told here.`,
      assumedSentence(belief),
    ].filter((sentence) => sentence !== '');
  const told =
    off.length === 0
      ? ''
      : `By how well the parts are known the films told here may be off, either way, by: ${listed(off)} (19 times in 20).`;
  return [told, assumedSentence(belief)].filter((sentence) => sentence !== '');
}

/** Whether the films of the design as it is drawn are others than what was read, and tried, tells. */
const isOther = (design: Design, { films }: BeliefReport): boolean =>
  fitOf(design).seats.some(({ name, leastFilm }) => {
    const believed = films[name];
    return leastFilm !== null && believed ? isApart(leastFilm - likelyOf(believed), offOf(believed)) : false;
  });

function filmsSentence(
  { seats, readings = [] }: Design,
  { films }: BeliefReport,
  drawn: Record<string, number | null>,
  system: System,
): string {
  const told = seats.flatMap(({ name }) => {
    const film = films[name];
    return film ? [{ name, film, text: `${name} ${plusMinusText(likelyOf(film), offOf(film), system)}` }] : [];
  });
  if (told.length === 0) return '';
  const apart = told.filter(
    ({ name, film }) => drawn[name] != null && isApart(drawn[name]! - likelyOf(film), offOf(film)),
  );
  const note =
    apart.length === 0
      ? ''
      : `; as drawn here ${listed(apart.map(({ name }) => `the ${name} film is ${fineText(drawn[name]!, system)}`))}${readings.length > 0 ? ', until Measure’s shapes are used' : ''}`;
  return `By all that was read the films here are ${listed(told.map(({ text }) => text))} (19 times in 20)${note}.`;
}

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
