/**
 * What a trial assembly before the cut is worth: the chance that the pair works where it is tried first, and cut by a
 * plan made anew with what that told.
 *
 *   chance = mean of a_t - β·(mean of b_t - b)         β = cov(a_t, b_t)/var(b_t)
 *   a_t = Σ_k w_k·[pair k works, cut by the plan after the trial]     b_t the same by the plan of now, b its chance
 *   w_k ∝ exp(-(s - s_k)²/2σ²)·[the same seats print]       s = s_t + noise
 *
 * s stand-off (m), σ its uncertainty; t true and k possible among the pairs drawn, t itself left out of its own list.
 * The plan is of the middle of those that are left; each is cut with the doubt of the dial, the same for both plans. b
 * is known from many more draws, so the chance of these few in b_t is taken off a_t too.
 * The limits are Wilson's, of as many yes and no as spread no less: n' = c·(1 - c)/(s²/n), s² the variance of what is
 * left of a_t, with one try more.
 * @source derived; Wilson1927 (the limits)
 */
import type { SeatInput } from '../../engine/contact/fit.ts';
import type { Plan } from '../../engine/cutting/plan.ts';
import { seenAtTrial } from '../../engine/cutting/seenAtTrial.ts';
import { cutPair } from '../../engine/odds/cut.ts';
import { chanceOf } from '../../engine/odds/limits.ts';
import { standardNormal } from '../../engine/odds/normal.ts';
import { BLOCK, drawer } from '../../engine/odds/odds.ts';
import { worksAtBest } from '../../engine/odds/works.ts';
import { metres } from '../convert.ts';
import { cutOffBy } from '../cut/cutOff.ts';
import { standOffSigma } from '../cut/metalDoubt.ts';
import { blueThickness } from '../cut/toCut.ts';
import type { OddsReport } from './definition.ts';
import type { Start } from './drawn.ts';
import { type Planning, plannedBy } from './planned.ts';

/** Pairs that are true in turn, and pairs drawn. */
const TRIALS = 24;
const PAIRS = 4096;
/** Pairs of less weight than this share of the greatest are let go. */
const LIGHT = 1e-3;
/** No more of them than this are cut and looked at: the draws come in even order. */
const ENOUGH = 250;
/** Told after so many pairs, so that it can be stopped. */
const TOLD_EVERY = 256;

interface Tried {
  pair: SeatInput[];
  /** position of first touch (m), and the seats that print there: seat k the bit 2^k */
  at: number;
  prints: number;
  /** standard normal: of the stand-off, then of each cut */
  errors: Float64Array;
}

interface TrialProgress {
  done: number;
  of: number;
}

/**
 * Null where a trial tells nothing: the journal never seats, or no plan follows.
 * @param asPlanned the chance of the plan of now
 * @param sigma of the stand-off (mm)
 */
export function* trialFirst(
  start: Start,
  planning: Planning,
  asPlanned: { share: number; low: number; high: number },
  seed: number,
  sigma = standOffSigma(start.design.cut ?? {}),
): Generator<TrialProgress, OddsReport['trialFirst'] | null> {
  const of = PAIRS / TOLD_EVERY + TRIALS;
  const { dimensions } = start.now.sampler;
  // More dimensions: noise of the stand-off, and the dial at every cut there may be.
  const more = 1 + planning.plan.rooms.length;
  const drawn = drawer({ dimensions: dimensions + more, shape: () => null }, seed + 1);
  const tried: Tried[] = [];
  const thickness = metres(blueThickness(start.design));
  for (let block = 0; block < PAIRS / BLOCK; block++) {
    const u = drawn(block * BLOCK).map((column) => column.slice());
    for (let k = 0; k < BLOCK; k++) {
      if (k % TOLD_EVERY === 0) yield { done: (block * BLOCK + k) / TOLD_EVERY, of };
      const pair = start.now.sampler.shape(Float64Array.from({ length: dimensions }, (_, d) => u[d]![k]!));
      const errors = Float64Array.from({ length: more }, (_, d) => standardNormal(u[dimensions + d]![k]!));
      const found = pair && triedOf(pair, errors, thickness);
      if (found) tried.push(found);
    }
  }
  const tries: Works[] = [];
  const byNow = onceEach(workingBy(start.now, planning, planning.plan));
  const trials = Math.min(TRIALS, tried.length);
  for (let t = 0; t < trials; t++) {
    const read = tried[t]!.at + metres(sigma) * tried[t]!.errors[0]!;
    const works = worksAfter(start, planning, tried, byNow, { t, read, sigma: metres(sigma) });
    if (works) tries.push(works);
    yield { done: PAIRS / TOLD_EVERY + t + 1, of };
  }
  if (tries.length < TRIALS / 2) return null;
  return { ...chanceOver(asPlanned, tries), trials: tries.length, sigma };
}

