/** The parts a sheet draws, and those whose films it shows, by what the sheet is for. */
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import type { CutReport } from '../cut/definition.ts';
import { withPlannedFilms } from '../cut/toleranceLeft.ts';
import { designWithCut } from '../cut/withCut.ts';
import { heldPosition } from './heldPosition.ts';
import { type PartsAfterTrials, partsAfterTrials } from './partsAfterTrials.ts';
import type { Purpose } from './purpose.ts';
import { type TolerancedSurface, tolerancedSurfaces } from './tolerancedSurfaces.ts';

export interface DrawnParts {
  /** as drawn: as they shall be where there is work, else as they are */
  made: Design;
  /** those whose films are shown: after trials with the films believed, else `made` */
  runs: Design;
  /** whether every film wanted is within its tolerance, at the position drawn */
  good: boolean;
  surfaces: TolerancedSurface[];
  /** null where no trial told anything */
  after: PartsAfterTrials | null;
}

export function drawnParts(design: Design, cut: CutReport | null, kind: Purpose['kind'], system: System): DrawnParts {
  const after = cut && partsAfterTrials(design, cut);
  if (cut && after) return partsDrawnAfter(after, cut, kind, system);
  const plan = kind === 'work' ? cut : null;
  const { made, good } = plan ? { made: designWithCut(design, plan), good: true } : asTheyAre(design, kind);
  return {
    made,
    runs: made,
    good,
    surfaces: tolerancedSurfaces(
      plan ? withPlannedFilms(made, plan.films) : made,
      made.position ?? 0,
      plan?.steps ?? [],
      system,
      plan?.settings,
    ),
    after: null,
  };
}

function asTheyAre(design: Design, kind: Purpose['kind']): { made: Design; good: boolean } {
  if (kind === 'refused') return { made: design, good: false };
  const { position, good } = heldPosition(design);
  return { made: position === (design.position ?? 0) ? design : { ...design, position }, good };
}

/** Trials tell films and not diameters: those drawn are reckoned, and have no tolerance. */
function partsDrawnAfter(
  after: PartsAfterTrials,
  { remaining, settings }: CutReport,
  kind: Purpose['kind'],
  system: System,
): DrawnParts {
  const isRefused = kind === 'refused';
  const made = isRefused ? after.now : after.reckoned;
  const runs = isRefused ? after.believedNow : after.believed;
  const position = runs.position ?? 0;
  const drawn = tolerancedSurfaces(made, position, isRefused ? [] : (remaining?.steps ?? []), system);
  const held = tolerancedSurfaces(runs, position, [], system, settings);
  return {
    made,
    runs,
    good: !isRefused,
    surfaces: drawn.map((surface, i) => ({
      ...surface,
      diameterTolerance: null,
      halfAngleTolerance: held[i]!.halfAngleTolerance,
    })),
    after,
  };
}
