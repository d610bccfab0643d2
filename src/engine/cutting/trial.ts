/**
 * What trial assemblies tell, one after the other: the estimate after each (belief.ts, trialReadings.ts), and the rooms
 * that what was taken leaves for the rest.
 *
 * Before the first trial every film is what the readings say, with their doubt; stock taken between trials adds the
 * doubt of its own amount. A trial that agrees with what is believed leaves it where it is and makes it surer, however
 * often.
 */

import type { Metres } from '../../design/dimension.ts';
import {
  type Account,
  beginning,
  costOf,
  type ErrorName,
  endOf,
  errorsOf,
  type FilmsBefore,
  filmsOf,
  likelihoods,
  ranked,
  withError,
} from '../belief/accounts.ts';
import type { SeatInput } from '../contact/fit.ts';
import type { Part } from '../parts/line.ts';
import { movedAxially } from '../parts/shift.ts';
import { renewed, withStock } from '../parts/stock.ts';
import { type Clash, clashesOf } from './clashes.ts';
import { explanations } from './explanations.ts';
import type { PlanInput } from './problem.ts';
import { type Blue, believed, type ShakeFelt } from './trialReadings.ts';

export interface StockTaken {
  seat: number;
  part: Part;
  /** m, and its standard uncertainty */
  normal: number;
  sigma: number;
  /** m, what came off beyond that, where it is known: parts drawn know it */
  more?: number;
}

interface FaceTaken {
  /** place in the list of faces */
  face: number;
  /** metal off (m; below 0 put on), and its standard uncertainty */
  off: number;
  sigma: number;
}

export interface Trial {
  /** stock taken since the trial before */
  taken: readonly StockTaken[];
  faces?: readonly FaceTaken[];
  /** m */
  standOff?: { value: number; sigma: number };
  shake?: ShakeFelt;
  /** seats looked at, and whether they print */
  blue?: Blue;
  /** thickness of the blue (m) */
  thickness: Metres;
}

/** What is believed after a trial. */
export interface Updated {
  status: 'updated';
  /**
   * by how much each film is most likely greater than the parts are taken to give, and how far that may be off (m; one
   * standard deviation, the further side)
   */
  films: number[];
  sigmas: number[];
  /** how likely it is that each seat was the one that touched; null where neither stand-off nor blue was looked at */
  touched: number[] | null;
  /** the parts by now as they were taken to be, and as they are believed to be */
  parts: SeatInput[];
  seats: SeatInput[];
  /** readings, of this trial and those before, that do not go with the rest */
  clashes: Clash[];
  /** by how much (m) more than told most likely came off surfaces and faces, this trial and those before */
  came: (ErrorName & { more: number })[];
  /** what may have happened, the most likely first */
  accounts: Account[];
}

export type TrialResult =
  | Updated
  /** nothing the parts could be, within the doubts stated, reads like this */
  | { status: 'contradiction' }
  /** the shake has no prediction for these parts */
  | { status: 'noModel' };

export type TrialInput = Pick<PlanInput, 'seats' | 'faces'> & Partial<Pick<PlanInput, 'allow'>>;

/**
 * The estimate after each trial in turn; it ends with the first that cannot be taken in. Of the last it is told what
 * clashes.
 */
export function trialsOf(input: TrialInput, trials: readonly Trial[], before: FilmsBefore): TrialResult[] {
  const results = estimates(input, trials, before);
  const last = results.at(-1);
  if (last?.status !== 'updated') return results;
  const clashes = clashesOf(trials, last, (fewer) => estimates(input, fewer, before));
  if (clashes.length === 0) return results;
  const accounts = last.accounts.map((account) => ({ ...account, misfit: clashes[0]!.deviations }));
  return [...results.slice(0, -1), { ...last, clashes, accounts, sigmas: sigmasOf(accounts) }];
}

function estimates(input: TrialInput, trials: readonly Trial[], before: FilmsBefore): TrialResult[] {
  let accounts = [beginning(before)];
  let parts = input.seats.map((seat) => ({ ...seat }));
  const fresh = new Set<string>();
  const results: TrialResult[] = [];
  for (const [place, trial] of trials.entries()) {
    for (const [at, { seat, sigma }] of trial.taken.entries()) {
      const gains = unit(input, (i) => (i === seat ? 1 : 0));
      accounts = accounts.map((a) => withError(a, gains, sigma, { trial: place, of: 'taken', place: at }));
    }
    for (const [at, { face, sigma }] of (trial.faces ?? []).entries()) {
      const { seats, part, moves } = input.faces![face]!;
      // the same error in all of them, each as its half angle makes film of it: a journal opens toward the nose
      const opens = part === 'journal' ? moves : -moves;
      const gains = unit(input, (i) => (seats.includes(i) ? opens * Math.sin(parts[i]![part].halfAngle) : 0));
      accounts = accounts.map((a) => withError(a, gains, sigma, { trial: place, of: 'faces', place: at }));
    }
    parts = cutBy(input, parts, trial, fresh);
    const result = updated(parts, accounts, trial, before.beyond);
    results.push(result);
    if (result.status !== 'updated') break;
    accounts = result.accounts;
  }
  return results;
}

