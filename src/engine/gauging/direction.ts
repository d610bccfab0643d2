/** One Gauss–Newton step of the linear problem. */
import { decompose, stepOf } from './decomposition.ts';

export interface Direction {
  step: Float64Array;
  /** gain of chi-square that the linear problem promises for the whole step */
  gain: number;
}

/** `held`: unknowns that do not move. */
export function directionOf(rows: readonly Float64Array[], residuals: readonly number[], held: readonly boolean[]): Direction {
  const free = held.some(Boolean) ? rows.map((row) => row.map((g, j) => (held[j] ? 0 : g))) : rows;
  const step = stepOf(decompose(free, held.length), residuals);
  let gain = 0;
  free.forEach((row, i) => {
    const change = row.reduce((sum, g, j) => sum + g * step[j]!, 0);
    gain += residuals[i]! ** 2 - (residuals[i]! - change) ** 2;
  });
  return { step, gain };
}
