/** The way of whoever cannot read a surface: a trial assembly tells of the pair without a gauge. */
import type { Design } from '../../../design/definition.ts';
import { isTried } from '../../../report/cut/openTrials.ts';

/** `unread`: whether some surface has no reading at all */
export function ToTrial({ design, unread }: { design: Design; unread: boolean }) {
  if (!unread || isTried(design)) return null;
  return (
    <p>
      What you cannot gauge need not hold you up: stand-off, blue and shake of a{' '}
      <a href="#cut/trials">trial assembly, written down on Cut</a>, tell how the cones stand to each other.
    </p>
  );
}
