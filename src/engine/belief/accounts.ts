/**
 * What is believed of the films after some trials: the most likely of them, and how far from it they may be.
 *
 * Unknown x: first e_i, by how much the film of seat i is greater than the parts are taken to give, then the errors of
 * what was taken off between trials. Before any trial they are normal, with the mean m and the covariance P that the
 * readings of the bench give them (filmsBelieved.ts). What was read
 * (linear in x, with normal noise) and what is known to be so (bounds) give the sum of squares
 *
 *   cost(x) = (x - m)ᵀ·P⁻¹·(x - m) + Σ ((read - predicted(x))/σ)²        with every bound kept
 *
 * and the estimate is the x of least cost: constrained weighted least squares, which is the mode of the posterior
 * density (maximum a posteriori). Not its mean: a bound on one side pulls the mean away from it, the more often it
 * is told the further, though nothing that was read says so. The mode stays where every reading agrees and every bound
 * is kept, however often.
 *
 * Which seat touched is not known. Every sequence of seats is an account of its own, with readings and bounds of its
 * own; the estimate is that of the least cost among all. How likely each is: Laplace's approximation
 * exp(-cost/2)/Π√(variance of each reading as predicted).
 *
 * How far a combination u = j·e may lie off: as far as the least cost with u held stays within level² of the least of
 * all (profile likelihood). Without bounds and with one account that is level standard deviations; a bound ends it
 * sooner, another account that explains the readings nearly as well reaches further.
 *
 * Where what was read and the bounds disagree, the least cost is high and rises so steeply about it that level² is
 * spent at once: the doubt would vanish just where nothing fits. All standard deviations are then taken to be too
 * small by the misfit m: the level counts m times. m is the greatest of 1, √(cost of the bounds), and the deviations of
 * what clashes (clashes.ts).
 * @source Birge1932 (scaling by the misfit); VenzonMoolgavkar1988 (profile likelihood); MacKay chapter 27 (Laplace's
 * approximation); Kalman1960 (recursive least squares)
 */
import { dot } from '../algebra/dot.ts';
import type { SeatInput } from '../contact/fit.ts';
import { type HalfSpace, type Mode, modeWithin, type Normal, times, Walls } from './bounded.ts';
import type { Influence } from './unknowns.ts';

/** A value read (m), linear in e about the point it was worked out at: predicted + gains·(e - about). */
export interface Observation {
  value: number;
  sigma: number;
  predicted: number;
  gains: readonly number[];
  about: readonly number[];
}

/**
 * What an error of metal taken off is the error of: a place in what that trial says was taken off surfaces, or faces.
 */
export interface ErrorName {
  trial: number;
  of: 'taken' | 'faces';
  place: number;
}

/** gains·e ≤ limit (m) */
export interface Bound {
  gains: readonly number[];
  limit: number;
}

/** One account of what happened. */
export interface Account extends Normal {
  /** e of the parts as they are by now, as rows on x */
  now: number[][];
  bounds: HalfSpace[];
  /** the errors among x, after the films */
  errors: ErrorName[];
  /** what was read, linear on x: value - row·x is nothing but noise of deviation sigma (m) */
  told: { row: number[]; value: number; sigma: number }[];
  /** sum of squares of what was read, bounds not counted, and Σ log of the variances as predicted */
  cost: number;
  logVariance: number;
  mode: Mode;
  /** how badly what was read goes together: the deviations of what clashes, 1 where nothing does */
  misfit: number;
}

/** Squares by which an account may be worse than the best and still be carried on, and how many are. */
const CARRIED_ON = 30;
const MOST_ACCOUNTS = 12;
/** A bound this many standard deviations away is never reached by readings that do not contradict what is believed. */
const OUT_OF_REACH = 9;

