/**
 * Lines of equal value on a grid that closes on itself across: marching squares with straight pieces. Values stand at
 * (column, row), column 0 again after the last. Pieces are in those coordinates, each from a point to a point.
 */
export type Piece = readonly [x0: number, y0: number, x1: number, y1: number];

/** value(column, row) = values[column·rows + row]. */
export function contour(values: ArrayLike<number>, rows: number, columns: number, level: number): Piece[] {
  const pieces: Piece[] = [];
  for (let j = 0; j < columns; j++) {
    const next = (j + 1) % columns;
    for (let i = 0; i + 1 < rows; i++) {
      const corners = [
        values[j * rows + i]! - level,
        values[next * rows + i]! - level,
        values[next * rows + i + 1]! - level,
        values[j * rows + i + 1]! - level,
      ];
      crossings(corners, j, i, pieces);
    }
  }
  return pieces;
}

/** Corners go round: (0, 0), (1, 0), (1, 1), (0, 1). */
const CORNERS = [
  [0, 0],
  [1, 0],
  [1, 1],
  [0, 1],
] as const;

function crossings(corners: readonly number[], x: number, y: number, pieces: Piece[]): void {
  const points: [number, number][] = [];
  for (let k = 0; k < 4; k++) {
    const [a, b] = [corners[k]!, corners[(k + 1) % 4]!];
    if (a < 0 === b < 0) continue;
    const t = a / (a - b);
    const [from, to] = [CORNERS[k]!, CORNERS[(k + 1) % 4]!];
    points.push([x + from[0] + (to[0] - from[0]) * t, y + from[1] + (to[1] - from[1]) * t]);
  }
  // Four crossings are a saddle: paired in the order they go round, either way is as right.
  for (let k = 0; k + 1 < points.length; k += 2) pieces.push([...points[k]!, ...points[k + 1]!]);
}
