/**
 * Where metal came off since the parts were measured, a screen that goes by the measured parts says so; with `trials`
 * also where a trial assembly told of them since.
 */
import { memo } from 'react';
import type { Design } from '../../design/definition.ts';
import { openTrials, tellsAnything } from '../../report/cut/openTrials.ts';

interface Props {
  design: Design;
  trials?: boolean;
}

export const CutsSince = memo(CutsOf, (a, b) => a.design.cut === b.design.cut && a.trials === b.trials);

function CutsOf({ design, trials = false }: Props) {
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
      {cuts === 1 ? 'One cut was' : `${cuts} cuts were`} made since: what is drawn here is of the parts before.{' '}
      <a href="#cut">Cut</a> goes on from there.
    </p>
  );
}
