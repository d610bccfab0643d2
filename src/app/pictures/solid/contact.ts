/** Where the bush bears on the journal, as arrows that end on the surface: their place, way and length. */
import { SAME } from '../../../report/inFrame.ts';
import { type Drawn, type Point, squareTo } from '../drawn.ts';
import { pastDrawn } from '../pastDrawn.ts';
import { touches } from './filmGeometry.ts';

export interface Arrow {
  key: string;
  /** of the scene, rad */
  theta: number;
  /** where it ends, m */
  at: Point;
  /** which way it pushes the journal: a unit vector, square to the seat */
  way: Point;
  /** 0 to 1 */
  share: number;
  /** the journal's line from where it is drawn to end, where that is before the contact (m) */
  past: readonly Point[];
}

/** A seat that bears all round has its arrows in both faces of the cut; one where the bush is closed. */
const sidesOf = (sector: number) => (sector > 0 ? [1, -1] : [0]);

/** What holds a journal that is pulled aside; or, on one axis, the seats that touch or are pressed in. */
export function arrowsOf(drawn: Drawn, sector: number): Arrow[] {
  if (drawn.at)
    return drawn.forces.map((force) => {
      const { seat, angle, share, at, way } = force;
      const key = `${seat} ${at[0]} ${angle}`;
      return { key, theta: Math.PI - angle, at, way, share: Math.min(1, share), past: pastDrawn(drawn, force) };
    });
  return drawn.seats.flatMap((seat) => {
    const bearing = touches(seat).length > 0 ? 0 : Math.min(0, ...seat.film.map(({ film }) => film));
    const borne = touches(seat).length > 0 || bearing < -SAME;
    if (!borne) return [];
    // Where it bears hardest; the middle of what bears alike.
    const places = seat.film.filter(({ film }) => film <= bearing + SAME).map(({ bush }) => bush);
    const [first, last] = [places[0]!, places[places.length - 1]!];
    const at: Point = [(first[0] + last[0]) / 2, (first[1] + last[1]) / 2];
    const way = squareTo(seat.bush, at[0]);
    return sidesOf(sector).map((share) => ({
      key: `${seat.name} ${share}`,
      theta: (share * sector * Math.PI) / 360,
      at,
      way,
      share: 0.5,
      past: [],
    }));
  });
}

/** A line in dashes of a length and a space between, the first at its start: pieces from a point to a point. */
export function dashesOf(line: readonly Point[], long: number, space: number): (readonly [from: Point, to: Point])[] {
  const dashes: (readonly [Point, Point])[] = [];
  // How far along a dash with its space the last corner stood.
  let into = 0;
  for (let i = 1; i < line.length; i++) {
    const [[z0, r0], [z1, r1]] = [line[i - 1]!, line[i]!];
    const length = Math.hypot(z1 - z0, r1 - r0);
    const at = (along: number): Point => [z0 + ((z1 - z0) * along) / length, r0 + ((r1 - r0) * along) / length];
    for (let start = -into; start < length; start += long + space) {
      const [from, to] = [Math.max(0, start), Math.min(length, start + long)];
      if (to > from) dashes.push([at(from), at(to)]);
    }
    into = (into + length) % (long + space);
  }
  return dashes;
}
