/** Where the spindle lies with its nose pulled; loaded once the first picture stands. */
import type { Design } from '../../../design/definition.ts';
import type { Body } from '../../../engine/play/body.ts';
import { reachToward } from '../../../engine/play/reach.ts';
import { heldAt } from '../../../engine/play/shake.ts';
import { metres } from '../../../report/convert.ts';
import { toSpindle } from '../../../report/play/toPlay.ts';
import type { State } from '../../state/store.ts';
import type { Pulled } from './usePull.ts';

/** The body of poses the spindle can take at its position now. */
export const bodyOf = (design: Design): Body => heldAt(toSpindle(design), metres(design.position ?? 0));

/** Null where the nose cannot be pulled: the journal in its bush. */
export function pulledTo(body: Body, { station, x, y }: NonNullable<State['pull']>): Pulled | null {
  const reach = reachToward(body, metres(station), metres(x), metres(y));
  return reach.status === 'solved' ? { pose: reach.pose, contacts: reach.contacts } : null;
}
