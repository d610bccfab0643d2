/** How the readings lie about the fitted shape: residuals, chi-square, and the reading that disagrees (estimate.ts has the equations). */
import { type Decomposition, leveragesOf } from './decomposition.ts';
import { chiSquareTail, twoSidedTail } from './distributions.ts';
import type { Linear } from './linearise.ts';
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

/** A reading that does not go with the others. */
export interface Disagreeing {
  index: number;
  normalised: number;
  /** chance that the greatest of all normalised residuals is as great as this where no reading is wrong */
  probability: number;
  /** chi-square of the others without it */
  chiSquareWithout: number;
}

export interface Assessment {
  readings: ReadingFit[];
  chiSquare: number;
  freedom: number;
  /** of a chi-square as great as this or greater, where every stated uncertainty is right */
  probability: number;
  disagreeing: Disagreeing[];
}

/** A part of a reading's own weight that another has a say in; less is rounding. */
const CHECKED = 1e-9;
/** Chance below which the greatest residual is called a disagreement. */
const SUSPECT = 0.01;

/** `places`: of each reading used, its place in the list of all · `chiSquareWithout`: chi-square fitted anew without the k-th of them. */
export function assessed(linear: Linear, decomposition: Decomposition, readings: readonly Reading[], places: readonly number[], chiSquareWithout: (k: number) => number): Assessment {
  const leverages = leveragesOf(decomposition);
  const fits = readings.map((reading, i): ReadingFit => {
    const fitted = linear.predictions[i]!.value!;
    const leverage = leverages[i]!;
    const residual = reading.value - fitted;
    const normalised = 1 - leverage > CHECKED ? residual / (reading.sigma * Math.sqrt(1 - leverage)) : 0;
    return { index: places[i]!, fitted, residual, normalised, leverage };
  });
  const informative = linear.rows.filter((row) => row.some((g) => g !== 0)).length;
  const { chiSquare } = linear;
  const freedom = informative - decomposition.rank;
  return { readings: fits, chiSquare, freedom, probability: chiSquareTail(chiSquare, freedom), disagreeing: disagreeingOf(fits, chiSquareWithout) };
}

/**
 * The reading whose normalised residual is greatest, where chance makes so great a one seldom (Bonferroni's bound
 * over all readings); and with it those that cannot be told from it, having the same.
 */
function disagreeingOf(fits: readonly ReadingFit[], chiSquareWithout: (k: number) => number): Disagreeing[] {
  const checked = fits.filter((fit) => 1 - fit.leverage > CHECKED);
  const greatest = Math.max(0, ...checked.map((fit) => Math.abs(fit.normalised)));
  const probability = Math.min(1, checked.length * twoSidedTail(greatest));
  if (checked.length === 0 || probability >= SUSPECT) return [];
  return fits.flatMap((fit, k) => {
    const { index, normalised } = fit;
    if (!checked.includes(fit) || Math.abs(normalised) < greatest * (1 - 1e-6)) return [];
    return [{ index, normalised, probability, chiSquareWithout: chiSquareWithout(k) }];
  });
}
