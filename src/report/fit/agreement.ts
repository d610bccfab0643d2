/**
 * Whether one position serves every film wanted, in words: which seats agree, which cannot comply, and by how much.
 * Judged by the positions that each seat tolerates, from the report alone.
 */
import type { Design } from '../../design/definition.ts';
import { fineText, type System } from '../../design/units.ts';
import { listed } from '../listed.ts';
import type { FitReport, SeatFitReport } from './definition.ts';

/** mm of travel that no text shows: stretches this near to each other meet. */
const SAME = 5e-6;

/** A seat that a move brings to its film, and where (mm). */
interface Served {
  name: string;
  from: number;
  to: number;
}

export interface Agreement {
  /** the most seats that one position serves, in the order of the design */
  agreed: Served[];
  /**
   * those it does not serve, and how far off (mm; above 0: further noseward) they want the journal than the others
   * allow
   */
  out: { name: string; off: number }[];
}

const served = (fit: FitReport): Served[] =>
  fit.seats.flatMap(({ name, tolerated }) => (tolerated ? [{ name, ...tolerated }] : []));

export function agreementOf(fit: FitReport): Agreement {
  const seats = served(fit);
  // The most stretches that share a point share the beginning of one of them.
  const at = (place: number) => seats.filter(({ from, to }) => from <= place + SAME && to >= place - SAME);
  const agreed = seats.reduce<Served[]>((most, { from }) => (at(from).length > most.length ? at(from) : most), []);
  const [from, to] = [Math.max(...agreed.map((s) => s.from)), Math.min(...agreed.map((s) => s.to))];
  const out = seats
    .filter((seat) => !agreed.includes(seat))
    .map((seat) => ({ name: seat.name, off: seat.from > to ? seat.from - to : seat.to - from }));
  return { agreed, out };
}

/** Straight seats whose film is out of its tolerance here: no move helps. */
const beyondHelp = (design: Design, fit: FitReport) =>
  fit.seats.flatMap((seat, i) => {
    const film = design.seats[i]?.film;
    if (!film || seat.closes !== 'never' || seat.leastFilm === null) return [];
    const beyond = Math.abs(seat.leastFilm - film.target) - (film.tolerance ?? 0);
    return beyond > SAME ? [{ seat, beyond, thick: seat.leastFilm > film.target }] : [];
  });

/** Headline where a film is out of its tolerance at this position. */
export function offHeadline(design: Design, fit: FitReport, system: System): string {
  const { agreed, out } = agreementOf(fit);
  if (out.length > 0) return disagreeing(fit, { agreed, out }, system);
  const lost = design.seats.flatMap(({ film }, i) =>
    film && fit.seats[i]!.closes !== 'never' && fit.seats[i]!.positionForTarget === null ? [fit.seats[i]!.name] : [],
  );
  if (lost.length > 0)
    return `No position gives the ${listed(lost)} seat${lost.length > 1 ? 's' : ''} the film wanted.`;
  const helpless = beyondHelp(design, fit);
  if (helpless.length > 0)
    return `No position gives every seat its film: ${helpless.map((one) => beyondText(one, system)).join(' and ')}.`;
  if (agreed.length === 0) return `The film is not the one wanted: ${filmsText(fit, system)}.`;
  if (fit.permitted === null) return 'Where every film would be the one wanted, a journal is in its bush.';
  if (agreed.length === 1) return `The film is not the one wanted: ${filmsText(fit, system)}.`;
  if (agreed.length === 2)
    return `The two cones agree well enough: some position gives the ${agreed[0]!.name} and the ${agreed[1]!.name} seat their film; it is not this one.`;
  return `The cones agree well enough: some position gives the ${listed(agreed.map(({ name }) => name))} seats their film; it is not this one.`;
}

const filmsText = (fit: FitReport, system: System) =>
  fit.seats.map((s) => `${s.name} ${s.leastFilm === null ? 'apart' : fineText(s.leastFilm, system)}`).join(', ');

const beyondText = ({ seat, beyond, thick }: { seat: SeatFitReport; beyond: number; thick: boolean }, system: System) =>
  `the ${seat.name} film is ${fineText(seat.leastFilm!, system)}, ${fineText(beyond, system)} ${thick ? 'more' : 'less'} than its tolerance allows, and no axial move changes it`;

function disagreeing(fit: FitReport, { agreed, out }: Agreement, system: System): string {
  if (agreed.length + out.length === 2) {
    const { between, error } = fit.relations[0]!;
    const both = fit.seats.length === 2 ? 'both' : `both the ${between[0]} and the ${between[1]} seat`;
    return `No position gives ${both} their film: the cones stand ${fineText(Math.abs(error), system)} wrong to each other.`;
  }
  const names = listed(out.map(({ name }) => name));
  if (agreed.length === 1)
    return `No one position gives every seat its film: no two of the ${out.length + 1} cones agree.`;
  return `No one position gives every seat its film: the ${listed(agreed.map(({ name }) => name))} seats agree, the ${names} seat${out.length > 1 ? 's do' : ' does'} not.`;
}

/** How the seats stand to each other along the axis; of more than two that do not agree, how far off each is. */
export function relationSentences(design: Design, fit: FitReport, system: System): string[] {
  const agreement = agreementOf(fit);
  const others = beyondHelp(design, fit).map((one) => `${capital(beyondText(one, system))}.`);
  // Where nothing else is wrong the headline says it.
  const helpless = agreement.out.length > 0 ? others : [];
  if (agreement.agreed.length + agreement.out.length > 2 && agreement.out.length > 0)
    return [...outSentences(agreement, system), ...helpless];
  const pair = pairSentence(fit, agreement, system);
  return pair === '' ? helpless : [pair, ...helpless];
}

function outSentences({ agreed, out }: Agreement, system: System): string[] {
  const allow = agreed.length === 1 ? `the ${agreed[0]!.name} seat allows` : 'the others allow';
  const sentences = out.map(
    ({ name, off }) =>
      `The ${name} seat wants the journal ${fineText(Math.abs(off), system)} further ${off > 0 ? 'noseward' : 'rearward'} than ${allow}.`,
  );
  return [...sentences, 'The Cut screen tells what to take off which surface.'];
}

function pairSentence(fit: FitReport, { out }: Agreement, system: System): string {
  const { relation } = fit;
  if (!relation || relation.allowance === 0) return '';
  const { between, error } = relation;
  const [one, other] = between;
  if (Math.abs(error) < 5e-5 && out.length === 0)
    return `One position gives the ${one} and the ${other} seat their film.`;
  const beyond = out.length > 0;
  return `The ${one} seat reaches its film ${fineText(Math.abs(error), system)} ${error < 0 ? 'rearward' : 'noseward'} of where the ${other} does; that is ${beyond ? 'beyond' : 'within'} the ${fineText(allowedFor(fit, error), system)} the tolerances allow${beyond ? '. The Cut screen tells what to take off which surface' : ''}.`;
}

/** mm: how far apart the first two positions may be, by what each seat tolerates toward the other. */
function allowedFor(fit: FitReport, error: number): number {
  const [one, other] = fit.relation!.between.map((name) => fit.seats.find((s) => s.name === name)!);
  const [rear, nose] = error < 0 ? [one!, other!] : [other!, one!];
  return rear.tolerated!.to - rear.positionForTarget! + nose.positionForTarget! - nose.tolerated!.from;
}

const capital = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
