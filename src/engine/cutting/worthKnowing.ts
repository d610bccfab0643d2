/**
 * What one more thing known would be worth, before it is known: how far an amount may be off then, on the average of
 * what would be read.
 *
 * Pairs drawn (pairsDrawn.ts) stand for what may be so. For one of them taken as true, what it would read (with noise)
 * weighs all others: w_k ∝ weight_k·exp(-½·Σ((read - read_k)/σ)²), 0 where the blue would look otherwise; the spread of
 * the amount among them is what would be left. The mean of its square over the pairs taken as true is told, as a root.
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

/** Pairs that are taken as true in turn. */
const TRUTHS = 48;
const ENOUGH = 8;
const WIDER = 2;
const MOST_WIDER = 60;

/** m. @param sigmas standard uncertainty (m) of each reading */
export function spreadOnceKnown(pairs: readonly Foreseen[], sigmas: readonly number[], seed = 1): number {
  const truths = truthsOf(pairs);
  const noise = standardNormals(seed, truths.length * sigmas.length);
  const variances = truths.map((truth, t) => {
    const read = truth.reads.map((value, r) => value + sigmas[r]! * noise[t * sigmas.length + r]!);
    for (let wider = 1, k = 0; ; wider *= WIDER, k++) {
      const { variance, effective } = among(
        pairs,
        read,
        truth.sees,
        sigmas.map((sigma) => wider * sigma),
      );
      if (effective >= ENOUGH || k === MOST_WIDER) return variance;
    }
  });
  return Math.sqrt(variances.reduce((a, b) => a + b, 0) / Math.max(1, variances.length));
}

/** Pairs taken evenly from all, by their shares. */
function truthsOf(pairs: readonly Foreseen[]): Foreseen[] {
  const truths: Foreseen[] = [];
  let sum = 0;
  for (const pair of pairs) {
    sum += pair.weight;
    while (truths.length < TRUTHS && sum > (truths.length + 0.5) / TRUTHS) truths.push(pair);
  }
  return truths;
}

/** Spread of the amount among the pairs that would read so; that of few is made good for their number. */
function among(
  pairs: readonly Foreseen[],
  read: readonly number[],
  seen: string,
  sigmas: readonly number[],
): { variance: number; effective: number } {
  let [all, squares, sum, square] = [0, 0, 0, 0];
  for (const { weight, amount, reads, sees } of pairs) {
    if (sees !== seen) continue;
    let off = 0;
    for (let r = 0; r < read.length; r++) off += ((read[r]! - reads[r]!) / sigmas[r]!) ** 2;
    const w = weight * Math.exp(-off / 2);
    all += w;
    squares += w * w;
    sum += w * amount;
    square += w * amount * amount;
  }
  const effective = squares > 0 ? (all * all) / squares : 0;
  if (effective < ENOUGH / 2) return { variance: 0, effective };
  const mean = sum / all;
  return { variance: (Math.max(0, square / all - mean * mean) * effective) / (effective - 1), effective };
}
