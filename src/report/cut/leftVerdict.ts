/**
 * What the trials say is left to cut, in a machinist's words: the most likely, its doubt, and what is safe to take now.
 */
import type { Design } from '../../design/definition.ts';
import { fineText, type System } from '../../design/units.ts';
import { twoSidedTail } from '../../engine/belief/distributions.ts';
import type { Verdict } from '../fit/verdict.ts';
import { type Look, lookBefore } from './advice.ts';
import { causeSentences, isExplained, likelierText } from './causeWords.ts';
import type { CutReport } from './definition.ts';
import { behindLeave, isLeft, isUnproven, unprovenSentence } from './leave.ts';
import { isUnsure, type Left, leftOf, type Remaining } from './left.ts';
import { listed, NOTHING } from './listed.ts';
import { asItStands, filmText, mayStop } from './mayStop.ts';
import { riskOf, surelyText } from './risk.ts';
import { learntSentence, surerSentences } from './surerText.ts';

/**
 * The one sentence of what is left: how far the journal still is from where it should touch, and what that is in metal.
 * Where much of that may not be there what is safe stands before it.
 */
function leftSentence(
  design: Design,
  remaining: Remaining,
  system: System,
  look: Look | null = null,
  works: CutReport['works'] = undefined,
): string {
  const left = leftOf(remaining, system);
  if (left.length === 0 && isReached(remaining) && works && isUnproven({ works }))
    return unprovenSentence(design, works);
  if (left.length === 0)
    return remaining.feasible
      ? ALL_AS_WANTED
      : isReached(remaining)
        ? ALL_WITHIN
        : pastSentence(design, remaining, system);
  const far = farText(remaining, system);
  const { most, more } = metalText(left, remaining);
  const safe = left.filter(({ taken }) => taken >= NOTHING);
  const first = look ? `; first ${look.doing}` : '';
  if (safe.length === 0) return `Take nothing yet: ${far === '' ? '' : `you are ${far}, `}most likely ${most}${first}.`;
  if (left.some(isUnsure))
    return `Only ${listed(safe.map((one) => one.safe))} is safe to take now: ${far === '' ? '' : `you are ${far}, `}most likely ${most}; ${look?.when === 'first' ? `first ${look.doing}` : 'the rest after another trial'}.`;
  return far === '' ? `Take ${more}.` : `You are ${far}: take ${more}.`;
}

/**
 * What is left, below a line that tells already what is safe and what to look at first (now.ts): how far it is short,
 * and in metal.
 */
export function belowNow(verdict: Verdict, design: Design, cut: CutReport, system: System): Verdict {
  const { remaining } = cut;
  const left = remaining ? leftOf(remaining, system) : [];
  if (!remaining || !left.some(isUnsure)) return verdict;
  if (verdict.headline !== leftSentence(design, remaining, system, lookBefore(cut, system))) return verdict;
  const far = farText(remaining, system);
  const { most } = metalText(left, remaining);
  return { ...verdict, headline: far === '' ? `Most likely ${most}.` : `You are ${far}: most likely ${most}.` };
}

/** How far it is short; empty where it is not. One doubt is told, that of the metal: what is safe goes by it. */
function farText({ standOff: { now, all } }: Remaining, system: System): string {
  const short = now === null || all === null ? 0 : now - all;
  return short < NOTHING ? '' : `${fineText(short, system)} short along the axis`;
}

/** What that is in metal: as an amount, and as what is to be taken. */
function metalText(left: readonly Left[], remaining: Remaining): { most: string; more: string } {
  const near = isReached(remaining) ? '' : ', which is as near as can be';
  return {
    most: `${listed(left.map(({ text }) => text))}${near}`,
    more: `${listed(left.map(({ text, on }) => (on ? text : text.replace(' off ', ' more off '))))}${near}`,
  };
}

const ALL_AS_WANTED = 'Nothing is left to cut: by the last trial every film is as wanted.';
const ALL_WITHIN = 'Nothing is left to cut: by the last trial every film is within its tolerance.';

const isReached = ({ feasible, inTolerance }: Remaining) => feasible || inTolerance;

/** Films that are other than wanted, once nothing can be cut any more. */
function pastSentence({ seats }: Design, { films }: Remaining, system: System): string {
  const off = seats.flatMap(({ name, film }) => {
    const by = film && films[name] != null ? films[name] - film.target : 0;
    return Math.abs(by) < NOTHING
      ? []
      : [`the ${name} film stays ${fineText(Math.abs(by), system)} ${by < 0 ? 'thinner' : 'thicker'} than wanted`];
  });
  return `Nothing that may still be cut brings the films nearer${off.length === 0 ? '' : `: ${listed(off)}, and metal cannot be put back`}.`;
}

