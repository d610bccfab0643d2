/** Places on the unrolled seat that the pictures mark: the ends of the overlap, peak pressure, least film, grooves. */
import type { Design } from '../../../design/definition.ts';
import { degrees, radians } from '../../../report/convert.ts';
import type { SeatFields } from '../../../report/film/fields.ts';

/** mm: from where to where the rows reach. Rows are evenly spaced, their places the middles of their cells. */
export function stationsOf({ stations, rows }: SeatFields): { from: number; to: number } {
  const [first, last] = [stations[0]!, stations[rows - 1]!];
  const half = rows > 1 ? (last - first) / (rows - 1) / 2 : 0;
  return { from: first - half, to: last + half };
}

export interface Place {
  /** degrees, mm, and in the unit of the field */
  angle: number;
  station: number;
  value: number;
}

/** Where a field is greatest (or least). */
export function extremeOf(
  field: Float32Array,
  { rows, columns, stations }: SeatFields,
  which: 'greatest' | 'least',
): Place {
  let at = 0;
  const sign = which === 'greatest' ? 1 : -1;
  for (let k = 1; k < field.length; k++) if (sign * field[k]! > sign * field[at]!) at = k;
  const row = at % rows;
  return { angle: (360 * (at - row)) / rows / columns, station: stations[row]!, value: field[at]! };
}

export interface GrooveShape {
  /** degrees; mm */
  angle: number;
  half: number;
  from: number;
  to: number;
  pressure: number;
}

/** Grooves of a seat, as wide as they are at the middle of the groove. */
export function groovesOf(design: Design, seat: SeatFields): GrooveShape[] {
  const bush = design.seats.find(({ name }) => name === seat.name)?.bush;
  if (!bush) return [];
  return (design.run?.supply ?? [])
    .filter((groove) => groove.seat === seat.name)
    .map(({ angle, from, to, width, pressure }) => {
      const radius = bush.diameter / 2 + ((from + to) / 2 - bush.station) * Math.tan(radians(bush.halfAngle));
      return {
        angle: ((angle % 360) + 360) % 360,
        half: Math.min(180, degrees(width / 2 / Math.max(radius, 1e-6))),
        from,
        to,
        pressure,
      };
    });
}
