/** Where no plan is possible: the limits that conflict, each with what it would have to be, to be let go at a press. */
import { fineText, type System } from '../../../design/units.ts';
import type { CutReport, LimitReport } from '../../../report/cut/definition.ts';
import type { Work } from '../../state/store.ts';
import { withLimitLetGo } from './entries.ts';

export function Limits({ work, cut, system }: { work: Work; cut: CutReport; system: System }) {
  const open = cut.limits.filter(({ needed }) => needed !== null);
  if (open.length === 0) return null;
  return (
    <p className="buttons">
      {open.map((limit) => (
        <button key={JSON.stringify(limit)} type="button" onClick={() => work.change((d) => withLimitLetGo(d, limit))}>
          {letGoText(limit, system)}
        </button>
      ))}
    </p>
  );
}

function letGoText({ what, seat, part, face, needed }: LimitReport, system: System): string {
  const of = face ?? `the ${seat} ${part}`;
  const amount = fineText(needed!, system);
  switch (what) {
    case 'forbidden':
    case 'limit':
      return `Let ${of} lose ${amount}`;
    case 'cleanup':
      return `Clean up ${of} by ${amount} only`;
    case 'add':
      return `Let ${of} be ${amount} thicker`;
    case 'reachFrom':
    case 'reachTo':
      return `Let the journal go to ${amount}`;
  }
}