/** What is believed after the last of them, whether it clashes or not. */
export const estimateAfter = (
  input: TrialInput,
  trials: readonly Trial[],
  before: FilmsBefore,
): TrialResult | undefined => estimates(input, trials, before).at(-1);

const unit = ({ seats }: TrialInput, of: (seat: number) => number) => seats.map((_, i) => of(i));

/** The parts after what was taken before a trial. */
export function cutBy(
  { allow, faces }: TrialInput,
  before: readonly SeatInput[],
  trial: Trial,
  fresh: Set<string>,
): SeatInput[] {
  const parts = before.map((seat) => ({ ...seat }));
  for (const { seat, part, normal, more = 0 } of trial.taken) {
    // the first cut to a new line leaves nothing of the old one
    const { renew } = allow?.find((a) => a.seat === seat && a.part === part) ?? {};
    if (renew !== undefined && normal > 0 && !fresh.has(`${seat} ${part}`))
      parts[seat]![part] = renewed(parts[seat]![part], renew);
    if (normal > 0) fresh.add(`${seat} ${part}`);
    parts[seat]![part] = withStock(parts[seat]![part], part, normal + more);
  }
  for (const { face, off } of trial.faces ?? []) {
    const { seats, part, moves } = faces![face]!;
    for (const seat of seats) parts[seat]![part] = movedAxially(parts[seat]![part], moves * off);
  }
  return parts;
}

/** The trials with what came off, not what was told to. @param errorOf of each metal off: how much more (m) came off */
export const withErrors = (trials: readonly Trial[], errorOf: (name: ErrorName) => number): Trial[] =>
  trials.map((trial, t) => ({
    ...trial,
    taken: trial.taken.map((one, place) => ({ ...one, more: errorOf({ trial: t, of: 'taken', place }) })),
    ...(trial.faces && {
      faces: trial.faces.map((one, place) => ({ ...one, off: one.off + errorOf({ trial: t, of: 'faces', place }) })),
    }),
  }));

/** A trial whose readings are this many standard deviations from all that could be is no reading of these parts. */
const CONTRADICTED = 6;
function updated(
  parts: readonly SeatInput[],
  before: readonly Account[],
  trial: Trial,
  beyond: FilmsBefore['beyond'],
): TrialResult {
  const touches = trial.standOff !== undefined || (trial.blue ?? []).length > 0;
  const explained = before.flatMap((account) =>
    (touches ? parts.map((_, seat) => seat) : [null]).map((seat) => explanations(parts, account, trial, seat, beyond)),
  );
  const accounts = ranked(
    explained.flatMap((found) => (found === 'noModel' ? [] : found)),
    ({ seat }) => seat,
  );
  if (accounts.length === 0) return { status: explained.includes('noModel') ? 'noModel' : 'contradiction' };
  if (costOf(accounts[0]!) - costOf(before[0]!) > CONTRADICTED ** 2) return { status: 'contradiction' };
  const films = filmsOf(accounts[0]!);
  const weights = likelihoods(accounts);
  return {
    status: 'updated',
    films,
    sigmas: sigmasOf(accounts),
    touched: touches
      ? parts.map((_, i) => accounts.reduce((sum, { seat }, k) => sum + (seat === i ? weights[k]! : 0), 0))
      : null,
    parts: [...parts],
    seats: believed(parts, films),
    clashes: [],
    came: errorsOf(accounts[0]!),
    accounts,
  };
}

const sigmasOf = (accounts: readonly Account[]): number[] =>
  filmsOf(accounts[0]!).map((_, i, films) =>
    spreadOf(
      accounts,
      films.map((__, k) => (k === i ? 1 : 0)),
    ),
  );

/** How far (m) a combination of the films may be off its estimate: one standard deviation, the further side. */
export function spreadOf(accounts: readonly Account[], gains: readonly number[]): number {
  const [low, high] = [endOf(accounts, gains, -1, 1), endOf(accounts, gains, 1, 1)];
  const middle = gains.reduce((sum, g, i) => sum + g * filmsOf(accounts[0]!)[i]!, 0);
  return Math.max(middle - low.value, high.value - middle);
}

/** Rooms left after what was taken: less cleanup, less limit. */
export const remaining = (allow: PlanInput['allow'], trials: readonly Trial[]): PlanInput['allow'] =>
  allow.map((a) => {
    const off = trials
      .flatMap(({ taken }) => taken)
      .reduce((sum, t) => (t.seat === a.seat && t.part === a.part ? sum + t.normal : sum), 0);
    return { ...a, cleanup: Math.max(0, a.cleanup - off), limit: Math.max(0, a.limit - off) };
  });

/** The same of faces: what was put on may be taken off again, and the other way round. */
export const remainingFaces = (
  faces: NonNullable<PlanInput['faces']>,
  trials: readonly Trial[],
): NonNullable<PlanInput['faces']> =>
  faces.map((face, k) => {
    const off = trials.flatMap((trial) => trial.faces ?? []).reduce((sum, t) => (t.face === k ? sum + t.off : sum), 0);
    return {
      ...face,
      cleanup: Math.max(0, face.cleanup - off),
      limit: Math.max(0, face.limit - off),
      add: face.add === 0 ? 0 : Math.max(0, face.add + off),
    };
  });
