/** To the field where what is most likely wrong is mended: on the form that is open, or on that of its trial. */
import type { CauseReport } from '../../../report/cut/causes.ts';
import { mendedAt } from '../../../report/cut/causeWords.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { placeOf } from '../../frame/openParts.ts';
import { reveal } from '../../frame/Parts.tsx';
import type { Work } from '../../state/store.ts';
import { draftOf } from './trialDraft.ts';
import { useWriting, type Writing } from './writing.ts';

/** `at`: the form that is open, or to be opened where the trial is not written down yet. */
export function useMend(work: Work, cut: CutReport): (cause: CauseReport, at: Writing['at']) => void {
  const [, setWriting] = useWriting(work);
  return (cause, at) => {
    const { design, system } = work.store.getState();
    const trials = design.cut?.trials ?? [];
    const place = cause.trial! - 1;
    if (place < trials.length && at !== place)
      setWriting((now) => ({
        at: place,
        draft: draftOf(cut, design, system, trials[place]),
        ...(now && { afterwards: now }),
      }));
    reveal(placeOf('cut', 'trials'));
    focusOn(mendedAt(cause)!);
  };
}

/** Once it is drawn. */
const focusOn = (title: string) =>
  requestAnimationFrame(() => {
    const label = [...document.querySelectorAll<HTMLLabelElement>('.trial-form label')].find(
      ({ textContent }) => textContent === title,
    );
    label?.control?.focus();
    label?.scrollIntoView({ block: 'center' });
  });
