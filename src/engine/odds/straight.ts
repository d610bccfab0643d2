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
import type { Radians } from '../../design/dimension.ts';
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

/** A line of every draw: its numbers as drawn in the middle, and a column of what is added to each. */
type LineColumns = { line: Surface; tan: number } & Required<Deviations>;

export function straightSeat(
  { bush, journal }: SeatInput,
  by: { bush: Deviations; journal: Deviations },
  count: number,
): (out: SeatColumns) => void {
  const none = new Float64Array(count);
  const columns = (line: Surface, of: Deviations): LineColumns => ({
    ...{ line, tan: Math.tan(line.halfAngle) },
    ...{ halfAngle: none, radius: none, station: none, from: none, to: none, ...of },
  });
  const [ofBush, ofJournal] = [columns(bush, by.bush), columns(journal, by.journal)];
  return (out) => filmLines(ofBush, ofJournal, out);
}

/** Every number of both lines in one pass: what is between two of them stays at hand. */
function filmLines(bush: LineColumns, journal: LineColumns, out: SeatColumns): void {
  const { a1, s1, a2, s2, least, most, closes, tan } = out;
  const { halfAngle: ab, radius: rb, station: sb, from: fb, to: nb, line: b, tan: baseB } = bush;
  const { halfAngle: aj, radius: rj, station: sj, from: fj, to: nj, line: j, tan: baseJ } = journal;
  for (let k = 0; k < a1.length; k++) {
    const tb = tanNear(b.halfAngle, baseB, ab[k]!);
    const tj = tanNear(j.halfAngle, baseJ, aj[k]!);
    const zb0 = b.from + fb[k]!;
    const zb1 = b.to + nb[k]!;
    const rb0 = b.radius + rb[k]! + (zb0 - b.station - sb[k]!) * tb;
    const rb1 = b.radius + rb[k]! + (zb1 - b.station - sb[k]!) * tb;
    const zj0 = j.from + fj[k]!;
    const zj1 = j.to + nj[k]!;
    const rj0 = j.radius + rj[k]! + (zj0 - j.station - sj[k]!) * tj;
    const rj1 = j.radius + rj[k]! + (zj1 - j.station - sj[k]!) * tj;
    const nose = tj > tb;
    const z = nose ? zb1 - zj1 : zb0 - zj0;
    const r = nose ? rb1 - rj1 : rb0 - rj0;
    const cos = 1 / Math.sqrt(1 + tb * tb);
    const per = 1 / (cos * (1 + tb * tj));
    a1[k] = cos * (r - z * tb);
    s1[k] = cos * tb;
    a2[k] = per * (r - z * tj);
    s2[k] = per * tj;
    least[k] = zb0 - zj1 + (rb0 - rj1) * tb;
    most[k] = zb1 - zj0 + (rb1 - rj0) * tb;
    tan[k] = tb;
    const whole = zb0 < zb1 && zj0 < zj1 && rb0 > 0 && rb1 > 0 && rj0 > 0 && rj1 > 0;
    const flat = Math.abs(b.halfAngle + ab[k]!) < LIMIT && Math.abs(j.halfAngle + aj[k]!) < LIMIT;
    if (!whole || !flat) closes[k] = NO_LINE;
    else if (tb * tj > 0) closes[k] = tb > 0 ? 1 : -1;
    else closes[k] = tb === 0 && tj === 0 ? 0 : seldom(rb0, rb1, rj0, rj1);
  }
}

/** As isShape of belief/unknowns.ts. */
const LIMIT = STEEPEST;

/** rad: so far the series of tan is good to rounding */
const NEAR = 0.01;

function tanNear(angle: Radians, tan: number, by: number): number {
  if (Math.abs(by) > NEAR) return Math.tan(angle + by);
  const q = by * by;
  const t = by * (1 + q * (1 / 3 + q * (2 / 15 + q * (17 / 315))));
  return (tan + t) / (1 - tan * t);
}

/**
 * Lines that lean opposite ways, or one of them straight: almost always a straight bearing, which nothing closes while
 * the two have no radius in common.
 */
function seldom(rb0: number, rb1: number, rj0: number, rj1: number): number {
  const low = Math.max(Math.min(rb0, rb1), Math.min(rj0, rj1));
  const high = Math.min(Math.max(rb0, rb1), Math.max(rj0, rj1));
  return low <= high ? ODD : 0;
}