/** What is believed before the first trial: of the films (m, m²), and of errors that readings of the bench lean on. */
export interface FilmsBefore extends Normal {
  errors: ErrorName[];
  /** variance (m²) of a value that follows the shapes of these seats so, beyond what the films tell of it */
  beyond?: (influences: readonly Influence[], seats: readonly SeatInput[]) => number;
}

export function beginning({ mean, covariance, errors }: FilmsBefore): Account {
  const films = mean.length - errors.length;
  return {
    mean: [...mean],
    covariance: covariance.map((row) => [...row]),
    now: Array.from({ length: films }, (_, i) => mean.map((__, j) => (i === j ? 1 : 0))),
    bounds: [],
    errors: [...errors],
    told: [],
    cost: 0,
    logVariance: 0,
    mode: { point: [...mean], cost: 0 },
    misfit: 1,
  };
}

export const filmsOf = ({ now, mode }: Account): number[] => times(now, mode.point);
export const costOf = ({ cost, mode }: Account): number => cost + mode.cost;

/**
 * An error of standard deviation sigma (m) that the films follow by these gains from here on: one more unknown, or one
 * that readings of the bench lean on too, and that is among them already.
 */
export function withError(account: Account, gains: readonly number[], sigma: number, of: ErrorName): Account {
  const { mean, covariance, now, bounds, mode, errors, told } = account;
  const known = errors.findIndex((e) => e.trial === of.trial && e.of === of.of && e.place === of.place);
  if (known >= 0) {
    const place = now.length + known;
    return { ...account, now: now.map((row, i) => row.map((r, j) => (j === place ? r + gains[i]! : r))) };
  }
  if (sigma === 0) return account;
  return {
    ...account,
    mean: [...mean, 0],
    covariance: [...covariance.map((row) => [...row, 0]), [...mean.map(() => 0), sigma * sigma]],
    now: now.map((row, i) => [...row, gains[i]!]),
    bounds: bounds.map((bound) => ({ ...bound, normal: [...bound.normal, 0] })),
    told: told.map((each) => ({ ...each, row: [...each.row, 0] })),
    errors: [...errors, of],
    mode: { ...mode, point: [...mode.point, 0] },
  };
}

/** Gains on e as gains on x. */
const onUnknowns = ({ now, mean }: Account, gains: readonly number[]): number[] =>
  mean.map((_, j) => gains.reduce((sum, g, i) => sum + g * now[i]![j]!, 0));

export function withTold(account: Account, { value, sigma, predicted, gains, about }: Observation): Account {
  const row = onUnknowns(account, gains);
  const along = times(account.covariance, row);
  const variance = sigma * sigma + dot(row, along);
  const noise = value - predicted + dot(gains, about);
  const off = noise - dot(row, account.mean);
  return {
    ...account,
    mean: account.mean.map((m, i) => m + (along[i]! * off) / variance),
    covariance: account.covariance.map((r, i) => r.map((c, j) => c - (along[i]! * along[j]!) / variance)),
    cost: account.cost + (off * off) / variance,
    logVariance: account.logVariance + Math.log(variance),
    told: [...account.told, { row, value: noise, sigma }],
  };
}

/** By how much (m) more metal than told most likely came off, for every error there is. */
export const errorsOf = ({ errors, mode, now }: Account): (ErrorName & { more: number })[] =>
  errors.map((of, i) => ({ ...of, more: mode.point[now.length + i]! }));

/** By how much all standard deviations seem too small. */
const misfitOf = ({ mode, misfit }: Account): number => Math.max(1, Math.sqrt(mode.cost), misfit);

/** The account with more bounds, its mode found. */
export function withBounds(account: Account, bounds: readonly Bound[]): Account {
  const { mean, covariance } = account;
  const near = bounds
    .map(({ gains, ...bound }) => ({ ...bound, normal: onUnknowns(account, gains) }))
    .filter(
      ({ normal, limit }) =>
        limit - dot(normal, mean) < OUT_OF_REACH * Math.sqrt(Math.max(0, dot(normal, times(covariance, normal)))),
    );
  const all = [...account.bounds, ...near];
  return { ...account, bounds: all, mode: modeWithin(account, all) };
}

