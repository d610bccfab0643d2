/**
 * Pairs drawn as everything known allows: readings of the bench, what was taken off, and what trial assemblies told.
 *
 * Without trials they are normal (belief/draws.ts). What a trial tells is not: which seat touched is one of several,
 * blue is a bound. Each pair is therefore drawn near what the trials say, from one of several normal proposals
 * (proposals.ts), and weighed by what those leave out:
 *
 *   weight = L(z) / Σ_a q_a·L_a(z)/E_a
 *
 * z numbers of the pair and errors of the metal off · L likelihood of all that was read at the trials, from the exact
 * contact of the pair drawn: normal noise of stand-off and shake, 1 or 0 for the blue · L_a the same as proposal a has
 * it, linear and without its bounds · E_a how likely that was before it was read · q_a share of draws that go by it.
 * Some go by none (L_a/E_a = 1), so that no pair that could be is left out. Where hardly a pair counts, the next are
 * drawn about those that do, too: after some trials touch and shake go round corners that no one account follows.
 *
 * How many of the pairs count: (Σ weight)²/Σ weight².
 * @source MacKay chapter 29.2 (importance sampling, and how many draws count)
 */
import { dot } from '../algebra/dot.ts';
import { drawOf } from '../belief/decomposition.ts';
import { standardNormals } from '../belief/draws.ts';
import { isShape, withNumbers } from '../belief/unknowns.ts';
import type { SeatInput } from '../contact/fit.ts';
import { predict } from '../gauging/readings/index.ts';
import { errorOn, type Known, ownErrors, type Proposal, proposalsAbout, proposalsOf } from './proposals.ts';
import { seenAtTrial } from './seenAtTrial.ts';
import { cutBy, type Trial, withErrors } from './trial.ts';

export interface PairsDrawn {
  /** as they are after the last trial; those that cannot be are left out */
  pairs: SeatInput[][];
  /** their shares, all together 1 */
  weights: number[];
  /** how many pairs of one weight tell as much; 0 where nothing that could be reads like this */
  effective: number;
}

/** Share of the draws that go by no proposal. */
const DEFENSIVE = 0.1;
/** Where less than this share of them counts, more are drawn, so many times as many in turn. */
const ENOUGH = 1 / 4;
const ROUNDS = [1, 2, 4];
/** Where there are shakes, each of which costs far more to tell, the first few rounds find where to draw. */
const SHAKEN = [1, 1, 1, 2, 4];
/** So many of the pairs that count most are drawn about then. */
const LOOKED_AT = 12;

/** The same for the same seed. */
export function pairsDrawn(known: Known, count: number, seed: number): PairsDrawn {
  const shaken = known.trials.some(({ shake }) => shake);
  let proposals = proposalsOf(known, DEFENSIVE);
  let drawn: PairsDrawn = { pairs: [], weights: [], effective: 0 };
  if (proposals.length === 0) return drawn;
  for (const times of shaken ? SHAKEN : ROUNDS) {
    const { best, ...found } = weighed(known, proposals, count * times, seed);
    drawn = found;
    if (drawn.effective >= ENOUGH * count) break;
    if (shaken) proposals = proposalsAbout(known, proposals, best, DEFENSIVE);
  }
  return drawn;
}

