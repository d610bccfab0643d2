/**
 * Linear solver of one film: multigrid on the unrolled seat, lines along the slant relaxed as wholes.
 *
 *   A p = b,   (A p)_k = Σ over the four neighbours of g·(p_k - p_neighbour) + (edge_k + sink_k)·p_k
 *
 * p pressure (Pa) · g link between two cells (m³/(s·Pa)) ≥ 0 · edge, sink links to places at nothing, along the slant
 * and around ≥ 0 b what flows into the cell (m³/s). A is symmetric and an M-matrix.
 *
 * A column is all cells of one angle; its tridiagonal system is solved exactly, so links along the slant may be
 * as strong as they like. Only the angle is coarsened, so links around may be too: every second column is
 * kept, and a column between two kept ones is eliminated as far as its links around go, p = w₋·p₋ + w₊·p₊,
 *
 *   w∓ = g∓/D,   D = g₋ + g₊ + sink        link between the kept g₋·g₊/D        sink of the kept += w∓·sink
 *
 * its links along the slant being shared out to the kept by w∓. As w₋ + w₊ ≤ 1, that is never softer than the exact
 * product PᵀAP (convexity of the square), so a correction never overshoots, and it keeps to five points; without links
 * along the slant it is cyclic reduction. Cells can be held at nothing: their inverse pivot is 0, which is all a sweep
 * needs to know. Work per cycle is proportional to the cells.
 * @source Dendy1989; Mulder1989 (as Dendy: block cyclic reduction, semi-coarsening with line relaxation); derived (the
 * lumping)
 */
export interface Level {
  /** cells along the slant, and columns around */
  rows: number;
  columns: number;
  /** Cell k = column·rows + row. Link to the next row; 0 in the last. */
  along: Float64Array;
  /** Link to the next column, periodic; 0 where there is one column only. */
  around: Float64Array;
  /** Links to places at nothing: along the slant (open ends), and around (columns that are gone). */
  edge: Float64Array;
  sink: Float64Array;
  /** Sum of all links of the cell. */
  diagonal: Float64Array;
  /** Inverse pivot of the column's factorisation; 0 where the cell is held at nothing. */
  inverse: Float64Array;
  /** Weight of the column before, in an odd column: what of its flow goes there. */
  before: Float64Array;
  /** Weight of the column after. */
  after: Float64Array;
  /** Unknown and right-hand side of this level. */
  p: Float64Array;
  b: Float64Array;
}

/** Sweeps over the coarsest level when it has more than one column. */
const COARSEST_SWEEPS = 6;

export function newLevel(rows: number, columns: number): Level {
  const array = () => new Float64Array(rows * columns);
  return {
    rows,
    columns,
    along: array(),
    around: array(),
    edge: array(),
    sink: array(),
    diagonal: array(),
    inverse: array(),
    before: array(),
    after: array(),
    p: array(),
    b: array(),
  };
}

/** Sums of the links of every cell, into `diagonal`. */
export function sumLinks({ rows, columns, along, around, edge, sink, diagonal }: Level): void {
  for (let j = 0; j < columns; j++) {
    const start = j * rows;
    const left = (j === 0 ? columns - 1 : j - 1) * rows;
    let under = 0;
    for (let i = 0; i < rows; i++) {
      const k = start + i;
      diagonal[k] = under + along[k]! + around[k]! + around[left + i]! + edge[k]! + sink[k]!;
      under = along[k]!;
    }
  }
}

/** Factors every column; a cell with `held` other than 0 is held at nothing. */
export function factor({ rows, columns, along, diagonal, inverse }: Level, held: Uint8Array | null): void {
  for (let j = 0; j < columns; j++) {
    let k = j * rows;
    let taken = 0;
    for (let i = 0; i < rows; i++, k++) {
      const g = along[k]!;
      const pivot = diagonal[k]! - taken;
      const one = (held !== null && held[k] !== 0) || !(pivot > 0) ? 0 : 1 / pivot;
      inverse[k] = one;
      taken = g * g * one;
    }
  }
}

