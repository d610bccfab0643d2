/**
 * The axial position at which the oil carries the thrust, sought with the other four motions at rest each time.
 *
 *   net(z) = Q_z + load_z with x, y and tilts balanced at z        root by doubling steps, then bisection
 *
 * Slower than one descent of all five (descent.ts) but not to be led astray: a light load can send a journal that is
 * almost centred circling for long, its film breaking now on this side, now on that, while it creeps along the axis.
 */

import { asFive, type Pose } from '../spindle/pose.ts';
import { type DescentEnd, FLOOR, settle, type Task, thinnest } from './descent.ts';
import { leastFilmIn } from './films.ts';

const MOST_LOOKS = 40;
const MOST_HALVINGS = 60;
/** of the film: the first step along the axis opens or closes by as much */
const FIRST = 0.1;
/** of the thinnest film: a step that is none */
const STILL = 1e-3;
/** of the load: near enough for Newton's own steps to end it */
const NEAR = 1e-3;

type Found = Extract<DescentEnd, { status: 'solved' }>;

export function searchPosition(task: Task, from: Pose): DescentEnd {
  const { grids, load, run } = task;
  const at = (start: Pose, z: number): DescentEnd => {
    const pose = { ...start, z };
    const thin = thinnest(grids.seats, run, asFive(pose));
    if (thin === null) return { status: 'pushedOff' };
    if (thin.least.film < FLOOR) return { status: 'contact', ...thin, pose };
    return settle({ ...task, held: true }, pose, null);
  };
  const net = ({ total }: Found) => total.force[2] + load[2];
  const size = Math.max(Math.hypot(load[0], load[1], load[2]), 1e-3);

  let here = at(from, from.z);
  if (here.status !== 'solved') return here;
  const toward = Math.sign(net(here));
  const sine = Math.max(...grids.seats.map(({ sin }) => Math.abs(sin)));
  let step =
    (FIRST *
      Math.max(
        FLOOR,
        ...grids.seats.map(
          (seat, i) => leastFilmIn(seat, { ...from, x: 0, y: 0, tiltX: 0, tiltY: 0 }, run, i)?.film ?? 0,
        ),
      )) /
    sine;
  let beyond: Found | null = null;
  let metal: number | null = null;
  for (let look = 0; look < MOST_LOOKS && beyond === null; look++) {
    // Toward metal: closer only by halves.
    if (metal !== null) step = Math.abs(metal - here.pose.z) / 2;
    if (step < STILL * FLOOR) break;
    const next = at(here.pose, here.pose.z + toward * step);
    if (next.status === 'contact') {
      metal = here.pose.z + toward * step;
      continue;
    }
    if (next.status !== 'solved') return next;
    if (Math.sign(net(next)) === toward) here = next;
    else beyond = next;
    step *= 2;
  }
  if (beyond === null)
    return !task.caught && toward * Math.sign(sineSum(task)) > 0
      ? { status: 'pushedOff' }
      : { status: 'contact', ...thinnest(grids.seats, run, asFive(here.pose))!, pose: here.pose };
  for (let halving = 0; halving < MOST_HALVINGS && Math.abs(net(here)) > NEAR * size; halving++) {
    const middle = at(here.pose, (here.pose.z + beyond.pose.z) / 2);
    if (middle.status !== 'solved') return middle;
    if (Math.sign(net(middle)) === toward) here = middle;
    else beyond = middle;
  }
  return settle(task, here.pose, null);
}

/** Above 0 where the seats open noseward on the whole. */
const sineSum = ({ grids: { seats } }: Task) => seats.reduce((sum, { sin }) => sum + sin, 0);
