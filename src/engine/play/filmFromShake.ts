/**
 * A measured shake read back: the positions, and so the films, that give it.
 *
 * To first order the shake is the greatest value of a linear programme whose bounds are linear in the position,
 * hence concave in it: it rises from the rearward stop, and where there is a noseward stop it rises from that
 * as well, to one greatest value between. On each rise the position is found by bisection and secant in turn.
 */
import type { Metres } from '../../design/dimension.ts';
import { leastFilm } from '../contact/film.ts';
import type { Spindle } from '../spindle/rigid.ts';
import { type Indicator, shakeAt } from './shake.ts';

type FilmFromShake =
  /**
   * every position (m) with that shake, the nearest to the rearward stop first, and the centred least film (m) of every
   * seat there; null: apart
   */
  | { status: 'solved'; answers: { position: Metres; films: (number | null)[] }[] }
  /** even against the stop it shakes more than that: by this much (m) */
  | { status: 'less'; least: number }
  /** nowhere within reach does it shake that much; the most is this (m) */
  | { status: 'more'; greatest: number }
  /** the shake does not depend on the position (no cone restrains it), or is not defined here */
  | { status: 'undecided' };

/** m */
const CLOSE = 1e-13;
const STEPS = 120;
/** of the way between the stops */
const HAIR = 1e-9;

/**
 * @param shake m
 * @param rear position against the rearward stop (m), from `seat`
 * @param nose position against the noseward stop, or as far out as is looked (m)
 */
export function filmFromShake(
  spindle: Spindle,
  indicator: Indicator,
  shake: number,
  rear: number,
  nose: number,
): FilmFromShake {
  const totals = new Map<number, number | null>();
  const at = (position: Metres): number | null => {
    const known = totals.get(position);
    if (known !== undefined) return known;
    const found = shakeAt(spindle, position, indicator);
    const total = found.status === 'solved' ? found.total : null;
    totals.set(position, total);
    return total;
  };
  // A hair off the stops, so that a rounding does not make them an interference.
  const hair = HAIR * (nose - rear);
  const low = rear + hair;
  const high = answered(at, low, nose - hair);
  const [first, last] = [at(low), at(high)];
  if (first === null || last === null) return { status: 'undecided' };
  const peak = peakBetween(at, low, high);
  const most = at(peak)!;
  if (most - Math.min(first, last) < CLOSE) return { status: 'undecided' };
  if (shake > most + CLOSE) return { status: 'more', greatest: most };
  const positions = [crossing(at, shake, low, peak), crossing(at, shake, high, peak)].filter(
    (p): p is number => p !== null,
  );
  if (positions.length === 0) return { status: 'less', least: Math.min(first, last) };
  const distinct = positions.filter((p, i) => i === 0 || Math.abs(p - positions[0]!) > CLOSE);
  return {
    status: 'solved',
    answers: distinct.map((position) => ({
      position,
      films: spindle.seats.map(({ gap }) => leastFilm(gap, position)),
    })),
  };
}

/**
 * The furthest of the positions from one toward another, each half as far as the last, at which there is a shake: not
 * so far out that the parts have left each other.
 */
function answered(at: (position: Metres) => number | null, from: number, to: number): number {
  let far = to;
  for (let step = 0; step < 20 && at(far) === null; step++) far = from + (far - from) / 2;
  return far;
}

/** Where a concave function is greatest, by golden section. */
function peakBetween(at: (position: Metres) => number | null, from: number, to: number): number {
  const golden = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [inner, outer] = [high - golden * (high - low), low + golden * (high - low)];
  for (let step = 0; step < 40 && high - low > CLOSE; step++) {
    if ((at(inner) ?? 0) > (at(outer) ?? 0)) [high, outer, inner] = [outer, inner, outer - golden * (outer - low)];
    else [low, inner, outer] = [inner, outer, inner + golden * (high - inner)];
  }
  const candidates = [from, to, (low + high) / 2];
  return candidates.reduce((best, p) =>
    (at(p) ?? Number.NEGATIVE_INFINITY) > (at(best) ?? Number.NEGATIVE_INFINITY) ? p : best,
  );
}

/** Where the shake between a stop and the peak is the one measured; null where it is more already at the stop. */
function crossing(at: (position: Metres) => number | null, shake: number, stop: number, peak: number): number | null {
  let [low, high] = [stop, peak];
  let [under, over] = [(at(low) ?? Number.NaN) - shake, (at(high) ?? Number.NaN) - shake];
  if (!(under <= CLOSE)) return null;
  if (!(over >= 0)) return Math.abs(over) <= CLOSE ? peak : null;
  for (let step = 0; step < STEPS && Math.abs(high - low) > CLOSE; step++) {
    const secant = low - ((high - low) * under) / (over - under);
    const inside = (secant - low) * (secant - high) < 0;
    const next = step % 2 === 0 && inside ? secant : (low + high) / 2;
    const value = (at(next) ?? Number.NaN) - shake;
    if (Math.abs(value) < 1e-16) return next;
    if (value < 0) [low, under] = [next, value];
    else if (value > 0) [high, over] = [next, value];
    else return null;
  }
  return (low + high) / 2;
}
