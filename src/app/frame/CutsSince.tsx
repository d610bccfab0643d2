/** Where metal came off since the parts were measured, a screen that goes by the measured parts says so. */
import type { Design } from '../../design/definition.ts';
import { openTrials } from '../../report/cut/openTrials.ts';

export function CutsSince({ design }: { design: Design }) {
  const cuts = design.cut
    ? openTrials(design.cut).filter(({ taken = [], faces = [] }) => taken.length + faces.length > 0).length
    : 0;
  if (cuts === 0) return null;
  return (
    <p className="advice">
      {cuts === 1 ? 'One cut was' : `${cuts} cuts were`} made since: what stands here is of the parts before.{' '}
      <a href="#cut">Cut</a> says what is left.
    </p>
  );
}
