/** What the odds and the belief of any design must keep to. */
import { EigenvalueDecomposition, Matrix } from 'ml-matrix';
import type { Design } from '../../src/design/definition.ts';
import { believedOf } from '../../src/report/belief/believed.ts';
import type { BeliefReport } from '../../src/report/belief/definition.ts';
import { beliefSentences, offSentences } from '../../src/report/belief/words.ts';
import type { Report } from '../../src/report/definition.ts';
import type { MattersReport, OddsReport, StateReport } from '../../src/report/odds/definition.ts';
import { holdSentence, holdSizes } from '../../src/report/odds/holdWords.ts';
import { oddsTold } from '../../src/report/odds/section.ts';
import { mattersText, oddsSentence, oddsVerdict } from '../../src/report/odds/words.ts';

type Broken = string;

/** Rounding of what is counted in thousands and divided. */
const SLACK = 1e-9;

interface Chance {
  share: number;
  low: number;
  high: number;
}

/** Within 0 and 1, its limits about it. */
const chanceLaw = (name: string, { share, low, high }: Chance): Broken[] =>
  share >= 0 && share <= 1 && low >= 0 && high <= 1 && low <= share + SLACK && share <= high + SLACK
    ? []
    : [`odds: ${name} ${share}, limits ${low} to ${high}`];

export function oddsLaws(design: Design, { odds }: Report): Broken[] {
  if (!odds) return [];
  return [
    ...stateLaws('now', odds),
    ...(odds.planned ? [...stateLaws('planned', odds.planned), ...mattersLaws('planned', odds.planned)] : []),
    ...mattersLaws('now', odds),
    ...(odds.processes ?? []).flatMap((one) => [
      ...chanceLaw(one.name, one),
      ...chanceLaw(`${one.name}, set`, one.set),
    ]),
    ...holdLaws(odds.hold),
    ...againLaw(design, odds),
  ];
}

function stateLaws(name: string, { first, inBand, best, selfHolding, films, limits, noShape }: StateReport): Broken[] {
  const each = (what: string, shares: Record<string, number>, of: Record<string, { low: number; high: number }>) =>
    Object.entries(shares).flatMap(([key, share]) => chanceLaw(`${name} ${what} ${key}`, { share, ...of[key]! }));
  const touching = Object.values(first).reduce((sum, share) => sum + share, 0);
  const all = (what: string, { all: together, ...seats }: Record<string, number>) =>
    Object.values(seats).some((share) => together! > share + SLACK)
      ? [`odds: ${name} ${what}: all oftener than each`]
      : [];
  return [
    ...each('first', first, limits.first),
    ...each('in band', inBand, limits.inBand),
    ...each('at best', best.inBand, limits.best),
    ...chanceLaw(`${name} holds`, { share: selfHolding, ...limits.selfHolding }),
    ...(touching > 1 + SLACK ? [`odds: ${name}: the seats touch first ${touching} times of one`] : []),
    ...(selfHolding > touching + SLACK ? [`odds: ${name}: it sticks ${selfHolding}, and touches ${touching}`] : []),
    ...all('in band', inBand),
    ...all('at best', best.inBand),
    ...Object.values({ ...films, ...best.films, position: best.position }).flatMap((spread) =>
      spread && (spread.sd < 0 || spread.p05 > spread.p95) ? [`odds: ${name}: a spread ${JSON.stringify(spread)}`] : [],
    ),
    ...(noShape < 0 ? [`odds: ${name}: ${noShape} draws without shape`] : []),
  ];
}

/** Exact shares are of the whole; those by indices are estimates, and each within its limits. */
function mattersLaws(name: string, { sensitivity, method, gains, of }: MattersReport): Broken[] {
  const sum = sensitivity.reduce((total, { share }) => total + share, 0);
  return [
    ...(method === 'linear' && Math.abs(sum - 1) > 1e-6 ? [`odds: ${name}: exact shares sum to ${sum}`] : []),
    ...((of === null) === (method === null) ? [] : [`odds: ${name}: shares of nothing`]),
    ...sensitivity.flatMap(({ share, low, high, total }) =>
      low <= share + SLACK && share <= high + SLACK && (method !== 'linear' || Math.abs(total - share) < SLACK)
        ? []
        : [`odds: ${name}: share ${share}, limits ${low} to ${high}, total ${total}`],
    ),
    ...gains.flatMap((gain) => [
      ...chanceLaw(`${name} gain`, gain),
      ...(gain.uncertainty < 0 || Math.abs(gain.gain) > 1
        ? [`odds: ${name}: gain ${gain.gain} ± ${gain.uncertainty}`]
        : []),
    ]),
  ];
}

