/**
 * Where a push drives a spindle to: its pose, where it bears, and what share of the push each place carries.
 *
 * The programme of push.ts sees the lines where they stand at one position z₀ and answers with a travel
 * dz(z₀). The journal sits where the two agree, dz(z₀) = 0, which is one equation in one unknown:
 * z₀ + dz is the next guess (exact at once for equal half angles), then the secant, kept within the stretch
 * known to hold the answer, until it moves by less than SETTLED.
 *
 * It begins where the centred journal would touch (fit.ts), so that a push of 1 N rearward on true rounds
 * ends exactly there, and films of micrometres are not sought from a position millimetres away.
 */
import { positionForFilm } from '../contact/fit.ts';
import type { Motion, Pose, Push } from '../spindle/pose.ts';
import type { Spindle } from '../spindle/rigid.ts';
import { type Body, bodyAt } from './body.ts';
import { type Bearing, bearingOf } from './contacts.ts';
import { pushed } from './push.ts';

export type Seating =
  | ({ status: 'solved'; pose: Pose; body: Body } & Bearing)
  /** nothing restrains this motion; its greatest part has the size 1 (m, rad) */
  | { status: 'unbounded'; motion: Pose }
  /** whatever the pose, the journal is at least this far into a bush (m); `pose` is the best */
  | { status: 'infeasible'; interference: number; pose: Pose }
  /**
   * no position settles: a part rests on its edge where it only just begins to enter the other, which the lines do not
   * tell
   */
  | { status: 'stalled'; pose: Pose };

export const REARWARD: Push = { x: 0, y: 0, z: -1, tiltX: 0, tiltY: 0 };
export const NOSEWARD: Push = { x: 0, y: 0, z: 1, tiltX: 0, tiltY: 0 };

/**
 * Travel (m) below which the journal has settled: a rounding at once, and up to 1e-12 m in the tenth step, where a
 * very shallow cone turns the last digit of a film into many of travel.
 */
const SETTLED = 1e-14;
const STEPS = 60;

/**
 * Pushes the spindle until it is held, z among the motions; `near` (m) is the position to begin at where no seat stops
 * the push.
 */
export function seat(spindle: Spindle, push: Push, near = 0): Seating {
  const free = new Set<Motion>([...spindle.free, 'z']);
  const whole: Spindle = { ...spindle, free };
  let low = { z: Number.NEGATIVE_INFINITY, dz: 0 };
  let high = { z: Number.POSITIVE_INFINITY, dz: 0 };
  let z = beginning(spindle, push, near);
  let body = bodyAt(whole, z);
  let verdict = pushed(body, free, push);
  for (let step = 0; step < STEPS; step++) {
    if (verdict.status !== 'solved') return verdict;
    const dz = verdict.pose.z - z;
    if (Math.abs(dz) <= SETTLED * (1 + step * step) + 4 * Number.EPSILON * Math.abs(z))
      return { status: 'solved', pose: verdict.pose, body, ...bearingOf(body, verdict.v, push, verdict.held) };
    if (dz > 0) low = { z, dz };
    else high = { z, dz };
    z = nextGuess(low, high, z, dz, step);
    body = bodyAt(whole, z);
    verdict = pushed(body, free, push);
  }
  return {
    status: 'stalled',
    pose: verdict.status === 'solved' ? verdict.pose : { x: 0, y: 0, z, tiltX: 0, tiltY: 0 },
  };
}

interface Guess {
  z: number;
  dz: number;
}

/** The travel itself while one end of the stretch is open; then the secant, and every third time its middle. */
function nextGuess(low: Guess, high: Guess, z: number, dz: number, step: number): number {
  const closed = Number.isFinite(low.z) && Number.isFinite(high.z);
  if (!closed) return z + dz;
  const plain = z + dz;
  if (step < 3 && plain > low.z && plain < high.z) return plain;
  const secant = low.z + ((high.z - low.z) * low.dz) / (low.dz - high.dz);
  return step % 3 === 2 || !(secant > low.z && secant < high.z) ? (low.z + high.z) / 2 : secant;
}

/**
 * Where the centred journal touches in the sense of the push; the given position where no seat stops it or it pushes
 * sideways.
 */
function beginning({ seats }: Spindle, push: Push, near: number): number {
  if (push.z === 0) return near;
  const sense = push.z < 0 ? 'rearward' : 'noseward';
  const stops = seats.filter((s) => s.closes === sense).flatMap((s) => positionForFilm(s.lines, 0) ?? []);
  if (stops.length === 0) return near;
  return push.z < 0 ? Math.max(...stops) : Math.min(...stops);
}
