/** What the trials told, and what is left to cut after the last of them. */
import type { Design, Part } from '../../design/definition.ts';
import { type LeftAmount, leftToCut } from '../../engine/cutting/leftToCut.ts';
import type { PlanInput } from '../../engine/cutting/problem.ts';
import { feedsOf } from '../../engine/cutting/steps.ts';
import { believedAtFirst, remaining, remainingFaces, type TrialResult, trialsOf, type Updated } from '../../engine/cutting/trial.ts';
import { millimetres } from '../toEngine.ts';
import type { CutReport } from './definition.ts';
import { closedCount, openTrials } from './openTrials.ts';
import { type Cut, orNull, toDoubt, toMachine, toTrials } from './toCut.ts';

type Trials = Pick<CutReport, 'trials' | 'remaining'>;

export function trialSection(design: Design, cut: Cut, input: PlanInput): Trials {
  if (openTrials(cut).length === 0) return {};
  const trials = toTrials(design, cut);
  const results = trialsOf(input, trials, toDoubt(cut));
  const last = results[results.length - 1]!;
  return {
    trials: results.map((result) => resultSection(design, result, closedCount(cut))),
    ...(last.status === 'updated' && openTrials(cut).some(tellsAnything) && { remaining: remainingSection(design, cut, { ...input, allow: remaining(input.allow, trials), faces: remainingFaces(input.faces ?? [], trials) }, last) }),
  };
}

/** Standard uncertainty (mm) of every step while nothing but the doubt of the films is known; by seat and part. */
export function doubtOfSteps(cut: Cut, input: PlanInput): (seat: number, part: Part) => number | null {
  if (openTrials(cut).some(tellsAnything)) return () => null;
  const { amounts, plan } = leftToCut(input, believedAtFirst(input.seats, toDoubt(cut)));
  return (seat, part) => {
    const left = amounts.find(({ room }) => {
      const of = plan!.rooms[room]!.of;
      return of.kind === 'surface' && of.seat === seat && of.part === part;
    });
    return left ? millimetres(left.sigma) : null;
  };
}

/** Whether a trial is more than a note of the history. */
export const tellsAnything = ({ taken = [], faces = [], standOff, shake, blue = [] }: NonNullable<Cut['trials']>[number]): boolean => standOff !== undefined || shake !== undefined || blue.length + taken.length + faces.length > 0;

/** `before`: entries of the history before the first of these. */
function resultSection(design: Design, result: TrialResult, before: number): NonNullable<Trials['trials']>[number] {
  if (result.status !== 'updated') return { status: result.status, films: null, touched: null };
  const { films, sigmas, touched, clashes } = result;
  const named = <T>(of: (i: number) => T) => Object.fromEntries(design.seats.map(({ name }, i) => [name, of(i)]));
  return {
    status: 'updated',
    films: named((i) => ({ more: millimetres(films[i]!), sigma: millimetres(sigmas[i]!) })),
    touched: touched && named((i) => touched[i]!),
    ...(clashes.length > 0 && { clashes: clashes.map(({ trial, what, read, expected, deviations }) => ({ trial: before + trial + 1, what, read: millimetres(read), expected: millimetres(expected), deviations })) }),
  };
}

function remainingSection(design: Design, cut: Cut, input: PlanInput, after: Updated): NonNullable<Trials['remaining']> {
  const { verdict, plan, amounts, standOff } = leftToCut(input, after);
  const machine = toMachine(cut);
  const spread = ({ sigma, safe, doubted }: LeftAmount) => ({ sigma: millimetres(sigma), safe: millimetres(safe), doubted: design.seats[doubted]!.name });
  return {
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
      return of.kind === 'face' ? [{ name: input.faces![of.face]!.name, off: millimetres(left.amount), ...spread(left) }] : [];
    }),
    position: millimetres(plan?.position ?? input.position),
    films: Object.fromEntries(design.seats.map(({ name }, i) => [name, orNull(plan?.films[i] ?? null)])),
    standOff: { now: orNull(standOff.now), safe: orNull(standOff.safe), all: orNull(standOff.all) },
    feasible: verdict.status === 'planned',
  };
}
