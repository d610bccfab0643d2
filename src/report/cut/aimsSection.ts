/**
 * The plans there are to choose from: the films just as wanted, or the least stock with every film within its
 * tolerance.
 */
import type { Design } from '../../design/definition.ts';
import { nearestPlan } from '../../engine/cutting/plan.ts';
import { NO_STEP, type PlanInput } from '../../engine/cutting/problem.ts';
import { isMet } from '../../engine/cutting/programme.ts';
import { millimetres } from '../convert.ts';
import type { CutReport } from './definition.ts';
import { inTolerance } from './inTolerance.ts';
import { orNull, TOLERANCE_SHARE } from './toCut.ts';

type Aim = CutReport['aims'][number];

const hasTolerances = ({ seats }: PlanInput) =>
  seats.some(({ target, tolerance = 0 }) => target !== undefined && tolerance > 0);

export function aimsSection(design: Design, input: PlanInput): Aim[] {
  const shares: [Aim['aim'], number][] = [
    ['target', 0],
    ...(hasTolerances(input) ? [['tolerance', TOLERANCE_SHARE] as [Aim['aim'], number]] : []),
  ];
  return shares.flatMap(([aim, share]): Aim[] => {
    const plan = nearestPlan({ ...input, share });
    if (!plan) return [];
    const { rooms, amounts } = plan;
    return [
      {
        aim,
        chosen: share === (input.share ?? 0),
        feasible: isMet(plan),
        inTolerance: inTolerance(input, plan),
        total: millimetres(plan.total),
        position: millimetres(plan.position),
        films: Object.fromEntries(design.seats.map(({ name }, i) => [name, orNull(plan.films[i]!)])),
        stock: rooms.flatMap(({ of }, k) =>
          of.kind === 'surface' && amounts[k]! >= NO_STEP
            ? [{ seat: design.seats[of.seat]!.name, part: of.part, normal: millimetres(amounts[k]!) }]
            : [],
        ),
        faces: rooms.flatMap(({ of }, k) =>
          of.kind === 'face' && Math.abs(amounts[k]!) >= NO_STEP
            ? [{ name: input.faces![of.face]!.name, off: millimetres(amounts[k]!) }]
            : [],
        ),
      },
    ];
  });
}

/** Points of the trade between stock and tolerance. */
const POINTS = 8;

export function tradeSection(input: PlanInput): CutReport['trade'] {
  if (!hasTolerances(input)) return [];
  return Array.from({ length: POINTS + 1 }, (_, i) => (TOLERANCE_SHARE * i) / POINTS).flatMap((share) => {
    const plan = nearestPlan({ ...input, share });
    return plan ? [{ share, total: millimetres(plan.total) }] : [];
  });
}
