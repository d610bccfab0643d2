/** The fit of a design, worked out once however many ask for it. */
import type { Design } from '../../design/definition.ts';
import type { FitReport } from './definition.ts';
import { fitSection } from './section.ts';

const known = new WeakMap<Design, FitReport>();

export function fitOf(design: Design): FitReport {
  const before = known.get(design);
  if (before) return before;
  const fit = fitSection(design);
  known.set(design, fit);
  return fit;
}
