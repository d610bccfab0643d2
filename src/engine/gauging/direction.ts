/**
 * One Gauss–Newton step of the linear problem: the change x of the unknowns with the least |e - J·x|.
 *
 * By orthogonal triangles (QR) with every column scaled to length 1; where columns depend on each other, by the
 * singular values (decomposition.ts), with the least such change.   @source ml-matrix
 */
import { Matrix, QrDecomposition } from 'ml-matrix';
import { decompose, stepOf } from './decomposition.ts';

export interface Direction {
  step: Float64Array;
  /** gain of chi-square that the linear problem promises for the whole step */
  gain: number;
}

/** A column this much shorter, once the others are taken out of it, depends on them. */
const DEPENDENT = 1e-10;

/** `held`: unknowns that do not move. */
export function directionOf(rows: readonly Float64Array[], residuals: readonly number[], held: readonly boolean[]): Direction {
  const step = byTriangles(rows, residuals, held) ?? bySingularValues(rows, residuals, held);
  let gain = 0;
  rows.forEach((row, i) => {
    let change = 0;
    for (let j = 0; j < step.length; j++) change += row[j]! * step[j]!;
    gain += residuals[i]! ** 2 - (residuals[i]! - change) ** 2;
  });
  return { step, gain };
}

/** Null where the columns depend on each other. */
function byTriangles(rows: readonly Float64Array[], residuals: readonly number[], held: readonly boolean[]): Float64Array | null {
  const free = held.flatMap((h, j) => (h ? [] : [j]));
  if (rows.length < free.length || free.length === 0) return null;
  const scale = free.map((j) => rows.reduce((sum, row) => Math.hypot(sum, row[j]!), 0));
  if (scale.includes(0)) return null;
  const matrix = new Matrix(rows.length, free.length);
  rows.forEach((row, i) => {
    free.forEach((j, k) => {
      matrix.set(i, k, row[j]! / scale[k]!);
    });
  });
  const qr = new QrDecomposition(matrix);
  const triangle = qr.upperTriangularMatrix;
  if (free.some((_, k) => Math.abs(triangle.get(k, k)) < DEPENDENT)) return null;
  const solved = qr.solve(Matrix.columnVector(residuals as number[]));
  const step = new Float64Array(held.length);
  free.forEach((j, k) => {
    step[j] = solved.get(k, 0) / scale[k]!;
  });
  return step;
}

function bySingularValues(rows: readonly Float64Array[], residuals: readonly number[], held: readonly boolean[]): Float64Array {
  const free = held.some(Boolean) ? rows.map((row) => row.map((g, j) => (held[j] ? 0 : g))) : rows;
  return stepOf(decompose(free, held.length), residuals);
}
