/**
 * Triangles: the lower root of a positive matrix, L·Lᵀ (Cholesky), and systems with L and Lᵀ. A triangle is kept as the
 * rows of L, which are the columns of the upper Lᵀ. For few unknowns.
 * @source GolubVanLoan algorithms 3.1.1 and 4.2.1
 */

type Triangle = readonly (readonly number[])[];

/** L of the n × n matrix whose element is at(i, k), k ≤ i; no square on its diagonal is taken for less than `floor`. */
export function lowerRoot(n: number, at: (i: number, k: number) => number, floor = 0): number[][] {
  const l: number[][] = [];
  for (let i = 0; i < n; i++) {
    const row: number[] = [];
    l.push(row);
    for (let k = 0; k <= i; k++) {
      let sum = at(i, k);
      for (let j = 0; j < k; j++) sum -= l[k]![j]! * row[j]!;
      row.push(i === k ? Math.sqrt(Math.max(sum, floor)) : sum / l[k]![k]!);
    }
  }
  return l;
}

/** x of L·x = c. */
export function lowerSolved(l: Triangle, c: readonly number[]): number[] {
  const x: number[] = [];
  for (let i = 0; i < l.length; i++) {
    let sum = c[i]!;
    for (let j = 0; j < i; j++) sum -= l[i]![j]! * x[j]!;
    x.push(sum / l[i]![i]!);
  }
  return x;
}

/** x of Lᵀ·x = c. */
export function upperSolved(l: Triangle, c: readonly number[]): number[] {
  const x = c.slice();
  for (let j = l.length - 1; j >= 0; j--) {
    x[j]! /= l[j]![j]!;
    for (let i = 0; i < j; i++) x[i]! -= l[j]![i]! * x[j]!;
  }
  return x;
}
