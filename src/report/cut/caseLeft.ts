/**
 * The hard case of a surface: how much of its depth the cuts of the history have used, and how much is left.
 *
 *   left = depth − Σ stock        depth before any cut; stock square to the surface, off the shapes already or not
 *   σ² = Σ σ²(stock)              the depth itself is taken as stated
 *
 * What the plan is still to take comes off that too. Wear by lapping is not counted.
 */
import type { Design, Part } from '../../design/definition.ts';
import { COVER } from '../../design/units.ts';
import type { CutReport } from './definition.ts';
import { NOTHING } from './listed.ts';
import { surfaceSigma } from './metalDoubt.ts';
import { openTrials, type TrialEntry } from './openTrials.ts';

/** mm, square to the surface. */
export interface CaseLeft {
  seat: string;
  part: Part;
  depth: number;
  used: number;
  left: number;
  /** standard uncertainty of used and left */
  sigma: number;
}

type Taken = NonNullable<TrialEntry['taken']>[number];

const takenOff = (trials: readonly TrialEntry[], seat: string, part: Part): Taken[] =>
  trials.flatMap(({ taken = [] }) => taken).filter((t) => t.seat === seat && t.part === part);
const sum = (taken: readonly Taken[]) => taken.reduce((all, { normal }) => all + normal, 0);

/** Of every surface that says how deep its case is, in the order of the design; after all trials, or so many. */
export function caseLeft(design: Design, done = Number.POSITIVE_INFINITY): CaseLeft[] {
  const trials = (design.cut?.trials ?? []).slice(0, done);
  return design.seats.flatMap((seat) =>
    (['journal', 'bush'] as const).flatMap((part): CaseLeft[] => {
      const depth = seat[part].caseDepth;
      if (depth === undefined) return [];
      const taken = takenOff(trials, seat.name, part);
      const used = sum(taken);
      const sigmas = taken
        .filter(({ normal }) => normal > 0)
        .map(({ normal, sigma }) => sigma ?? surfaceSigma(design, seat.name, part, normal));
      return [{ seat: seat.name, part, depth, used, left: depth - used, sigma: Math.hypot(...sigmas) }];
    }),
  );
}

/** With what the plan, or what the trials leave of it, is still to take. Undefined where no surface says its depth. */
export function caseSection(
  design: Design,
  { steps, remaining }: Pick<CutReport, 'steps' | 'remaining'>,
): CutReport['case'] {
  const told = caseLeft(design).map((surface) => {
    const to = toTake(design, steps, remaining, surface);
    const after = surface.left - to.normal;
    const doubt = COVER * Math.hypot(surface.sigma, to.sigma);
    const status =
      surface.left < -NOTHING
        ? ('gone' as const)
        : to.normal < NOTHING
          ? ('kept' as const)
          : after < -NOTHING
            ? ('through' as const)
            : after < doubt
              ? ('doubtful' as const)
              : ('kept' as const);
    return { ...surface, planned: to.normal, after, status };
  });
  return told.length > 0 ? told : undefined;
}

/** The stock (mm) still to come off one surface, where most of it comes off, with its standard uncertainty. */
function toTake(
  design: Design,
  steps: CutReport['steps'],
  remaining: CutReport['remaining'],
  { seat, part }: Pick<CaseLeft, 'seat' | 'part'>,
): { normal: number; sigma: number } {
  const isOn = (step: { seat: string; part: Part }) => step.seat === seat && step.part === part;
  const step = steps.find(isOn);
  const already = sum(takenOff(design.cut ? openTrials(design.cut) : [], seat, part));
  // Where a line is cut anew more comes off in some places than in others; once it is begun that is done.
  const more = step && already === 0 ? step.deepest - step.normal : 0;
  if (remaining) {
    const left = remaining.steps.find(isOn);
    return left ? { normal: left.normal + more, sigma: left.sigma } : { normal: 0, sigma: 0 };
  }
  const normal = step ? Math.max(0, step.normal + more - already) : 0;
  return { normal, sigma: normal === 0 ? 0 : (step!.sigma ?? surfaceSigma(design, seat, part, normal)) };
}
