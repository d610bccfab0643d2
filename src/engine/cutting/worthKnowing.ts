/**
 * What one more thing known would be worth, before it is known: how far an amount may be off then, on the average of
 * what would be read.
 *
 * Pairs drawn (pairsDrawn.ts) stand for what may be so. For one of them taken as true, what it would read (with noise)
 * weighs all others: w_k ∝ weight_k·exp(-½·Σ((read - read_k)/σ)²), 0 where the blue would look otherwise. What would be
 * left is told then as it is told of everything (leftToCut.ts), about the most likely:
 *
 *   s² = Σ w_k·(x_k - x)²       x what is most likely by what was read; the mean of the x_k where that is not asked for
 *
 * The mean of s over the pairs taken as true is told, and what it is at most in the best quarter of them: a mean of
 * cases that differ much is what hardly one of them brings. (Not the root of the mean of s²: a few cases with much
 * doubt would be told to whoever has the many with less.) Those are left out of which nothing is to come off any more,
 * or all that may: there it is not the films that say how much, and no reading makes that surer.
 * Where fewer than ENOUGH count, σ is taken wider until they do: the few pairs there tell no spread, and what is told
 * is then rather too wide.
 * @source MacKay chapter 36 (decision: the expected worth of information); derived (by the pairs drawn)
 */
import { standardNormals } from '../belief/draws.ts';

/** One pair drawn: its share, the amount, what would be read of it, and what would be seen. */
export interface Foreseen {
  weight: number;
  amount: number;
  /** m */
  reads: readonly number[];
  sees: string;
}

/**
 * What would most likely come off after a reading (m); null where that is nothing, or all that may, or what was read
 * could not be taken in.
 */
export type AfterReading = (reads: readonly number[], sees: string) => number | null;

/** Pairs that are taken as true in turn. */
const TRUTHS = 48;
const ENOUGH = 8;
const WIDER = 2;
const MOST_WIDER = 60;

interface Asked {
  seed?: number;
  /** so many pairs are taken as true */
  truths?: number;
  after?: AfterReading;
}

export interface OnceKnown {
  /** m: on the average, and at most in one case of four */
  mean: number;
  quarter: number;
}

/** Null where no case is to be told of. @param sigmas standard uncertainty (m) of each reading */
export function spreadOnceKnown(
  pairs: readonly Foreseen[],
  sigmas: readonly number[],
  { seed = 1, truths: most = TRUTHS, after }: Asked = {},
): OnceKnown | null {
  const truths = truthsOf(pairs, most);
  const noise = standardNormals(seed, truths.length * sigmas.length);
  const spreads = truths.flatMap((truth, t) => {
    const read = truth.reads.map((value, r) => value + sigmas[r]! * noise[t * sigmas.length + r]!);
    const told = after?.(read, truth.sees);
    if (told === null) return [];
    for (let wider = 1, k = 0; ; wider *= WIDER, k++) {
      const { mean, variance, effective } = among(pairs, read, truth.sees, wider, sigmas);
      if (effective < ENOUGH && k < MOST_WIDER) continue;
      // How far the mean of so few may be off by chance alone is no distance from what is most likely.
      const off = told === undefined ? 0 : (mean - told) ** 2 - variance / Math.max(1, effective);
      return [Math.sqrt(Math.max(variance / 2, variance + off))];
    }
  });
  if (spreads.length === 0) return null;
  const sorted = [...spreads].sort((a, b) => a - b);
  return {
    mean: spreads.reduce((a, b) => a + b, 0) / spreads.length,
    quarter: sorted[Math.max(0, Math.round(sorted.length / 4) - 1)]!,
  };
}

/** Pairs taken evenly from all, by their shares. */
function truthsOf(pairs: readonly Foreseen[], most: number): Foreseen[] {
  const truths: Foreseen[] = [];
  let sum = 0;
  for (const pair of pairs) {
    sum += pair.weight;
    while (truths.length < most && sum > (truths.length + 0.5) / most) truths.push(pair);
  }
  return truths;
}

/** Spread of the amount among the pairs that would read so; that of few is made good for their number. */
function among(
  pairs: readonly Foreseen[],
  read: readonly number[],
  seen: string,
  wider: number,
  sigmas: readonly number[],
): { mean: number; variance: number; effective: number } {
  let [all, squares, sum, square] = [0, 0, 0, 0];
  for (const { weight, amount, reads, sees } of pairs) {
    if (sees !== seen) continue;
    let off = 0;
    for (let r = 0; r < read.length; r++) off += ((read[r]! - reads[r]!) / (wider * sigmas[r]!)) ** 2;
    const w = weight * Math.exp(-off / 2);
    all += w;
    squares += w * w;
    sum += w * amount;
    square += w * amount * amount;
  }
  const effective = squares > 0 ? (all * all) / squares : 0;
  if (effective < ENOUGH / 2) return { mean: all > 0 ? sum / all : 0, variance: 0, effective };
  const mean = sum / all;
  return { mean, variance: (Math.max(0, square / all - mean * mean) * effective) / (effective - 1), effective };
}
