/**
 * The weighted derivatives of all readings taken apart, so that what they tell and what they leave open can be
 * seen apart from each other.
 *
 *   J·D⁻¹ = U·S·Vᵀ        D: the length of each column of the whole problem
 *
 * J has a row for each reading (its gradient over its uncertainty) and a column for each unknown. Scaled by D
 * every unknown counts alike, radians beside metres, so that a singular value is small only where readings do
 * not tell. Values below RANK of the greatest count as none: their directions are the null space.
 *
 *   step  x = D⁻¹·V·S⁻¹·Uᵀ·e     covariance  C = D⁻¹·V·S⁻²·Vᵀ·D⁻¹     leverage  h_i = Σ U_ik²
 *
 * over the directions that are told; C is right for every quantity that does not lean on the null space. The points of
 * profiles are taken out first (elimination.ts, whose signs are used here): J then is T·A, and the whole has
 *
 *   C = F·Fᵀ       F = |  D⁻¹·V·S⁻¹            0                    |  of the core
 *                      | -H·D⁻¹·V·S⁻¹   W^-½·(I + Q·(c - 1)·Qᵀ)     |  of the points        H = W^-½·Q·(S·c²)·Pᵀ·A
 *
 * A point is always told by its own readings, so the null space is that of the core.
 * Singular value decomposition by ml-matrix.
 * @source JCGM102 6.2; GolubVanLoan 5.5
 */
import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { coreRows, type Elimination, eliminate, independent, lessOwn, ownOf, wholeStep } from './elimination.ts';

/** Rounding of the derivatives times a margin: far below any real difference between set-ups. */
const RANK = 1e-11;
/** A share of a unit vector that is rounding. */
export const NOTHING = 1e-7;

export interface Decomposition {
  unknowns: number;
  /** directions that are told: those of the core, and every point */
  rank: number;
  coreRank: number;
  /** D of every unknown */
  scale: Float64Array;
  elimination: Elimination;
  singular: number[];
  /** U, a row for each reading of the core */
  u: Matrix;
  /** V; the columns from `coreRank` on span the null space */
  v: Matrix;
  /** Pᵀ·A and Pᵀ·U: what of the core each direction of G sees */
  seenCore: Matrix;
  seenU: Matrix;
}

/**
 * `rows`: gradient over uncertainty, one for each reading (and each prior) · `points`: the unknowns that are points of
 * profiles.
 */
export function decompose(given: readonly Float64Array[], unknowns: number, points: readonly number[]): Decomposition {
  const rows = given.map(withoutRounding);
  const scale = new Float64Array(unknowns);
  for (const row of rows)
    for (let j = 0; j < unknowns; j++) if (row[j] !== 0) scale[j] = Math.hypot(scale[j]!, row[j]!);
  for (let j = 0; j < unknowns; j++) if (scale[j] === 0) scale[j] = 1;
  const elimination = eliminate(rows, unknowns, points);
  const { core, others, leaning, p } = elimination;
  // At least as many rows as columns, so that V holds the null space too.
  const matrix = new Matrix(Math.max(others.length, core.length), core.length);
  coreRows(elimination).forEach((row, i) => {
    core.forEach((j, c) => {
      matrix.set(i, c, row[c]! / scale[j]!);
    });
  });
  const { singular, u, v } = core.length === 0 ? { singular: [], u: matrix, v: new Matrix(0, 0) } : taken(matrix);
  const coreRank = singular.filter((s) => s > RANK * singular[0]!).length;
  const a = new Matrix(leaning.map((o) => core.map((j) => rows[others[o]!]![j]!)));
  const ofLeaning = new Matrix(leaning.map((o) => Array.from({ length: coreRank }, (_, k) => u.get(o, k))));
  const seen = (m: Matrix) => (leaning.length === 0 ? new Matrix(0, 0) : p.transpose().mmul(m));
  return {
    unknowns,
    rank: coreRank + elimination.points.length,
    coreRank,
    scale,
    elimination,
    singular,
    u,
    v,
    seenCore: seen(a),
    seenU: seen(ofLeaning),
  };
}

