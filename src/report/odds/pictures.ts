/** What the screen draws beside the figures: some of the pairs themselves, and films counted in even steps. */
import type { SeatInput } from '../../engine/contact/fit.ts';
import { BLOCK, drawer, type OddsRun } from '../../engine/odds/odds.ts';
import { columnsOf } from '../../engine/odds/outcomes.ts';
import { millimetres } from '../convert.ts';
import { SAME } from '../inFrame.ts';
import type { State } from './drawn.ts';

/** Pairs drawn in the chart, and draws counted. */
const PAIRS = 100;
const BLOCKS = 4;
/** Steps at most, and in the band that is wanted. */
const STEPS = 36;
const IN_BAND = 6;
/** Films shown, in the greatest that is wanted; where none is, all but this share at either end. */
const SHOWN = 3;
const BEYOND = 0.005;

export interface Counted {
  /** mm: where the first step begins, and how wide each is */
  from: number;
  step: number;
  /** share of the draws in each, and of those beyond either end; those that have no such film are in none */
  shares: number[];
  below: number;
  above: number;
  /** share of those that just touch: in none of the steps, of which one would call them pressed in or too thin */
  touching: number;
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
      set: countedOf(columns[0]![seat]!.films, middle[seat]!),
      best: countedOf(columns[1]![seat]!.films, middle[seat]!),
    })),
  };
}

function countedOf(films: readonly number[], wanted: SeatInput): Counted | null {
  const sorted = Float64Array.from(films.filter(Number.isFinite)).sort();
  if (sorted.length < films.length / 2) return null;
  const { from, step, count } = stepsFor(sorted, wanted);
  const shares = new Array<number>(count).fill(0);
  const one = 1 / films.length;
  let [below, above, touching] = [0, 0, 0];
  for (const film of sorted) {
    if (Math.abs(film) <= millimetres(SAME)) {
      touching += one;
      continue;
    }
    const place = Math.floor((film - from) / step);
    if (place < 0) below += one;
    else if (place >= count) above += one;
    else shares[place]! += one;
  }
  return { from, step, shares, below, above, touching };
}

/** Times as many steps as are usual, at most. */
const MANY = 4;
/** mm: films nearer than this are the same to any eye. */
const LEAST_STEP = 1e-6;

/** Even steps; where a film is wanted its band is made of whole ones. */
function stepsFor(sorted: Float64Array, { target, tolerance = 0 }: SeatInput) {
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  let [low, high] = [at(BEYOND), at(1 - BEYOND)];
  if (target === undefined || tolerance === 0) {
    const step = Math.max((high - low) / STEPS, LEAST_STEP);
    return { from: low, step, count: Math.max(1, Math.ceil((high - low) / step)) };
  }
  const [least, most] = [millimetres(target - tolerance), millimetres(target + tolerance)];
  [low, high] = [Math.max(Math.min(low, least), -most), Math.min(Math.max(high, most), SHOWN * most)];
  let step = (most - least) / IN_BAND;
  const wide = Math.ceil((high - low) / step / STEPS);
  // As many whole steps in the band as fit: 6, 3, 2 or 1.
  const fewer = [1, 2, 3, 6].find((by) => by >= wide) ?? 6;
  step *= fewer;
  // A band too narrow to be seen as a step is none.
  if ((high - low) / step > MANY * STEPS) return { from: low, step: (high - low) / STEPS, count: STEPS };
  const before = Math.ceil((least - low) / step);
  const from = least - before * step;
  return { from, step, count: Math.max(1, Math.ceil((high - from) / step - 1e-9)) };
}