/**
 * The best first; those too unlikely to matter left out, but of each kind the best stays, for later trials may speak
 * for it.
 */
export function ranked<A extends Account>(accounts: readonly A[], kindOf: (account: A) => unknown): A[] {
  const sorted = [...accounts]
    .sort((a, b) => costOf(a) - costOf(b))
    .filter((account, _, [best]) => costOf(account) <= costOf(best!) + CARRIED_ON);
  const kinds = new Set<unknown>();
  const [firsts, others]: [A[], A[]] = [[], []];
  for (const account of sorted) {
    (kinds.has(kindOf(account)) ? others : firsts).push(account);
    kinds.add(kindOf(account));
  }
  return [...firsts, ...others.slice(0, Math.max(0, MOST_ACCOUNTS - firsts.length))].sort(
    (a, b) => costOf(a) - costOf(b),
  );
}

/** How likely each account is, all together 1. */
export function likelihoods(accounts: readonly Account[]): number[] {
  const logs = accounts.map((account) => -(costOf(account) + account.logVariance) / 2);
  const most = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - most));
  const all = weights.reduce((a, b) => a + b, 0);
  return weights.map((w) => w / all);
}

export interface End {
  /** value of the combination there (m), and the e that have it */
  value: number;
  films: number[];
}

/** Steps of halving: to a millionth of a standard deviation. */
const HALVINGS = 24;

/** How far down (side -1) or up (1) a combination of the films may lie; the accounts are ranked. */
export function endOf(accounts: readonly Account[], gains: readonly number[], side: 1 | -1, level: number): End {
  const least = costOf(accounts[0]!);
  const misfit = misfitOf(accounts[0]!);
  let end: End = { value: dot(gains, filmsOf(accounts[0]!)), films: filmsOf(accounts[0]!) };
  for (const account of accounts) {
    const found = endWithin(account, gains, side, (level * misfit) ** 2 + least);
    if (found && side * (found.value - end.value) > 0) end = found;
  }
  return end;
}

/** The end within one account; null where that itself costs too much. */
function endWithin(account: Account, gains: readonly number[], side: 1 | -1, most: number): End | null {
  if (costOf(account) > most) return null;
  const row = onUnknowns(account, gains);
  const along = times(account.covariance, row);
  const variance = dot(row, along);
  const here: End = { value: dot(row, account.mode.point), films: filmsOf(account) };
  if (!(variance > 0)) return here;
  const centre = dot(row, account.mean);
  const { bounds } = account;
  // With u held the covariance is P - along·alongᵀ/variance, and the mean moves along with u.
  const walls = new Walls(bounds, (g) => {
    const share = dot(along, g) / variance;
    return times(account.covariance, g).map((p, i) => p - along[i]! * share);
  });
  const over = bounds.map(({ normal, limit }) => dot(normal, account.mean) - limit);
  const follows = bounds.map(({ normal }) => dot(normal, along) / variance);
  const at = (value: number) => {
    const { cost, shift } = walls.held(over.map((r, c) => r + follows[c]! * (value - centre)));
    return { cost: account.cost + (value - centre) ** 2 / variance + cost, shift };
  };
  const end = (value: number): End => {
    const { shift } = at(value);
    const back = shift?.();
    return {
      value,
      films: times(
        account.now,
        account.mean.map((m, i) => m + (along[i]! * (value - centre)) / variance + (back?.[i] ?? 0)),
      ),
    };
  };
  // Bounds can only cost more: without them it would end here.
  const farthest = centre + side * Math.sqrt(Math.max(0, (most - account.cost) * variance));
  if (at(farthest).cost <= most + 1e-9) return end(farthest);
  let [good, bad] = [here.value, farthest];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (good + bad) / 2;
    if (at(middle).cost <= most) good = middle;
    else bad = middle;
  }
  return end(good);
}