/**
 * An influence this small beside the others of its reading (a lever arm of a femtometre) is rounding, and tells
 * nothing.
 */
const ROUNDING = 1e-15;
/** 1/m or 1/rad: so small an influence over its uncertainty tells a number no nearer than to as many metres. */
const NO_NEWS = 1e-12;

function withoutRounding(row: Float64Array): Float64Array {
  const least = row.reduce((most, g) => Math.max(most, ROUNDING * Math.abs(g)), NO_NEWS);
  return row.some((g) => g !== 0 && Math.abs(g) < least) ? row.map((g) => (Math.abs(g) < least ? 0 : g)) : row;
}

function taken(matrix: Matrix): { singular: number[]; u: Matrix; v: Matrix } {
  const svd = new SingularValueDecomposition(matrix, { autoTranspose: false });
  return { singular: svd.diagonal, u: svd.leftSingularVectors, v: svd.rightSingularVectors };
}

/** The least step of the unknowns (scaled by D) that reduces the weighted residuals most. */
export function stepOf(d: Decomposition, residuals: readonly number[]): Float64Array {
  const { elimination: e, scale } = d;
  const own = ownOf(e, residuals);
  const left = lessOwn(e, residuals, own);
  const weighed = independent(e, left);
  const step = new Float64Array(e.core.length);
  for (let k = 0; k < d.coreRank; k++) {
    let along = 0;
    weighed.forEach((r, i) => {
      along += d.u.get(i, k) * r;
    });
    e.core.forEach((j, c) => {
      step[c]! += (d.v.get(c, k) * along) / d.singular[k]! / scale[j]!;
    });
  }
  return wholeStep(e, own, left, step, d.unknowns);
}

/**
 * How much of each reading's own value its fitted value is made of: 1 where nothing else checks it. The diagonal of
 * J·C·Jᵀ.
 */
export function leveragesOf(d: Decomposition): Float64Array {
  const { elimination: e, coreRank, u } = d;
  const leverages = new Float64Array(e.rows.length);
  const ofCore = e.others.map((_, o) => Float64Array.from({ length: coreRank }, (_, k) => u.get(o, k)));
  // T·U, and what the readings see of the points themselves.
  const columns = Array.from({ length: coreRank }, (_, k) =>
    independent(
      e,
      Float64Array.from(ofCore, (row) => row[k]!),
    ),
  );
  e.others.forEach((i, o) => {
    leverages[i] = columns.reduce((sum, column) => sum + column[o]! ** 2, 0);
  });
  e.leaning.forEach((o, a) => {
    leverages[e.others[o]!]! += e.s.reduce((sum, s, k) => sum + (e.p.get(a, k) ** 2 * s * s) / (1 + s * s), 0);
  });
  const ofPoints = pointLeverages(d);
  e.alone.forEach((k, i) => {
    if (k >= 0) leverages[i] = (e.rows[i]![e.points[k]!]! / e.weight[k]!) ** 2 * ofPoints[k]!;
  });
  return leverages.map((h) => Math.min(1, h));
}

/**
 * w·(variance of the point): 1 less what the other readings take from it, and what is not known of the core put on
 * again.
 */
function pointLeverages({ elimination: { points, leant, s, q }, coreRank, seenU }: Decomposition): Float64Array {
  const result = new Float64Array(points.length).fill(1);
  leant.forEach((k, b) => {
    const lean = s.map((sk, d) => (q.get(b, d) * sk) / Math.sqrt(1 + sk * sk));
    let back = 0;
    for (let c = 0; c < coreRank; c++) back += lean.reduce((sum, l, d) => sum + l * seenU.get(d, c), 0) ** 2;
    result[k] = 1 - lean.reduce((sum, l) => sum + l * l, 0) + back;
  });
  return result;
}

