/**
 * The points of profiles taken out of the linear problem, so that a hundred stations of straightness cost little more
 * than none. Exact: nothing is left out or rounded away.
 *
 * A straightness reading tells one point alone; each of the other readings leans on few of them. With d the points and
 * x the other numbers, rows over their uncertainties:
 *
 *   told alone   √w·d = √w·s           w = Σ row², s = Σ row·e/w        W the diagonal of all w
 *   the others   A·x + B·d = e
 *
 * For any x the best d is known, and what is left is a problem of x alone (Schur complement), its rows made
 * independent again by T:
 *
 *   G = B·W^-½ = P·S·Qᵀ         c = 1/√(1 + S²)
 *   core   T·A·x = T·(e - B·s)                             T = (I + G·Gᵀ)^-½ = I + P·(c - 1)·Pᵀ
 *   back   d = s + W^-½·Q·(S·c²)·Pᵀ·(e - B·s - A·x)
 *
 * G has a column only for the points that some other reading leans on; singular values by ml-matrix.
 * @source Golub and Van Loan, "Matrix Computations", 3.2 (Schur complement) and 5.5 (from memory); the form with T
 * derived here,
 *         checked against the whole problem in tests/engine/belief
 */
import { Matrix, SingularValueDecomposition } from 'ml-matrix';

export interface Elimination {
  rows: readonly Float64Array[];
  /** the columns that stay, and those taken out */
  core: readonly number[];
  points: readonly number[];
  /** √w of each point */
  weight: Float64Array;
  /** of each row, the place in `points` of the one it tells alone; -1 of the others */
  alone: Int32Array;
  /** rows that do not tell a point alone */
  others: readonly number[];
  /** places in `others` of the rows that lean on points, places in `points` of those they lean on */
  leaning: readonly number[];
  leant: readonly number[];
  /** P (a row for each of `leaning`), S, Q (a row for each of `leant`) */
  p: Matrix;
  s: readonly number[];
  q: Matrix;
}

/** `points`: columns that may be taken out; those that no row tells alone stay. */
export function eliminate(rows: readonly Float64Array[], unknowns: number, points: readonly number[]): Elimination {
  const may = new Set(points);
  const column = rows.map((row) => onlyColumn(row));
  const told = new Set(column.filter((j) => may.has(j)));
  const taken = points.filter((j) => told.has(j));
  const place = new Int32Array(unknowns).fill(-1);
  taken.forEach((j, k) => {
    place[j] = k;
  });
  const alone = Int32Array.from(column, (j) => (j < 0 ? -1 : place[j]!));
  const weight = new Float64Array(taken.length);
  alone.forEach((k, i) => {
    if (k >= 0) weight[k] = Math.hypot(weight[k]!, rows[i]![taken[k]!]!);
  });
  const others = rows.flatMap((_, i) => (alone[i]! < 0 ? [i] : []));
  const core = Array.from({ length: unknowns }, (_, j) => j).filter((j) => place[j]! < 0);
  const leans = (i: number, k: number) => rows[i]![taken[k]!] !== 0;
  const leaning = others.flatMap((i, o) => (taken.some((_, k) => leans(i, k)) ? [o] : []));
  const leant = taken.flatMap((_, k) => (leaning.some((o) => leans(others[o]!, k)) ? [k] : []));
  return {
    rows,
    core,
    points: taken,
    weight,
    alone,
    others,
    leaning,
    leant,
    ...singular(leaning.map((o) => leant.map((k) => rows[others[o]!]![taken[k]!]! / weight[k]!))),
  };
}

/** The one column in which a row is not 0; -1 where there are several, or none. */
function onlyColumn(row: Float64Array): number {
  let only = -1;
  for (let j = 0; j < row.length; j++) {
    if (row[j] === 0) continue;
    if (only >= 0) return -1;
    only = j;
  }
  return only;
}

function singular(g: readonly number[][]): Pick<Elimination, 'p' | 's' | 'q'> {
  if (g.length === 0) return { p: new Matrix(0, 0), s: [], q: new Matrix(0, 0) };
  const svd = new SingularValueDecomposition(new Matrix(g as number[][]), { autoTranspose: true });
  const s = svd.diagonal;
  // Where there are fewer points than rows, or the other way round, only so many directions count.
  const count = Math.min(s.length, g.length, g[0]!.length);
  const first = (m: Matrix) => m.subMatrix(0, m.rows - 1, 0, count - 1);
  return { p: first(svd.leftSingularVectors), s: s.slice(0, count), q: first(svd.rightSingularVectors) };
}

/**
 * (I + G·Gᵀ)^-½ of a vector with an entry for each of `others`: made independent of what is not known of the points.
 */
export function independent({ leaning, p, s }: Elimination, vector: Float64Array): Float64Array {
  if (leaning.length === 0) return vector;
  const result = vector.slice();
  s.forEach((sk, k) => {
    const share = 1 / Math.sqrt(1 + sk * sk) - 1;
    let along = 0;
    for (let a = 0; a < leaning.length; a++) along += p.get(a, k) * vector[leaning[a]!]!;
    for (let a = 0; a < leaning.length; a++) result[leaning[a]!]! += p.get(a, k) * share * along;
  });
  return result;
}

/** T·A: a row for each of `others`, a column for each of `core`. */
export function coreRows(e: Elimination): Float64Array[] {
  const { rows, others, core } = e;
  const columns = core.map((j) =>
    independent(
      e,
      Float64Array.from(others, (i) => rows[i]![j]!),
    ),
  );
  return others.map((_, o) => Float64Array.from(columns, (column) => column[o]!));
}

/** s: each point as it is told alone. */
export function ownOf({ rows, points, weight, alone }: Elimination, residuals: readonly number[]): Float64Array {
  const own = new Float64Array(points.length);
  alone.forEach((k, i) => {
    if (k >= 0) own[k]! += (rows[i]![points[k]!]! * residuals[i]!) / weight[k]! ** 2;
  });
  return own;
}

/** e - B·s of each of `others`. */
export function lessOwn(
  { rows, others, points, leaning, leant }: Elimination,
  residuals: readonly number[],
  own: Float64Array,
): Float64Array {
  const left = Float64Array.from(others, (i) => residuals[i]!);
  for (const o of leaning) for (const k of leant) left[o]! -= rows[others[o]!]![points[k]!]! * own[k]!;
  return left;
}

/** The whole step from that of the core; `left` as `lessOwn` gives it. */
export function wholeStep(
  { rows, core, others, points, weight, leaning, leant, p, s, q }: Elimination,
  own: Float64Array,
  left: Float64Array,
  ofCore: Float64Array,
  unknowns: number,
): Float64Array {
  const step = new Float64Array(unknowns);
  core.forEach((j, c) => {
    step[j] = ofCore[c]!;
  });
  points.forEach((j, k) => {
    step[j] = own[k]!;
  });
  const rest = leaning.map((o) => left[o]! - core.reduce((sum, j, c) => sum + rows[others[o]!]![j]! * ofCore[c]!, 0));
  s.forEach((sk, d) => {
    const along = (rest.reduce((sum, r, a) => sum + p.get(a, d) * r, 0) * sk) / (1 + sk * sk);
    leant.forEach((k, b) => {
      step[points[k]!]! += (q.get(b, d) * along) / weight[k]!;
    });
  });
  return step;
}
