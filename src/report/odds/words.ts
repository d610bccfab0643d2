/** The odds in a machinist's words: how often the pair works, on what that rests, what would help. */
import type { Design } from '../../design/definition.ts';
import { isOfParts } from '../../design/oddsDefinition.ts';
import { defaultAt } from '../../design/place.ts';
import { fineText, type System, sidedText } from '../../design/units.ts';
import { asAssumed } from '../assumed.ts';
import { guessesOf } from '../belief/guesses.ts';
import { behindReadings } from '../belief/notAsRead.ts';
import { assumedSentence, guessSentence } from '../belief/words.ts';
import { behindTrial, withheldBy } from '../cut/withheld.ts';
import { listed } from '../listed.ts';
import type { MattersReport, OddsReport } from './definition.ts';
import { accuracyOf, drawCount } from './drawCount.ts';
import { GOOD, timesText } from './times.ts';

interface OddsVerdict {
  tone: 'good' | 'mend' | 'stop' | 'plain';
  headline: string;
  sentences: string[];
}

/** Below here a pair is said not to work. A choice, no more. */
const BAD = 0.5;
/** Pairs fewer than this tell nothing: what was read hardly goes together. */
const FEW = 50;
/** A gain that is worth a sentence. */
const WORTH = 0.03;

export const NO_PAIRS = 'What was read and what came off go together in no pair: see Cut, and settle that first.';

const percentsText = ({ low, high }: { low: number; high: number }) =>
  `${Math.floor(100 * low)} to ${Math.ceil(100 * high)} in 100`;

/** To a hundredth: 11 in 100. */
export const hundredthText = (chance: number) => `${Math.round(100 * chance)} in 100`;

export const isWanted = ({ seats }: Design) => seats.some(({ film }) => film !== undefined);

/**
 * Which chance the verdict goes by: at the position that suits the pair best, after the plan where there is one and the
 * pair is not best left.
 */
export const chanceOf = ({ planned, best }: OddsReport, left = false) =>
  (left || !planned ? best : planned.best).inBand.all!;

/** Whether there are pairs enough to tell anything. */
export const isTold = (report: OddsReport | null): report is OddsReport =>
  report !== null && !(report.effective !== undefined && report.effective < FEW);

/**
 * `look`: what Cut says is to be looked at before metal comes off (cut/advice.ts), `left`: that it is best left; no
 * other advice is given then.
 */
export function oddsVerdict(
  design: Design,
  report: OddsReport | null,
  system: System,
  look = '',
  left = false,
): OddsVerdict {
  if (!isTold(report)) return { tone: 'stop', headline: NO_PAIRS, sentences: [] };
  const chance = chanceOf(report, left);
  const wanted = isWanted(design);
  const verdict: OddsVerdict = {
    tone: !wanted ? 'plain' : chance >= GOOD ? 'good' : chance < BAD ? 'stop' : 'mend',
    headline: wanted
      ? left
        ? leftHeadline(report)
        : headline(design, report, look !== '')
      : 'No film is wanted of any seat, so nothing says when this pair works.',
    sentences: [
      ...(wanted ? [setSentence(design, report, system)] : ['Say on Fit what film each seat should have.']),
      firstSentence(report),
      basisSentence(design, report, system),
      reachedSentence(design, report),
      ...(wanted
        ? [
            readSentence(
              left ? report : (report.planned ?? report),
              !left && report.planned !== undefined,
              chance,
              look !== '',
            ),
            left ? '' : gainSentence(report),
          ]
        : []),
    ].filter((sentence) => sentence !== ''),
  };
  const told = behindReadings(asAssumed(verdict, design, ['seats']), report.notAsRead, 'As read');
  return behindTrial(told, withheldBy(null, report));
}

/** Cut by Cut's plan it would be no likelier. */
const leftHeadline = ({ best, planned }: OddsReport): string =>
  `As it stands this pair works ${timesText(best.inBand.all!)}${planned ? `; all of it cut, ${timesText(planned.best.inBand.all!, best.inBand.all!)}` : ''}.`;

