/**
 * Where the numbers of the parts most likely are after trials, as normal variables that pairs are drawn from
 * (pairsDrawn.ts): one for every account of the trials (belief/accounts.ts) and every choice of the ends at which the
 * films are least (belief/filmsBelieved.ts).
 *
 * z: the numbers of the surfaces, then the errors of metal off that no reading of the bench leans on. Each reading of a
 * trial is linear on z; one after the other,
 *
 *   v = gᵀ·P·g + σ²      m ← m + P·g·(value - predicted)/v      P ← P - P·g·gᵀ·P/v
 *
 * A shake leans on both ends of every seat, and not as the films do: it is linearised by its own derivatives
 * (gauging/readings/shake.ts) about where the rest leads, a few times.
 * @source Kalman1960 (the update); JCGM100 5.1.2
 */
import { dot } from '../algebra/dot.ts';
import { lowerRoot } from '../algebra/triangular.ts';
import { beginning, type ErrorName } from '../belief/accounts.ts';
import { covarianceColumn } from '../belief/decomposition.ts';
import { positionFollowed } from '../belief/filmGradient.ts';
import type { FilmsBelieved } from '../belief/filmsBelieved.ts';
import { gradientOf, type Influence, isShape, withNumbers } from '../belief/unknowns.ts';
import { type SeatInput, seatLines } from '../contact/fit.ts';
import type { WholeBelief } from '../gauging/believe.ts';
import { perStock, rateOf } from '../gauging/cutsBetween.ts';
import { predict } from '../gauging/readings/index.ts';
import { seenAtTrial } from './seenAtTrial.ts';
import { cutBy, type Trial, type TrialInput, trialsOf, withErrors } from './trial.ts';

export interface Known {
  belief: WholeBelief;
  input: TrialInput;
  trials: readonly Trial[];
  /** errors of metal that the belief's numbers hold, with their places among them */
  errors: readonly { name: ErrorName; at: number }[];
  /** what is believed of the films at the ends of the seats, a choice of ends each (atEnds) */
  films: readonly FilmsBelieved[];
}

/** A reading of a trial, linear on z: value - row·z is noise of deviation sigma. */
interface LinearReading {
  row: Float64Array;
  value: number;
  sigma: number;
}

interface Gaussian {
  mean: number[];
  covariance: number[][];
}

export interface Proposal extends Gaussian {
  root: number[][];
  told: LinearReading[];
  /** log of how likely all of it was, before it was read */
  evidence: number;
  /** share of the draws that go by it */
  share: number;
}

/** The errors of metal that are unknowns of their own. */
export function ownErrors({ trials, errors }: Known): { name: ErrorName; sigma: number }[] {
  const all = trials.flatMap((trial, t) => [
    ...trial.taken.map(({ sigma }, place) => ({ name: { trial: t, of: 'taken' as const, place }, sigma })),
    ...(trial.faces ?? []).map(({ sigma }, place) => ({ name: { trial: t, of: 'faces' as const, place }, sigma })),
  ]);
  return all.filter(({ name, sigma }) => sigma > 0 && !errors.some((e) => isSame(e.name, name)));
}

const isSame = (a: ErrorName, b: ErrorName) => a.trial === b.trial && a.of === b.of && a.place === b.place;

/** The error of every metal off, from z. */
export const errorOn =
  ({ errors }: Known, own: readonly { name: ErrorName }[], numbers: number, z: ArrayLike<number>) =>
  (name: ErrorName): number => {
    const read = errors.find((e) => isSame(e.name, name));
    const place = read ? read.at : numbers + own.findIndex((e) => isSame(e.name, name));
    return z[place] ?? 0;
  };

