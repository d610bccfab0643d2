/**
 * What may be behind trials that do not go together: every amount of metal that was told, every reading, and the parts
 * themselves, each tried as the one that is other than told.
 *
 * As the one that is wrong it has a doubt so wide that it hardly tells anything (σ' in place of σ). By Bayes' rule the
 * chance of each is
 *
 *   chance_c ∝ prior_c·p(read; σ'_c)
 *   p(read) = Σ_a exp(-cost_a/2)/Π√(2π·variance of each reading as predicted)
 *
 * beside that of none (chance alone, the doubts as they are told); a accounts of what happened (belief/accounts.ts,
 * Laplace's approximation). Each may be a slip of the hand too (slipsMade.ts), by which it is as sure as it was, but of
 * another number; what was read so was read τ times as densely, τ how many times as much was meant. An error of metal
 * off that readings of the bench lean on too is theirs to judge, and none of these.
 *
 * The doubt that would do: the least, told in steps of a fifth, with which nothing clashes any more.
 * @source MacKay chapter 28.1 (comparing hypotheses); MacKay chapter 27 (Laplace's approximation);
 * practice (how often, how wide)
 */
import { dot } from '../algebra/dot.ts';
import { type Account, costOf, type ErrorName, errorsOf, type FilmsBefore } from '../belief/accounts.ts';
import { type Clash, withoutReading } from './clashes.ts';
import { type MetalSlip, metalSlips, printedBy, type ReadSlip, readSlips, SLIP } from './slipsMade.ts';
import { estimateAfter, type Trial, type TrialInput, trialsOf, type Updated } from './trial.ts';

type Reading = Pick<Clash, 'trial' | 'what'>;

type Slip = MetalSlip | ReadSlip;

type Doubted = ErrorName | Slip | Reading | { of: 'parts' };

export interface TrialCause {
  doubted: Doubted;
  /** that it is this, beside all others and chance alone */
  chance: number;
  /** m: what most likely came off, was meant by what is a slip, or should have been read; null where it is neither */
  likely: number | null;
  /** m: the doubt with which all would go together; of parts, of every film. Null: none would do, or it has none. */
  enough: number | null;
}

/** How often each is wrong beforehand. @source practice */
const METAL = 0.02;
const READ = 0.01;
const PARTS = 0.02;
/** The share by which a dial errs. */
const OF_DIAL = 0.05;
/** As the one that is wrong: a share of what was told, of readings so many m at least; of parts, times their doubt. */
const SHARE = 0.5;
const OF_READING = 1e-4;
const OF_PARTS = 4;
/** A cause less likely than this is not worth a word. */
const WORTH_TELLING = 0.05;
/** Steps by which a doubt is widened, the first at half of how far it is off: then it is so once in 20. */
const WIDER = 1.2;
const STEPS = 20;

interface Told {
  input: TrialInput;
  trials: readonly Trial[];
  before: FilmsBefore;
}

/** The most likely first; none where all goes together. */
export function causesOf(told: Told): TrialCause[] {
  if (goTogether(told)) return [];
  const all = doubtedOf(told);
  const tried = all.flatMap((doubted) => {
    const then = estimateOf(widened(told, doubted, wideOf(told, doubted)));
    return then
      ? [{ doubted, then, weight: priorOf(doubted) * Math.exp(evidence(then.accounts)) * anyOf(told, doubted) }]
      : [];
  });
  const asTold = estimateOf(told);
  const none = asTold
    ? (1 - all.reduce((sum, doubted) => sum + priorOf(doubted), 0)) * Math.exp(evidence(asTold.accounts))
    : 0;
  const whole = tried.reduce((sum, { weight }) => sum + weight, none);
  return (
    tried
      .map((one) => ({ ...one, chance: one.weight / whole }))
      .filter(({ chance }) => chance >= WORTH_TELLING)
      .sort((a, b) => b.chance - a.chance)
      // Where the rest would still not go together it is no cause.
      .filter(({ doubted }) => goTogether(widened(told, doubted, wideOf(told, doubted))))
      .map(({ doubted, then, chance }) => {
        const likely = likelyOf(told, doubted, then);
        return { doubted, chance, likely, enough: enoughOf(told, doubted, likely) };
      })
  );
}

