/**
 * The round of a seat: how far its journal and its bush together stand proud at an angle, and the angle at
 * which a journal pushed off centre comes nearest to its bush.
 *
 *   d(φ) = Σ amplitude·cos(count·(φ - phase))          journal and bush; both take film away
 *   p(φ) = A·cos φ + B·sin φ + d(φ)                    greatest where the film is least
 *
 * φ angle from x toward y (rad) · amplitude (m) · A, B how far the axis is pushed to x and y, square to the
 * surface (m). Lobes of equal count are one lobe, and a lobe of count 1 is a push: both are summed first.
 *
 * Round: p is greatest at atan2(B, A), in closed form. Lobed: p is sampled finer than its lobes, and between
 * two samples Δ apart it cannot exceed the greater of them by more than
 *
 *   M·Δ²/8,   M = hypot(A, B) + Σ count²·amplitude ≥ |p''|
 *
 * so that whatever could still hide a greater value is halved until it cannot: the answer is certain, not sampled.
 */
import type { Radians } from '../../design/dimension.ts';
import type { Lobe } from '../parts/line.ts';

export interface Round {
  /** lobes of count 1, as a push to x and y (m) */
  pushX: number;
  pushY: number;
  count: Float64Array;
  cos: Float64Array;
  sin: Float64Array;
  /** greatest |d| and |d''|, m and m/rad², without the push */
  height: number;
  bend: number;
  /** d at equally spaced angles; empty for a true round */
  samples: Float64Array;
  /** cosine and sine of those angles */
  cosines: Float64Array;
  sines: Float64Array;
}

/** How much p may be missed by (m): a hundredth of the least distance the engine tells apart. */
const CERTAIN = 1e-14;
/** of that: a lobe of less is none */
const FELT = 1e-3;
/** Samples of the finest lobe, and the fewest of all. */
const PER_LOBE = 16;
const FEWEST = 48;

/** The round of a journal turned by `turned` (rad) in its bush. */
export function roundOf(journal: readonly Lobe[] = [], bush: readonly Lobe[] = [], turned = 0): Round {
  const sums = new Map<number, [number, number]>();
  const add = (lobe: Lobe, turn: number) => {
    const sum = sums.get(lobe.count) ?? [0, 0];
    const crest = lobe.count * (lobe.phase + turn);
    sums.set(lobe.count, [sum[0] + lobe.amplitude * Math.cos(crest), sum[1] + lobe.amplitude * Math.sin(crest)]);
  };
  for (const lobe of journal) add(lobe, turned);
  for (const lobe of bush) add(lobe, 0);
  const [pushX, pushY] = sums.get(1) ?? [0, 0];
  const rest = [...sums].filter(([count, [c, s]]) => count !== 1 && Math.hypot(c, s) > FELT * CERTAIN);
  const finest = rest.reduce((most, [count]) => Math.max(most, count), 0);
  const n = finest === 0 ? 0 : Math.max(FEWEST, PER_LOBE * finest);
  const round: Round = {
    pushX,
    pushY,
    count: Float64Array.from(rest, ([count]) => count),
    cos: Float64Array.from(rest, ([, [c]]) => c),
    sin: Float64Array.from(rest, ([, [, s]]) => s),
    height: rest.reduce((sum, [, [c, s]]) => sum + Math.hypot(c, s), 0),
    bend: rest.reduce((sum, [count, [c, s]]) => sum + count * count * Math.hypot(c, s), 0),
    samples: new Float64Array(n),
    cosines: new Float64Array(n),
    sines: new Float64Array(n),
  };
  for (let k = 0; k < n; k++) {
    const angle = (2 * Math.PI * k) / n;
    round.cosines[k] = Math.cos(angle);
    round.sines[k] = Math.sin(angle);
    round.samples[k] = lobesAt(round, angle);
  }
  return round;
}

/** How far the lobes stand proud at an angle (m), without those of count 1. */
export function lobesAt({ count, cos, sin }: Round, angle: Radians): number {
  let sum = 0;
  for (let i = 0; i < count.length; i++)
    sum += cos[i]! * Math.cos(count[i]! * angle) + sin[i]! * Math.sin(count[i]! * angle);
  return sum;
}

/** The same with those of count 1 (m): d(φ). */
export const proudAt = (round: Round, angle: Radians): number =>
  round.pushX * Math.cos(angle) + round.pushY * Math.sin(angle) + lobesAt(round, angle);

/** Second derivative of d by the angle (m/rad²), without those of count 1. */
export function lobesBend({ count, cos, sin }: Round, angle: Radians): number {
  let sum = 0;
  for (let i = 0; i < count.length; i++)
    sum -= count[i]! * count[i]! * (cos[i]! * Math.cos(count[i]! * angle) + sin[i]! * Math.sin(count[i]! * angle));
  return sum;
}

function lobesSlope({ count, cos, sin }: Round, angle: Radians): number {
  let sum = 0;
  for (let i = 0; i < count.length; i++)
    sum += count[i]! * (sin[i]! * Math.cos(count[i]! * angle) - cos[i]! * Math.sin(count[i]! * angle));
  return sum;
}

