/**
 * Pressure as a skin raised off the parts: at every place of a seat the drawn bush surface, lifted outward along its
 * normal by
 *
 *   height = HIGHEST·p/p_max        of the largest radius
 *
 * in the scene's lengths (sceneGeometry.ts); or the film's colours laid on, not raised. Angles run from x toward y as
 * seen from the nose: (cos, sin) is (-Z, Y) of the scene.
 */

import { metres } from '../../../report/convert.ts';
import type { SeatFields } from '../../../report/film/fields.ts';
import type { Rgb } from '../../pictures/colourScale.ts';
import { linear } from '../../pictures/filmColour.ts';
import { FAR, type Frame, type Mesh } from '../../pictures/revolve.ts';
import { stationsOf } from './seatMarks.ts';

const HIGHEST = 0.45;
/** Even with no pressure the skin stands clear of the metal by so much of the largest radius. */
const CLEAR = 0.012;
/** Most cells drawn of one seat, along and around. */
const MOST = { rows: 24, columns: 128 };
/** Every how many of the drawn lines along and around is drawn as a line. */
const EVERY = { rows: 4, columns: 8 };

export interface Skin {
  mesh: Mesh;
  /** pairs of points */
  lines: Float32Array;
}

interface Look {
  frame: Frame;
  layer: 'pressure' | 'film';
  /** MPa: the pressure that is raised highest */
  max: number;
  /** of a value of the layer (MPa or mm) */
  colour(value: number): Rgb;
}

export function skinOf(seat: SeatFields, halfAngle: number, { frame, layer, max, colour }: Look): Skin {
  const rows = Math.min(MOST.rows, seat.rows);
  const columns = Math.min(MOST.columns, seat.columns);
  const ends = stationsOf(seat);
  const [largest, sine, cosine] = [frame.outside / 1.35, Math.sin(halfAngle), Math.cos(halfAngle)];
  const corners = (rows + 1) * (columns + 1);
  const positions = new Float32Array(3 * corners);
  const normals = new Float32Array(3 * corners);
  const colours = new Float32Array(3 * corners);
  for (let j = 0; j <= columns; j++) {
    const angle = (2 * Math.PI * j) / columns;
    const column = Math.round((j * seat.columns) / columns) % seat.columns;
    for (let i = 0; i <= rows; i++) {
      const share = i / rows;
      // At the open ends the pressure is nothing, whatever stands in the last cell.
      const row = Math.min(seat.rows - 1, Math.max(0, Math.floor(share * seat.rows)));
      const cell = column * seat.rows + row;
      const pressure = i === 0 || i === rows || layer === 'film' ? 0 : seat.pressure[cell]!;
      const lift = largest * (CLEAR + (HIGHEST * Math.max(0, pressure)) / max);
      const z = metres(ends.from + share * (ends.to - ends.from));
      const radius = metres(radiusAt(seat, share)) + lift * cosine;
      place(positions, 3 * (j * (rows + 1) + i), frame, z - lift * sine, radius, angle);
      normals.set([-sine, cosine * Math.sin(angle), -cosine * Math.cos(angle)], 3 * (j * (rows + 1) + i));
      colours.set(linear(colour(layer === 'film' ? seat.film[cell]! : pressure)), 3 * (j * (rows + 1) + i));
    }
  }
  return {
    mesh: {
      positions,
      normals,
      colours,
      edges: new Float32Array(4 * corners).fill(FAR),
      indices: squares(rows, columns),
    },
    lines: gridLines(positions, rows, columns),
  };
}

/** mm, linear over the rows and on to the ends. */
function radiusAt({ radii, rows }: SeatFields, share: number): number {
  if (rows === 1) return radii[0]!;
  const [first, last] = [radii[0]!, radii[rows - 1]!];
  return first + ((last - first) * (share * rows - 0.5)) / (rows - 1);
}

function place(into: Float32Array, at: number, { scale, centre }: Frame, z: number, r: number, angle: number): void {
  into[at] = scale * (z - centre);
  into[at + 1] = scale * r * Math.sin(angle);
  into[at + 2] = -scale * r * Math.cos(angle);
}

function squares(rows: number, columns: number): Uint32Array {
  const indices = new Uint32Array(6 * rows * columns);
  let at = 0;
  for (let j = 0; j < columns; j++) {
    for (let i = 0; i < rows; i++) {
      const a = j * (rows + 1) + i;
      const b = a + rows + 1;
      indices.set([a, a + 1, b, b, a + 1, b + 1], at);
      at += 6;
    }
  }
  return indices;
}

function gridLines(positions: Float32Array, rows: number, columns: number): Float32Array {
  const points: number[] = [];
  const add = (from: number, to: number) =>
    points.push(...positions.subarray(3 * from, 3 * from + 3), ...positions.subarray(3 * to, 3 * to + 3));
  for (let j = 0; j < columns; j++)
    for (let i = 0; i <= rows; i++)
      if (i % EVERY.rows === 0 || i === rows) add(j * (rows + 1) + i, (j + 1) * (rows + 1) + i);
  for (let j = 0; j < columns; j += EVERY.columns)
    for (let i = 0; i < rows; i++) add(j * (rows + 1) + i, j * (rows + 1) + i + 1);
  return new Float32Array(points);
}
