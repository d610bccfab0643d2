/**
 * What is felt on the bench: the travel of an indicator against the journal as it is pulled from side to side,
 * and how far it moves axially.
 *
 *   shake = max (X·cos δ + Y·sin δ) - min of the same,   X = x + tiltY·S,  Y = y - tiltX·S
 *
 * S station of the indicator (m) · δ direction of the pull, from x toward y (rad) · the axial position is held:
 * where it is now, or where the journal stands against a stop (hold it there with the position of `seat`).
 * Both are linear programmes (push.ts); their contacts carry a pull of 1 N at the indicator. A share is also
 * what the shake gains per film gained there, share/(1 N): the derivative of a linear programme by its bounds.
 */

import type { Metres, Radians } from '../../design/dimension.ts';
import { axisAt, type Motion, type Pose, pushAt } from '../spindle/pose.ts';
import type { Spindle } from '../spindle/rigid.ts';
import { type Body, bodyAt } from './body.ts';
import { type Bearing, bearingOf } from './contacts.ts';
import { pushed } from './push.ts';
import { NOSEWARD, REARWARD, type Seating, seat } from './seating.ts';

export interface Indicator {
  /** m, on the bush */
  station: Metres;
  /** rad, from x toward y */
  direction: number;
}

/** One end of the travel. */
export type Pulled = { pose: Pose } & Bearing;

export type Shake =
  /** total travel (m), the journal pulled along the direction, and pulled back */
  | { status: 'solved'; total: number; along: Pulled; back: Pulled }
  /** nothing restrains this motion sideways; its greatest part has the size 1 (m, rad) */
  | { status: 'unbounded'; motion: Pose }
  /** at this position the journal is at least this far into a bush (m), however it lies */
  | { status: 'infeasible'; interference: Metres; pose: Pose }
  | { status: 'stalled'; pose: Pose };

/** The spindle with its axial position held, ready for any number of pulls there. */
export function heldAt(spindle: Spindle, position: Metres): Body {
  const free = new Set<Motion>(spindle.free);
  free.delete('z');
  return bodyAt({ ...spindle, free }, position);
}

export const shakeAt = (spindle: Spindle, position: Metres, indicator: Indicator): Shake =>
  shakeOf(heldAt(spindle, position), indicator);

/** The shake of a spindle held at a position (heldAt). */
export function shakeOf(body: Body, { station, direction }: Indicator): Shake {
  const along = pulled(body, station, direction);
  if (along.status !== 'solved') return along;
  // True rounds give way as far to the one side as to the other.
  const back = isRound(body) ? turnedBack(along) : pulled(body, station, direction + Math.PI);
  if (back.status !== 'solved') return back;
  const reading = ({ pose }: Pulled) => {
    const { x, y } = axisAt(pose, station);
    return x * Math.cos(direction) + y * Math.sin(direction);
  };
  return { status: 'solved', total: Math.max(0, reading(along) - reading(back)), along, back };
}

type Pull = ({ status: 'solved' } & Pulled) | Exclude<Shake, { status: 'solved' }>;

function pulled(body: Body, station: Metres, direction: number): Pull {
  const pull = pushAt(station, { x: Math.cos(direction), y: Math.sin(direction) });
  const verdict = pushed(body, body.spindle.free, pull);
  if (verdict.status !== 'solved') return verdict;
  return { status: 'solved', pose: verdict.pose, ...bearingOf(body, verdict.v, pull, verdict.held) };
}

const isRound = ({ spindle }: Body) =>
  spindle.seats.every(({ round }) => round.samples.length === 0 && round.pushX === 0 && round.pushY === 0);

function turnedBack(pull: { status: 'solved' } & Pulled): Pull {
  const { pose, contacts } = pull;
  const half = (angle: Radians) => (angle + Math.PI) % (2 * Math.PI);
  return {
    ...pull,
    pose: { x: -pose.x, y: -pose.y, z: pose.z, tiltX: -pose.tiltX, tiltY: -pose.tiltY },
    contacts: contacts.map((contact) => ({ ...contact, angle: half(contact.angle) })),
  };
}

interface EndPlay {
  /** pushed home and pulled out by 1 N */
  rear: Seating;
  nose: Seating;
  /** travel from the rearward to the noseward stop (m); null when there are not both. Below 0: they overlap. */
  total: number | null;
}

/**
 * End play of the spindle as it really moves, tilted and sideways as the stops let it: never less than that of the
 * centred journal.
 */
export function endPlay(spindle: Spindle, near = 0): EndPlay {
  const rear = seat(spindle, REARWARD, near);
  const nose = seat(spindle, NOSEWARD, near);
  return { rear, nose, total: rear.status === 'solved' && nose.status === 'solved' ? nose.pose.z - rear.pose.z : null };
}

interface ShakePoint {
  /** m */
  position: Metres;
  /** m; null where nothing restrains it or the journal does not fit */
  total: number | null;
}

/** Shake at `count` positions evenly from one (m) to another. */
export function shakeCurve(
  spindle: Spindle,
  indicator: Indicator,
  from: number,
  to: number,
  count: number,
): ShakePoint[] {
  return Array.from({ length: count }, (_, i) => {
    const position = count === 1 ? from : from + ((to - from) * i) / (count - 1);
    const shake = shakeAt(spindle, position, indicator);
    return { position, total: shake.status === 'solved' ? shake.total : null };
  });
}
