/**
 * Takes the parts as the plan leaves them into the design; where that is not what was wanted it says what it will be.
 */
import type { Design } from '../../../design/definition.ts';
import { fineText, type System } from '../../../design/units.ts';
import { beforeTrial } from '../../../report/cut/beforeTrial.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { isLeft } from '../../../report/cut/leave.ts';
import { leftOf } from '../../../report/cut/left.ts';
import { listed } from '../../../report/cut/listed.ts';
import { designWithPlanDone, takenBeyond } from '../../../report/cut/planDone.ts';
import { filmsText, isPressed, isReached } from '../../../report/cut/verdict.ts';
import { isUnsettled } from '../../../report/cut/withheld.ts';
import { offeredForCut } from '../../record/entered.ts';
import type { Work } from '../../state/store.ts';
import { lastTrialTold } from './entries.ts';

interface Props {
  work: Work;
  /** the design the plan was made for */
  design: Design;
  /** whether another plan is on its way */
  stale: boolean;
  cut: CutReport;
  /** something speaks against cutting to this plan */
  against?: boolean;
  system: System;
}

export function TakeDone({ work, design, stale, cut, against: spoken = false, system }: Props) {
  if (cut.steps.length + cut.faces.length === 0) return null;
  const films = filmsText(design, cut.films, system);
  const why = refusal(design, cut, system);
  const good = isReached(cut) || cut.inTolerance;
  // What the trials say is still left speaks against it.
  const left = cut.remaining ? leftOf(cut.remaining, system).map(({ text }) => text) : [];
  const against =
    left.length === 0
      ? ''
      : `By the trials there is still left ${listed(left)}, so the parts are most likely not as planned. `;
  // The filled button is what the advice says; that is no cut where a trial comes first or the parts may be left.
  const advised = good && against === '' && !spoken && beforeTrial(cut) === 'all' && !cut.asTheyAre && !isLeft(cut);
  const kept = cut.remaining ? ' as they were planned, not as the trials tell, which become history,' : ' as planned';
  const take = () => work.change((d) => lastTrialTold(designWithPlanDone(d, cut), offeredForCut(d)), { kept: true });
  return (
    <p className="buttons">
      <button type="button" className={advised ? 'main' : ''} disabled={stale || why !== null} onClick={take}>
        {good ? `Take the plan as done${against === '' ? '' : ' all the same'}` : `Take the nearest as done: ${films}`}
      </button>
      <span className="fine">
        {why ??
          `${against}Puts the parts${kept} into the design${good ? '' : ', though the films are then not those wanted'}, and what came off into the history, so that readings from before still count; one undo takes it back.`}
      </span>
    </p>
  );
}

/** Why steps cannot be taken as done; null where they can. */
function refusal(design: Design, cut: CutReport, system: System): string | null {
  if (isPressed(cut)) return 'It cannot be taken: the parts would still press into each other.';
  if (!cut.inReach) return 'It cannot be taken: the journal would have to stand beyond its adjuster and shoulders.';
  if (isUnsettled(cut))
    return 'It cannot be taken: what was read at the trials does not go together. Settle that first.';
  const beyond = takenBeyond(design, cut);
  if (beyond.length > 0)
    return `It cannot be taken: by the trials ${listed(beyond.map(({ seat, part, more }) => `the ${seat} ${part} has lost ${fineText(more, system)}`))} more than this plan takes. That is no fault of the parts: go on by the trials, or measure them as they are.`;
  return null;
}