/**
 * The level of half the columns, from a factored one: links, sinks, pivots. A kept cell is held where the fine one is.
 */
export function coarsen(fine: Level, coarse: Level, held: Uint8Array | null): void {
  const { rows, columns } = fine;
  coarse.along.fill(0);
  coarse.around.fill(0);
  for (let j = 0; j < columns; j += 2) {
    const at = j * rows;
    const to = (j >> 1) * rows;
    for (let i = 0; i < rows; i++) {
      coarse.along[to + i] = fine.along[at + i]!;
      coarse.edge[to + i] = fine.edge[at + i]!;
      coarse.sink[to + i] = fine.sink[at + i]!;
    }
  }
  for (let j = 1; j < columns; j += 2) eliminate(fine, coarse, j);
  if (coarse.columns === 1) coarse.around.fill(0);
  sumLinks(coarse);
  if (held === null) factor(coarse, null);
  else factorLike(fine, coarse);
}

/** Shares out what a dropped column has to the kept ones before and after it. */
function eliminate(fine: Level, coarse: Level, j: number): void {
  const { rows, columns, along, around, edge, sink, inverse, before, after } = fine;
  const at = j * rows;
  const left = (j - 1) * rows;
  const J = (j - 1) >> 1;
  const lo = J * rows;
  const hi = (J + 1 === coarse.columns ? 0 : J + 1) * rows;
  const single = columns === 2;
  for (let i = 0; i < rows; i++) {
    const k = at + i;
    const gl = around[left + i]!;
    const gr = around[k]!;
    if (inverse[k] === 0) {
      before[k] = 0;
      after[k] = 0;
      coarse.sink[lo + i]! += gl;
      coarse.sink[hi + i]! += gr;
      continue;
    }
    const s = sink[k]!;
    const d = gl + gr + s;
    const wl = d > 0 ? gl / d : 0;
    const wr = d > 0 ? gr / d : 0;
    // Links along the slant to cells held at nothing are edges too.
    let e = edge[k]!;
    if (i > 0 && inverse[k - 1] === 0) e += along[k - 1]!;
    if (i < rows - 1 && inverse[k + 1] === 0) e += along[k]!;
    before[k] = wl;
    after[k] = wr;
    if (!single) coarse.around[lo + i] = gl * wr;
    coarse.sink[lo + i]! += wl * s;
    coarse.sink[hi + i]! += wr * s;
    coarse.edge[lo + i]! += wl * e;
    coarse.edge[hi + i]! += wr * e;
  }
  for (let i = 0; i < rows - 1; i++) {
    const k = at + i;
    if (inverse[k] === 0 || inverse[k + 1] === 0) continue;
    const g = 0.5 * along[k]!;
    coarse.along[lo + i]! += g * (before[k]! + before[k + 1]!);
    coarse.along[hi + i]! += g * (after[k]! + after[k + 1]!);
  }
}

/** Factors a coarse level whose cells are held where those of the kept fine columns are. */
function factorLike(fine: Level, coarse: Level): void {
  const { rows, columns, along, diagonal, inverse } = coarse;
  for (let j = 0; j < columns; j++) {
    const kept = 2 * j * rows;
    let k = j * rows;
    let taken = 0;
    for (let i = 0; i < rows; i++, k++) {
      const g = along[k]!;
      const pivot = diagonal[k]! - taken;
      const one = fine.inverse[kept + i] === 0 || !(pivot > 0) ? 0 : 1 / pivot;
      inverse[k] = one;
      taken = g * g * one;
    }
  }
}

/** Solves every second column exactly, from column `first` on, its neighbours as they stand. */
function relaxColumns(level: Level, first: 0 | 1): void {
  const { columns } = level;
  let j = first;
  for (; j + 2 < columns; j += 4) relaxTwo(level, j, j + 2);
  if (j < columns) relaxOne(level, j);
}

