/** Pressure and film that follow the design: on a coarse grid while it changes, on a full one once it rests. */
import type { Design } from '../../../design/definition.ts';
import type { RunFields } from '../../../report/film/fields.ts';
import type { Solved } from '../../state/useNewest.ts';
import { useRested } from '../../state/useRested.ts';
import { useSolved } from '../../state/useSolved.ts';

/** ms without a change after which the full grid is worth its time. */
const REST = 200;

export function useFields(design: Design): Solved<RunFields> & { resting: boolean } {
  const rested = useRested(design, REST);
  const moving = useSolved('movingFields', design);
  // The last design that stood still; asked again only when another one has come to rest.
  const still = useSolved('fullFields', rested);
  const resting = still.of === design && still.value !== null;
  const again = () => {
    moving.again();
    still.again();
  };
  return { ...(resting ? still : moving), fault: moving.fault ?? still.fault, again, resting };
}
