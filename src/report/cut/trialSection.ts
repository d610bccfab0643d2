/** What the trials told, and what is left to cut after the last of them. */
import type { Design, Part } from '../../design/definition.ts';
import { withoutReading } from '../../engine/cutting/clashes.ts';
import { type KnownNow, type Left, type LeftAmount, leftToCut } from '../../engine/cutting/leftToCut.ts';
import type { Plan } from '../../engine/cutting/plan.ts';
import type { PlanInput } from '../../engine/cutting/problem.ts';
import { feedsOf } from '../../engine/cutting/steps.ts';
import { remaining, remainingFaces, type Trial, type TrialResult, type Updated } from '../../engine/cutting/trial.ts';
import { believed } from '../../engine/cutting/trialReadings.ts';
import { believedOf, pairsAfter, toldByTrials } from '../belief/believed.ts';
import { FEWEST_DRAWN, filmSpread, limitsOf } from '../belief/spread.ts';
import { degrees, type Millimetres, metres, millimetres } from '../convert.ts';
import { asTheyAre } from './asTheyAre.ts';
import { causesSection } from './causes.ts';
import { cutBefore, filmsOffThen } from './cutOff.ts';
import type { CutReport } from './definition.ts';
import { doubtDrawn, filmsOf } from './doubtDrawn.ts';
import { inTolerance } from './inTolerance.ts';
import { FACE_SIGMA, takenSigma } from './metalDoubt.ts';
import { closedCount, openTrials, tellsAnything } from './openTrials.ts';
import { restTold } from './restTold.ts';
import { riskOf } from './risk.ts';
import { surerByTrials, TOLD_SURER } from './surerByTrials.ts';
import { type Cut, orNull, toMachine, toTrials } from './toCut.ts';

type TrialReport = NonNullable<CutReport['trials']>[number];
type Trials = Pick<CutReport, 'trials' | 'remaining' | 'without' | 'causes'>;

/** What is left to cut, and from what that is known. */
export interface LeftNow {
  left: Left;
  known: KnownNow;
}

interface TrialsTold {
  told: Trials;
  /** null before any trial tells anything, and where what was read cannot be taken in */
  now: LeftNow | null;
}

export function trialSection(design: Design, cut: Cut, input: PlanInput): TrialsTold {
  if (openTrials(cut).length === 0) return { told: {}, now: null };
  const trials = toTrials(design, cut);
  const results = toldByTrials(design, input, trials);
  const last = results[results.length - 1]!;
  const surer = last.status === 'updated' && last.clashes.length === 0 ? surerByTrials(design, input, trials) : [];
  const clashes = last.status === 'updated' && last.clashes.length > 0;
  const causes = last.status !== 'updated' || clashes ? causesSection(design, cut) : [];
  const told = {
    ...(causes.length > 0 && { causes }),
    trials: results.map((result, k) => ({
      ...resultSection(design, cut, trials, result),
      // What an earlier trial told stays as it was told, whatever a later one clashes with.
      ...(!(clashes && result === last) &&
        k >= results.length - TOLD_SURER &&
        doubtDrawn(design, input, trials.slice(0, k + 1), result)),
      ...(surer[k] && { relation: surer[k] }),
    })),
  };
  if (last.status !== 'updated' || !openTrials(cut).some(tellsAnything)) return { told, now: null };
  const left = { ...input, allow: remaining(input.allow, trials), faces: remainingFaces(input.faces ?? [], trials) };
  const known = (told: readonly Trial[], { parts, films, clashes }: Updated): KnownNow => ({
    parts,
    films,
    drawn: pairsAfter(design, input, told),
    clashes: clashes.length > 0 || contradict(design),
    risk: riskOf(cut),
    dial: (of, amount) =>
      metres(
        of.kind === 'surface'
          ? takenSigma(cut, millimetres(amount), degrees(parts[of.seat]![of.part].halfAngle))
          : FACE_SIGMA,
      ),
  });
  const [worst] = last.clashes;
  const fewer = worst ? withoutReading(trials, worst) : trials;
  const rest = worst && toldByTrials(design, input, fewer).at(-1);
  const leftNow = (known: KnownNow): LeftNow => ({ known, left: leftToCut(left, known) });
  const now = leftNow(known(trials, last));
  return {
    now,
    told: {
      ...told,
      remaining: remainingSection(design, cut, left, now),
      ...(rest?.status === 'updated' && {
        without: {
          trial: closedCount(cut) + worst!.trial + 1,
          what: worst!.what,
          remaining: restTold(remainingSection(design, cut, left, leftNow(known(fewer, rest)))),
        },
      }),
    },
  };
}

