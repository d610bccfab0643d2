/**
 * A cylinder or ball touching the line of a surface, in the half plane of the axis.
 *
 * A roll of radius q standing square to that plane, its centre at station Z, is pushed toward the axis until it
 * touches; a ball of radius q on the axis goes into a bore until it touches:
 *
 *   roll   centre radius  = max over the line of  r(z) + √(q² - (z - Z)²)
 *   ball   centre station = max over the line of  z + √(q² - r(z)²)          (bore widening toward the nose)
 *
 * z, r station and radius of the line (m). On a straight piece of slope tan b the greatest stands where the
 * normal of the piece passes through the centre: z = Z + q·sin b for the roll, r = q·cos b for the ball, or at
 * the end of the piece nearest to there. So the result is exact for any chain, profile included. On a straight
 * line it is the rule of the handbooks: centre radius r(Z) + q/cos a outside; r(Z)·cos a = q inside.
 * The greatest does not change with the place of contact (envelope theorem), so its derivative by the shape is
 * that of r at the place of contact.
 * @source derived (tangency of circle and line); MachinerysHandbook Measuring tapers (the rule of the shop)
 */
import type { Metres } from '../../design/dimension.ts';
import { type Line, mirrored } from '../parts/line.ts';

export interface Touch {
  /** m: of the roll, the radius of its centre; of the ball, the station of its centre */
  centre: number;
  /** station (m) and radius (m) of the place of contact on the line */
  station: Metres;
  radius: Metres;
  /** set where it rests on the end of the line instead of on the line */
  edge: 'rear' | 'nose' | null;
}

/** A roll of radius q (m) with its centre at station Z (m) on the outside of a line; null where it misses it. */
export function rollOn(line: Line, q: number, Z: number): Touch | null {
  return greatest(line, (z0, r0, slope, z1) => {
    if (z0 > Z + q || z1 < Z - q) return null;
    const from = Math.max(z0, Z - q);
    const to = Math.min(z1, Z + q);
    const tangent = Z + (q * slope) / Math.hypot(1, slope);
    const z = Math.min(Math.max(tangent, from), to);
    const r = r0 + (z - z0) * slope;
    return { centre: r + Math.sqrt(Math.max(0, q * q - (z - Z) ** 2)), station: z, radius: r, tangent };
  });
}

/**
 * A ball of radius q (m) let into a bore from its wide end, `closes` saying which way the bore narrows; null
 * where it falls through.
 */
export function ballIn(line: Line, q: number, closes: 'rearward' | 'noseward'): Touch | null {
  if (closes === 'rearward') return ballFromNose(line, q);
  const touch = ballFromNose(mirrored(line), q);
  if (!touch) return null;
  const edge = touch.edge === null ? null : touch.edge === 'rear' ? 'nose' : 'rear';
  return { centre: -touch.centre, station: -touch.station, radius: touch.radius, edge };
}

function ballFromNose(line: Line, q: number): Touch | null {
  return greatest(line, (z0, r0, slope, z1) => {
    // Only where the line is nearer to the axis than q can the ball touch it.
    let [from, to] = [z0, z1];
    const r1 = r0 + (z1 - z0) * slope;
    if (r0 > q && r1 > q) return null;
    if (r1 > q) to = z0 + (q - r0) / slope;
    if (r0 > q) from = z0 + (q - r0) / slope;
    // On a piece that does not widen toward the nose the ball goes on to its nose end.
    const tangent = slope <= 0 ? Number.POSITIVE_INFINITY : z0 + (q / Math.hypot(1, slope) - r0) / slope;
    const z = Math.min(Math.max(tangent, from), to);
    const r = r0 + (z - z0) * slope;
    return { centre: z + Math.sqrt(Math.max(0, q * q - r * r)), station: z, radius: r, tangent };
  });
}

type OnPiece = (
  z0: number,
  r0: number,
  slope: number,
  z1: number,
) => (Omit<Touch, 'edge'> & { tangent: number }) | null;

/** The greatest centre over all pieces, and whether it rests on an end of the line. */
function greatest({ z, r }: Line, onPiece: OnPiece): Touch | null {
  let best: Touch | null = null;
  const last = z.length - 2;
  for (let i = 0; i <= last; i++) {
    const found = onPiece(z[i]!, r[i]!, (r[i + 1]! - r[i]!) / (z[i + 1]! - z[i]!), z[i + 1]!);
    if (!found || (best && found.centre <= best.centre)) continue;
    const { tangent, ...touch } = found;
    best = {
      ...touch,
      edge: i === 0 && tangent < z[0]! ? 'rear' : i === last && tangent > z[last + 1]! ? 'nose' : null,
    };
  }
  return best;
}

/** Distance (m) from a point of the half plane to a line. */
export function distanceTo({ z, r }: Line, Z: number, R: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < z.length; i++) {
    const [dz, dr] = [z[i]! - z[i - 1]!, r[i]! - r[i - 1]!];
    const t = Math.min(1, Math.max(0, ((Z - z[i - 1]!) * dz + (R - r[i - 1]!) * dr) / (dz * dz + dr * dr)));
    least = Math.min(least, (z[i - 1]! + t * dz - Z) ** 2 + (r[i - 1]! + t * dr - R) ** 2);
  }
  return Math.sqrt(least);
}
