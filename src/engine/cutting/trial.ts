/**
 * What trial assemblies tell, one after the other, and what is left to cut.
 *
 * Unknown is e_i, by how much the film of seat i is greater than the parts are taken to give (m), the same along its
 * line. Before the first trial e is normal with mean 0 and the doubt of the measurements; stock taken between trials
 * adds the doubt of its own amount. A trial can tell three things:
 *
 *   stand-off z   z = P_k(e_k) + noise        P_k position at which the seat k that touches first touches
 *                 film_i(z, e_i) ≥ 0          of every other seat
 *   blue          a seat that prints has a film of at most the blue's thickness there, one that does not has more
 *   shake         a value of the forward model of gauging, as it follows every e
 *
 * Which seat touched is not known: each is a hypothesis k with its own update, weighted by how likely z and the blue
 * are under it; the mixture is put back into one normal of the same mean and covariance (assumed-density filtering).
 * Bounds on a film truncate its normal (truncated.ts). Measurements are taken to be linear in e about its mean, which
 * is exact for straight lines; the shake is relinearised.
 * @source Kalman's update; assumed-density filtering: T. Minka, A family of algorithms for approximate Bayesian
 *         inference, 2001, chapter 3 (from memory)
 */
import { leastFilm } from '../contact/film.ts';
import { positionForFilm, type SeatInput, seatLines } from '../contact/fit.ts';
import { filmPerPosition } from '../gauging/filmGradient.ts';
import type { Part, ReadingOf } from '../gauging/reading.ts';
import { predict } from '../gauging/readings/index.ts';
import type { PlanInput } from './problem.ts';
import { movedAxially, renewed, withStock } from './stock.ts';
import { CONTRADICTED, truncated } from './truncated.ts';

export interface Taken {
  seat: number;
  part: Part;
  /** m, and its standard uncertainty */
  normal: number;
  sigma: number;
}

export interface FaceTaken {
  /** place in the list of faces */
  face: number;
  /** metal off (m; below 0 put on), and its standard uncertainty */
  off: number;
  sigma: number;
}

export interface Trial {
  /** stock taken since the trial before */
  taken: readonly Taken[];
  faces?: readonly FaceTaken[];
  /** m */
  standOff?: { value: number; sigma: number };
  shake?: Omit<ReadingOf<'shake'>, 'kind'>;
  /** seats looked at, and whether they print */
  blue?: readonly { seat: number; prints: boolean }[];
  /** thickness of the blue (m) */
  thickness: number;
}

export interface Estimate {
  /** e, and its covariance (m, m²) */
  mean: number[];
  covariance: number[][];
}

export type TrialResult =
  | { status: 'updated'; estimate: Estimate /** likelihood that each seat was the one that touched; null without a stand-off */; touched: number[] | null /** the parts by now, as believed */; seats: SeatInput[] }
  /** nothing the parts could be, within the doubts stated, reads like this */
  | { status: 'contradiction' }
  /** the shake has no prediction for these parts */
  | { status: 'noModel' };

/** The estimate after each trial in turn; it ends with the first that cannot be taken in. */
export function trialsOf(input: Pick<PlanInput, 'seats' | 'faces'> & Partial<Pick<PlanInput, 'allow'>>, trials: readonly Trial[], doubt: number): TrialResult[] {
  let estimate: Estimate = { mean: input.seats.map(() => 0), covariance: input.seats.map((_, i) => input.seats.map((__, j) => (i === j ? doubt * doubt : 0))) };
  let parts = input.seats.map((seat) => ({ ...seat }));
  const results: TrialResult[] = [];
  const fresh = new Set<string>();
  for (const trial of trials) {
    parts = parts.map((seat) => ({ ...seat }));
    for (const { seat, part, normal, sigma } of trial.taken) {
      // the first cut to a new line leaves nothing of the old one
      const { renew } = input.allow?.find((a) => a.seat === seat && a.part === part) ?? {};
      if (renew !== undefined && !fresh.has(`${seat} ${part}`)) parts[seat]![part] = renewed(parts[seat]![part], renew);
      fresh.add(`${seat} ${part}`);
      parts[seat]![part] = withStock(parts[seat]![part], part, normal);
      estimate.covariance[seat]![seat]! += sigma * sigma;
    }
    for (const { face, off, sigma } of trial.faces ?? []) {
      const { seats, part, moves } = input.faces![face]!;
      for (const seat of seats) {
        parts[seat]![part] = movedAxially(parts[seat]![part], moves * off);
        // the same doubt in all of them, each as its half angle makes film of it
        for (const other of seats) estimate.covariance[seat]![other]! += sigma * sigma * Math.sin(parts[seat]![part].halfAngle) * Math.sin(parts[other]![part].halfAngle);
      }
    }
    const result = updated(parts, estimate, trial);
    results.push(result);
    if (result.status !== 'updated') break;
    estimate = copied(result.estimate);
  }
  return results;
}

