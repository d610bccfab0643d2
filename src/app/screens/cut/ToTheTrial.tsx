/** What the advice asks for first where it is a trial, or the shake: its form, begun and brought into sight. */
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { lookBefore } from '../../../report/cut/advice.ts';
import { beforeTrial } from '../../../report/cut/beforeTrial.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { placeOf } from '../../frame/openParts.ts';
import { reveal } from '../../frame/Parts.tsx';
import { offeredForCut } from '../../record/entered.ts';
import type { Work } from '../../state/store.ts';
import { draftOf, shakenAt } from './trialDraft.ts';
import { useWriting, type Writing } from './writing.ts';

/** A shake belongs to the trial that is assembled: to the last one where that has none yet. */
export function writingOf(cut: CutReport, design: Design, system: System): Writing {
  const way = lookBefore(cut, system)?.way;
  const reading = (way?.ungauged ?? way?.reading)?.reading;
  const trials = design.cut?.trials ?? [];
  const last = trials.at(-1);
  const shake = reading?.kind === 'shake' ? reading : null;
  if (!shake) return { at: 'new', draft: draftOf(cut, design, system, offeredForCut(design)) };
  const added = last !== undefined && !last.inShapes && last.shake === undefined;
  const draft = draftOf(cut, design, system, added ? last : offeredForCut(design));
  return { at: added ? trials.length - 1 : 'new', draft: shakenAt(draft, design, shake) };
}

export function ToTheTrial({ work, cut }: { work: Work; cut: CutReport }) {
  const [writing, setWriting] = useWriting(work);
  if (writing !== null || beforeTrial(cut) === 'all') return null;
  const { design, system } = work.store.getState();
  const next = writingOf(cut, design, system);
  const begin = () => {
    setWriting(next);
    reveal(placeOf('cut', 'trials'));
  };
  return (
    <p className="buttons">
      <button type="button" className={beforeTrial(cut) === 'nothing' ? 'main' : ''} onClick={begin}>
        {next.at === 'new' ? 'Write down the trial' : `Add the shake to trial ${next.at + 1}`}
      </button>
    </p>
  );
}
