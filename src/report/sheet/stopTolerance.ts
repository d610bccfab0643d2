/**
 * How far a stop reading may be missed: half of the film's tolerance ±t, which is what one part may be out
 * (tolerancedSurfaces.ts), told by the gauge. A gauge follows the stock in proportion:
 *
 *   ± (t/2)·|stop - before| / stock
 *
 * all in mm, the stock square to the surface. Holds where the whole line comes off alike; a line that is cut anew was
 * another before, and tells nothing.
 */
import type { CutReport } from '../cut/definition.ts';

type Step = Pick<CutReport['steps'][number], 'normal' | 'deepest' | 'why'>;

/** mm: stock that differs by no more along the line is alike; less stock than this tells no proportion. */
const ALIKE = 1e-4;

/** mm to either side; null where it cannot be told */
export function stopTolerance(
  { normal, deepest, why }: Step,
  { before, stop }: { before: number | null; stop: number | null },
  filmTolerance: number | undefined,
): number | null {
  if (
    !filmTolerance ||
    before === null ||
    stop === null ||
    why === 'newLine' ||
    normal < ALIKE ||
    deepest - normal > ALIKE
  )
    return null;
  return ((filmTolerance / 2) * Math.abs(stop - before)) / normal;
}