function holdLaws(hold: OddsReport['hold']): Broken[] {
  if (!hold) return [];
  return [
    ...chanceLaw('hold', hold),
    ...hold.inputs.flatMap(({ multiplier, numbers }) =>
      multiplier > 0 && numbers.every(({ now, hold: to }) => Math.abs(to - multiplier * now) <= SLACK * now)
        ? []
        : [`odds: hold ${multiplier} of ${JSON.stringify(numbers)}`],
    ),
  ];
}

/** Draws for which it is worked out once more. */
const FEW = 250;

/** The same seed gives the same, whatever was worked out before. */
function againLaw(design: Design, odds: OddsReport): Broken[] {
  if (odds.draws > FEW) return [];
  const { running: _, ...told } = odds;
  const again = oddsTold(JSON.parse(JSON.stringify(design)) as Design);
  return JSON.stringify(again) === JSON.stringify(told) ? [] : ['odds: another answer the second time'];
}

export function beliefLaws(design: Design, { belief }: Report): Broken[] {
  if (!belief) return [];
  const { surfaces, first, films, firstPosition, relation } = belief;
  const touching = first && Object.values(first).reduce((sum, share) => sum + share, 0);
  return [
    ...surfaces.flatMap(({ halfAngle, diameter, correlation }) =>
      halfAngle.sd >= 0 && diameter.sd >= 0 && Math.abs(correlation ?? 0) <= 1 + SLACK
        ? []
        : [`belief: ${halfAngle.sd}, ${diameter.sd}, correlation ${correlation}`],
    ),
    ...(touching !== null && Math.abs(touching - 1) > 1e-6
      ? [`belief: the seats touch first ${touching} times of one`]
      : []),
    ...[...Object.values(films), firstPosition, relation].flatMap((one) =>
      one && (one.sd < 0 || one.low > one.high) ? [`belief: ${JSON.stringify(one)}`] : [],
    ),
    ...covarianceLaw(design),
  ];
}

/** No combination of the films, and of the metal they lean on, has less than no doubt. */
function covarianceLaw(design: Design): Broken[] {
  const { covariance } = believedOf(design).films;
  if (covariance.length === 0) return [];
  const values = new EigenvalueDecomposition(new Matrix(covariance), { assumeSymmetric: true }).realEigenvalues;
  const [least, greatest] = [Math.min(...values), Math.max(...values)];
  return least < -1e-9 * Math.max(greatest, Number.MIN_VALUE)
    ? [`belief: covariance from ${least} to ${greatest}`]
    : [];
}

/** Every sentence that the screens tell of both. */
export function oddsWords(design: Design, { odds, belief }: Report, system: 'metric' | 'inch'): string[] {
  return [...(odds ? wordsOfOdds(design, odds, system) : []), ...(belief ? wordsOfBelief(design, belief, system) : [])];
}

function wordsOfOdds(design: Design, odds: OddsReport, system: 'metric' | 'inch'): string[] {
  const { headline, sentences } = oddsVerdict(design, odds, system);
  const sheet = oddsSentence(design, odds);
  return [
    headline,
    ...sentences,
    ...(sheet === '' ? [] : [sheet]),
    mattersText(odds),
    ...(odds.hold === undefined ? [] : [holdSentence(odds.hold, design.odds!.wanted!)]),
    ...(odds.hold?.inputs ?? []).flatMap((input) => Object.values(holdSizes(input, system))),
  ];
}

const wordsOfBelief = (design: Design, belief: BeliefReport, system: 'metric' | 'inch') => [
  ...beliefSentences(design, belief, system),
  ...offSentences(design, belief, system),
];