function relaxOne({ rows, columns, along, around, inverse, p, b }: Level, j: number): void {
  const at = j * rows;
  const left = (j === 0 ? columns - 1 : j - 1) * rows;
  const right = (j === columns - 1 ? 0 : j + 1) * rows;
  let y = 0;
  let under = 0;
  for (let i = 0; i < rows; i++) {
    const k = at + i;
    y = (b[k]! + around[left + i]! * p[left + i]! + around[k]! * p[right + i]! + under * y) * inverse[k]!;
    p[k] = y;
    under = along[k]!;
  }
  for (let k = at + rows - 2; k >= at; k--) {
    y = p[k]! + along[k]! * inverse[k]! * y;
    p[k] = y;
  }
}

/** Two columns in step: each waits for its own last result, so together they cost little more than one. */
function relaxTwo({ rows, columns, along, around, inverse, p, b }: Level, j: number, m: number): void {
  const at = j * rows;
  const left = (j === 0 ? columns - 1 : j - 1) * rows;
  const right = at + rows;
  const far = m * rows;
  const farLeft = far - rows;
  const farRight = (m === columns - 1 ? 0 : m + 1) * rows;
  let y = 0;
  let w = 0;
  let under = 0;
  let farUnder = 0;
  for (let i = 0; i < rows; i++) {
    const k = at + i;
    const q = far + i;
    y = (b[k]! + around[left + i]! * p[left + i]! + around[k]! * p[right + i]! + under * y) * inverse[k]!;
    w = (b[q]! + around[farLeft + i]! * p[farLeft + i]! + around[q]! * p[farRight + i]! + farUnder * w) * inverse[q]!;
    p[k] = y;
    p[q] = w;
    under = along[k]!;
    farUnder = along[q]!;
  }
  for (let i = rows - 2; i >= 0; i--) {
    const k = at + i;
    const q = far + i;
    y = p[k]! + along[k]! * inverse[k]! * y;
    w = p[q]! + along[q]! * inverse[q]! * w;
    p[k] = y;
    p[q] = w;
  }
}

/** What is left of b in the kept columns becomes the right-hand side of the coarse level, whose unknown starts at 0. */
function restrict(fine: Level, coarse: Level): void {
  const { rows, columns, along, around, diagonal, inverse, p, b } = fine;
  for (let j = 0; j < columns; j += 2) {
    const at = j * rows;
    const left = (j === 0 ? columns - 1 : j - 1) * rows;
    const right = (j === columns - 1 ? 0 : j + 1) * rows;
    const to = (j >> 1) * rows;
    let under = 0;
    for (let i = 0; i < rows; i++) {
      const k = at + i;
      const up = along[k]!;
      let r = b[k]! - diagonal[k]! * p[k]! + around[left + i]! * p[left + i]! + around[k]! * p[right + i]!;
      if (i > 0) r += under * p[k - 1]!;
      if (i < rows - 1) r += up * p[k + 1]!;
      coarse.b[to + i] = inverse[k] === 0 ? 0 : r;
      under = up;
    }
  }
  coarse.p.fill(0);
}

/**
 * One cycle on levels[at]: the dropped columns solved, the rest corrected from below, the dropped solved again, the
 * kept solved. Cells held keep their value, which must be 0.
 */
export function cycle(levels: readonly Level[], at: number): void {
  const fine = levels[at]!;
  const coarse = levels[at + 1];
  if (coarse === undefined) {
    for (let sweep = 0; sweep < (fine.columns === 1 ? 1 : COARSEST_SWEEPS); sweep++) {
      relaxColumns(fine, 0);
      if (fine.columns > 1) relaxColumns(fine, 1);
    }
    return;
  }
  relaxColumns(fine, 1);
  restrict(fine, coarse);
  cycle(levels, at + 1);
  const { rows, columns, p } = fine;
  for (let j = 0; j < columns; j += 2) {
    const start = j * rows;
    const from = (j >> 1) * rows;
    for (let i = 0; i < rows; i++) p[start + i]! += coarse.p[from + i]!;
  }
  relaxColumns(fine, 1);
  relaxColumns(fine, 0);
}
