/** Solves a·x = b for a few unknowns by elimination with row and column scaling and partial pivoting; null when a is singular to round-off. */
export function solveSmall(a: readonly (readonly number[])[], b: readonly number[]): number[] | null {
  const n = b.length;
  const columnScale = b.map((_, j) => 1 / Math.max(...a.map((row) => Math.abs(row[j]!))));
  if (columnScale.some((s) => !Number.isFinite(s))) return null;
  const m = a.map((row, i) => {
    const scaled = row.map((value, j) => value * columnScale[j]!);
    const size = Math.max(...scaled.map(Math.abs));
    return [...scaled, b[i]!].map((value) => (size > 0 ? value / size : value));
  });
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(m[i]![k]!) > Math.abs(m[best]![k]!)) best = i;
    if (!(Math.abs(m[best]![k]!) > 1e-14)) return null;
    [m[k], m[best]] = [m[best]!, m[k]!];
    for (let i = k + 1; i < n; i++) {
      const f = m[i]![k]! / m[k]![k]!;
      for (let j = k; j <= n; j++) m[i]![j]! -= f * m[k]![j]!;
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    let sum = m[i]![n]!;
    for (let j = i + 1; j < n; j++) sum -= m[i]![j]! * x[j]!;
    x[i] = sum / m[i]![i]!;
  }
  return x.map((value, j) => value * columnScale[j]!);
}
