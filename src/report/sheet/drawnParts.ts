/** The parts a sheet draws, and those whose films it shows, by what the sheet is for. */
import type { Design, Part } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import type { CutReport } from '../cut/definition.ts';
import { withDrawnFilms, withoutTolerance, withPlannedFilms } from '../cut/toleranceLeft.ts';
import { designWithCut } from '../cut/withCut.ts';
import { fitSection } from '../fit/section.ts';
import { heldPosition } from './heldPosition.ts';
import { type PartsAfterTrials, partsAfterTrials } from './partsAfterTrials.ts';
import type { Purpose } from './purpose.ts';
import { diameterAt, safeChanges, safelyCut, safelyLess, type Target, targetOf } from './safeTarget.ts';
import { type TolerancedSurface, tolerancedSurfaces } from './tolerancedSurfaces.ts';

export interface DrawnParts {
  /** as drawn: with what is safe to take now off where there is work, else as they are */
  made: Design;
  /** how much of the work that is; and the surfaces with all of it off, where that is more (mm, in the gauge plane) */
  target: Target;
  whole: { seat: string; part: Part; diameter: number }[];
  /** those whose films are shown: after trials with the films believed, else `made` */
  runs: Design;
  /** whether every film wanted is within its tolerance, at the position drawn */
  good: boolean;
  surfaces: TolerancedSurface[];
  /** seats whose film as drawn leaves nothing of its tolerance, so that their surfaces have none */
  untoleranced: string[];
  /** null where no trial told anything */
  after: PartsAfterTrials | null;
}

export function drawnParts(design: Design, cut: CutReport | null, kind: Purpose['kind'], system: System): DrawnParts {
  const after = cut && partsAfterTrials(design, cut);
  if (cut && after) return partsDrawnAfter(after, cut, kind, system);
  const plan = kind === 'work' ? cut : null;
  if (plan) return partsPlanned(design, plan, system);
  const { made, good } = asTheyAre(design, kind);
  const films = fitSection(made).seats;
  const surfaces = tolerancedSurfaces(withDrawnFilms(made, films), made.position ?? 0, [], system);
  const untoleranced = withoutTolerance(made, films).map(({ name }) => name);
  return { made, target: 'whole', whole: [], runs: made, good, surfaces, untoleranced, after: null };
}

/**
 * What stops before its end carries no tolerance of its diameter: that of the film is of the whole. Angle, form and
 * run-out are those of the whole from the first pass on.
 */
function partsPlanned(design: Design, plan: CutReport, system: System): DrawnParts {
  const runs = designWithCut(design, plan);
  const target = targetOf(plan.steps);
  const made = target === 'whole' ? runs : safelyCut(design, plan);
  const changes = safeChanges(plan.steps, ({ first, diameter }) => first?.diameter ?? diameter);
  const position = runs.position ?? 0;
  const drawn = tolerancedSurfaces(withPlannedFilms(made, plan.films), position, changes, system, plan.settings);
  const held = tolerancedSurfaces(withPlannedFilms(runs, plan.films), position, [], system, plan.settings);
  const whole = wholeOf(plan.steps, runs, drawn);
  const surfaces = drawn.map((surface, i) => {
    const { halfAngleTolerance, form, runOut, diameterTolerance } = held[i]!;
    const stops = whole.some((one) => isSame(one, surface));
    return { ...surface, halfAngleTolerance, form, runOut, diameterTolerance: stops ? null : diameterTolerance };
  });
  return { made, target, whole, runs, good: true, surfaces, untoleranced: [], after: null };
}

const isSame = (a: { seat: string; part: Part }, b: { seat: string; part: Part }) =>
  a.seat === b.seat && a.part === b.part;

/** Surfaces of which only some may come off now, at the diameter of all of it. */
function wholeOf(
  steps: readonly { seat: string; part: Part; normal: number; safe?: number | undefined }[],
  { seats }: Design,
  drawn: readonly TolerancedSurface[],
): DrawnParts['whole'] {
  return drawn.flatMap((surface) => {
    const step = steps.find((one) => isSame(one, surface));
    if (!step || targetOf([step]) === 'whole') return [];
    const { seat, part, gaugePlane } = surface;
    const then = seats.find(({ name }) => name === seat)![part];
    return [{ seat, part, diameter: diameterAt(then, gaugePlane) }];
  });
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
  const steps = isRefused ? [] : (remaining?.steps ?? []);
  const target = isRefused ? 'whole' : targetOf(steps);
  const made =
    isRefused || !remaining ? after.now : target === 'whole' ? after.reckoned : safelyLess(after.now, remaining);
  const runs = isRefused ? after.believedNow : after.believed;
  const position = runs.position ?? 0;
  const changes = safeChanges(steps, ({ safeDiameter }) => safeDiameter);
  const drawn = tolerancedSurfaces(made, position, changes, system);
  const held = tolerancedSurfaces(runs, position, [], system, settings);
  return {
    made,
    target,
    whole: wholeOf(steps, after.reckoned, drawn),
    runs,
    good: !isRefused,
    surfaces: drawn.map((surface, i) => ({
      ...surface,
      diameterTolerance: null,
      halfAngleTolerance: held[i]!.halfAngleTolerance,
    })),
    untoleranced: [],
    after,
  };
}
