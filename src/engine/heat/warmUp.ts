/**
 * How journal and bush warm from the room's temperature, and where that ends.
 *
 *   m_j c_j dT_j/dt = heat into the journal - cooling_j·area_j·(T_j - ambient)        the same for the bush
 *
 * Heat from warmFilm.ts, whose films follow viscosity and growth. Stiff (the film evens the two out in seconds, the
 * room cools them in half an hour), so taken in Rosenbrock steps of second order that stay so with an approximate
 * Jacobian, chosen for `TOLERANCE`. The steady state is found directly as the root of the two right-hand sides, with
 * the same Jacobian and in it, as soon as two states are known, the secant of what the films heat.
 * @source Verwer1999 (ROS2)
 */
import type { Metres } from '../../design/dimension.ts';
import { solveTwo, type Two } from '../algebra/elimination.ts';
import { isSpent } from '../film/effort.ts';
import { toRoom, type WarmFilm, type Warming, type WarmVerdict, warmFilm } from './warmFilm.ts';

interface WarmPoint {
  /** s, °C, m, W */
  time: number;
  journal: number;
  bush: number;
  /** of the seat whose oil is warmest */
  oil: number;
  leastFilm: Metres;
  power: number;
}

export interface WarmUp {
  points: WarmPoint[];
  /** givenUp: the effort of the run, or its steps, are spent before the time is over */
  end: 'time' | 'contact' | 'notConverged' | 'givenUp' | 'cancelled';
  /** seat that touches where it ends in contact */
  seat: number | null;
  last: WarmFilm | null;
}

/** K a step may be off. */
const TOLERANCE = 0.15;
const GAMMA = 1 - Math.SQRT1_2;
const MAX_STEPS = 400;

/** Hears every point, with its films; where it answers false the run ends. */
type Tick = (point: WarmPoint, state: WarmFilm) => boolean;

/** Follows the warm-up for `duration` (s). `near`: cold films close by, where there are any. */
export function warmUp(
  warming: Warming,
  duration: number,
  tick: Tick = () => true,
  near: WarmFilm | null = null,
): WarmUp {
  let y: Two = [warming.ambient, warming.ambient];
  let state = warmFilm(warming, y[0], y[1], near);
  const points: WarmPoint[] = [];
  if (state.status !== 'solved')
    return { points, end: state.status, seat: 'seat' in state ? state.seat : null, last: null };
  let time = 0;
  let step = Math.min(duration, 10);
  points.push(pointOf(0, state));
  let last: WarmFilm = state;
  for (let n = 0; n < MAX_STEPS && time < duration * (1 - 1e-12); n++) {
    step = Math.min(step, duration - time);
    const tried = rosenbrock(warming, last, y, step);
    if ('status' in tried) {
      if (step > 0.05) {
        step /= 4;
        continue;
      }
      return { points, end: tried.status, seat: 'seat' in tried ? tried.seat : null, last };
    }
    const error = Math.max(...tried.error.map(Math.abs)) / TOLERANCE;
    if (error > 1 && step > 1e-3) {
      step *= Math.max(0.2, 0.9 / Math.sqrt(error));
      continue;
    }
    state = warmFilm(warming, tried.y[0], tried.y[1], last);
    if (state.status !== 'solved') {
      if (step > 0.05) {
        step /= 4;
        continue;
      }
      return { points, end: state.status, seat: 'seat' in state ? state.seat : null, last };
    }
    [y, last, time] = [tried.y, state, time + step];
    points.push(pointOf(time, state));
    if (!tick(points[points.length - 1]!, state)) return { points, end: 'cancelled', seat: null, last };
    step *= Math.min(4, Math.max(0.3, 0.9 / Math.sqrt(Math.max(error, 1e-3))));
  }
  return { points, end: time < duration * (1 - 1e-12) ? 'givenUp' : 'time', seat: null, last };
}

