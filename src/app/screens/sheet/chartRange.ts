/**
 * What the film chart of the Sheet shows: where the adjuster is turned, from first touch to well beyond where the
 * journal runs.
 */
import type { Design } from '../../../design/definition.ts';
import type { FitReport } from '../../../report/fit/definition.ts';
import { type Range, rangeOf } from '../../charts/chartCurves.ts';

/** Of the way from first touch to where it runs: shown before the touch, and beyond. */
const BEFORE = 0.6;
const BEYOND = 2.4;
/** mm: a way shorter than this is shown as if it were as long. */
const LEAST = 0.002;

/** Between two stops all of the way is shown, and where the journal does not run free all that the Fit screen shows. */
export function chartRange(fit: FitReport, design: Design): Range {
  const { firstPosition: first, position, endPlay } = fit;
  if (first === null || endPlay !== null || position <= first) return rangeOf(fit, design);
  const way = Math.max(position - first, LEAST);
  return [first - BEFORE * way, position + BEYOND * way];
}
