/** What the trials told, and what is left to cut after the last of them. */
import type { Design } from '../../design/definition.ts';
import { planCut, planIn } from '../../engine/cutting/plan.ts';
import type { PlanInput } from '../../engine/cutting/problem.ts';
import { diameterChange } from '../../engine/cutting/stock.ts';
import { remaining, remainingFaces, type TrialResult, trialsOf } from '../../engine/cutting/trial.ts';
import { millimetres } from '../toEngine.ts';
import type { CutReport } from './definition.ts';
import { type Cut, orNull, toDoubt, toTrials } from './toCut.ts';

type Trials = Pick<CutReport, 'trials' | 'remaining'>;

export function trialSection(design: Design, cut: Cut, input: PlanInput): Trials {
  if (!cut.trials || cut.trials.length === 0) return {};
  const trials = toTrials(design, cut);
  const results = trialsOf(input, trials, toDoubt(cut));
  const last = results[results.length - 1]!;
  return {
    trials: results.map((result) => resultSection(design, result)),
    ...(last.status === 'updated' && { remaining: remainingSection(design, { ...input, seats: last.seats, allow: remaining(input.allow, trials), faces: remainingFaces(input.faces ?? [], trials) }) }),
  };
}

function resultSection(design: Design, result: TrialResult): NonNullable<Trials['trials']>[number] {
  if (result.status !== 'updated') return { status: result.status, films: null, touched: null };
  const { mean, covariance } = result.estimate;
  const named = <T>(of: (i: number) => T) => Object.fromEntries(design.seats.map(({ name }, i) => [name, of(i)]));
  return {
    status: 'updated',
    films: named((i) => ({ more: millimetres(mean[i]!), sigma: millimetres(Math.sqrt(Math.max(0, covariance[i]![i]!))) })),
    touched: result.touched && named((i) => result.touched![i]!),
  };
}

function remainingSection(design: Design, input: PlanInput): NonNullable<Trials['remaining']> {
  const verdict = planCut(input);
  const plan = planIn(verdict);
  const steps = (plan?.rooms ?? []).flatMap(({ of }, k) => {
    const normal = plan!.amounts[k]!;
    if (of.kind !== 'surface' || normal === 0) return [];
    const diameter = diameterChange(normal, plan!.base[of.seat]![of.part].halfAngle, of.part);
    return [{ seat: design.seats[of.seat]!.name, part: of.part, normal: millimetres(normal), diameter: millimetres(diameter) }];
  });
  const faces = (plan?.rooms ?? []).flatMap(({ of }, k) => {
    const off = plan!.amounts[k]!;
    return of.kind === 'face' && off !== 0 ? [{ name: input.faces![of.face]!.name, off: millimetres(off) }] : [];
  });
  return {
    steps,
    faces,
    position: millimetres(plan?.position ?? input.position),
    films: Object.fromEntries(design.seats.map(({ name }, i) => [name, orNull(plan?.films[i] ?? null)])),
    feasible: verdict.status === 'planned',
  };
}
