/**
 * Seats drawn by the thousand whose lines are straight: contact/film.ts for chains of one piece. A film is linear along
 * the line, so the least one stands at an end e of the overlap: the nose end where the journal widens faster, the rear
 * end where the bush does; and there it is the journal's end that comes to lie inside, or the bush's,
 *
 *   film(p) = max(A₁ + S₁·p, A₂ + S₂·p)
 *   journal's end   A₁ = cos a·[R(z_e) - r_e]                       S₁ = sin a
 *   bush's end      A₂ = [R_e - r(Z_e)]/(cos a·(1 + T·t))           S₂ = t/(cos a·(1 + T·t))
 *   overlap         Z₀ + R₀·T - (z₁ + r₁·T) ≤ p ≤ Z₁ + R₁·T - (z₀ + r₀·T)
 *
 * R, Z, a, T = tan a of the bush, r, z, t of the journal; 0 rear end, 1 nose end · p position (m). The position for a
 * film f follows: where both widen to the nose the lesser of (f - A)/S, where both narrow the greater.
 *   tan(a + δ) = (tan a + tan δ)/(1 - tan a·tan δ), tan δ by its series: error below 1e-17 up to 0.01 rad
 * @source derived
 */
import { STEEPEST } from '../belief/unknowns.ts';
import type { SeatInput } from '../contact/fit.ts';
import type { Surface } from '../parts/line.ts';

/** One seat of every draw of a block. */
export interface SeatColumns {
  a1: Float64Array;
  s1: Float64Array;
  a2: Float64Array;
  s2: Float64Array;
  /** positions of the overlap (m) */
  least: Float64Array;
  most: Float64Array;
  /** which way it closes: 1 rearward, -1 noseward, 0 never; ODD: the two lines lean opposite ways and could touch */
  closes: Int8Array;
  /** tan of the bush's half angle */
  tan: Float64Array;
}

export const ODD = 2;
/** No shape at all. */
export const NO_LINE = 3;

/** What is added to each number of a surface that varies. */
export type Deviations = Partial<Record<'halfAngle' | 'radius' | 'station' | 'from' | 'to', Float64Array>>;

export const seatColumns = (count: number): SeatColumns => ({
  a1: new Float64Array(count),
  s1: new Float64Array(count),
  a2: new Float64Array(count),
  s2: new Float64Array(count),
  least: new Float64Array(count),
  most: new Float64Array(count),
  closes: new Int8Array(count),
  tan: new Float64Array(count),
});

/** The ends of one line of every draw: stations, radii, tan a. */
interface Ends {
  tan: Float64Array;
  z0: Float64Array;
  r0: Float64Array;
  z1: Float64Array;
  r1: Float64Array;
}

export function straightSeat(
  { bush, journal }: SeatInput,
  by: { bush: Deviations; journal: Deviations },
  count: number,
): (out: SeatColumns) => void {
  const [ofBush, ofJournal] = [endsFor(count), endsFor(count)];
  return (out) => {
    fillEnds(bush, by.bush, ofBush);
    fillEnds(journal, by.journal, ofJournal);
    filmLines(ofBush, ofJournal, out);
  };
}

const endsFor = (count: number): Ends => ({
  tan: new Float64Array(count),
  z0: new Float64Array(count),
  r0: new Float64Array(count),
  z1: new Float64Array(count),
  r1: new Float64Array(count),
});

/** A line that is none (isShape of belief/unknowns.ts; ends in order) has no tangent. */
function fillEnds({ halfAngle, radius, station, from, to }: Surface, by: Deviations, out: Ends): void {
  const { tan, z0, r0, z1, r1 } = out;
  const count = tan.length;
  const none = new Float64Array(count);
  const { halfAngle: a = none, radius: r = none, station: s = none, from: f = none, to: t = none } = by;
  const base = Math.tan(halfAngle);
  for (let k = 0; k < count; k++) {
    const slope = tanNear(halfAngle, base, a[k]!);
    const rear = from + f[k]!;
    const nose = to + t[k]!;
    const at = station + s[k]!;
    const rAt = radius + r[k]!;
    z0[k] = rear;
    z1[k] = nose;
    const rRear = rAt + (rear - at) * slope;
    const rNose = rAt + (nose - at) * slope;
    r0[k] = rRear;
    r1[k] = rNose;
    const whole = Math.abs(halfAngle + a[k]!) < STEEPEST && rear < nose && rRear > 0 && rNose > 0;
    tan[k] = whole ? slope : Number.NaN;
  }
}

/** rad: so far the series of tan is good to rounding */
const NEAR = 0.01;

function tanNear(angle: number, tan: number, by: number): number {
  if (Math.abs(by) > NEAR) return Math.tan(angle + by);
  const q = by * by;
  const t = by * (1 + q * (1 / 3 + q * (2 / 15 + q * (17 / 315))));
  return (tan + t) / (1 - tan * t);
}

function filmLines(bush: Ends, journal: Ends, out: SeatColumns): void {
  const { a1, s1, a2, s2, least, most, closes, tan } = out;
  const { tan: tanB, z0: zb0, r0: rb0, z1: zb1, r1: rb1 } = bush;
  const { tan: tanJ, z0: zj0, r0: rj0, z1: zj1, r1: rj1 } = journal;
  for (let k = 0; k < a1.length; k++) {
    const tb = tanB[k]!;
    const tj = tanJ[k]!;
    const cos = 1 / Math.sqrt(1 + tb * tb);
    const nose = tj > tb;
    const zb = nose ? zb1[k]! : zb0[k]!;
    const rb = nose ? rb1[k]! : rb0[k]!;
    const zj = nose ? zj1[k]! : zj0[k]!;
    const rj = nose ? rj1[k]! : rj0[k]!;
    a1[k] = cos * (rb - rj - (zb - zj) * tb);
    s1[k] = cos * tb;
    const per = 1 / (cos * (1 + tb * tj));
    a2[k] = per * (rb - rj - (zb - zj) * tj);
    s2[k] = per * tj;
    least[k] = zb0[k]! - zj1[k]! + (rb0[k]! - rj1[k]!) * tb;
    most[k] = zb1[k]! - zj0[k]! + (rb1[k]! - rj0[k]!) * tb;
    tan[k] = tb;
    const same = tb * tj;
    closes[k] = same > 0 ? (tb > 0 ? 1 : -1) : seldom(tb, tj, rb0[k]!, rb1[k]!, rj0[k]!, rj1[k]!);
  }
}

/**
 * Lines that lean opposite ways, or one of them straight: almost always a straight bearing, which nothing closes while
 * the two have no radius in common.
 */
function seldom(tb: number, tj: number, rb0: number, rb1: number, rj0: number, rj1: number): number {
  if (Number.isNaN(tb * tj)) return NO_LINE;
  if (tb === 0 && tj === 0) return 0;
  const low = Math.max(Math.min(rb0, rb1), Math.min(rj0, rj1));
  const high = Math.min(Math.max(rb0, rb1), Math.max(rj0, rj1));
  return low <= high ? ODD : 0;
}