/** What may be taken now, and how little of the dial that may be. */
export function safeSentences({ cut: wanted, readings = [] }: Design, remaining: Remaining, system: System): string[] {
  const left = leftOf(remaining, system);
  if (left.length === 0) return [];
  const safe = left.filter(({ taken }) => taken >= NOTHING);
  const until = wanted?.prefer?.aim === 'tolerance' ? 'within its tolerance' : 'just as wanted';
  const surely = `${surelyText(riskOf(wanted ?? {}))} at least that much is left until every film is ${until}, with room for what the dial may take too much.`;
  const told =
    safe.length === 0
      ? 'Nothing of it is safe to take yet: it may be far less than that, and metal cannot be put back.'
      : `Safe to take now: ${listed(safe.map((l) => l.safe))}; ${surely} Metal cannot be put back.`;
  const unset = remaining.steps
    .filter(({ safe, safeDivisions }) => safe >= NOTHING && safeDivisions < SETTABLE)
    .map(({ seat, part }) => `the ${seat} ${part}`);
  const fine =
    unset.length > 0
      ? [
          `That is less than half a division of the cross feed for ${listed(unset)}: stone or lap it off${readings.length > 0 ? ' and gauge it' : ', a few strokes at a time, and try it again'}, or let it be.`,
        ]
      : [];
  return [told, ...fine];
}

/** Divisions: nobody sets a dial finer. @source practice */
const SETTABLE = 0.5;
const MEND_IT = 'Correct it or strike it out; until then nothing more is said of what is left.';
const CONTRADICTION = 'The last trial cannot have come from these parts: look for grit, a burr, or a slip of the pen.';
const NO_MODEL = 'The shake of the last trial cannot be reckoned for these parts.';

type Clash = NonNullable<NonNullable<CutReport['trials']>[number]['clashes']>[number];

/** A reading that was taken in though it does not go with the others. */
function clashSentence({ trial, what, read, expected, deviations }: Clash, likelier: boolean, system: System): string {
  if (what === 'blue' || read === null)
    return `What the blue of trial ${trial} shows does not go with what was read and the parts as they stand here, ${chanceText(deviations)}${likelier ? '' : ': clean both parts, blue again and look'}.`;
  const [name, would] = what === 'shake' ? ['shake', 'shake by'] : ['stand-off', 'touch first at'];
  return `The ${name} of trial ${trial} does not go with the rest: ${fineText(read, system)} was read${expected === null ? '' : `, and parts as the rest tells would ${would} ${fineText(expected, system)}`}, ${chanceText(deviations)}.${likelier ? '' : ' Read it again.'}`;
}

/** How likely chance alone brings readings so far apart: standard deviations, either way. */
function chanceText(deviations: number): string {
  const cases = 1 / twoSidedTail(deviations);
  return cases > 10_000
    ? 'which is no chance'
    : `which chance would do once in ${Number(cases.toPrecision(cases < 100 ? 2 : 1))} times`;
}

const WITHHELD = 'Until that is settled nothing is safe to take.';

/** Readings that would explain it as well if they were wrong. */
const orElse = (others: readonly Clash[]): string[] =>
  others.length === 0
    ? []
    : [
        `It may also be ${others.map(({ trial, what }) => `the ${READ[what]} of trial ${trial}`).join(' or ')} that is wrong.`,
      ];

const READ = { standOff: 'stand-off', shake: 'shake', blue: 'blue' } as const;

function withoutSentence(
  design: Design,
  { trial, what, remaining }: NonNullable<CutReport['without']>,
  system: System,
): string {
  const left = leftOf(remaining, system);
  const far = farText(remaining, system);
  // Of what is withheld nothing is told to be taken, and nothing to be safe.
  const says =
    left.length === 0
      ? leftSentence(design, remaining, system)
      : `${far === '' ? '' : `you are ${far}, `}most likely ${metalText(left, remaining).most}.`;
  return `The rest, without the ${READ[what]} of trial ${trial}, would say: ${says}`;
}

type Came = NonNullable<NonNullable<CutReport['trials']>[number]['came']>[number];