function triedOf(pair: SeatInput[], errors: Float64Array, thickness: number): Tried | null {
  const seen = seenAtTrial(pair, thickness);
  return (
    seen && {
      pair,
      at: seen.at,
      prints: seen.prints.reduce((bits, does, i) => (does ? bits | (1 << i) : bits), 0),
      errors,
    }
  );
}

interface Reading {
  t: number;
  /** m */
  read: number;
  sigma: number;
}

/** How often the pair works after what was read: cut by the plan after it, and by the plan of now. */
interface Works {
  after: number;
  now: number;
}

/** Null where nothing could be planned. */
function worksAfter(
  { now }: Start,
  planning: Planning,
  tried: readonly Tried[],
  byNow: (tried: Tried) => boolean,
  { t, read, sigma }: Reading,
): Works | null {
  const all = tried.map(({ at, prints }, k) =>
    k === t || prints !== tried[t]!.prints ? 0 : Math.exp(-(((read - at) / sigma) ** 2) / 2),
  );
  const most = all.reduce((a, b) => Math.max(a, b), 0);
  if (!(most > 0)) return null;
  const kept = all.flatMap((weight, k) => (weight >= LIGHT * most ? [{ weight, k }] : [])).slice(0, ENOUGH);
  const sum = kept.reduce((total, { weight }) => total + weight, 0);
  const weights = kept.map(({ weight }) => weight / sum);
  const pairs = kept.map(({ k }) => tried[k]!.pair);
  const plan = plannedBy(planning, { pairs, weights, effective: kept.length });
  if (!plan) return null;
  const works = workingBy(now, planning, plan);
  const share = (of: (one: Tried) => boolean) =>
    kept.reduce((chance, { k }, i) => (of(tried[k]!) ? chance + weights[i]! : chance), 0);
  return { after: share(works), now: share(byNow) };
}

/** Whether a pair works, cut by a plan. */
function workingBy({ middle, question }: Start['now'], planning: Planning, plan: Plan): (tried: Tried) => boolean {
  const off = cutOffBy(planning, plan);
  const sigmas = [...off.off.taken, ...(off.off.faces ?? [])].map((one) => one.sigma);
  return ({ pair, errors }) =>
    worksAtBest(
      cutPair(
        off,
        pair,
        sigmas.map((one, c) => one * errors[1 + c]!),
      ),
      middle,
      question,
    );
}

/** The same, looked at once for each pair. */
function onceEach(works: (tried: Tried) => boolean): (tried: Tried) => boolean {
  const known = new Map<Tried, boolean>();
  return (tried) => {
    const found = known.get(tried) ?? works(tried);
    known.set(tried, found);
    return found;
  };
}

/** The chance, and where it lies 19 times in 20. */
function chanceOver({ share, low, high }: { share: number; low: number; high: number }, tries: readonly Works[]) {
  const n = tries.length;
  const mean = (of: (works: Works) => number) => tries.reduce((sum, works) => sum + of(works), 0) / n;
  const [a, b] = [mean(({ after }) => after), mean(({ now }) => now)];
  const variance = mean(({ now }) => (now - b) ** 2);
  const beta = variance > 0 ? mean(({ after, now }) => (after - a) * (now - b)) / variance : 0;
  const left = mean(({ after, now }) => (after - a - beta * (now - b)) ** 2);
  const within = (x: number) => Math.min(1, Math.max(0, x));
  const chance = within(a - beta * (b - share));
  // One try more, in the middle and as doubtful as one may be: few that agree do not make it sure.
  const middle = (n * chance + 0.5) / (n + 1);
  const spread = (n * left + middle * (1 - middle)) / (n + 1);
  const counted = Math.max(1, (middle * (1 - middle)) / (spread / n));
  const limits = chanceOf(chance * counted, counted);
  const now = (Math.abs(beta) * (high - low)) / 2;
  return {
    share: chance,
    low: within(chance - Math.hypot(chance - limits.low, now)),
    high: within(chance + Math.hypot(limits.high - chance, now)),
  };
}
