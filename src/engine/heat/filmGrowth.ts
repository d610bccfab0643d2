/**
 * What warm parts do to the film.
 *
 *   a point (r, Z) of a part moves by  e·(r, Z - anchor),  e = expansion·(T - T₀)
 *   film gained = e_b·(v + anchor_b·sin a) - e_j·(v + anchor_j·sin a),   v = r·cos a - Z·sin a
 *
 * e free expansion of bush and journal · T₀ the temperature at which the parts were measured (here: the room's) ·
 * anchor (m) the station at which the part is held axially · a half angle of the bush · v (m) is one and the same all
 * along a straight line, so the film grows evenly; v = -Z_apex·sin a: a cone held at its apex keeps its film however
 * warm it gets, and one held elsewhere does not. Both parts at one temperature each, free to grow, a profile's own
 * deviation (micrometres against millimetres) left out.
 * @source derived (linear expansion and its normal component)
 */
import type { Gap } from '../contact/film.ts';

export interface Growth {
  /** free expansion e: expansion·(T - T₀) */
  strain: number;
  /** m */
  anchor: number;
}

/** Film gained (m) by a seat. */
export function filmGrowth({ bush: line, halfAngle }: Gap, bush: Growth, journal: Growth): number {
  const v = (line.v[0]! + line.v[line.v.length - 1]!) / 2;
  const sine = Math.sin(halfAngle);
  return bush.strain * (v + bush.anchor * sine) - journal.strain * (v + journal.anchor * sine);
}