/** Metal that most likely did not come off as it was told. */
function cameSentence({ trial, seat, part, face, told, likely }: Came, system: System): string {
  const less = likely < told;
  const why = less ? 'less came off than was read off the dial' : 'more came off than was read off the dial';
  return `Most likely ${fineText(Math.abs(likely), system)}${less ? ' only' : ''} came off ${face ?? `the ${seat} ${part}`} before trial ${trial}, not ${fineText(Math.abs(told), system)}: ${why}.`;
}

const isOther = ({ told, sigma, likely }: Came) => Math.abs(likely - told) >= Math.max(sigma, NOTHING);

export function trialSentences(design: Design, cut: CutReport, system: System): string[] {
  const { trials, remaining, without } = cut;
  const last = trials?.[trials.length - 1];
  if (!last) return [];
  const causes = causeSentences(cut.causes, system);
  if (last.status === 'contradiction') return [CONTRADICTION, ...causes, MEND_IT];
  if (last.status === 'noModel') return [NO_MODEL, MEND_IT];
  const [worst, ...others] = last.clashes ?? [];
  const named = (clash: Clash) =>
    (cut.causes ?? []).some((one) => one.what === clash.what && one.trial === clash.trial);
  const likelier = worst ? likelierText(cut.causes, worst, system) : null;
  const clashes = worst
    ? [
        ...(likelier === null ? [] : [likelier]),
        clashSentence(worst, likelier !== null, system),
        ...causes,
        ...orElse(others.filter((clash) => !named(clash))),
      ]
    : [];
  const came = (last.came ?? []).filter(isOther).map((error) => cameSentence(error, system));
  if (!remaining) return clashes;
  if (clashes.length > 0)
    return [
      ...clashes,
      WITHHELD,
      ...(without ? [withoutSentence(design, without, system)] : []),
      // Where a slip most likely explains it metal that came off otherwise need not.
      ...(isExplained(cut.causes) ? [] : came),
    ];
  return [
    ...mayStop(design, cut, remaining, system),
    leftSentence(design, remaining, system, lookBefore(cut, system), cut.works),
    ...safeSentences(design, remaining, system),
    ...learntSentence(last),
    ...surerSentences(design, cut, system),
    ...came,
  ];
}

/** Whether enough pairs go with what was read to tell how sure it is. */
const isSure = ({ remaining }: CutReport) => remaining?.sigmas !== undefined;
const UNSURE =
  'Hardly a pair goes with all that was read, so it is not known how sure this is: read the last trial once more.';

/** Where no cut makes it likelier to work nothing of what is left is told to come off. */
function leaveVerdict(design: Design, cut: CutReport, remaining: Remaining, system: System): Verdict {
  const { came = [], ...last } = cut.trials!.at(-1)!;
  const known = [
    ...asItStands(design, remaining, system),
    ...learntSentence(last),
    ...came.filter(isOther).map((error) => cameSentence(error, system)),
  ];
  const plain: Verdict = { tone: 'mend', headline: '', sentences: [] };
  return behindLeave(plain, cut, lookBefore(cut, system)?.doing ?? null, system, known);
}

/** What the Cut screen says first once there are trials; null before. */
export function leftVerdict(design: Design, cut: CutReport, system: System): Verdict | null {
  const last = cut.trials?.[cut.trials.length - 1];
  if (!last) return null;
  const settled = last.status === 'updated' && (last.clashes ?? []).length === 0;
  if (isLeft(cut) && settled && cut.remaining) return leaveVerdict(design, cut, cut.remaining, system);
  const [headline, ...sentences] = trialSentences(design, cut, system);
  if (headline === undefined) return null;
  const films =
    cut.remaining &&
    design.seats
      .filter(({ film }) => film)
      .map(
        ({ name }) =>
          `${name} ${filmText(cut.remaining!.films[name], cut.remaining!.sigmas?.[name], system, cut.remaining!.limits?.[name])}`,
      );
  const clash = (last.clashes ?? []).length > 0;
  const sure = isSure(cut);
  const stops = last.status !== 'updated' || clash || !cut.remaining || !isReached(cut.remaining);
  const tone = stops
    ? 'stop'
    : leftOf(cut.remaining!, system).length === 0 && sure && !isUnproven(cut)
      ? 'good'
      : 'mend';
  return {
    tone,
    headline,
    sentences: [
      ...sentences,
      ...(films && !clash && !sure ? [UNSURE] : []),
      ...(films && !clash
        ? [
            `The films are then most likely ${listed(films)}, the journal at ${fineText(cut.remaining!.position, system)}${sure ? '; all of it 19 times in 20' : ''}.`,
          ]
        : []),
    ],
  };
}
