/** Whether the parts would do as they are: a position at which every film is within its tolerance with nothing cut. */
import type { Design } from '../../design/definition.ts';
import { nearestPlan } from '../../engine/cutting/plan.ts';
import type { PlanInput } from '../../engine/cutting/problem.ts';
import { millimetres } from '../convert.ts';
import type { CutReport } from './definition.ts';
import { inTolerance } from './inTolerance.ts';
import { orNull } from './toCut.ts';

/** Shares of the tolerances that are tried in turn: the less is used, the more is left for what may be wrong. */
const SHARES = [0, 0.25, 0.5, 0.75, 1];

export function asTheyAre({ seats }: Design, input: PlanInput): Pick<CutReport, 'asTheyAre'> {
  for (const share of SHARES) {
    const plan = nearestPlan({ ...input, share, allow: [], faces: [] });
    if (plan && inTolerance(input, plan))
      return {
        asTheyAre: {
          position: millimetres(plan.position),
          films: Object.fromEntries(seats.map(({ name }, i) => [name, orNull(plan.films[i]!)])),
        },
      };
  }
  return {};
}
