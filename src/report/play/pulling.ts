/** Where the spindle lies with its nose pulled; loaded once the first picture stands. */

import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import type { Body } from '../../engine/play/body.ts';
import { reachToward } from '../../engine/play/reach.ts';
import { heldAt } from '../../engine/play/shake.ts';
import { metres } from '../convert.ts';
import type { Pose, SeatContact } from '../inFrame.ts';
import { toSpindle } from './toPlay.ts';

/** A nose pulled aside: station, and how far to the right and up (mm). */
export interface Pull {
  station: Millimetres;
  x: Millimetres;
  y: Millimetres;
}

export interface Pulled {
  /** m, rad */
  pose: Pose;
  contacts: SeatContact[];
}

/** The body of poses the spindle can take at its position now. */
export const bodyOf = (design: Design): Body => heldAt(toSpindle(design), metres(design.position ?? 0));

/** Null where the nose cannot be pulled: the journal in its bush. */
export function pulledTo(body: Body, { station, x, y }: Pull): Pulled | null {
  const reach = reachToward(body, metres(station), metres(x), metres(y));
  return reach.status === 'solved' ? { pose: reach.pose, contacts: reach.contacts } : null;
}