/** What was believed before the trials. */
function beforeTrials({ belief: { decomposition, numbers } }: Known, own: readonly { sigma: number }[]): Gaussian {
  const n = numbers.length;
  const columns = Array.from({ length: n }, (_, j) => covarianceColumn(decomposition, j));
  const size = n + own.length;
  return {
    mean: [...numbers, ...own.map(() => 0)],
    covariance: Array.from({ length: size }, (_, i) =>
      Array.from({ length: size }, (__, j) =>
        i < n && j < n ? columns[j]![i]! : i === j ? own[i - n]!.sigma ** 2 : 0,
      ),
    ),
  };
}

/** None where the trials cannot be taken in. @param defensive share of the draws that go by none of them */
export function proposalsOf(known: Known, defensive: number): Proposal[] {
  const { input, trials, films, errors } = known;
  const own = ownErrors(known);
  const before = beforeTrials(known, own);
  const unshaken = trials.map(({ shake: _, ...rest }) => rest);
  const all = films.flatMap((each) => {
    const begun = { ...each, errors: errors.map(({ name }) => name) };
    const results = trialsOf(input, unshaken, begun);
    const last = results[results.length - 1];
    if (trials.length > 0 && (results.length < trials.length || last?.status !== 'updated')) return [];
    const accounts = last?.status === 'updated' ? last.accounts : [beginning(begun)];
    return accounts.map((account) => {
      const told = account.told.map(({ row, value, sigma }) => onNumbers(known, each, row, value, sigma, own.length));
      return { ...withShakes(known, own, before, told), bounds: account.mode.cost };
    });
  });
  // A bound that is far from kept makes an account as unlikely as a reading that is far off.
  const logs = all.map(({ evidence, bounds }) => evidence - bounds / 2);
  const shares = sharesOf(logs);
  return all.map((one, a) => ({ ...one, share: shares[a]! * (1 - defensive) }));
}

/**
 * With proposals by every reading linear about numbers that were drawn: touch and shake go round corners that an
 * account of films at one position cuts.
 */
export function proposalsAbout(
  known: Known,
  proposals: readonly Proposal[],
  about: readonly (readonly number[])[],
  defensive: number,
): Proposal[] {
  const own = ownErrors(known);
  const before = beforeTrials(known, own);
  const more = about.flatMap((z) => {
    const told = toldAbout(known, own, z, ['standOff', 'shake']);
    return WIDER.map((times) =>
      rooted(
        conditioned(
          before,
          told.map((one) => ({ ...one, sigma: times * one.sigma })),
        ),
      ),
    );
  });
  const share = ((1 - KEPT) * (1 - defensive)) / more.length;
  return [...proposals.map((one) => ({ ...one, share: one.share * KEPT })), ...more.map((one) => ({ ...one, share }))];
}

/** Share of the draws that go on as before. */
const KEPT = 0.4;
/** How much less surely each reading is taken there: round a corner the straight account ends. */
const WIDER = [1, 2];

const sharesOf = (logs: readonly number[]): number[] => {
  const most = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - most));
  const all = weights.reduce((a, b) => a + b, 0);
  return weights.map((w) => w / all);
};

/** A reading that is linear on the films and errors of an account, on z. */
function onNumbers(
  { belief: { numbers } }: Known,
  { mean, gradients }: FilmsBelieved,
  of: readonly number[],
  value: number,
  sigma: number,
  own: number,
): LinearReading {
  const n = numbers.length;
  const row = new Float64Array(n + own);
  let fixed = 0;
  for (const [i, gradient] of gradients.entries()) {
    for (let j = 0; j < n; j++) row[j]! += of[i]! * gradient[j]!;
    fixed += of[i]! * (mean[i]! - dot(gradient, numbers));
  }
  for (let k = 0; k < own; k++) row[n + k] = of[gradients.length + k] ?? 0;
  return { row, value: value - fixed, sigma };
}

