/** From where to where along the axis is shown, held while a hand moves the journal. */
import { useRef } from 'react';
import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import type { FitReport } from '../../report/fit/definition.ts';
import type { Work } from '../state/store.ts';
import { type Range, rangeOf } from './chartCurves.ts';

/**
 * The range is held during a drag in any picture, so that the ground does not move under the hand; a journal that
 * leaves it widens it, by so much that it does so seldom.
 */
export function useHeldRange(design: Design, fit: FitReport, work: Work): Range {
  const held = useRef<{ seats: Design['seats']; range: Range } | null>(null);
  const before = held.current;
  const holds = before !== null && before.seats === design.seats && work.dragging();
  const range = holds ? widened(before.range, fit.position) : rangeOf(fit, design);
  if (range !== before?.range) held.current = { seats: design.seats, range };
  return range;
}

/** The same where the position lies in it; else half as long again beyond the position, on that side alone. */
export function widened(range: Range, position: Millimetres): Range {
  const [low, high] = range;
  const more = (high - low) / 2;
  if (position < low) return [position - more, high];
  return position > high ? [low, position + more] : range;
}