const isReading = (doubted: Doubted): doubted is Reading | ReadSlip => 'what' in doubted;
const isMetal = (doubted: Doubted): doubted is ErrorName | MetalSlip => !isReading(doubted) && doubted.of !== 'parts';
const isSlip = (doubted: Doubted): doubted is Slip => 'kind' in doubted;
const isMetalSlip = (doubted: Doubted): doubted is MetalSlip => isMetal(doubted) && isSlip(doubted);
const isReadSlip = (doubted: Doubted): doubted is ReadSlip => isReading(doubted) && isSlip(doubted);

function doubtedOf({ input, trials, before }: Told): Doubted[] {
  const leaned = ({ trial, of, place }: ErrorName) =>
    before.errors.some((e) => e.trial === trial && e.of === of && e.place === place);
  const metal = trials.flatMap(({ taken, faces = [] }, trial): ErrorName[] => [
    ...taken.map((_, place) => ({ trial, of: 'taken' as const, place })),
    ...faces.map((_, place) => ({ trial, of: 'faces' as const, place })),
  ]);
  const read = trials.flatMap(({ standOff, shake, blue }, trial): Reading[] => [
    ...(standOff ? [{ trial, what: 'standOff' as const }] : []),
    ...(shake ? [{ trial, what: 'shake' as const }] : []),
    ...(blue && blue.length > 0 ? [{ trial, what: 'blue' as const }] : []),
  ]);
  const other = metal.filter((error) => !leaned(error));
  const slips = other.flatMap((error) => metalSlips(error, input.seats, trials));
  return [...other, ...slips, ...read, ...readSlips(trials), { of: 'parts' }];
}

const priorOf = (doubted: Doubted) =>
  isSlip(doubted) ? SLIP[doubted.kind] : isReading(doubted) ? READ : isMetal(doubted) ? METAL : PARTS;

const amountOf = ({ trials }: Told, { trial, of, place }: ErrorName): { amount: number; sigma: number } => {
  const { taken, faces = [] } = trials[trial]!;
  const { sigma } = (of === 'taken' ? taken : faces)[place]!;
  return { amount: of === 'taken' ? taken[place]!.normal : faces[place]!.off, sigma };
};

/** Blue that was misread may have shown anything else; all else tells by its density, of the number that was typed. */
function anyOf({ trials }: Told, doubted: Doubted): number {
  if (isReadSlip(doubted)) return doubted.what === 'blue' ? 1 : Math.abs(doubted.times);
  return isReading(doubted) && doubted.what === 'blue' ? 1 / (2 ** trials[doubted.trial]!.blue!.length - 1) : 1;
}

/** The doubt (m) of what is wrong; of parts how many times the one they are thought to have. */
function wideOf(told: Told, doubted: Doubted): number {
  if (isReadSlip(doubted)) return doubted.what === 'blue' ? 0 : told.trials[doubted.trial]![doubted.what]!.sigma;
  if (isReading(doubted)) {
    const { trial, what } = doubted;
    return what === 'blue' ? OF_READING : Math.max(OF_READING, SHARE * Math.abs(told.trials[trial]![what]!.value));
  }
  if (!isMetal(doubted)) return OF_PARTS;
  const { amount, sigma } = amountOf(told, doubted);
  if (isMetalSlip(doubted)) return Math.hypot(sigma, OF_DIAL * doubted.times * amount);
  return Math.max(SHARE * Math.abs(amount), sigma);
}

/** The same with another doubt of one of them, a slip as it was meant. Blue has none: it is left out. */
function widened(told: Told, doubted: Doubted, by: number): Told {
  const { trials, before } = told;
  if (isMetal(doubted)) return { ...told, trials: trials.map((one, t) => (t === doubted.trial ? other(one) : one)) };
  if (!isReading(doubted)) {
    const films = before.mean.length - before.errors.length;
    // The films alone: what came off is doubted by itself.
    const covariance = before.covariance.map((row, i) =>
      row.map((c, j) => c * (i < films ? by : 1) * (j < films ? by : 1)),
    );
    return { ...told, before: { ...before, covariance } };
  }
  if (isReadSlip(doubted))
    return { ...told, trials: trials.map((one, t) => (t === doubted.trial ? asMeant(one, doubted) : one)) };
  const { trial, what } = doubted;
  if (what === 'blue') return { ...told, trials: withoutReading(trials, doubted) };
  return {
    ...told,
    trials: trials.map((one, t) => (t === trial ? { ...one, [what]: { ...one[what]!, sigma: by } } : one)),
  };

  function other({ taken, faces = [], ...read }: Trial): Trial {
    const { of, place } = doubted as ErrorName;
    const times = isMetalSlip(doubted) ? doubted.times : 1;
    return {
      ...read,
      taken: taken.map((one, at) =>
        of === 'taken' && at === place ? { ...one, normal: times * one.normal, sigma: by } : one,
      ),
      faces: faces.map((one, at) =>
        of === 'faces' && at === place ? { ...one, off: times * one.off, sigma: by } : one,
      ),
    };
  }
}

