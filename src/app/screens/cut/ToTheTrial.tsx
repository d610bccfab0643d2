/** What the advice asks for first where it is a trial: its form, begun and brought into sight. */
import { beforeTrial } from '../../../report/cut/beforeTrial.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { placeOf } from '../../frame/openParts.ts';
import { reveal } from '../../frame/Parts.tsx';
import { offeredForCut } from '../../record/entered.ts';
import type { Work } from '../../state/store.ts';
import { draftOf } from './trialDraft.ts';
import { useWriting } from './UnwrittenMetal.tsx';

export function ToTheTrial({ work, cut }: { work: Work; cut: CutReport }) {
  const [writing, setWriting] = useWriting(work);
  if (writing !== null || beforeTrial(cut) === 'all') return null;
  const begin = () => {
    const { design, system } = work.store.getState();
    setWriting({ at: 'new', draft: draftOf(cut, design, system, offeredForCut(design)) });
    reveal(placeOf('cut', 'trials'));
  };
  return (
    <p className="buttons">
      <button type="button" className={beforeTrial(cut) === 'nothing' ? 'main' : ''} onClick={begin}>
        Write down the trial
      </button>
    </p>
  );
}