const pointOf = (time: number, state: WarmFilm): WarmPoint => ({
  time,
  journal: state.journal,
  bush: state.bush,
  oil: Math.max(...state.oil),
  leastFilm: Math.min(...state.seats.map(({ least }) => least.film)),
  power: state.total.power,
});

/** Net heat (W) of both parts. */
export function netHeat({ journal, bush, ambient }: Warming, state: WarmFilm): Two {
  return [
    state.heat.journal - toRoom(journal, state.journal, ambient),
    state.heat.bush - toRoom(bush, state.bush, ambient),
  ];
}

/** How the shear power changes with the mean temperature of both parts (W/K), through the viscosity only. */
function powerSlope(warming: Warming, { total, oil }: WarmFilm): number {
  const t = oil.reduce((sum, one) => sum + one, 0) / oil.length;
  return total.power * Math.log(warming.oil.viscosity(t + 0.5) / warming.oil.viscosity(t - 0.5));
}

/**
 * How net heat changes with both temperatures (W/K): conduction and cooling exactly, `falling` how the films heat less
 * with the mean of both.
 */
function slope(warming: Warming, { heat }: WarmFilm, power: number): [Two, Two] {
  const falling = power / 4;
  const { journal, bush } = warming;
  return [
    [falling - heat.across - journal.cooling * journal.area, falling + heat.across],
    [falling + heat.across, falling - heat.across - bush.cooling * bush.area],
  ];
}

type Tried = { y: Two; error: Two } | Exclude<WarmVerdict, { status: 'solved' }>;

function rosenbrock(warming: Warming, last: WarmFilm, y: Two, step: number): Tried {
  const capacity: Two = [
    warming.journal.mass * warming.journal.specificHeat,
    warming.bush.mass * warming.bush.specificHeat,
  ];
  const rate = (state: WarmFilm): Two => netHeat(warming, state).map((w, i) => w / capacity[i]!) as Two;
  const j = slope(warming, last, powerSlope(warming, last));
  const g = GAMMA * step;
  const matrix: [Two, Two] = [
    [1 - (g * j[0][0]) / capacity[0], (-g * j[0][1]) / capacity[0]],
    [(-g * j[1][0]) / capacity[1], 1 - (g * j[1][1]) / capacity[1]],
  ];
  const k1 = solveTwo(matrix, rate(last));
  const between = warmFilm(warming, y[0] + step * k1[0], y[1] + step * k1[1], last);
  if (between.status !== 'solved') return between;
  const f = rate(between);
  const k2 = solveTwo(matrix, [f[0] - 2 * k1[0], f[1] - 2 * k1[1]]);
  return {
    y: [y[0] + step * (1.5 * k1[0] + 0.5 * k2[0]), y[1] + step * (1.5 * k1[1] + 0.5 * k2[1])],
    error: [(step / 2) * (k1[0] + k2[0]), (step / 2) * (k1[1] + k2[1])],
  };
}

/** W that may be left of the balance, as a part of the power. */
const BALANCED = 1e-4;

/**
 * The state that no longer changes; `contact` where the parts heat on until the films are shut. `from` a state close
 * by; without one, from the room's temperature.
 */