/** With the numbers of the pairs that count most, the first the most. */
function weighed(
  known: Known,
  proposals: readonly Proposal[],
  count: number,
  seed: number,
): PairsDrawn & { best: number[][] } {
  const { seats, unknowns, numbers } = known.belief;
  const own = ownErrors(known);
  const draw = drawer(known, proposals, count, seed);
  const pairs: SeatInput[][] = [];
  const logs: number[] = [];
  const numbersOf: number[][] = [];
  for (let k = 0; k < count; k++) {
    const z = draw(k);
    const pair = withNumbers(seats, unknowns, Float64Array.from(z.slice(0, numbers.length)));
    if (!isShape(pair)) continue;
    const trials = withErrors(known.trials, errorOn(known, own, numbers.length, z));
    const { log, now } = likelihoodOf(known, pair, trials);
    if (log === Number.NEGATIVE_INFINITY) continue;
    pairs.push(now);
    numbersOf.push(z);
    logs.push(log - proposedLog(proposals, z));
  }
  const most = logs.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const raw = logs.map((log) => Math.exp(log - most));
  const all = raw.reduce((a, b) => a + b, 0);
  const weights = raw.map((w) => w / all);
  const best = weights.map((weight, k) => ({ weight, z: numbersOf[k]! })).sort((a, b) => b.weight - a.weight);
  return {
    pairs,
    weights,
    effective: pairs.length === 0 ? 0 : 1 / weights.reduce((sum, w) => sum + w * w, 0),
    best: best.slice(0, LOOKED_AT).map(({ z }) => z),
  };
}

/** z of each draw. */
function drawer(known: Known, proposals: readonly Proposal[], count: number, seed: number): (k: number) => number[] {
  const { decomposition, numbers } = known.belief;
  const own = ownErrors(known);
  const size = numbers.length + own.length;
  const normals = standardNormals(seed, count * size);
  return (k) => {
    const normal = normals.subarray(k * size, (k + 1) * size);
    const chosen = proposalAt(proposals, (k + 0.5) / count);
    if (chosen) return chosen.mean.map((m, i) => m + dot(chosen.root[i]!, normal));
    const change = drawOf(decomposition, normal);
    return [
      ...numbers.map((x, j) => x + change[j]!),
      ...own.map(({ sigma }, i) => sigma * normal[numbers.length + i]!),
    ];
  };
}

/** Which proposal a draw goes by; null: none. */
function proposalAt(proposals: readonly Proposal[], place: number): Proposal | null {
  let sum = 0;
  for (const proposal of proposals) {
    sum += proposal.share;
    if (place < sum) return proposal;
  }
  return null;
}

/** log Σ_a q_a·L_a(z)/E_a */
function proposedLog(proposals: readonly Proposal[], z: readonly number[]): number {
  const logs = proposals.map(({ told, evidence, share }) =>
    told.reduce((sum, { row, value, sigma }) => sum + noiseLog(value - dot(row, z), sigma), Math.log(share) - evidence),
  );
  const most = Math.max(...logs, 0);
  return most + Math.log(logs.reduce((all, log) => all + Math.exp(log - most), DEFENSIVE * Math.exp(-most)));
}

/** log of the density of normal noise, less what all share */
const noiseLog = (off: number, sigma: number): number => -((off / sigma) ** 2) / 2 - Math.log(sigma);

/** How likely all that was read at the trials is with this pair, and the pair as it is then. */
function likelihoodOf(
  { input }: Known,
  pair: SeatInput[],
  trials: readonly Trial[],
): { log: number; now: SeatInput[] } {
  const fresh = new Set<string>();
  let now = pair;
  let log = 0;
  for (const trial of trials) {
    now = cutBy(input, now, trial, fresh);
    log += trialLog(now, trial);
    if (log === Number.NEGATIVE_INFINITY) break;
  }
  return { log, now };
}

function trialLog(now: readonly SeatInput[], { standOff, blue = [], shake, thickness }: Trial): number {
  let log = 0;
  if (standOff || blue.length > 0) {
    const seen = seenAtTrial(now, thickness);
    if (!seen || blue.some(({ seat, prints }) => seen.prints[seat] !== prints)) return Number.NEGATIVE_INFINITY;
    if (standOff) log += noiseLog(standOff.value - seen.at, standOff.sigma);
  }
  if (shake) {
    const { value } = predict({ kind: 'shake', ...shake }, now);
    if (value === null) return Number.NEGATIVE_INFINITY;
    log += noiseLog(shake.value - value, shake.sigma);
  }
  return log;
}