/** The parts with the films greater by e. */
export const believed = (parts: readonly SeatInput[], mean: readonly number[]): SeatInput[] => parts.map((seat, i) => ({ ...seat, bush: withStock(seat.bush, 'bush', mean[i]!) }));

/** Rooms left after what was taken: less cleanup, less limit. */
export const remaining = (allow: PlanInput['allow'], trials: readonly Trial[]): PlanInput['allow'] =>
  allow.map((a) => {
    const off = trials.flatMap(({ taken }) => taken).reduce((sum, t) => (t.seat === a.seat && t.part === a.part ? sum + t.normal : sum), 0);
    return { ...a, cleanup: Math.max(0, a.cleanup - off), limit: Math.max(0, a.limit - off) };
  });

/** The same of faces: what was put on may be taken off again, and the other way round. */
export const remainingFaces = (faces: NonNullable<PlanInput['faces']>, trials: readonly Trial[]): NonNullable<PlanInput['faces']> =>
  faces.map((face, k) => {
    const off = trials.flatMap((trial) => trial.faces ?? []).reduce((sum, t) => (t.face === k ? sum + t.off : sum), 0);
    return { ...face, cleanup: Math.max(0, face.cleanup - off), limit: Math.max(0, face.limit - off), add: face.add === 0 ? 0 : Math.max(0, face.add + off) };
  });

function updated(parts: readonly SeatInput[], before: Estimate, trial: Trial): TrialResult {
  let estimate = before;
  let touched: number[] | null = null;
  if (trial.standOff) {
    const mixture = hypotheses(parts, before, trial, trial.standOff);
    if (mixture.every(({ likelihood }) => likelihood < CONTRADICTED)) return { status: 'contradiction' };
    const all = mixture.reduce((sum, { weight }) => sum + weight, 0);
    estimate = collapsed(
      mixture.map((m) => ({ ...m, weight: m.weight / all })),
      parts.length,
    );
    touched = parts.map((_, i) => (mixture.find(({ seat }) => seat === i)?.weight ?? 0) / all);
  }
  if (trial.shake) {
    const shaken = shakeUpdate(parts, estimate, trial.shake);
    if (!shaken) return { status: 'noModel' };
    if (shaken.likelihood < CONTRADICTED) return { status: 'contradiction' };
    estimate = shaken.estimate;
  }
  return { status: 'updated', estimate, touched, seats: believed(parts, estimate.mean) };
}

interface Hypothesis extends Measured {
  seat: number;
}

interface Measured {
  estimate: Estimate;
  /** density of what was read, and the same as a share of the greatest it could have been */
  weight: number;
  likelihood: number;
}

