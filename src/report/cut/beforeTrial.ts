/**
 * How much of what is to come off may do so before the next trial assembly: what the advice, its buttons and its order
 * go by.
 */
import type { Part } from '../../design/definition.ts';
import type { CutReport } from './definition.ts';
import { isUnproven } from './leave.ts';
import { NOTHING } from './listed.ts';

export type BeforeTrial = 'nothing' | 'part' | 'all';

/** Told by the trials once there are any, else by the plan; of faces nothing is told before a trial. */
export function beforeTrial({
  guess,
  steps,
  remaining,
  works,
}: Pick<CutReport, 'guess' | 'steps' | 'remaining' | 'works'>): BeforeTrial {
  if (guess) return 'nothing';
  const amounts = remaining
    ? [
        ...remaining.steps.map(({ normal, safe }) => [normal, safe]),
        ...remaining.faces.map(({ off, safe }) => [off, safe]),
      ]
    : steps.map(({ normal, safe = normal }) => [normal, safe]);
  const real = amounts
    .map(([all, safe]) => ({ all: Math.abs(all!), safe: Math.abs(safe!) }))
    .filter(({ all }) => all >= NOTHING);
  // Nothing more is most likely to come off: whether that is so a trial tells, where it is not known.
  if (remaining && real.length === 0 && isUnproven({ works })) return 'nothing';
  if (real.every(({ all, safe }) => safe > all - NOTHING)) return 'all';
  return real.every(({ safe }) => safe < NOTHING) ? 'nothing' : 'part';
}

/**
 * The same of one surface that the plan cuts. Once there are trials no stop reading of the plan counts any more: then
 * it is never all.
 */
export function surfaceBeforeTrial(
  { steps, remaining }: Pick<CutReport, 'steps' | 'remaining'>,
  seat: string,
  part: Part,
): BeforeTrial {
  const of = (step: { seat: string; part: Part }) => step.seat === seat && step.part === part;
  if (!remaining) return beforeTrial({ steps: steps.filter(of) });
  return (remaining.steps.find(of)?.safe ?? 0) < NOTHING ? 'nothing' : 'part';
}