export function steadyState(warming: Warming, from: WarmFilm | null = null): WarmVerdict {
  const first =
    from === null
      ? warmFilm(warming, warming.ambient, warming.ambient, null)
      : warmFilm(warming, from.journal, from.bush, from);
  if (first.status !== 'solved') return first;
  let state: WarmFilm = first;
  let before: WarmFilm | null = null;
  for (let n = 0; n < 20; n++) {
    const f = netHeat(warming, state);
    if (Math.hypot(...f) <= BALANCED * Math.max(state.total.power, 1e-6)) return { status: 'solved', ...state };
    let power = before === null ? powerSlope(warming, state) : secant(before, state);
    const runsAway = () => f[0] + f[1] > 0 && power >= coolingOf(warming);
    if (runsAway() && before !== null && apart(before, state) < APART) power = slopeAhead(warming, state);
    if (runsAway()) {
      // It heats more the warmer it gets: no steady state from here on. There may be one on the way here.
      const cooler = coolerState(warming, state);
      if (cooler === null)
        return { status: 'contact', seat: thinnestOf(state), journal: state.journal, bush: state.bush };
      [before, state] = [null, cooler];
      continue;
    }
    const full = solveTwo(slope(warming, state, power), [-f[0], -f[1]]);
    let part = Math.min(1, 25 / Math.max(1e-9, Math.abs(full[0]), Math.abs(full[1])));
    let next = warmFilm(warming, state.journal + part * full[0], state.bush + part * full[1], state);
    for (let shorter = 0; next.status !== 'solved' && shorter < 3; shorter++) {
      part /= 3;
      next = warmFilm(warming, state.journal + part * full[0], state.bush + part * full[1], state);
    }
    if (next.status !== 'solved') return next;
    [before, state] = [state, next];
  }
  return { status: isSpent(warming.effort) ? 'givenUp' : 'notConverged', journal: state.journal, bush: state.bush };
}

/** W/K that the room takes for every kelvin of both parts. */
const coolingOf = ({ journal, bush }: Warming) => journal.cooling * journal.area + bush.cooling * bush.area;

/** W/K: what the films heat both parts, less what their oil carries off, from one state to the other. */
function secant(a: WarmFilm, b: WarmFilm): number {
  const heat = (state: WarmFilm) => state.heat.journal + state.heat.bush;
  const mean = (state: WarmFilm) => (state.journal + state.bush) / 2;
  return (heat(b) - heat(a)) / (mean(b) - mean(a));
}

/** K: of states nearer to each other a secant is mostly what the oil's temperature may be off in each. */
const APART = 1;

const apart = (a: WarmFilm, b: WarmFilm) => Math.abs(b.journal + b.bush - a.journal - a.bush) / 2;

/** W/K: what the films heat more where both parts are warmer by `APART`; no end of it where they are shut there. */
function slopeAhead(warming: Warming, state: WarmFilm): number {
  const warmer = warmFilm(warming, state.journal + APART, state.bush + APART, state);
  return warmer.status === 'solved' ? secant(state, warmer) : Number.POSITIVE_INFINITY;
}

const thinnestOf = ({ seats }: WarmFilm) =>
  seats.reduce((thin, { least }, i) => (least.film < seats[thin]!.least.film ? i : thin), 0);

const GOLDEN = (Math.sqrt(5) - 1) / 2;
const LOOKS = 6;

/**
 * Between the room's temperature and `hot`, a state that no longer heats; null: it heats all the way, the least net
 * heat (golden section; falling with the viscosity, then rising as the films close) being above 0.
 */
function coolerState(warming: Warming, hot: WarmFilm): WarmFilm | null {
  const { ambient } = warming;
  const at = (part: number) => {
    const state = warmFilm(
      warming,
      ambient + part * (hot.journal - ambient),
      ambient + part * (hot.bush - ambient),
      hot,
    );
    if (state.status !== 'solved') return { heat: Number.POSITIVE_INFINITY, state: null };
    const [journal, bush] = netHeat(warming, state);
    return { heat: journal + bush, state };
  };
  let [from, to] = [0, 1];
  let [low, high] = [1 - GOLDEN, GOLDEN];
  let [left, right] = [at(low), at(high)];
  for (let look = 0; ; look++) {
    const cooler = left.heat < right.heat ? left : right;
    if (cooler.heat < 0) return cooler.state;
    if (look === LOOKS) return null;
    if (cooler === left) {
      [to, high, right] = [high, low, left];
      low = to - GOLDEN * (to - from);
      left = at(low);
    } else {
      [from, low, left] = [low, high, right];
      high = from + GOLDEN * (to - from);
      right = at(high);
    }
  }
}
