/** The design once the plan has been carried out: the parts as planned, and of what may be cut only what is left. */
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import type { CutReport } from './definition.ts';
import type { Cut } from './toCut.ts';
import { limitOf } from './toCut.ts';
import { trialText } from './trialText.ts';
import { designWithCut } from './withCut.ts';

/** mm: less is left by rounding alone */
const ROUNDING = 1e-9;

const less = (room: number, off: number) => (room - off < ROUNDING ? 0 : room - off);

/**
 * Cleanups and limits less what came off, no line left to renew, the check list empty. Trials told of the parts as
 * they were, so each becomes a note of the history, in the person's own units.
 */
export function designWithPlanDone(design: Design, report: CutReport, system: System): Design {
  const { cut } = design;
  if (!cut) return design;
  const { work: _, trials, faces, ...rest } = cut;
  return {
    ...designWithCut(design, report),
    cut: {
      ...rest,
      allow: cut.allow.map((entry) => allowLeft(entry, report)),
      ...(faces && { faces: faces.map((face) => faceLeft(face, report)) }),
      ...(trials && { trials: trials.map((trial) => ({ note: trialText(trial, system) })) }),
    },
  };
}

function allowLeft(entry: Cut['allow'][number], { steps }: CutReport): Cut['allow'][number] {
  const off = steps.find((step) => step.seat === entry.seat && step.part === entry.part)?.normal ?? 0;
  const { renew: _, halfAngle: __, ...plain } = entry;
  return { ...(off > 0 ? plain : entry), ...(entry.cleanup !== undefined && { cleanup: less(entry.cleanup, off) }), limit: less(limitOf(entry), off) };
}

function faceLeft(face: NonNullable<Cut['faces']>[number], { faces }: CutReport): NonNullable<Cut['faces']>[number] {
  const off = faces.find(({ name }) => name === face.name)?.off ?? 0;
  return { ...face, ...(face.cleanup !== undefined && { cleanup: less(face.cleanup, off) }), ...(face.add !== undefined && { add: less(face.add, Math.max(0, -off)) }), limit: less(limitOf(face), Math.max(0, off)) };
}
