/**
 * The map by which a seat is drawn, the same for both parts, and how the journal stands in it.
 *
 * In the coordinates (u, v) of the straight line of the journal (engine/contact/film.ts, its own half angle a)
 *
 *   (u, v)  →  P(u) + factor·(v₀ - v)·d
 *
 *   P(u) the point at u of the line through the bush's proudest place · v₀ the v of that line · d a fixed direction
 *
 * one-to-one, so the parts touch, cross or stand clear on the screen exactly where they do in the solver. d runs along
 * the axis for a steep seat and along the radius for a shallow one: there a gap has no room along the axis.
 *
 * A journal moved by p has its line moved by f·p along the axis, or by -f·p·tan a along the radius, and by p·cos a
 * along itself: either is the line as moved by f·p along the axis. So it slides along itself to where the whole
 * journal goes, ends, shoulders and hand, and where it touches it is not less true for that.
 * It stands unslid at home, where the first seat touches. Of a measured line the heights stay opposite what they face.
 */
import type { Metres, Radians } from '../../design/dimension.ts';
import { radians } from '../../report/convert.ts';
import { type Chain, positionOfTouch, type SeatLines } from '../../report/inFrame.ts';
import type { Point } from './drawn.ts';

/** Half angles (rad) above this are drawn displaced along the axis. */
const STEEP = radians(20);

/** What a pair is drawn on: the seats whose lines give the maps, and where its journal stands unslid. */
export interface Ground {
  maps: readonly SeatMap[];
  /** m */
  home: Metres;
}

export interface SeatMap {
  /** half angle of the map, and how much more than the bush's it is, rad */
  angle: Radians;
  turn: number;
  cos: number;
  sin: number;
  /** of the bush's own line; v of the straight one through its proudest place */
  bush: { cos: number; sin: number; v0: number };
  /** v of the straight line through the bush's proudest place */
  v0: number;
  /** the direction in which a gap is drawn; its part along the inner normal (sin a, -cos a) is 1 */
  d: Point;
}

export const groundOf = (seats: readonly SeatLines[]): Ground => ({ maps: seats.map(mapOf), home: homeOf(seats) });

/** Where the first seat touches as the journal goes home; of a journal that nothing stops rearward, noseward. */
function homeOf(seats: readonly SeatLines[]): number {
  const touches = (way: SeatLines['closes']) =>
    seats.filter(({ closes }) => closes === way).flatMap((seat) => positionOfTouch(seat) ?? []);
  const [rearward, noseward] = [touches('rearward'), touches('noseward')];
  return rearward.length > 0 ? Math.max(...rearward) : noseward.length > 0 ? Math.min(...noseward) : 0;
}

function mapOf({ gap, journal }: SeatLines): SeatMap {
  const angle = journal.halfAngle;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const turn = angle - gap.halfAngle;
  const { u, v } = gap.bush;
  const least = v.reduce((most, height) => Math.min(most, height));
  const map = {
    angle,
    turn,
    cos,
    sin,
    bush: { cos: Math.cos(gap.halfAngle), sin: Math.sin(gap.halfAngle), v0: least },
  };
  const v0 = v.reduce((most, height, i) => Math.min(most, heightOf(map, u[i]!, height)), Number.POSITIVE_INFINITY);
  return { ...map, v0, d: Math.abs(angle) > STEEP ? [1 / sin, 0] : [0, -1 / cos] };
}

/** v in the coordinates of the map, of a place in those of the bush's line. */
export const heightOf = ({ turn }: Pick<SeatMap, 'turn'>, u: number, v: number) =>
  turn === 0 ? v : v * Math.cos(turn) - u * Math.sin(turn);

const alongOf = ({ turn }: SeatMap, u: number, v: number) => (turn === 0 ? u : u * Math.cos(turn) + v * Math.sin(turn));

/** Where a place in the coordinates of the bush's line is drawn. */
export function place(map: SeatMap, u: number, v: number, factor: number): Point {
  const { cos, sin, v0, d } = map;
  const [along, height] = [alongOf(map, u, v), heightOf(map, u, v)];
  const w = factor * (v0 - height);
  return [along * cos - v0 * sin + w * d[0], along * sin + v0 * cos + w * d[1]];
}

export interface Slid {
  /** in the coordinates of the bush's line, at the position, slid */
  u: number[];
  v: number[];
  /** the places in the journal's own line, for what is drawn on it */
  own: number[];
}

/** The journal's line at a position (m), slid along itself to where the drawn journal is. */
export function slid(map: SeatMap, chain: Chain, position: Metres, home: Metres, factor: number): Slid {
  const { cos, turn, bush } = map;
  const by = ((position - home) * ((map.d[1] === 0 ? 0 : factor) - cos * cos)) / cos;
  const [du, dv] = [by * Math.cos(turn), by * Math.sin(turn)];
  const at = {
    u: Array.from(chain.u, (u) => u + position * bush.cos),
    v: Array.from(chain.v, (v) => v - position * bush.sin),
  };
  const moved = { u: at.u.map((u) => u + du), v: at.v.map((v) => v + dv), own: Array.from(chain.u) };
  const last = chain.u.length - 1;
  if (last === 1) return moved;
  const [from, to] = [moved.u[0]!, moved.u[last]!];
  const inside = at.u.map((_, i) => i).filter((i) => at.u[i]! > from && at.u[i]! < to);
  const end = (u: number, i: number) => (u >= at.u[0]! && u <= at.u[last]! ? heightAt(at, u) : moved.v[i]!);
  return {
    u: [from, ...inside.map((i) => at.u[i]!), to],
    v: [end(from, 0), ...inside.map((i) => at.v[i]!), end(to, last)],
    own: [chain.u[0]!, ...inside.map((i) => chain.u[i]!), chain.u[last]!],
  };
}

/** v of a chain at u. */
export function heightAt({ u: us, v: vs }: { u: ArrayLike<number>; v: ArrayLike<number> }, u: number): number {
  let k = 0;
  while (k < us.length - 2 && us[k + 1]! < u) k++;
  return vs[k]! + ((vs[k + 1]! - vs[k]!) * (u - us[k]!)) / (us[k + 1]! - us[k]!);
}
