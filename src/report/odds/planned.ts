/** The plan of Cut, as it is after the trials there are, taken off pairs that are drawn. */
import type { Design } from '../../design/definition.ts';
import type { SeatInput } from '../../engine/contact/fit.ts';
import { filmsMore } from '../../engine/cutting/leftToCut.ts';
import type { PairsDrawn } from '../../engine/cutting/pairsDrawn.ts';
import { type Plan, planCut, planIn } from '../../engine/cutting/plan.ts';
import { remaining, remainingFaces } from '../../engine/cutting/trial.ts';
import { believed } from '../../engine/cutting/trialReadings.ts';
import { type CutOff, cutLinear, cutPair, cutSampler } from '../../engine/odds/cut.ts';
import { toldByTrials } from '../belief/believed.ts';
import { millimetres } from '../convert.ts';
import { cutBefore, cutOffBy, type ToCutOff } from '../cut/cutOff.ts';
import { toPlanInput } from '../cut/toCut.ts';
import type { SourceReport } from './definition.ts';
import type { Start, State } from './drawn.ts';
import { questionOf } from './question.ts';

/** What is to be planned: the parts as they are taken to be by now, and what may still come off. */
export interface Planning extends ToCutOff {
  /** the plan of now: nothing to come off where no step is worth it */
  plan: Plan;
}

/** Null where nothing may be cut, no plan is to be had, or what was read at trials does not go together. */
export function planningOf({ design, trials }: Start): Planning | null {
  const { cut } = design;
  if (!cut || cut.allow.length + (cut.faces?.length ?? 0) === 0) return null;
  const input = toPlanInput(design, cut);
  const before = cutBefore(trials);
  if (trials.length === 0) {
    const plan = planIn(planCut(input));
    return plan && { cut, input, before, plan };
  }
  const results = toldByTrials(design, input, trials);
  const last = results.at(-1);
  if (results.length < trials.length || last?.status !== 'updated' || last.clashes.length > 0) return null;
  const left = {
    ...input,
    seats: last.parts,
    allow: remaining(input.allow, trials),
    faces: remainingFaces(input.faces ?? [], trials),
  };
  const plan = planIn(planCut({ ...left, seats: believed(last.parts, last.films) }));
  return plan && { cut, input: left, before, plan };
}

/**
 * The plan made anew by what is then believed: each film greater by so much that half of the pairs that are left have
 * more. (The mean would follow few pairs whose film is far less at one end.)
 */
export function plannedBy({ input, plan }: Planning, drawn: PairsDrawn): Plan | null {
  const each = filmsMore(input.seats, drawn, plan.position);
  const films = input.seats.map((_, i) => medianOf(each.map(({ e, weight }) => ({ value: e[i]!, weight }))));
  return planIn(planCut({ ...input, seats: believed(input.seats, films) }));
}

function medianOf(each: { value: number; weight: number }[]): number {
  const sorted = [...each].sort((a, b) => a.value - b.value);
  const half = sorted.reduce((sum, { weight }) => sum + weight, 0) / 2;
  let sum = 0;
  for (const { value, weight } of sorted) {
    sum += weight;
    if (sum >= half) return value;
  }
  return 0;
}

/** Null where the plan takes nothing off. */
export function plannedState({ design, now }: Start, planning: Planning): State | null {
  const off = cutOffBy(planning, planning.plan);
  if (off.off.taken.length + (off.off.faces?.length ?? 0) === 0) return null;
  const question = questionOf(design, millimetres(planning.plan.position));
  const linear = now.linear && cutLinear(now.linear.linear, off);
  return {
    sampler: cutSampler(now.sampler, off),
    middle: cutMiddle(now.middle, off),
    question,
    linear: linear && {
      linear: linear.sampler.linear,
      names: linear.from.map((one) => ('own' in one ? now.linear!.names[one.own]! : cutName(design, off, one.cut))),
    },
  };
}

const cutMiddle = (middle: SeatInput[], off: CutOff) => cutPair(off, middle);

function cutName({ seats, cut }: Design, { off: { taken, faces = [] } }: CutOff, place: number): SourceReport {
  const one = taken[place];
  if (one) return { seat: seats[one.seat]!.name, part: one.part, of: 'stock' };
  const { name, part, seats: moved } = cut!.faces![faces[place - taken.length]!.face]!;
  return { seat: moved[0]!, part, of: 'face', face: name };
}
