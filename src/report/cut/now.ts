/** What is to be done at the machine now, in a few words: the first line a person reads, before any why. */
import { fineText, type System } from '../../design/units.ts';
import { lookBefore, OTHERWISE, TRY_IT } from './advice.ts';
import { beforeTrial } from './beforeTrial.ts';
import { throughSentence } from './caseWords.ts';
import type { CutReport } from './definition.ts';
import { isLeft, isUnproven, leaveNow, worksText } from './leave.ts';
import { leftOf } from './left.ts';
import { listed, NOTHING } from './listed.ts';
import { isReached, nothingToCut } from './verdict.ts';
import { isUnsettled, WITHHELD_NOW } from './withheld.ts';

/** What else is known that speaks against cutting. */
export interface Against {
  /** with the films of the plan it must not run */
  mustNotRun: boolean;
}

/** Surfaces named one by one; of more only how many. */
const FEW = 2;

export function cutNow(cut: CutReport, { mustNotRun }: Against, system: System): string {
  if (cut.notAsRead === 'contradict') return 'Readings contradict each other: cut nothing yet.';
  if (cut.notAsRead === 'other') return 'Drawn otherwise than read: cut nothing yet.';
  if (cut.guess) return `Not measured: cut nothing, ${TRY_IT}.`;
  if (throughSentence(cut, system) !== '') return 'It would cut through the hard case.';
  if (isUnsettled(cut)) return WITHHELD_NOW.clash;
  if (isLeft(cut) && !mustNotRun) return leaveNow(cut, lookBefore(cut, system)?.doing ?? null);
  if (cut.remaining) return leftNow(cut, cut.remaining, system);
  return plannedNow(cut, mustNotRun, system);
}

/** With what would tell more, where that is not just to try again after what is safe. */
function leftNow(cut: CutReport, remaining: NonNullable<CutReport['remaining']>, system: System): string {
  const left = leftOf(remaining, system);
  if (left.length === 0)
    return remaining.feasible || remaining.inTolerance
      ? isUnproven(cut)
        ? 'Most likely nothing is left to cut, but that is not known yet.'
        : 'Nothing is left to cut.'
      : 'Nothing more can be cut: the films stay off.';
  const safe = left.filter(({ taken }) => taken >= NOTHING);
  const look = lookBefore(cut, system);
  const works = worksText(cut);
  if (safe.length === 0 && look?.doing === OTHERWISE && works !== '')
    return `Take nothing yet: ${works}; to be surer ${OTHERWISE}.`;
  if (safe.length === 0) return `Take nothing yet: first ${look?.doing ?? 'try it again'}.`;
  if (look?.when === 'first') return `First ${look.doing}; safe now: ${listed(safe.map((one) => one.safe))}.`;
  const then = look ? ', then try again' : '';
  return safe.length > FEW
    ? `Safe to take now: something off ${safe.length} surfaces${then}.`
    : `Safe to take now: ${safe.map((one) => one.safe).join('; ')}${then}.`;
}

function plannedNow(cut: CutReport, mustNotRun: boolean, system: System): string {
  switch (cut.status) {
    case 'nothingWanted':
      return 'No film is asked for.';
    case 'apart':
      return 'A journal does not reach its bush.';
    case 'stalled':
      return 'No plan was found.';
    default:
  }
  if (!isReached(cut) && !cut.inTolerance) return 'No cut within these limits gives the films.';
  if (nothingToCut(cut)) return mustNotRun ? 'Nothing to cut, yet it must not run so.' : 'Nothing need be cut.';
  if (mustNotRun) return 'Cut nothing yet: it must not run so.';
  if (cut.asTheyAre) return 'Right within tolerance already: the parts may be left uncut.';
  return offNow(cut, system);
}

/** What is safe stands first, and a trial before all that is not. */
export function offNow(cut: CutReport, system: System): string {
  const all = offText(cut, system);
  const before = beforeTrial(cut);
  if (before === 'all') return `${all.replace(/^./, (c) => c.toUpperCase())}.`;
  const shaken = lookBefore(cut, system)?.way ? ' with its shake' : '';
  if (before === 'nothing') return `A trial${shaken} first; then most likely ${all}.`;
  const safe = cut.steps
    .filter((step) => (step.safe ?? step.normal) >= NOTHING)
    .map(
      ({ seat, part, normal, safe = normal }) => `${fineText(Math.min(safe, normal), system)} off the ${seat} ${part}`,
    );
  const some = safe.length > FEW ? `Part of it off ${safe.length} surfaces` : safe.join(', ');
  return `${some}, then a trial${shaken}.`;
}

function offText({ steps, faces }: CutReport, system: System): string {
  const off = [
    ...steps
      .filter(({ deepest }) => deepest >= NOTHING)
      .map(({ seat, part, deepest }) => `${fineText(deepest, system)} off the ${seat} ${part}`),
    ...faces
      .filter((face) => Math.abs(face.off) >= NOTHING)
      .map((face) => `${fineText(Math.abs(face.off), system)} ${face.off > 0 ? 'off' : 'on'} ${face.name}`),
  ];
  return off.length > FEW ? `metal off ${off.length} surfaces` : off.join(', ');
}
