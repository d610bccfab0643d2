/**
 * The unrolled seat: cells on the stretch where journal and bush overlap, evenly spaced along the slant and around.
 *
 *   u = z·cos a + r·sin a   along the bush line, as in contact/film.ts        φ from x toward y
 *
 * Rows count along u from the rear, columns around; cell k = column·rows + row. Column j has its centre at
 * φ = j·2π/columns and its face toward the next at (j + ½)·2π/columns. A row's links to the open ends are half a cell
 * long, so film and radius for them are taken a quarter of a cell in.
 */
import type { Radians } from '../../design/dimension.ts';

export interface Unrolled {
  rows: number;
  columns: number;
  /** rad; 0 a straight bearing, π/2 a flat face */
  halfAngle: Radians;
  /** m, extent of the overlap along the slant */
  from: number;
  to: number;
  /** m, cell centres, and where the film of each link along the slant is taken (rows + 1) */
  centre: Float64Array;
  link: Float64Array;
  /** m, radius there */
  radius: Float64Array;
  linkRadius: Float64Array;
  /** of the centre angles, and of the faces toward the next column */
  cos: Float64Array;
  sin: Float64Array;
  faceCos: Float64Array;
  faceSin: Float64Array;
}

export function newUnrolled(rows: number, columns: number): Unrolled {
  const angle = (j: number) => (2 * Math.PI * j) / columns;
  const table = (of: (angle: Radians) => number, shift: number) =>
    Float64Array.from({ length: columns }, (_, j) => of(angle(j + shift)));
  return {
    rows,
    columns,
    halfAngle: 0,
    from: 0,
    to: 0,
    centre: new Float64Array(rows),
    link: new Float64Array(rows + 1),
    radius: new Float64Array(rows),
    linkRadius: new Float64Array(rows + 1),
    cos: table(Math.cos, 0),
    sin: table(Math.sin, 0),
    faceCos: table(Math.cos, 0.5),
    faceSin: table(Math.sin, 0.5),
  };
}

/** Lays the rows from `from` to `to` (m along the slant), the radius (m) being radiusAt(u). */
export function layRows(
  grid: Unrolled,
  halfAngle: Radians,
  from: number,
  to: number,
  radiusAt: (u: number) => number,
): void {
  grid.halfAngle = halfAngle;
  grid.from = from;
  grid.to = to;
  const { rows, centre, link, radius, linkRadius } = grid;
  const du = (to - from) / rows;
  for (let i = 0; i < rows; i++) centre[i] = from + (i + 0.5) * du;
  for (let i = 0; i <= rows; i++) link[i] = from + (i === 0 ? 0.25 : i === rows ? rows - 0.25 : i) * du;
  for (let i = 0; i < rows; i++) radius[i] = radiusAt(centre[i]!);
  for (let i = 0; i <= rows; i++) linkRadius[i] = radiusAt(link[i]!);
}

/** m, a cell along the slant. */
export const rowStep = ({ from, to, rows }: Unrolled) => (to - from) / rows;
/** rad, a cell around. */
export const columnStep = ({ columns }: Unrolled) => (2 * Math.PI) / columns;
