/** How the readings lie about the fitted shape: residuals and chi-square (estimate.ts has the equations). */
import { type Decomposition, leveragesOf } from '../belief/decomposition.ts';
import { chiSquareTail } from '../belief/distributions.ts';
import { CHECKED } from './disagreement.ts';
import type { Linearised } from './linearise.ts';
import type { Reading } from './reading.ts';

export interface ReadingFit {
  /** place in the list of readings */
  index: number;
  /** m */
  fitted: number;
  /** value less fitted (m) */
  residual: number;
  normalised: number;
  leverage: number;
}

export interface Assessment {
  readings: ReadingFit[];
  chiSquare: number;
  freedom: number;
  /** of a chi-square as great as this or greater, where every stated uncertainty is right */
  probability: number;
}

/** `places`: of each reading used, its place in the list of all. */
export function assessed(
  linear: Linearised,
  decomposition: Decomposition,
  readings: readonly Reading[],
  places: readonly number[],
): Assessment {
  const leverages = leveragesOf(decomposition);
  const fits = readings.map((reading, i): ReadingFit => {
    const fitted = linear.predictions[i]!.value!;
    const leverage = leverages[i]!;
    const residual = reading.value - fitted;
    const normalised = 1 - leverage > CHECKED ? residual / (reading.sigma * Math.sqrt(1 - leverage)) : 0;
    return { index: places[i]!, fitted, residual, normalised, leverage };
  });
  const freedom = freedomOf(linear, decomposition);
  return {
    readings: fits,
    chiSquare: linear.chiSquare,
    freedom,
    probability: chiSquareTail(linear.chiSquare, freedom),
  };
}

/** Rows that tell something, less the numbers they settle. */
export const freedomOf = ({ rows }: Linearised, { rank }: Decomposition): number =>
  rows.filter((row) => row.some((g) => g !== 0)).length - rank;
