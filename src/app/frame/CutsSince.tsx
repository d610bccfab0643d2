/**
 * Where metal came off since the parts were measured, a screen that goes by the measured parts says so; with `trials`
 * also where a trial assembly told of them since.
 */
import type { Design } from '../../design/definition.ts';
import { openTrials, tellsAnything } from '../../report/cut/openTrials.ts';

export function CutsSince({ design, trials = false }: { design: Design; trials?: boolean }) {
  const open = design.cut ? openTrials(design.cut) : [];
  const cuts = open.filter(({ taken = [], faces = [] }) => taken.length + faces.length > 0).length;
  if (cuts === 0) {
    if (!trials || !open.some(tellsAnything)) return null;
    return (
      <p className="advice">
        What stands here is of the parts as drawn. <a href="#cut">Cut</a> says what the trial assembly told of them.
      </p>
    );
  }
  return (
    <p className="advice">
      {cuts === 1 ? 'One cut was' : `${cuts} cuts were`} made since: what stands here is of the parts before.{' '}
      <a href="#cut">Cut</a> says what is left.
    </p>
  );
}