/** The quantity with this gradient, in the directions that are told: Fᵀ·g, those of the core first. */
export function toldParts(d: Decomposition, gradient: Float64Array): number[] {
  const { elimination: e } = d;
  const ofPoints = e.points.map((j, k) => gradient[j]! / e.weight[k]!);
  const core = Float64Array.from(e.core, (j) => gradient[j]!);
  e.s.forEach((s, k) => {
    const along = e.leant.reduce(
      (sum, point, b) => sum + e.q.get(b, k) * (gradient[e.points[point]!]! / e.weight[point]!),
      0,
    );
    if (along === 0) return;
    const share = 1 / Math.sqrt(1 + s * s) - 1;
    e.leant.forEach((point, b) => {
      ofPoints[point]! += e.q.get(b, k) * share * along;
    });
    const lean = (s / (1 + s * s)) * along;
    for (let c = 0; c < core.length; c++) core[c]! -= d.seenCore.get(k, c) * lean;
  });
  const told = Array.from({ length: d.coreRank }, (_, k) => inCore(d, core, k) / d.singular[k]!);
  for (const part of ofPoints) told.push(part);
  return told;
}

/** The quantity's lean on each direction of the null space. */
export function openParts(d: Decomposition, gradient: Float64Array): number[] {
  const core = Float64Array.from(d.elimination.core, (j) => gradient[j]!);
  return Array.from({ length: d.unknowns - d.rank }, (_, k) => inCore(d, core, d.coreRank + k));
}

/** The directions of the null space, in the unknowns scaled by D. */
export function openDirections(d: Decomposition): number[][] {
  return Array.from({ length: d.unknowns - d.rank }, (_, k) => {
    const direction = new Array<number>(d.unknowns).fill(0);
    d.elimination.core.forEach((j, c) => {
      direction[j] = d.v.get(c, d.coreRank + k);
    });
    return direction;
  });
}

function inCore({ elimination: { core }, scale, v }: Decomposition, gradient: Float64Array, k: number): number {
  let sum = 0;
  core.forEach((j, c) => {
    sum += (gradient[c]! / scale[j]!) * v.get(c, k);
  });
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
 *   u² = gᵀ·C·g        @source JCGM100 5.2.2
 */
export function uncertaintyOf(d: Decomposition, gradient: Float64Array): number | null {
  return isTold(d, gradient) ? lengthOf(toldParts(d, gradient)) : null;
}

/** Covariance of two quantities that are told. */
export function covarianceOf(d: Decomposition, one: Float64Array, other: Float64Array): number {
  const parts = toldParts(d, other);
  return toldParts(d, one).reduce((sum, part, k) => sum + part * parts[k]!, 0);
}

/** The unknowns' change for independent standard draws, one for each direction that is told: F times them. */
export function drawOf(d: Decomposition, normal: ArrayLike<number>): Float64Array {
  const { elimination: e, coreRank } = d;
  const change = new Float64Array(d.unknowns);
  for (let k = 0; k < coreRank; k++)
    for (let c = 0; c < e.core.length; c++)
      change[e.core[c]!]! += (d.v.get(c, k) * normal[k]!) / d.singular[k]! / d.scale[e.core[c]!]!;
  for (let k = 0; k < e.points.length; k++) change[e.points[k]!] = normal[coreRank + k]! / e.weight[k]!;
  for (let k = 0; k < e.s.length; k++) {
    const s = e.s[k]!;
    let along = 0;
    for (let b = 0; b < e.leant.length; b++) along += e.q.get(b, k) * normal[coreRank + e.leant[b]!]!;
    let core = 0;
    for (let c = 0; c < e.core.length; c++) core += d.seenCore.get(k, c) * change[e.core[c]!]!;
    const by = (1 / Math.sqrt(1 + s * s) - 1) * along - (s / (1 + s * s)) * core;
    for (let b = 0; b < e.leant.length; b++)
      change[e.points[e.leant[b]!]!]! += (e.q.get(b, k) * by) / e.weight[e.leant[b]!]!;
  }
  return change;
}

/** Covariances of every unknown with one of them, where all are told. */
export const covarianceColumn = (d: Decomposition, place: number): Float64Array =>
  drawOf(d, toldParts(d, unit(d.unknowns, place)));

/** The gradient of a single unknown. */
export function unit(unknowns: number, place: number): Float64Array {
  const gradient = new Float64Array(unknowns);
  gradient[place] = 1;
  return gradient;
}
