/** The design once the plan has been carried out: the parts as planned, and of what may be cut only what is left. */

import type { Design, Part } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import type { CutReport } from './definition.ts';
import { NOTHING } from './listed.ts';
import { FACE_SIGMA, surfaceSigma } from './metalDoubt.ts';
import { openTrials, type TrialEntry } from './openTrials.ts';
import { type Cut, limitOf } from './toCut.ts';
import { designWithCut } from './withCut.ts';

/** mm: less is left by rounding alone */
const ROUNDING = 1e-9;
const NOTE = 'The plan, taken as done';

const less = (room: number, off: number) => (room - off < ROUNDING ? 0 : room - off);

/**
 * Cleanups and limits less what came off, no line left to renew, the check list empty. The history keeps every trial,
 * and one entry more for what came off since the last of them; all of it is in the surfaces now and counts no second
 * time.
 */
export function designWithPlanDone(design: Design, report: CutReport): Design {
  const { cut } = design;
  if (!cut) return design;
  const { work: _, trials = [], faces, ...rest } = cut;
  return {
    ...designWithCut(design, report),
    cut: {
      ...rest,
      allow: cut.allow.map((entry) => allowLeft(entry, report)),
      ...(faces && { faces: faces.map((face) => faceLeft(face, report)) }),
      trials: [...trials, entryOf(design, cut, report)].map((trial, i, all) => inShapes(cut, trial, all.slice(0, i))),
    },
  };
}

const surfaceOff = (trials: readonly TrialEntry[], seat: string, part: Part) =>
  trials
    .flatMap(({ taken = [] }) => taken)
    .reduce((sum, t) => (t.seat === seat && t.part === part ? sum + t.normal : sum), 0);
const faceOff = (trials: readonly TrialEntry[], name: string) =>
  trials.flatMap(({ faces = [] }) => faces).reduce((sum, f) => (f.name === name ? sum + f.off : sum), 0);

/** To a tenth of a nanometre. */
const rounded = (mm: Millimetres) => Number(mm.toFixed(7));

/**
 * An entry whose metal is off the surfaces now; the first to cut one to its new line says so, since that is then to be
 * told from nothing else.
 */
function inShapes(cut: Cut, trial: TrialEntry, earlier: readonly TrialEntry[]): TrialEntry {
  if (trial.inShapes || !trial.taken) return { ...trial, inShapes: true };
  const open = openTrials({ trials: [...earlier] });
  const renews = (seat: string, part: Part, normal: number) =>
    normal > 0 &&
    cut.allow.some((a) => a.seat === seat && a.part === part && a.renew) &&
    surfaceOff(open, seat, part) === 0;
  return {
    ...trial,
    inShapes: true,
    taken: trial.taken.map((t) => (renews(t.seat, t.part, t.normal) ? { ...t, renewed: true } : t)),
  };
}

/** What came off by the plan since the last trial, with the doubt of it stated. */
function entryOf(design: Design, cut: Cut, { steps, faces }: CutReport): TrialEntry {
  const trials = openTrials(cut);
  const taken = steps.map(({ seat, part, normal }) => {
    const since = Math.max(0, normal - surfaceOff(trials, seat, part));
    return { seat, part, normal: since, sigma: rounded(surfaceSigma(design, seat, part, since)) };
  });
  const moved = faces.map(({ name, off }) => {
    const since = off - faceOff(trials, name);
    return { name, off: since, sigma: FACE_SIGMA };
  });
  return { note: NOTE, ...(taken.length > 0 && { taken }), ...(moved.length > 0 && { faces: moved }) };
}

/** Surfaces that trials say have lost more than the plan takes (mm): parts as planned these cannot be. */
export function takenBeyond({ cut }: Design, { steps }: CutReport): { seat: string; part: Part; more: number }[] {
  const trials = cut ? openTrials(cut) : [];
  const surfaces = new Map(
    trials.flatMap(({ taken = [] }) => taken.map(({ seat, part }) => [`${seat} ${part}`, { seat, part }] as const)),
  );
  return [...surfaces.values()].flatMap(({ seat, part }) => {
    const more =
      surfaceOff(trials, seat, part) - (steps.find((step) => step.seat === seat && step.part === part)?.normal ?? 0);
    return more > NOTHING ? [{ seat, part, more }] : [];
  });
}

function allowLeft(entry: Cut['allow'][number], { steps }: CutReport): Cut['allow'][number] {
  const off = steps.find((step) => step.seat === entry.seat && step.part === entry.part)?.normal ?? 0;
  const { renew: _, halfAngle: __, ...plain } = entry;
  return {
    ...(off > 0 ? plain : entry),
    ...(entry.cleanup !== undefined && { cleanup: less(entry.cleanup, off) }),
    limit: less(limitOf(entry), off),
  };
}

function faceLeft(face: NonNullable<Cut['faces']>[number], { faces }: CutReport): NonNullable<Cut['faces']>[number] {
  const off = faces.find(({ name }) => name === face.name)?.off ?? 0;
  return {
    ...face,
    ...(face.cleanup !== undefined && { cleanup: less(face.cleanup, off) }),
    ...(face.add !== undefined && { add: less(face.add, Math.max(0, -off)) }),
    limit: less(limitOf(face), Math.max(0, off)),
  };
}
