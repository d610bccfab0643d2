/** Writes down that what is safe to take is off: an entry of the history, which the next trial follows. */
import { fineText, type System } from '../../../design/units.ts';
import { beforeTrial } from '../../../report/cut/beforeTrial.ts';
import { withToldSafe } from '../../../report/cut/beyondSafe.ts';
import type { CutReport } from '../../../report/cut/definition.ts';
import { listed } from '../../../report/cut/listed.ts';
import { safePart } from '../../../report/cut/safePart.ts';
import { offeredForCut } from '../../record/entered.ts';
import type { Work } from '../../state/store.ts';
import { withTrial } from './entries.ts';
import { useWriting } from './writing.ts';

interface Props {
  work: Work;
  cut: CutReport;
  /** whether another plan is on its way */
  stale: boolean;
  system: System;
}

export function TakeSafe({ work, cut, stale, system }: Props) {
  const [writing] = useWriting(work);
  const safe = safePart(cut);
  if (safe === null || writing !== null || beforeTrial(cut) === 'nothing') return null;
  const { taken = [], faces = [] } = safe;
  const off = [
    ...taken.map(({ seat, part, normal }) => `${fineText(normal, system)} off the ${seat} ${part}`),
    ...faces.map((face) => `${fineText(Math.abs(face.off), system)} ${face.off > 0 ? 'off' : 'on'} ${face.name}`),
  ];
  const take = () =>
    work.change((d) => withTrial(d, withToldSafe(d, cut, { ...offeredForCut(d), ...safe })), { kept: true });
  return (
    <p className="buttons">
      <button type="button" disabled={stale} onClick={take}>
        Take the safe part as done: {listed(off)}
      </button>
      <span className="fine">Written down with the doubt of the dial; the next trial tells what is left then.</span>
    </p>
  );
}
