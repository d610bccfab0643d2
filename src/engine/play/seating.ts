/**
 * Where a push drives a spindle to: its pose, where it bears, and what share of the push each place carries.
 *
 * The programme of push.ts sees the lines where they stand at one position z₀ and answers with a travel
 * dz(z₀). The journal sits where the two agree, dz(z₀) = 0, which is one equation in one unknown:
 * z₀ + dz is the next guess (exact at once for equal half angles), then the secant, kept within the stretch
 * known to hold the answer, until it moves by less than SETTLED. Of half angles that differ the plain guess takes only
 * the share tan a_journal/tan a_bush of what is left, and may come from one side for ever: there the secant leaps.
 *
 * The films told are those of z₀; over the travel that is left they change by dz·cos a·dv/du more than the programme
 * sees (contact/film.ts), and that too must be less than a film is told to.
 *
 * It begins where the centred journal would touch (fit.ts), so that a push of 1 N rearward on true rounds
 * ends exactly there, and films of micrometres are not sought from a position millimetres away.
 */
import type { Metres } from '../../design/dimension.ts';
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
  | { status: 'infeasible'; interference: Metres; pose: Pose }
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
/** Film (m) that the travel left may change unseen: half of the 1e-9 mm promised. */
const UNSEEN = 5e-13;
const STEPS = 60;
/** How many times the plain step a leap may take; it may lead to where the parts no longer meet. */
const LEAP = 128;

/**
 * Pushes the spindle until it is held, z among the motions; `near` (m) is the position to begin at where no seat stops
 * the push.
 */
export function seat(spindle: Spindle, push: Push, near = 0): Seating {
  const free = new Set<Motion>([...spindle.free, 'z']);
  const whole: Spindle = { ...spindle, free };
  const steepest = steepestSlope(spindle);
  let low = { z: Number.NEGATIVE_INFINITY, dz: 0 };
  let high = { z: Number.POSITIVE_INFINITY, dz: 0 };
  let before: Guess | null = null;
  let body = bodyAt(whole, beginning(spindle, push, near));
  let verdict = pushed(body, free, push);
  for (let step = 0; step < STEPS; step++) {
    if (verdict.status !== 'solved') return verdict;
    const z = body.stations.position;
    const here = { z, dz: verdict.pose.z - z };
    const left = Math.abs(here.dz);
    if (left <= SETTLED * (1 + step * step) + 4 * Number.EPSILON * Math.abs(z) && left * steepest <= UNSEEN)
      return { status: 'solved', pose: verdict.pose, body, ...bearingOf(body, verdict.v, push, verdict.held) };
    if (here.dz > 0) low = here;
    else high = here;
    for (const guess of nextGuesses(low, high, here, before, step)) {
      body = bodyAt(whole, guess);
      verdict = pushed(body, free, push);
      if (verdict.status === 'solved') break;
    }
    before = here;
  }
  return {
    status: 'stalled',
    pose: verdict.status === 'solved' ? verdict.pose : { x: 0, y: 0, z: body.stations.position, tiltX: 0, tiltY: 0 },
  };
}

/** The steepest piece of any line against the base line of its bush: cos a·dv/du. */
const steepestSlope = ({ seats }: Spindle): number =>
  seats.reduce(
    (most, { cos, gap }) =>
      [gap.bush.slope, gap.journal.slope].reduce(
        (steep, slopes) => slopes.reduce((greatest, slope) => Math.max(greatest, cos * Math.abs(slope)), steep),
        most,
      ),
    0,
  );

interface Guess {
  z: number;
  dz: number;
}

/**
 * The best guess first, and what to go by where it leads astray. While one end of the stretch is open the travel
 * itself, or a leap; then the secant, and every third time the middle of the stretch.
 */
function nextGuesses(low: Guess, high: Guess, here: Guess, before: Guess | null, step: number): number[] {
  const plain = here.z + here.dz;
  if (!Number.isFinite(low.z) || !Number.isFinite(high.z)) {
    const taken = before === null || step < 3 ? 1 : (before.dz - here.dz) / (here.z - before.z);
    return taken > 0 && taken < 1 ? [here.z + here.dz * Math.min(LEAP, 1 / taken), plain] : [plain];
  }
  if (step < 3 && plain > low.z && plain < high.z) return [plain];
  const secant = low.z + ((high.z - low.z) * low.dz) / (low.dz - high.dz);
  return [step % 3 === 2 || !(secant > low.z && secant < high.z) ? (low.z + high.z) / 2 : secant];
}

/**
 * Where the centred journal touches in the sense of the push; the given position where no seat stops it or it pushes
 * sideways.
 */
function beginning({ seats }: Spindle, push: Push, near: number): number {
  if (push.z === 0) return near;
  const sense = push.z < 0 ? 'rearward' : 'noseward';
  const stops = seats.filter((s) => s.closes === sense).flatMap((s) => positionForFilm(s, 0) ?? []);
  if (stops.length === 0) return near;
  return push.z < 0 ? Math.max(...stops) : Math.min(...stops);
}