function headline({ cut }: Design, report: OddsReport, looks: boolean): string {
  const { planned, trialFirst, best } = report;
  if (!planned) return `As the parts are now this pair works ${timesText(best.inBand.all!)}.`;
  const again = (cut?.trials ?? []).some(({ inShapes }) => !inShapes);
  const all = again ? 'all that is left' : 'all of the plan';
  const works = timesText(planned.best.inBand.all!);
  const now = looks
    ? `Were ${all} cut now this pair would work ${works}`
    : `Cut ${again ? 'what is left ' : ''}now and this pair works ${works}`;
  if (!trialFirst) return `${now}.`;
  const gain = trialFirst.share - planned.best.inBand.all!;
  const trial = `${again ? 'another' : 'a'} trial assembly`;
  return gain > WORTH
    ? `${now}; ${trial} first makes it about ${timesText(trialFirst.share, planned.best.inBand.all!)} (${percentsText(trialFirst)}, of ${trialFirst.trials} tried).`
    : `${now}; ${trial} before it would ${looks ? 'by itself ' : ''}hardly change that${looks ? '' : ': try it after'}.`;
}

/** What "works" means, and how it stands without choosing the position, or without the cut. */
function setSentence({ adjuster }: Design, report: OddsReport, system: System): string {
  const { planned, best, inBand, position } = report;
  const works = `It works where every film is within its tolerance at some position of the journal${adjuster ? ', found with the adjuster' : ''}`;
  const set = planned ?? { inBand, position };
  // Cut tells the films of parts that are right already where it would set them.
  const where =
    planned || report.setBy === 'plan'
      ? 'with the journal of every pair set as the plan says'
      : 'with the journal of every pair left where it stands on Fit';
  const left = `${where} (${sidedText(set.position, system)}), ${timesText(set.inBand.all!)}`;
  return planned ? `${works}; ${left}; uncut, ${timesText(best.inBand.all!)}.` : `${works}; ${left}.`;
}

function firstSentence(report: OddsReport): string {
  const { first } = report.planned ?? report;
  const [seat, chance] = Object.entries(first).reduce(([a, p], [b, q]) => (q > p ? [b, q] : [a, p]), ['', 0]);
  if (seat === '') return 'No seat stops the journal as it goes home.';
  const holds = (report.planned ?? report).selfHolding;
  const sticks = holds < 0.005 ? '' : ` Pressed home it sticks ${timesText(holds)}.`;
  return `${report.planned ? 'As the plan leaves them, the' : 'The'} ${seat} seat touches first ${timesText(chance)}.${sticks}`;
}

/** Where trials leave fewer pairs that count than an accuracy asked for takes. */
function reachedSentence(design: Design, { effective }: OddsReport): string {
  if (effective === undefined || effective >= drawCount(design)) return '';
  return `The trials leave as much as ${Math.round(effective)} pairs tell: a chance near one half is known to ± ${Math.round(100 * accuracyOf(effective))} in 100${design.odds?.accuracy === undefined ? '' : ', not to what was asked'}.`;
}

function basisSentence(design: Design, report: OddsReport, system: System): string {
  const spread = design.odds?.spread?.filter(isOfParts).length ?? 0;
  const added = spread === 0 ? '' : ` ${spread === 1 ? 'One spread' : `${spread} spreads`} of your list on top.`;
  if (report.from === 'belief') return `By all that was read.${added} ${assumedSentence(report)}`.trim();
  if (spread > 0) return 'About the parts as drawn, with the spreads of your list and no other doubt.';
  const guesses = guessesOf(design);
  if (guesses.length > 0) return guessSentence(system);
  const doubt = design.cut?.doubt;
  return `Nothing was read: the parts are taken as drawn, the film of every seat ${doubt === undefined ? 'assumed ' : ''}known to ${fineText(doubt ?? defaultAt('cut.doubt'), system)} (one standard deviation). Measure them, or write their spreads below.`;
}

/**
 * What to read first of all that nobody has read, and what all of it would make of the chance; empty where all is.
 * `planned`: whether it is of the pair cut as planned; `chance`: the one told beside it, which gains add to (they were
 * found with pairs of their own, whose chance differs from it by the luck of the draw). `advised`: something else is
 * advised already, so that it is told as what it would bring alone.
 */