/** A greatest value of p (m) and its angle (rad). */
export interface Worst {
  value: number;
  angle: Radians;
}

/**
 * A journal exactly on its axis has no worst angle; this one is named, so that three contacts stand as a tripod does.
 */
const ANY_ANGLE = Math.PI / 2;

/**
 * The greatest p, for a push (m) that does not yet hold the lobes of count 1. Into `worst`, since it is asked
 * many thousand times a second. With `certain` no greater value exists by more than 1e-14 m; without, the
 * best of the samples is refined, which misses a greater value only where two are all but equal.
 */
export function worstAngle(round: Round, a: number, b: number, certain: boolean, worst: Worst): void {
  const pushX = a + round.pushX;
  const pushY = b + round.pushY;
  const push = Math.hypot(pushX, pushY);
  if (round.samples.length === 0) {
    worst.value = push;
    worst.angle = push === 0 ? ANY_ANGLE : Math.atan2(pushY, pushX);
    return;
  }
  const { samples, cosines, sines } = round;
  let best = Number.NEGATIVE_INFINITY;
  let at = 0;
  for (let k = 0; k < samples.length; k++) {
    const p = samples[k]! + pushX * cosines[k]! + pushY * sines[k]!;
    if (p > best) {
      best = p;
      at = k;
    }
  }
  climb(round, pushX, pushY, (2 * Math.PI * at) / samples.length, worst);
  if (certain) searchBetween(round, pushX, pushY, push + round.bend, worst);
}

/**
 * Every angle (rad) at which p is greatest, to within `within` (m) of `most`; for a lobed round, and a push that does
 * not yet hold the lobes of count 1.
 */
export function greatestAngles(round: Round, a: number, b: number, most: number, within: number): number[] {
  const pushX = a + round.pushX;
  const pushY = b + round.pushY;
  const { samples } = round;
  const n = samples.length;
  const at = (k: number) => valueAt(round, pushX, pushY, (2 * Math.PI * k) / n);
  const found: number[] = [];
  const top: Worst = { value: 0, angle: 0 };
  for (let k = 0; k < n; k++) {
    const here = at(k);
    if (here < at(k - 1) || here < at(k + 1)) continue;
    climb(round, pushX, pushY, (2 * Math.PI * k) / n, top);
    if (top.value < most - within || found.some((angle) => Math.abs(Math.sin((angle - top.angle) / 2)) < 1e-6))
      continue;
    found.push(top.angle);
  }
  return found;
}

/** Newton's way up from an angle, into `worst`; keeps the start where it does not lead up. */
function climb(round: Round, pushX: number, pushY: number, start: number, worst: Worst): void {
  const step = (2 * Math.PI) / round.samples.length;
  let angle = start;
  for (let i = 0; i < 20; i++) {
    const c = Math.cos(angle);
    const s = Math.sin(angle);
    const slope = pushY * c - pushX * s + lobesSlope(round, angle);
    const bend = -pushX * c - pushY * s + lobesBend(round, angle);
    const move = bend < 0 ? -slope / bend : Math.sign(slope) * step;
    angle = Math.min(start + step, Math.max(start - step, angle + move));
    if (Math.abs(move) < 1e-9) break;
  }
  const value = valueAt(round, pushX, pushY, angle);
  const first = valueAt(round, pushX, pushY, start);
  worst.value = Math.max(value, first);
  worst.angle = value >= first ? angle : start;
}

const valueAt = (round: Round, pushX: number, pushY: number, angle: Radians) =>
  pushX * Math.cos(angle) + pushY * Math.sin(angle) + lobesAt(round, angle);

/** Halves every stretch that could hold a value greater than the best known, until none can. */
function searchBetween(round: Round, pushX: number, pushY: number, bend: number, worst: Worst): void {
  const { samples, cosines, sines } = round;
  const n = samples.length;
  const step = (2 * Math.PI) / n;
  const room = (bend * step * step) / 8;
  let before = samples[n - 1]! + pushX * cosines[n - 1]! + pushY * sines[n - 1]!;
  for (let k = 0; k < n; k++) {
    const here = samples[k]! + pushX * cosines[k]! + pushY * sines[k]!;
    if (Math.max(before, here) + room > worst.value + CERTAIN)
      halve(round, pushX, pushY, bend, (k - 1) * step, step, before, here, worst);
    before = here;
  }
}

function halve(
  round: Round,
  pushX: number,
  pushY: number,
  bend: number,
  from: number,
  width: number,
  left: number,
  right: number,
  worst: Worst,
): void {
  // Either end bounds the stretch by its value; both together by the parabola of the greatest bend through them.
  const rise = right - left;
  const room = (bend * width * width) / 8;
  const bound =
    Math.abs(rise) < 4 * room ? (left + right) / 2 + room + (rise * rise) / (16 * room) : Math.max(left, right);
  if (bound <= worst.value + CERTAIN) return;
  const half = width / 2;
  const middle = valueAt(round, pushX, pushY, from + half);
  if (middle > worst.value) {
    worst.value = middle;
    worst.angle = from + half;
  }
  halve(round, pushX, pushY, bend, from, half, left, middle, worst);
  halve(round, pushX, pushY, bend, from + half, half, middle, right, worst);
}
