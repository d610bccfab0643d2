/** Labels set side by side in the order of what they name, each as near to it as its neighbours let it. */

export interface Wanted {
  /** where the middle of the label would best stand */
  at: number;
  size: number;
}

/**
 * Middles of labels along a line from `low` to `high`, in the order given (rising `at`), at least `space` apart:
 * least squares under that order, by pooling neighbours that crowd each other. Null: they do not fit.
 */
export function spread(wanted: readonly Wanted[], low: number, high: number, space: number): number[] | null {
  const needed = wanted.reduce((sum, { size }) => sum + size, 0) + space * (wanted.length - 1);
  if (needed > high - low) return null;
  // Measured from its place in a row that stands tight, each label only has to stand no further left than the one
  // before.
  const tight: number[] = [];
  wanted.forEach(({ size }, i) => {
    tight.push(i === 0 ? size / 2 : tight[i - 1]! + (wanted[i - 1]!.size + size) / 2 + space);
  });
  const pools: { mean: number; count: number }[] = [];
  wanted.forEach(({ at }, i) => {
    pools.push({ mean: at - tight[i]!, count: 1 });
    while (pools.length > 1 && pools[pools.length - 2]!.mean > pools[pools.length - 1]!.mean) {
      const right = pools.pop()!;
      const left = pools.pop()!;
      const count = left.count + right.count;
      pools.push({ mean: (left.mean * left.count + right.mean * right.count) / count, count });
    }
  });
  const bounded = pools.flatMap(({ mean, count }) =>
    Array<number>(count).fill(Math.min(high - needed, Math.max(low, mean))),
  );
  return bounded.map((shift, i) => shift + tight[i]!);
}
