/** What is safe to take now, as an entry of the history once it is off. */
import type { Millimetres } from '../../design/dimension.ts';
import type { CutReport } from './definition.ts';
import { isLeft } from './leave.ts';
import { NOTHING } from './listed.ts';
import type { TrialEntry } from './openTrials.ts';

/** mm: to a tenth of a nanometre, and never more than is safe */
const rounded = (mm: Millimetres) => Math.trunc(mm * 1e7) / 1e7;

/**
 * Null where nothing of what is to come off is safe, or the pair is best left. Before any trial that is told of
 * surfaces alone.
 */
export function safePart({ steps, remaining, ...cut }: CutReport): Pick<TrialEntry, 'taken' | 'faces'> | null {
  if (isLeft(cut)) return null;
  const taken = (remaining?.steps ?? steps).flatMap(({ seat, part, normal, safe = 0 }) => {
    const off = rounded(Math.min(safe, normal));
    return off < NOTHING ? [] : [{ seat, part, normal: off }];
  });
  const faces = (remaining?.faces ?? []).flatMap(({ name, safe }) =>
    Math.abs(safe) < NOTHING ? [] : [{ name, off: rounded(safe) }],
  );
  if (taken.length + faces.length === 0) return null;
  return { ...(taken.length > 0 && { taken }), ...(faces.length > 0 && { faces }) };
}