export function readSentence(
  { reads = [] }: Pick<MattersReport, 'reads'>,
  planned = false,
  chance: number | undefined = undefined,
  advised = false,
): string {
  const single = reads.filter(({ surfaces }) => surfaces.length === 1);
  const [best] = [...single].sort((a, b) => b.gain - a.gain);
  if (!best) return '';
  const all = reads.find(({ surfaces }) => surfaces.length > 1);
  const now = chance ?? best.share - best.gain;
  const after = ({ gain }: { gain: number }) => hundredthText(Math.min(1, now + gain));
  const isWorth = (one: { gain: number; uncertainty: number }) => one.gain >= WORTH && one.gain > one.uncertainty;
  const then = (one: { gain: number }) =>
    `${planned ? 'cut after that, it works' : 'it then works'} ${after(one)} instead of ${hundredthText(now)}`;
  const every = all && `all ${all.surfaces.length} surfaces`;
  if (isWorth(best)) {
    const more = all && all.share - best.share >= WORTH ? `; with ${every} measured, ${after(all)}` : '';
    return `${advised ? 'Measured too,' : 'Measure first'} ${readText(best.surfaces[0]!)}, known from the drawing alone: ${then(best)}${more}.`;
  }
  if (all && isWorth(all))
    return `${advised ? 'Measured too,' : 'Measure'} ${every} that are known from the drawing alone: ${then(all)}; one of them by itself hardly changes it.`;
  return `To measure what is known from the drawing alone would hardly change that: ${listed(single.map(({ surfaces }) => nameOf(surfaces[0]!)))}.`;
}

const nameOf = ({ seat, part }: { seat: string; part: string }) => `the ${seat} ${part}`;
const readText = ({ line, ...surface }: { seat: string; part: string; line: boolean }) =>
  line ? `a diameter at both ends of ${nameOf(surface)}` : `a diameter of ${nameOf(surface)}`;

/** Where most is to be gained. */
function gainSentence(report: OddsReport): string {
  const { gains } = report.planned ?? report;
  const [best] = [...gains].sort((a, b) => b.gain - a.gain);
  if (!best || best.gain < WORTH || best.gain < best.uncertainty) return '';
  // What to read of what nobody has read is told by itself.
  if (best.by === 'measuring' && ((report.planned ?? report).reads ?? []).length > 0) return '';
  const now = chanceOf(report);
  const then = Math.min(1, now + best.gain);
  return `Most is gained ${gainText(best)}: ${hundredthText(then)} instead of ${hundredthText(now)}.`;
}

/** By knowing a surface, or setting a cut, twice as well. */
export const gainText = ({ seat, part, by, face }: MattersReport['gains'][number]): string =>
  by === 'measuring'
    ? `by knowing the ${seat} ${part} twice as well`
    : `by cutting ${face ?? `the ${seat} ${part}`} twice as closely`;

/** The odds in one sentence, for the Sheet. */
export function oddsSentence(design: Design, report: OddsReport, left = false): string {
  // Of what does not go together no chance is told.
  const unsettled = report.notAsRead === 'trials' || report.notAsRead === 'contradict';
  if (!isWanted(design) || !isTold(report) || unsettled) return '';
  const { planned, from } = report;
  const by = from === 'drawing' ? 'as drawn, never measured' : 'by all that was read';
  const state = planned && !left ? 'cut as planned' : 'as the parts are';
  return `Odds, ${by}: ${state}, every film can be brought within its tolerance ${timesText(chanceOf(report, left))} (${report.draws} pairs drawn).`;
}

/** Which surfaces the doubt comes from, and how that was worked out. */
export function mattersText({ of, method }: MattersReport): string {
  if (of === null || method === null)
    return 'Where the doubt comes from is not told: there is none, or a measured line is itself in doubt.';
  const what = of.quantity === 'relation' ? `the axial relation of ${listed(of.between)}` : `the ${of.seat} film`;
  return method === 'linear'
    ? `Shares of the doubt of ${what}; together they are all of it.`
    : `Shares of the doubt of ${what} that go with each alone; the line shows where each is 19 times in 20. They need not add up, since another seat or end may touch first.`;
}

/** The same for who would know how it was reckoned. */
export function methodText({ method }: MattersReport): string {
  if (method === null) return '';
  return method === 'linear'
    ? 'Shares of the variance, exact: what is asked follows the sizes in a straight line.'
    : 'Shares of the variance by Sobol’ indices of the first order from draws, with bootstrap limits: what is asked does not follow the sizes in a straight line.';
}
