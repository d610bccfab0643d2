/** Where the bush bears on the journal, as arrows that end on the surface: their place, way and length. */
import { SAME } from '../../../report/inFrame.ts';
import { type Drawn, type Point, squareTo } from '../drawn.ts';
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
}

/** A seat that bears all round has its arrows in both faces of the cut; one where the bush is closed. */
const sidesOf = (sector: number) => (sector > 0 ? [1, -1] : [0]);

/** What holds a journal that is pulled aside; or, on one axis, the seats that touch or are pressed in. */
export function arrowsOf(drawn: Drawn, sector: number): Arrow[] {
  if (drawn.at)
    return drawn.forces.map(({ seat, angle, share, at, way }) => {
      const key = `${seat} ${at[0]} ${angle}`;
      return { key, theta: Math.PI - angle, at, way, share: Math.min(1, share) };
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
    }));
  });
}
