/**
 * One Gauss–Newton step of the linear problem: the change x of the unknowns with the least |e - J·x|.
 *
 * The points of profiles are taken out first (elimination.ts). The rest by orthogonal triangles (QR) with every column
 * scaled to length 1; where columns depend on each other, by the singular values (decomposition.ts), with the least
 * such
 * change.   @source ml-matrix
 */
import { Matrix, QrDecomposition } from 'ml-matrix';
import { decompose, stepOf } from '../belief/decomposition.ts';
import { coreRows, eliminate, independent, lessOwn, ownOf, wholeStep } from '../belief/elimination.ts';

export interface Direction {
  step: Float64Array;
  /** gain of chi-square that the linear problem promises for the whole step */
  gain: number;
}

/** A column this much shorter, once the others are taken out of it, depends on them. */
const DEPENDENT = 1e-10;

/** `held`: unknowns that do not move · `points`: those that are points of profiles. */
export function directionOf(
  rows: readonly Float64Array[],
  residuals: readonly number[],
  held: readonly boolean[],
  points: readonly number[],
): Direction {
  const movable = points.filter((j) => !held[j]);
  const step = byTriangles(rows, residuals, held, movable) ?? bySingularValues(rows, residuals, held, movable);
  let gain = 0;
  rows.forEach((row, i) => {
    let change = 0;
    for (let j = 0; j < step.length; j++) change += row[j]! * step[j]!;
    gain += residuals[i]! ** 2 - (residuals[i]! - change) ** 2;
  });
  return { step, gain };
}

/** Null where the columns depend on each other. */
function byTriangles(
  rows: readonly Float64Array[],
  residuals: readonly number[],
  held: readonly boolean[],
  points: readonly number[],
): Float64Array | null {
  const elimination = eliminate(rows, held.length, points);
  const { core } = elimination;
  const free = core.flatMap((j, c) => (held[j] ? [] : [c]));
  const left = coreRows(elimination);
  if (left.length < free.length || (free.length === 0 && points.length === 0)) return null;
  const scale = free.map((c) => left.reduce((sum, row) => Math.hypot(sum, row[c]!), 0));
  if (scale.includes(0)) return null;
  const own = ownOf(elimination, residuals);
  const less = lessOwn(elimination, residuals, own);
  const ofCore = new Float64Array(core.length);
  if (free.length > 0) {
    const qr = new QrDecomposition(new Matrix(left.map((row) => free.map((c, k) => row[c]! / scale[k]!))));
    const triangle = qr.upperTriangularMatrix;
    if (free.some((_, k) => Math.abs(triangle.get(k, k)) < DEPENDENT)) return null;
    const solved = qr.solve(Matrix.columnVector(Array.from(independent(elimination, less))));
    free.forEach((c, k) => {
      ofCore[c] = solved.get(k, 0) / scale[k]!;
    });
  }
  return wholeStep(elimination, own, less, ofCore, held.length);
}

function bySingularValues(
  rows: readonly Float64Array[],
  residuals: readonly number[],
  held: readonly boolean[],
  points: readonly number[],
): Float64Array {
  const free = held.some(Boolean) ? rows.map((row) => row.map((g, j) => (held[j] ? 0 : g))) : rows;
  return stepOf(decompose(free, held.length, points), residuals);
}
