/**
 * The weighted derivatives of all readings taken apart, so that what they tell and what they leave open can be
 * seen apart from each other.
 *
 *   J·D⁻¹ = U·S·Vᵀ        D: the length of each column of J
 *
 * J has a row for each reading (its gradient over its uncertainty) and a column for each unknown. Scaled by D
 * every unknown counts alike, radians beside metres, so that a singular value is small only where readings do
 * not tell. Values below RANK of the greatest count as none: their directions are the null space.
 *
 *   step  x = D⁻¹·V·S⁻¹·Uᵀ·e     covariance  C = D⁻¹·V·S⁻²·Vᵀ·D⁻¹     leverage  h_i = Σ U_ik²
 *
 * over the directions that are told; C is right for every quantity that does not lean on the null space.
 * Singular value decomposition by ml-matrix.   @source JCGM 102:2011, 6.2; Golub and Van Loan, "Matrix Computations", 5.5 (from memory)
 */
import { Matrix, SingularValueDecomposition } from 'ml-matrix';

/** Rounding of the derivatives times a margin: far below any real difference between set-ups. */
const RANK = 1e-11;
/** A share of a unit vector that is rounding. */
export const NOTHING = 1e-7;

export interface Decomposition {
  unknowns: number;
  rank: number;
  /** D */
  scale: Float64Array;
  singular: number[];
  /** U, a row for each reading */
  u: Matrix;
  /** V; the columns from `rank` on span the null space */
  v: Matrix;
}

/** `rows`: gradient over uncertainty, one for each reading (and each prior). */
export function decompose(rows: readonly Float64Array[], unknowns: number): Decomposition {
  const scale = new Float64Array(unknowns);
  for (const row of rows) for (let j = 0; j < unknowns; j++) scale[j] = Math.hypot(scale[j]!, row[j]!);
  for (let j = 0; j < unknowns; j++) if (scale[j] === 0) scale[j] = 1;
  // At least as many rows as columns, so that V holds the null space too.
  const matrix = new Matrix(Math.max(rows.length, unknowns), unknowns);
  rows.forEach((row, i) => {
    for (let j = 0; j < unknowns; j++) matrix.set(i, j, row[j]! / scale[j]!);
  });
  if (unknowns === 0) return { unknowns, rank: 0, scale, singular: [], u: matrix, v: new Matrix(0, 0) };
  const svd = new SingularValueDecomposition(matrix, { autoTranspose: false });
  const singular = svd.diagonal;
  const rank = singular.filter((s) => s > RANK * singular[0]!).length;
  return { unknowns, rank, scale, singular, u: svd.leftSingularVectors, v: svd.rightSingularVectors };
}

/** The least step of the unknowns (scaled by D) that reduces the weighted residuals most. */
export function stepOf(d: Decomposition, residuals: readonly number[]): Float64Array {
  const step = new Float64Array(d.unknowns);
  for (let k = 0; k < d.rank; k++) {
    let along = 0;
    residuals.forEach((e, i) => {
      along += d.u.get(i, k) * e;
    });
    for (let j = 0; j < d.unknowns; j++) step[j]! += (d.v.get(j, k) * along) / d.singular[k]! / d.scale[j]!;
  }
  return step;
}

/** How much of the reading's own value its fitted value is made of: 1 where nothing else checks it. */
export function leverageOf(d: Decomposition, reading: number): number {
  let sum = 0;
  for (let k = 0; k < d.rank; k++) sum += d.u.get(reading, k) ** 2;
  return Math.min(1, sum);
}

/** The quantity with this gradient, in the directions of V: in each the gradient over the singular value. */
export function toldParts(d: Decomposition, gradient: Float64Array): number[] {
  return Array.from({ length: d.rank }, (_, k) => along(d, gradient, k) / d.singular[k]!);
}

/** The quantity's lean on each direction of the null space. */
export function openParts(d: Decomposition, gradient: Float64Array): number[] {
  return Array.from({ length: d.unknowns - d.rank }, (_, k) => along(d, gradient, d.rank + k));
}

function along(d: Decomposition, gradient: Float64Array, k: number): number {
  let sum = 0;
  for (let j = 0; j < d.unknowns; j++) sum += (gradient[j]! / d.scale[j]!) * d.v.get(j, k);
  return sum;
}

const lengthOf = (parts: readonly number[]) => Math.hypot(...parts);

/** Whether the readings tell the quantity with this gradient. */
export function isTold(d: Decomposition, gradient: Float64Array): boolean {
  let whole = 0;
  for (let j = 0; j < d.unknowns; j++) whole = Math.hypot(whole, gradient[j]! / d.scale[j]!);
  return lengthOf(openParts(d, gradient)) <= NOTHING * whole;
}

/**
 * Standard uncertainty of the quantity with this gradient; null where the readings do not tell it.
 *   u² = gᵀ·C·g        @source JCGM 100:2008, 5.2.2
 */
export function uncertaintyOf(d: Decomposition, gradient: Float64Array): number | null {
  return isTold(d, gradient) ? lengthOf(toldParts(d, gradient)) : null;
}

/** Covariance of two quantities that are told. */
export function covarianceOf(d: Decomposition, one: Float64Array, other: Float64Array): number {
  const parts = toldParts(d, other);
  return toldParts(d, one).reduce((sum, part, k) => sum + part * parts[k]!, 0);
}

/** The unknowns' change for independent standard draws, one for each direction that is told. */
export function drawOf(d: Decomposition, normal: readonly number[]): Float64Array {
  const change = new Float64Array(d.unknowns);
  for (let k = 0; k < d.rank; k++) for (let j = 0; j < d.unknowns; j++) change[j]! += (d.v.get(j, k) * normal[k]!) / d.singular[k]! / d.scale[j]!;
  return change;
}

/** The gradient of a single unknown. */
export function unit(unknowns: number, place: number): Float64Array {
  const gradient = new Float64Array(unknowns);
  gradient[place] = 1;
  return gradient;
}
