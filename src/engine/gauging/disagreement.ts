/**
 * Which reading does not go with the others: the one without which the rest agree.
 *
 * A normalised residual tells that only as far as the readings are linear in the shape. A wrong reading that makes
 * another seat touch first, or turns a line far over, puts its error on an innocent one; so the few that it may be are
 * left out in turn, and the rest is fitted anew:
 *
 *   gain_k = X² - X²_k          of a linear problem gain_k = w_k², w the normalised residual
 *
 * X² chi-square of all, X²_k of the rest without reading k. All whose rest agrees about as well as the best are named:
 * nothing tells which of them is wrong. A reading that the fitted shape does not allow, but the parts as drawn would,
 * speaks against the others too: something was read, so the shape must allow it or the entry is wrong. Removals that
 * leave fewer such readings go before those that leave more.
 * @source W. Baarda, "A testing procedure for use in geodetic networks", 1968, for w (from memory); the refits are its
 * non-linear form
 */

import { twoSidedTail } from '../belief/distributions.ts';
import type { ReadingFit } from './assess.ts';

/** A reading that does not go with the others, or may be the one. */
export interface Disagreeing {
  index: number;
  /** as in its ReadingFit; 0 where the fitted shape does not allow it */
  normalised: number;
  /**
   * chance that the best removal of all gains as much as it does where no reading is wrong; 0 where a reading would
   * have been impossible
   */
  probability: number;
  /** chi-square of the others, fitted without it */
  chiSquareWithout: number;
  /** chance of a chi-square as great as that */
  probabilityWithout: number;
}

/** How some of the readings agree. */
export interface Agreement {
  chiSquare: number;
  probability: number;
  /** how many of them the fitted shape does not allow though the parts as drawn would */
  contradicted: number;
}

/** A reading that may be wrong: its place in the list of all. */
export type Suspect = Pick<Disagreeing, 'index' | 'normalised'>;

/** Chance below which a gain, or a chi-square, is no longer put down to chance. */
const SUSPECT = 0.01;
/** A part of a reading's own weight that another has a say in; less is rounding. */
export const CHECKED = 1e-9;
/**
 * Share of the greatest normalised residual from which a reading may be the wrong one, and how many are tried besides
 * those that are alike.
 */
const NEAR = 0.3;
const MOST = 6;
/** Normalised residuals that are the same but for curvature. */
const SAME = 0.01;
/** Two chi-squares so near that neither removal is preferred: 99 in 100 of one degree of freedom. */
const ALIKE = 6.63;

/** Whether anything is wrong at all; most notebooks end here. */
export function isDoubtful(fits: readonly ReadingFit[], { chiSquare, probability, contradicted }: Agreement): boolean {
  const checked = checkedOf(fits);
  return (
    contradicted > 0 ||
    (checked.length > 0 &&
      chance(checked.length, chiSquare) < SUSPECT &&
      (probability < SUSPECT || chance(checked.length, greatestOf(checked) ** 2) < SUSPECT))
  );
}

/** The readings that may be wrong as far as their residuals tell, the greatest first. */
export function suspectsOf(fits: readonly ReadingFit[]): Suspect[] {
  const checked = checkedOf(fits);
  const greatest = greatestOf(checked);
  return checked
    .filter(({ normalised }) => Math.abs(normalised) > NEAR * greatest)
    .sort((a, b) => Math.abs(b.normalised) - Math.abs(a.normalised))
    .filter(({ normalised }, k) => k < MOST || Math.abs(normalised) > (1 - SAME) * greatest)
    .map(({ index, normalised }) => ({ index, normalised }));
}

/**
 * Those of the suspects without which the rest agrees, in the order of the notebook; none where no removal gains more
 * than chance would. `count`: readings in all.
 */
export function disagreeingOf(
  suspects: readonly Suspect[],
  count: number,
  whole: Agreement,
  without: (index: number) => Agreement | null,
): Disagreeing[] {
  const tried = suspects.flatMap(({ index, normalised }) => {
    const rest = without(index);
    return rest ? [{ index, normalised, rest }] : [];
  });
  const contradicted = Math.min(...tried.map(({ rest }) => rest.contradicted));
  const alike = tried
    .filter(({ rest }) => rest.contradicted === contradicted)
    .sort((a, b) => a.rest.chiSquare - b.rest.chiSquare);
  const [best] = alike;
  if (!best) return [];
  const probability =
    contradicted < whole.contradicted ? 0 : chance(count, Math.max(0, whole.chiSquare - best.rest.chiSquare));
  if (probability >= SUSPECT) return [];
  return alike
    .filter(({ rest }) => rest.chiSquare <= best.rest.chiSquare + ALIKE)
    .sort((a, b) => a.index - b.index)
    .map(({ index, normalised, rest }) => ({
      index,
      normalised,
      probability,
      chiSquareWithout: rest.chiSquare,
      probabilityWithout: rest.probability,
    }));
}

const checkedOf = (fits: readonly ReadingFit[]) => fits.filter((fit) => 1 - fit.leverage > CHECKED);
const greatestOf = (fits: readonly ReadingFit[]) => Math.max(0, ...fits.map((fit) => Math.abs(fit.normalised)));
/** That the greatest of so many gains is as great as this (Bonferroni's bound). */
const chance = (count: number, gain: number) => Math.min(1, count * twoSidedTail(Math.sqrt(gain)));
