/** From where to where along the axis is shown, held while a hand moves the journal. */
import { useRef } from 'react';
import type { Design } from '../../design/definition.ts';
import type { FitReport } from '../../report/fit/definition.ts';
import type { Work } from '../state/store.ts';
import { type Range, rangeOf } from './chartCurves.ts';

/**
 * The range is held during a drag in any picture, so that the ground does not move under the hand; it gives way only to
 * a journal that leaves it.
 */
export function useHeldRange(design: Design, fit: FitReport, work: Work): Range {
  const held = useRef<{ seats: Design['seats']; range: Range } | null>(null);
  const before = held.current;
  const holds =
    before !== null &&
    before.seats === design.seats &&
    work.dragging() &&
    fit.position >= before.range[0] &&
    fit.position <= before.range[1];
  if (!holds) held.current = { seats: design.seats, range: rangeOf(fit, design) };
  return held.current!.range;
}
