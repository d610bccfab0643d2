/**
 * The odds of a pair: draws in blocks that any worker may take in any order, gathered (tally.ts) and told.
 *
 *   const run = oddsRun(sampler, middle, question, seed)
 *   for each [from, count] of blocksOf(draws):   tally = together(tally, run.block(from, count))
 *   run.answer(tally)
 *
 * The steps of the histograms are those of the first block, which every worker draws for itself: the same for the same
 * sampler, question and seed.
 */
import type { SeatInput } from '../contact/fit.ts';
import { type Kernel, kernelOf } from './kernel.ts';
import { answeredOf, type Outcomes, type Question } from './outcomes.ts';
import type { Sampler } from './sampler.ts';
import { sobolPoints } from './sobol.ts';
import { emptyTally, gridsFor, type OddsAnswer, oddsOf, type Tally, tallyOf } from './tally.ts';

/** Draws of a block: a power of 2, so that each is a net. */
export const BLOCK = 1024;

/** Blocks of so many draws: the number of its first, and how many. */
export const blocksOf = (draws: number): [from: number, count: number][] =>
  Array.from({ length: Math.ceil(draws / BLOCK) }, (_, b) => [b * BLOCK, Math.min(BLOCK, draws - b * BLOCK)]);

export interface OddsRun {
  /** draws `from` to `from` + `count` - 1; count at most BLOCK */
  block(from: number, count: number): Tally;
  /** the same draws themselves, for a chart that shows single ones; used again by the next call */
  draws(from: number): Outcomes;
  empty(): Tally;
  answer(tally: Tally): OddsAnswer;
}

/** `middle`: the pair about which is drawn; it says what is wanted of each seat. */
export function oddsRun(sampler: Sampler, middle: readonly SeatInput[], question: Question, seed: number): OddsRun {
  const drawn = drawer(sampler, seed);
  const kernel: Kernel = kernelOf(sampler, middle, question, BLOCK);
  const draws = (from: number) => kernel(drawn(from));
  const grids = gridsFor(draws(0));
  const answered = answeredOf(middle);
  return {
    block: (from, count) => tallyOf(middle.length, grids, draws(from), count),
    draws,
    empty: () => emptyTally(middle.length, answered.length),
    answer: (tally) => oddsOf(tally, answered, grids, sampler.effective),
  };
}

/** Columns of even draws, one for each dimension; used again by the next block. */
export function drawer({ dimensions }: Sampler, seed: number): (from: number) => Float64Array[] {
  const points = sobolPoints(seed);
  const u = Array.from({ length: dimensions }, () => new Float64Array(BLOCK));
  return (from) => {
    u.forEach((column, d) => {
      points(d, from, column);
    });
    return u;
  };
}