/** Whether readings of the bench do not go together: then nothing is safe to take. */
const contradict = (design: Design) => believedOf(design).belief.disagreeing.length > 0;

/** What is to be cut before any trial; null once trials tell of it. */
export function leftAtFirst(design: Design, cut: Cut, input: PlanInput): LeftNow | null {
  if (openTrials(cut).some(tellsAnything)) return null;
  const known: KnownNow = {
    parts: input.seats,
    films: believedOf(design).films.mean.slice(0, input.seats.length),
    drawn: pairsAfter(design, input, []),
    clashes: contradict(design),
    risk: riskOf(cut),
  };
  return { known, left: leftToCut(input, known) };
}

/** Between which it lies (mm): of metal off a surface nothing at least, for none can be put back. */
function limitsSection(
  { each, amount }: Pick<LeftAmount, 'each' | 'amount'>,
  { known: { drawn } }: LeftNow,
): { limits?: [Millimetres, Millimetres] } {
  const found = drawn.effective < FEWEST_DRAWN ? null : limitsOf(each, drawn.weights);
  if (!found) return {};
  const sign = Math.sign(amount);
  const [low, high] = [Math.min(found[0], amount), Math.max(found[1], amount)].map(
    (end) => sign * Math.max(0, sign * end),
  );
  return { limits: [millimetres(low!), millimetres(high!)] };
}

/**
 * Standard uncertainty (mm) of every step, and what of it is safe, while nothing but the doubt of the films is known;
 * by seat and part.
 */
export function doubtOfSteps(
  at: LeftNow | null,
): (seat: number, part: Part) => { sigma: number; safe: number; limits?: [number, number] } | null {
  return (seat, part) => {
    const left = at?.left.amounts.find(({ room }) => {
      const { of } = at.left.plan!.rooms[room]!;
      return of.kind === 'surface' && of.seat === seat && of.part === part;
    });
    // What the plan takes off and nothing that is known does is not safe at all.
    return (
      at && {
        sigma: millimetres(left?.sigma ?? 0),
        ...(left && limitsSection(left, at)),
        safe: millimetres(left?.safe ?? 0),
      }
    );
  };
}

function resultSection(design: Design, cut: Cut, trials: readonly Trial[], result: TrialResult): TrialReport {
  if (result.status !== 'updated') return { status: result.status, films: null, touched: null };
  const { films, sigmas, touched, clashes, came } = result;
  const named = <T>(of: (i: number) => T) => Object.fromEntries(design.seats.map(({ name }, i) => [name, of(i)]));
  return {
    status: 'updated',
    films: filmsOf(design, films, sigmas),
    touched: touched && named((i) => touched[i]!),
    ...(came.length > 0 && { came: came.map((error) => cameSection(design, cut, trials, error)) }),
    ...(clashes.length > 0 && {
      clashes: clashes.map(({ trial, what, read, expected, deviations }) => ({
        trial: closedCount(cut) + trial + 1,
        what,
        read: orNull(read),
        expected: orNull(expected),
        deviations,
      })),
    }),
  };
}