/** A trial as it was, where what stands there is a slip. */
function asMeant(trial: Trial, slip: ReadSlip): Trial {
  if (slip.what === 'blue') return { ...trial, blue: printedBy(trial.blue!, slip.seat) };
  const { value, ...read } = trial[slip.what]!;
  return { ...trial, [slip.what]: { ...read, value: slip.times * value } };
}

/** What is believed then, whether it clashes or not; null where no parts could be so. */
function estimateOf({ input, trials, before }: Told): Updated | null {
  const then = estimateAfter(input, trials, before);
  return then?.status === 'updated' ? then : null;
}

function goTogether({ input, trials, before }: Told): boolean {
  const results = trialsOf(input, trials, before);
  const last = results[results.length - 1];
  return results.length === trials.length && last?.status === 'updated' && last.clashes.length === 0;
}

/** log p(read) */
function evidence(accounts: readonly Account[]): number {
  const logs = accounts.map(
    (account) => -(costOf(account) + account.logVariance + account.told.length * Math.log(2 * Math.PI)) / 2,
  );
  const most = Math.max(...logs);
  return most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0));
}

/** What most likely came off, or should have been read (m). */
function likelyOf(told: Told, doubted: Doubted, then: Updated): number | null {
  if (isMetalSlip(doubted)) return doubted.times * amountOf(told, doubted).amount;
  if (isReadSlip(doubted) && doubted.what !== 'blue')
    return doubted.times * told.trials[doubted.trial]![doubted.what]!.value;
  if (isMetal(doubted)) {
    const { trial, of, place } = doubted;
    const error = errorsOf(then.accounts[0]!).find((e) => e.trial === trial && e.of === of && e.place === place);
    return error ? amountOf(told, doubted).amount + error.more : null;
  }
  if (!isReading(doubted) || doubted.what === 'blue') return null;
  const { what } = doubted;
  // Every trial tells its stand-off first, then its shake.
  const before = told.trials.slice(0, doubted.trial).reduce((n, t) => n + (t.standOff ? 1 : 0) + (t.shake ? 1 : 0), 0);
  const place = before + (what === 'shake' && told.trials[doubted.trial]!.standOff ? 1 : 0);
  const { told: rows, mode } = then.accounts[0]!;
  const { row, value } = rows[place]!;
  return told.trials[doubted.trial]![what]!.value - (value - dot(row, mode.point));
}

/** The doubt (m) with which all go together; null where there is none so wide. */
function enoughOf(told: Told, doubted: Doubted, likely: number | null): number | null {
  if (isReading(doubted) || isSlip(doubted)) return null;
  const wide = wideOf(told, doubted);
  const own = isMetal(doubted) ? amountOf(told, doubted).sigma : 1;
  const first =
    isMetal(doubted) && likely !== null
      ? Math.max(own, Math.abs(likely - amountOf(told, doubted).amount) / 2)
      : own * WIDER;
  for (let step = 0, by = Math.min(first, wide); step < STEPS; step++, by = Math.min(by * WIDER, wide)) {
    if (goTogether(widened(told, doubted, by))) return isMetal(doubted) ? by : by * filmDoubt(told.before);
    if (by >= wide) break;
  }
  return null;
}

/** m: the greatest of the films' standard deviations */
const filmDoubt = ({ mean, covariance, errors }: FilmsBefore): number =>
  Math.sqrt(Math.max(...covariance.slice(0, mean.length - errors.length).map((row, i) => row[i]!)));
