/**
 * What is gathered from blocks of draws: counts, and the distribution of every quantity. Tallies of blocks are put
 * together in any order with the same result to the last digit, and take no more room for more draws.
 */
import {
  type Distribution,
  distributionOf,
  emptyDistribution,
  type Grid,
  gridFor,
  joined,
  momentsOf,
  type Quantile,
  quantileOf,
} from './distribution.ts';
import { type Chance, chanceOf } from './limits.ts';
import { type Answered, NO_SHAPE, NONE_FIRST, type Outcomes } from './outcomes.ts';

export interface Tally {
  /** draws that are a shape, and that are none */
  draws: number;
  noShape: number;
  /** by seat */
  first: number[];
  noneFirst: number;
  inBand: number[];
  allInBand: number;
  inBandAtBest: number[];
  allInBandAtBest: number;
  /** the first seat holds by itself */
  holds: number;
  distributions: Distribution[];
}

export const gridsFor = ({ values, count }: Outcomes): Grid[] => values.map((v) => gridFor(v.subarray(0, count)));

export const emptyTally = (seats: number, quantities: number): Tally => ({
  draws: 0,
  noShape: 0,
  first: new Array<number>(seats).fill(0),
  noneFirst: 0,
  inBand: new Array<number>(seats).fill(0),
  allInBand: 0,
  inBandAtBest: new Array<number>(seats).fill(0),
  allInBandAtBest: 0,
  holds: 0,
  distributions: Array.from({ length: quantities }, emptyDistribution),
});

/** The first `count` draws of a block. */
export function tallyOf(seats: number, grids: readonly Grid[], outcomes: Outcomes, count = outcomes.count): Tally {
  const tally = emptyTally(seats, 0);
  const all = (1 << seats) - 1;
  for (let k = 0; k < count; k++) {
    const first = outcomes.first[k]!;
    if (first === NO_SHAPE) {
      tally.noShape++;
      continue;
    }
    tally.draws++;
    if (first === NONE_FIRST) tally.noneFirst++;
    else tally.first[first]!++;
    const set = outcomes.inBand[k]!;
    const best = outcomes.inBandAtBest[k]!;
    for (let i = 0; i < seats; i++) {
      tally.inBand[i]! += (set >> i) & 1;
      tally.inBandAtBest[i]! += (best >> i) & 1;
    }
    if (set === all) tally.allInBand++;
    if (best === all) tally.allInBandAtBest++;
    tally.holds += outcomes.holds[k]!;
  }
  tally.distributions = outcomes.values.map((values, c) => distributionOf(grids[c]!, values, count));
  return tally;
}

export function together(one: Tally, other: Tally): Tally {
  const sums = (a: number[], b: number[]) => a.map((x, i) => x + b[i]!);
  return {
    draws: one.draws + other.draws,
    noShape: one.noShape + other.noShape,
    first: sums(one.first, other.first),
    noneFirst: one.noneFirst + other.noneFirst,
    inBand: sums(one.inBand, other.inBand),
    allInBand: one.allInBand + other.allInBand,
    inBandAtBest: sums(one.inBandAtBest, other.inBandAtBest),
    allInBandAtBest: one.allInBandAtBest + other.allInBandAtBest,
    holds: one.holds + other.holds,
    distributions: one.distributions.map((d, i) => joined(d, other.distributions[i]!)),
  };
}

interface BandChances {
  /** by seat */
  each: Chance[];
  all: Chance;
}

/** A quantity over all draws that have it. */
export interface Spread {
  answered: Answered;
  /** how many draws have it */
  count: number;
  mean: number;
  sd: number;
  p05: Quantile;
  p50: Quantile;
  p95: Quantile;
}

export interface OddsAnswer {
  draws: number;
  noShape: number;
  /** by seat */
  first: Chance[];
  noneFirst: Chance;
  /** at the position asked */
  inBand: BandChances;
  /** at the best position of each pair */
  inBandAtBest: BandChances;
  /** that the first seat holds by itself */
  holds: Chance;
  spreads: Spread[];
}

/** `most`: as how many independent draws they count at most; limits are theirs. */
export function oddsOf(
  tally: Tally,
  answered: readonly Answered[],
  grids: readonly Grid[],
  most = Number.POSITIVE_INFINITY,
): OddsAnswer {
  const count = Math.min(tally.draws, most);
  const chance = (times: number) => chanceOf(tally.draws === 0 ? 0 : (times / tally.draws) * count, count);
  return {
    draws: tally.draws,
    noShape: tally.noShape,
    first: tally.first.map(chance),
    noneFirst: chance(tally.noneFirst),
    inBand: { each: tally.inBand.map(chance), all: chance(tally.allInBand) },
    inBandAtBest: { each: tally.inBandAtBest.map(chance), all: chance(tally.allInBandAtBest) },
    holds: chance(tally.holds),
    spreads: answered.map((quantity, c): Spread => {
      const [grid, distribution] = [grids[c]!, tally.distributions[c]!];
      const [p05, p50, p95] = [0.05, 0.5, 0.95].map((share) => quantileOf(grid, distribution, share, most));
      return {
        answered: quantity,
        count: distribution.count,
        ...momentsOf(grid, distribution),
        p05: p05!,
        p50: p50!,
        p95: p95!,
      };
    }),
  };
}