/** One for every seat that can have touched first. */
function hypotheses(parts: readonly SeatInput[], before: Estimate, trial: Trial, read: { value: number; sigma: number }): Hypothesis[] {
  const printed = (i: number) => trial.blue?.find(({ seat }) => seat === i)?.prints;
  const now = believed(parts, before.mean);
  return now.flatMap((part, k): Hypothesis[] => {
    const lines = seatLines(part);
    const at = lines.closes === 'rearward' ? positionForFilm(lines, 0) : null;
    if (at === null || printed(k) === false) return [];
    // A film greater by e lets the journal go further by e over the film it gains a metre.
    const gain = -1 / filmPerPosition(lines, at)!;
    const gains = now.map((_, i) => (i === k ? gain : 0));
    const taken = measured(before, gains, read.value - at, read.sigma);
    let { estimate } = taken;
    let clear = 1;
    for (const [i, other] of now.entries()) {
      if (i === k) continue;
      const film = leastFilm(seatLines(other).gap, read.value);
      if (film === null) continue;
      // film here is that with e at the mean before; it is greater by what e differs from that
      const [low, high] = printed(i) === undefined ? [0, Number.POSITIVE_INFINITY] : printed(i) ? [0, trial.thickness] : [trial.thickness, Number.POSITIVE_INFINITY];
      const bounded = between(estimate, i, low - film + before.mean[i]!, high - film + before.mean[i]!);
      clear *= bounded.probability < CONTRADICTED ? 0 : bounded.probability;
      estimate = bounded.estimate;
    }
    return [{ seat: k, weight: taken.weight * clear, likelihood: taken.likelihood * clear, estimate }];
  });
}

/** Kalman's update by a value that is `off` (m) from what is predicted and follows e by `gains`; its weight is its density. */
function measured({ mean, covariance }: Estimate, gains: readonly number[], off: number, sigma: number): Measured {
  const along = covariance.map((row) => row.reduce((sum, c, j) => sum + c * gains[j]!, 0));
  const variance = sigma * sigma + along.reduce((sum, c, i) => sum + c * gains[i]!, 0);
  const estimate = {
    mean: mean.map((m, i) => m + (along[i]! * off) / variance),
    covariance: covariance.map((row, i) => row.map((c, j) => c - (along[i]! * along[j]!) / variance)),
  };
  const likelihood = Math.exp((-off * off) / (2 * variance));
  return { estimate, likelihood, weight: likelihood / Math.sqrt(variance) };
}

/** e_i known to lie between two bounds. */
function between({ mean, covariance }: Estimate, i: number, low: number, high: number): { estimate: Estimate; probability: number } {
  const variance = covariance[i]![i]!;
  if (variance === 0) return { estimate: { mean, covariance }, probability: mean[i]! >= low && mean[i]! <= high ? 1 : 0 };
  const cut = truncated(mean[i]!, Math.sqrt(variance), low, high);
  const share = covariance.map((row) => row[i]! / variance);
  const less = variance - cut.variance;
  return {
    probability: cut.probability,
    estimate: { mean: mean.map((m, j) => m + share[j]! * (cut.mean - mean[i]!)), covariance: covariance.map((row, j) => row.map((c, l) => c - share[j]! * share[l]! * less)) },
  };
}

/** One normal of the mixture's mean and covariance. */
function collapsed(mixture: readonly Hypothesis[], size: number): Estimate {
  const mean = Array.from({ length: size }, (_, i) => mixture.reduce((sum, { weight, estimate }) => sum + weight * estimate.mean[i]!, 0));
  const covariance = mean.map((mi, i) => mean.map((mj, j) => mixture.reduce((sum, { weight, estimate: e }) => sum + weight * (e.covariance[i]![j]! + (e.mean[i]! - mi) * (e.mean[j]! - mj)), 0)));
  return { mean, covariance };
}

/** Step (m) of the differences by which the shake's dependence on e is found, and rounds of relinearising. */
const DIFFERENCE = 1e-8;
const ROUNDS = 5;

function shakeUpdate(parts: readonly SeatInput[], before: Estimate, shake: Omit<ReadingOf<'shake'>, 'kind'>): Measured | null {
  const read = (e: readonly number[]) => predict({ kind: 'shake', ...shake }, believed(parts, e)).value;
  let about = before.mean;
  let found: Measured | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    const here = read(about);
    if (here === null) return null;
    const gains: number[] = [];
    for (let i = 0; i < about.length; i++) {
      const more = read(about.map((e, j) => (j === i ? e + DIFFERENCE : e)));
      if (more === null) return null;
      gains.push((more - here) / DIFFERENCE);
    }
    const predicted = here + gains.reduce((sum, g, i) => sum + g * (before.mean[i]! - about[i]!), 0);
    found = measured(before, gains, shake.value - predicted, shake.sigma);
    about = found.estimate.mean;
  }
  return found;
}

const copied = ({ mean, covariance }: Estimate): Estimate => ({ mean: [...mean], covariance: covariance.map((row) => [...row]) });
