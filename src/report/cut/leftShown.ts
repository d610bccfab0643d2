/** What trials leave to be cut, as a plan that can be drawn: of the parts as they are believed to be by now. */
import type { Design } from '../../design/definition.ts';
import { partsAfterTrials } from '../sheet/partsAfterTrials.ts';
import type { CutReport, CutStepReport } from './definition.ts';

export interface LeftShown {
  /** the parts as believed, where the journal stands */
  design: Design;
  cut: CutReport;
}

/** Null before any trial, and while what was read does not go together. */
export function leftShown(design: Design, cut: CutReport): LeftShown | null {
  const parts = partsAfterTrials(design, cut);
  const { remaining } = cut;
  if (!parts || !remaining) return null;
  const planned = (seat: string, part: string) => cut.steps.find((step) => step.seat === seat && step.part === part);
  const steps = remaining.steps.map(({ seat, part, normal, diameter }): CutStepReport => {
    const then = parts.believed.seats.find(({ name }) => name === seat)![part];
    const as = planned(seat, part) ?? cut.steps[0];
    return {
      ...as!,
      seat,
      part,
      normal,
      deepest: normal,
      diameter,
      after: { halfAngle: then.halfAngle, diameter: then.diameter },
    };
  });
  const faces = cut.faces.flatMap((face) => {
    const left = remaining.faces.find(({ name }) => name === face.name);
    return left ? [{ ...face, off: left.off }] : [];
  });
  // No tool is drawn off its centre here: which flanks are cut already the trials do not say.
  return {
    design: parts.believedNow,
    cut: { ...cut, steps, faces, position: remaining.position, films: remaining.films, settings: [] },
  };
}
