/** The parts with no more off than is safe to take now: what a drawing for the machine may carry as its target. */
import type { Design, Part, Surface } from '../../design/definition.ts';
import { diameterChange } from '../../engine/parts/stock.ts';
import { metres, millimetres, radians } from '../convert.ts';
import type { CutReport } from '../cut/definition.ts';
import { NOTHING } from '../cut/listed.ts';
import { designWithCut } from '../cut/withCut.ts';
import { partsLess } from './partsAfterTrials.ts';

/** `whole`: all that is to come off is safe; `part`, `none`: some of it, or nothing, and a trial before the rest. */
export type Target = 'whole' | 'part' | 'none';

type Step = Pick<CutReport['steps'][number], 'seat' | 'part' | 'normal'> & { safe?: number | undefined };

const isWhole = ({ normal, safe = normal }: Step) => safe > normal - NOTHING;
const isNone = ({ normal, safe = normal }: Step) => safe < NOTHING;

export function targetOf(steps: readonly Step[]): Target {
  const real = steps.filter(({ normal }) => normal >= NOTHING);
  if (real.every(isWhole)) return 'whole';
  return real.every(isNone) ? 'none' : 'part';
}

/** Before any trial: every surface that is cut, at the diameter it has with the safe part off; faces are as planned. */
export function safelyCut(design: Design, cut: CutReport): Design {
  const steps = cut.steps.flatMap((step) => {
    if (isWhole(step)) return [step];
    if (isNone(step)) return [];
    const { halfAngle, diameter } = step.after;
    const rest = millimetres(diameterChange(metres(step.normal - step.safe!), radians(halfAngle), step.part));
    return [{ ...step, after: { halfAngle, diameter: diameter - rest } }];
  });
  return designWithCut(design, { ...cut, steps });
}

/** After trials: as they are by now, with the safe part of what is left off. */
export const safelyLess = (now: Design, { steps, faces }: NonNullable<CutReport['remaining']>): Design =>
  partsLess(now, {
    surfaces: steps.map(({ seat, part, safe }) => ({ seat, part, normal: safe })),
    faces: faces.map(({ name, safe }) => ({ name, off: safe })),
  });

/** Steps as a drawing names them: by how much the diameter is to change now; none of what nothing is to come off. */
export function safeChanges<S extends Step & { diameter: number }>(
  steps: readonly S[],
  safeDiameter: (step: S) => number,
): { seat: string; part: Part; diameter: number }[] {
  return steps.flatMap((step) =>
    isNone(step)
      ? []
      : [{ seat: step.seat, part: step.part, diameter: isWhole(step) ? step.diameter : safeDiameter(step) }],
  );
}

/** Diameter (mm) of a surface at another of its stations. */
export const diameterAt = ({ diameter, station, halfAngle }: Surface, at: number): number =>
  diameter + 2 * (at - station) * Math.tan(radians(halfAngle));
