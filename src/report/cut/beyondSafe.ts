/**
 * Metal written down beyond what was told to be safe before it came off. What was told stands with the entry: what is
 * known afterwards would tell something else.
 */

import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import { fineText, type System } from '../../design/units.ts';
import { isGuess } from '../assumed.ts';
import type { CutReport } from './definition.ts';
import { listed, NOTHING } from './listed.ts';
import type { TrialEntry } from './openTrials.ts';
import { offFaceText } from './trialText.ts';

type Told = Pick<CutReport, 'steps' | 'remaining' | 'notAsRead'>;

/** mm: to a tenth of a nanometre */
const rounded = (mm: Millimetres) => Number(mm.toFixed(7));

/** The trial with what was told before it of all that it takes off. */
export function withToldSafe(design: Design, cut: Told, trial: TrialEntry): TrialEntry {
  // Of parts that nobody measured, or that were read otherwise, nothing is told to be taken off.
  const nothing = isGuess(design) || cut.notAsRead !== undefined;
  const told = (found: { safe?: number | undefined } | undefined) =>
    nothing || found === undefined ? 0 : found.safe === undefined ? undefined : rounded(found.safe);
  const { taken, faces } = trial;
  return {
    ...trial,
    ...(taken && {
      taken: taken.map((off) => {
        const safe = told(
          (cut.remaining ?? cut).steps.find(({ seat, part }) => seat === off.seat && part === off.part),
        );
        return safe === undefined ? off : { ...off, safe };
      }),
    }),
    ...(faces && {
      faces: faces.map((off) => {
        // Before any trial what is safe is told of surfaces alone.
        const safe =
          cut.remaining || nothing ? told(cut.remaining?.faces.find(({ name }) => name === off.name)) : undefined;
        return safe === undefined ? off : { ...off, safe };
      }),
    }),
  };
}

/** One sentence; null where no more came off than that, or nothing was told. */
export function beyondSafeText({ taken = [], faces = [] }: TrialEntry, system: System): string | null {
  const beyond = [
    ...taken.map(({ seat, part, normal, safe }) => ({
      what: `${fineText(normal, system)} off the ${seat} ${part}`,
      off: normal,
      safe,
    })),
    ...faces.map((face) => ({ what: offFaceText(face, system), off: face.off, safe: face.safe })),
  ].flatMap(({ what, off, safe }) => {
    if (safe === undefined) return [];
    // Off a face where it should be put on is not safe at all.
    const most = off * safe > 0 ? Math.abs(safe) : 0;
    if (Math.abs(off) - most <= NOTHING) return [];
    return [`${what}, where ${most < NOTHING ? 'nothing' : fineText(most, system)} was safe`];
  });
  return beyond.length === 0 ? null : `Beyond what was told to be safe: ${listed(beyond)}.`;
}