/** What was told to be taken off, and what most likely came off. */
function cameSection(
  design: Design,
  cut: Cut,
  trials: readonly Trial[],
  { trial, of, place, more }: Updated['came'][number],
): NonNullable<NonNullable<Trials['trials']>[number]['came']>[number] {
  const told = trials[trial]!;
  if (of === 'taken') {
    const { seat, part, normal, sigma } = told.taken[place]!;
    return {
      trial: closedCount(cut) + trial + 1,
      seat: design.seats[seat]!.name,
      part,
      told: millimetres(normal),
      sigma: millimetres(sigma),
      likely: millimetres(normal + more),
    };
  }
  const { face, off, sigma } = told.faces![place]!;
  return {
    trial: closedCount(cut) + trial + 1,
    face: cut.faces![face]!.name,
    told: millimetres(off),
    sigma: millimetres(sigma),
    likely: millimetres(off + more),
  };
}

function remainingSection(design: Design, cut: Cut, input: PlanInput, now: LeftNow): NonNullable<Trials['remaining']> {
  const { verdict, plan, amounts, standOff } = now.left;
  const machine = toMachine(cut);
  const spread = ({ sigma, safe, doubted, ...left }: LeftAmount) => ({
    sigma: millimetres(sigma),
    ...limitsSection(left, now),
    safe: millimetres(safe),
    doubted: design.seats[doubted]!.name,
  });
  return {
    ...(amounts.length > 0 && stopHere(design, input, now)),
    steps: amounts.flatMap((left) => {
      const { of } = plan!.rooms[left.room]!;
      if (of.kind !== 'surface') return [];
      const feeds = (normal: number) => feedsOf(normal, plan!.base[of.seat]![of.part].halfAngle, of.part, machine);
      const [all, now] = [feeds(left.amount), feeds(left.safe)];
      return [
        {
          seat: design.seats[of.seat]!.name,
          part: of.part,
          normal: millimetres(left.amount),
          diameter: millimetres(all.diameter),
          safeDiameter: millimetres(now.diameter),
          crossDivisions: all.crossDivisions,
          safeDivisions: now.crossDivisions,
          ...spread(left),
        },
      ];
    }),
    faces: amounts.flatMap((left) => {
      const { of } = plan!.rooms[left.room]!;
      return of.kind === 'face'
        ? [{ name: input.faces![of.face]!.name, off: millimetres(left.amount), ...spread(left) }]
        : [];
    }),
    position: millimetres(plan?.position ?? input.position),
    films: Object.fromEntries(design.seats.map(({ name }, i) => [name, orNull(plan?.films[i] ?? null)])),
    ...(plan && thenOff(design, cut, input, plan, now)),
    standOff: {
      now: orNull(standOff.now),
      safe: orNull(standOff.safe),
      all: orNull(standOff.all),
      ...(standOff.sigma !== null && { sigma: millimetres(standOff.sigma) }),
    },
    feasible: verdict.status === 'planned',
    inTolerance: plan !== null && inTolerance(input, plan),
  };
}

/** Where the pair would do as it is, and how far its films may be off there. */
function stopHere(design: Design, input: PlanInput, { known }: LeftNow): Pick<CutReport, 'asTheyAre'> {
  const { parts, films, drawn } = known;
  const { asTheyAre: found } = asTheyAre(design, { ...input, seats: believed(parts, films) });
  if (!found) return {};
  const sigmas = filmSpread(parts, films, drawn, metres(found.position));
  const named = sigmas?.map((sigma, i) => [design.seats[i]!.name, millimetres(sigma)]);
  return { asTheyAre: { ...found, ...(named && { sigmas: Object.fromEntries(named) }) } };
}

/** How far the films may be off once all of it is off. */
function thenOff(
  design: Design,
  cut: Cut,
  input: PlanInput,
  plan: Plan,
  { known: { parts, films, drawn } }: LeftNow,
): Pick<NonNullable<CutReport['remaining']>, 'sigmas' | 'limits'> {
  const trials = toTrials(design, cut);
  const to = { cut, input: { ...input, seats: [...parts] }, before: cutBefore(trials) };
  return filmsOffThen(design, to, plan, believed(parts, films), drawn) ?? {};
}
