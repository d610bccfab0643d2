/** What the screen draws beside the figures: some of the pairs themselves, and films counted in even steps. */
import type { SeatInput } from '../../engine/contact/fit.ts';
import { BLOCK, drawer, type OddsRun } from '../../engine/odds/odds.ts';
import { columnsOf } from '../../engine/odds/outcomes.ts';
import { millimetres } from '../convert.ts';
import type { State } from './drawn.ts';

/** Pairs drawn in the chart, and draws counted. */
const PAIRS = 100;
const BLOCKS = 4;
const STEPS = 28;
/** Share of the draws beyond either end of the steps; they are counted in the last. */
const BEYOND = 0.005;

export interface Counted {
  /** mm: where the first step begins, and how wide each is */
  from: number;
  step: number;
  /** share of the draws in each; those that have no such film are in none */
  shares: number[];
}

export interface Pictures {
  /** pairs drawn, in the units of the engine */
  pairs: SeatInput[][];
  /** by seat: at the position set, and each pair at its best; null where hardly a pair has that film */
  films: { set: Counted | null; best: Counted | null }[];
}

export function picturesOf({ sampler, middle }: State, run: OddsRun, seed: number, draws: number): Pictures {
  const u = drawer(sampler, seed)(0);
  const pairs: SeatInput[][] = [];
  for (let k = 0; k < BLOCK && pairs.length < PAIRS; k++) {
    const pair = sampler.shape(Float64Array.from(u, (column) => column[k]!));
    if (pair) pairs.push(pair);
  }
  const at = columnsOf(middle.length);
  const columns = [at.film, at.filmAtBest].map((from) =>
    middle.map((_, seat) => ({ from: from + seat, films: [] as number[] })),
  );
  const blocks = Math.min(BLOCKS, Math.ceil(draws / BLOCK));
  for (let block = 0; block < blocks; block++) {
    const { values, count } = run.draws(block * BLOCK);
    for (const { from, films } of columns.flat())
      for (let k = 0; k < count; k++) films.push(millimetres(values[from]![k]!));
  }
  return {
    pairs,
    films: middle.map((_, seat) => ({
      set: countedOf(columns[0]![seat]!.films),
      best: countedOf(columns[1]![seat]!.films),
    })),
  };
}

function countedOf(films: readonly number[]): Counted | null {
  const sorted = Float64Array.from(films.filter(Number.isFinite)).sort();
  if (sorted.length < films.length / 2) return null;
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  const [low, high] = [at(BEYOND), at(1 - BEYOND)];
  const step = (high - low) / STEPS;
  if (!(step > 0)) return { from: low, step: 0, shares: [sorted.length / films.length] };
  const shares = new Array<number>(STEPS).fill(0);
  for (const film of sorted) {
    const place = Math.min(STEPS - 1, Math.max(0, Math.floor((film - low) / step)));
    shares[place]! += 1 / films.length;
  }
  return { from: low, step, shares };
}