function conditioned(before: Gaussian, told: LinearReading[]): Gaussian & Pick<Proposal, 'told' | 'evidence'> {
  let { mean, covariance } = before;
  let evidence = 0;
  for (const { row, value, sigma } of told) {
    const along = covariance.map((r) => dot(r, row));
    const variance = dot(row, along) + sigma * sigma;
    const off = value - dot(row, mean);
    mean = mean.map((m, i) => m + (along[i]! * off) / variance);
    covariance = covariance.map((r, i) => r.map((c, j) => c - (along[i]! * along[j]!) / variance));
    evidence -= (off * off) / variance / 2 + Math.log(variance) / 2;
  }
  return { mean, covariance, told, evidence };
}

/** Rounds of linearising the shakes. */
const ROUNDS = 4;

/** With the shakes too, as far as they can be told about where the rest leads. */
function withShakes(
  known: Known,
  own: readonly { name: ErrorName }[],
  before: Gaussian,
  others: LinearReading[],
): Omit<Proposal, 'share'> {
  let found = conditioned(before, others);
  const shaken = known.trials.some(({ shake }) => shake);
  for (let round = 0; shaken && round < ROUNDS; round++)
    found = conditioned(before, [...others, ...toldAbout(known, own, found.mean, ['shake'])]);
  return rooted(found);
}

const rooted = (found: ReturnType<typeof conditioned>): Omit<Proposal, 'share'> => ({
  ...found,
  root: lowerRoot(found.mean.length, (i, k) => found.covariance[i]![k]!, NOTHING ** 2),
});

/** No standard deviation of a direction is less (m, rad). */
const NOTHING = 1e-14;

type ReadAt = 'standOff' | 'shake';

/** What was read at the trials, linear about these numbers; none of what such parts do not tell. */
function toldAbout(
  known: Known,
  own: readonly { name: ErrorName }[],
  z: readonly number[],
  which: readonly ReadAt[],
): LinearReading[] {
  const { belief, input, trials } = known;
  const { seats, unknowns, numbers } = belief;
  const n = numbers.length;
  const start = withNumbers(seats, unknowns, Float64Array.from(z.slice(0, n)));
  if (!isShape(start)) return [];
  const fresh = new Set<string>();
  let now = start;
  return withErrors(trials, errorOn(known, own, n, z)).flatMap((trial, t): LinearReading[] => {
    now = cutBy(input, now, trial, fresh);
    return which.flatMap((what) => {
      const told = trial[what];
      const predicted = told && predictedAt(now, trial, what);
      if (!predicted) return [];
      const { value, influences } = predicted;
      const row = new Float64Array(z.length);
      row.set(gradientOf(influences, now, unknowns));
      for (const [k, { name }] of [...known.errors, ...own].entries()) {
        if (name.trial > t) continue;
        const place = k < known.errors.length ? known.errors[k]!.at : n + k - known.errors.length;
        row[place]! += perError(known, name, influences, now);
      }
      return [{ row, value: told.value - value + dot(row, z), sigma: told.sigma }];
    });
  });
}

interface Predicted {
  /** m */
  value: number;
  influences: readonly Influence[];
}

function predictedAt(now: readonly SeatInput[], { shake, thickness }: Trial, what: ReadAt): Predicted | null {
  if (what === 'shake') {
    const { value, influences } = predict({ kind: 'shake', ...shake! }, now);
    return value === null ? null : { value, influences };
  }
  const at = seenAtTrial(now, thickness)?.at;
  const touches = now.map((seat, i) => positionFollowed(seatLines(seat), i, 0));
  return touches.find((touch) => touch !== null && touch.value === at) ?? null;
}

/** How it follows an error of metal off (m/m). */
function perError({ trials, input }: Known, name: ErrorName, influences: readonly Influence[], now: SeatInput[]) {
  if (name.of === 'taken') return perStock(influences, now, trials[name.trial]!.taken[name.place]!);
  const { face } = trials[name.trial]!.faces![name.place]!;
  const { seats, part, moves } = input.faces![face]!;
  return rateOf({ cut: { of: 'face', seats, part, moves, normal: 0, sigma: 0 }, sign: 1 }, influences, now);
}
