/**
 * Where the spindle lies when it does not turn: oil that stands carries nothing, so the load rests on metal (play/).
 *
 * With an adjuster it stands at the position unless the load pushes it home from there; the contacts' thrust decides,
 * as the oil's does when it turns (film/equilibrium.ts).
 */
import { closingSide } from '../film/equilibrium.ts';
import { bearingOf, type SeatContact } from '../play/contacts.ts';
import { pushed } from '../play/push.ts';
import { seat } from '../play/seating.ts';
import { heldAt } from '../play/shake.ts';
import { MOTIONS, type Pose, type Push } from '../spindle/pose.ts';
import type { Spindle } from '../spindle/rigid.ts';
import type { Running } from './running.ts';

interface AtRest {
  pose: Pose;
  /** by seat and station; shares in N */
  contacts: SeatContact[];
}

/** Null where nothing restrains the load, a journal has no room, or the search does not settle. */
export function atRest({ seats, load, position, adjusted }: Running): AtRest | null {
  if (load === null) return null;
  const push: Push = { x: load[0], y: load[1], z: load[2], tiltX: load[3], tiltY: load[4] };
  const spindle: Spindle = { seats, free: new Set(MOTIONS) };
  const home = seat(spindle, push, position);
  const side = closingSide(seats);
  const keeps = (home: { pose: Pose }) =>
    side === 'both' || (side !== 'neither' && (!adjusted || side * (home.pose.z - position) <= 0));
  if (home.status === 'solved' && keeps(home)) return { pose: home.pose, contacts: home.contacts };
  const body = heldAt(spindle, position);
  const held = pushed(body, body.spindle.free, push);
  return held.status === 'solved'
    ? { pose: held.pose, contacts: bearingOf(body, held.v, push, held.held).contacts }
    : null;
}
