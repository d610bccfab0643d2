/**
 * Systems of a few unknowns by elimination with partial pivoting.
 * @source GolubVanLoan algorithm 3.4.1
 */

/** Solves a·x = b with rows and columns scaled first; null when a is singular to round-off. */
export function solveSmall(a: readonly (readonly number[])[], b: readonly number[]): number[] | null {
  const columnScale = b.map((_, j) => 1 / Math.max(...a.map((row) => Math.abs(row[j]!))));
  if (columnScale.some((s) => !Number.isFinite(s))) return null;
  const rows = a.map((row, i) => {
    const scaled = row.map((value, j) => value * columnScale[j]!);
    const size = Math.max(...scaled.map(Math.abs));
    return [...scaled, b[i]!].map((value) => (size > 0 ? value / size : value));
  });
  const x = eliminated(rows, 1e-14);
  return x?.map((value, j) => value * columnScale[j]!) ?? null;
}

/**
 * x of a square system as it is given, rows with the right side last, which are used up; null where no pivot is greater
 * than `least`.
 */
export function eliminated(rows: number[][], least: number): number[] | null {
  const n = rows.length;
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[best]![k]!)) best = i;
    if (!(Math.abs(rows[best]![k]!) > least)) return null;
    [rows[k], rows[best]] = [rows[best]!, rows[k]!];
    for (let i = k + 1; i < n; i++) {
      const factor = rows[i]![k]! / rows[k]![k]!;
      if (factor !== 0) for (let j = k; j <= n; j++) rows[i]![j]! -= factor * rows[k]![j]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    let sum = rows[i]![n]!;
    for (let j = i + 1; j < n; j++) sum -= rows[i]![j]! * x[j]!;
    x[i] = sum / rows[i]![i]!;
  }
  return x;
}

/**
 * x of a symmetric system that is nowhere negative, rows with the right side last, which are used up. By the greatest
 * diagonal left; where that is less than `least` nothing resists what is left, and it stays 0.
 */
export function stillSolved(rows: number[][], least: number): number[] {
  const n = rows.length;
  const isUsed = rows.map(() => false);
  const resists = rows.map(() => false);
  for (let k = 0; k < n; k++) {
    let pivot = -1;
    for (let i = 0; i < n; i++) if (!isUsed[i] && (pivot < 0 || rows[i]![i]! > rows[pivot]![pivot]!)) pivot = i;
    isUsed[pivot] = true;
    if (rows[pivot]![pivot]! < least) continue;
    resists[pivot] = true;
    for (let i = 0; i < n; i++) {
      if (i === pivot) continue;
      const factor = rows[i]![pivot]! / rows[pivot]![pivot]!;
      for (let c = 0; c <= n; c++) rows[i]![c]! -= factor * rows[pivot]![c]!;
    }
  }
  return rows.map((row, i) => (resists[i] ? row[n]! / row[i]! : 0));
}

/** m⁻¹·a·by for a small positive m: no row changes its place. */
export function inverseTimes(m: readonly (readonly number[])[], a: readonly (readonly number[])[], by: number) {
  const n = m.length;
  const left = m.map((row) => [...row]);
  const right = a.map((row) => row.map((value) => value * by));
  for (let k = 0; k < n; k++) {
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const f = left[i]![k]! / left[k]![k]!;
      for (let j = 0; j < n; j++) {
        left[i]![j]! -= f * left[k]![j]!;
        right[i]![j]! -= f * right[k]![j]!;
      }
    }
  }
  return right.map((row, i) => row.map((value) => value / left[i]![i]!));
}

export type Two = [number, number];

/** x of two equations, by determinants. */
export function solveTwo([[a, b], [c, d]]: readonly [Readonly<Two>, Readonly<Two>], [x, y]: Readonly<Two>): Two {
  const det = a * d - b * c;
  return [(d * x - b * y) / det, (a * y - c * x) / det];
}
