/** The dimensions of one part in the section; what works them out is loaded once somebody asks for them. */
import { useMemo } from 'react';
import { useStore } from 'zustand';
import type { Design, Part } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import { useAngles } from '../state/angles.ts';
import { onceLoaded, useLoaded } from '../state/onceLoaded.ts';
import type { Work } from '../state/store.ts';
import { typedLengths } from '../state/typedLengths.ts';
import type { Dimensions } from './dimensions.ts';
import type { Drawn } from './drawn.ts';

const dimensioning = onceLoaded(() => import('./dimensions.ts'));

/** Null with no part asked for. `note`: what those in dashes are, where there are any. */
export function useDimensions(
  work: Work,
  design: Design,
  drawn: Drawn,
  part: Part | 'none',
  system: System,
): { dimensions: Dimensions | null; note: string } {
  const module = useLoaded(dimensioning, part !== 'none');
  const way = useAngles();
  const lengths = useStore(work.store, typedLengths);
  return useMemo(() => {
    if (!module || part === 'none') return { dimensions: null, note: '' };
    const dimensions = module.dimensionsOf(design, drawn, part, system, way, lengths);
    return { dimensions, note: module.isAnyAssumed(dimensions) ? module.ASSUMED : '' };
  }, [module, design, drawn, part, system, way, lengths]);
}
