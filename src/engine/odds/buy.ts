/**
 * What better work would gain: the chance that all films are in their bands with the spread of an input halved, and the
 * spreads that give a wanted chance at least difficulty.
 *
 *   least Σ c_i/m_i  with  P(m) = wanted        m_i what the spread of input i is multiplied by
 *   at the least     c_i/m_i³ ∝ e_i             e_i = -∂P/∂(m_i²)
 *
 * P of the same draws throughout, so that differences are those of the inputs and not of chance. e by a quarter more
 * and a quarter less; m from them in closed form, brought to the wanted chance by one factor, and again
 * until m stays. An input is one or several sources that are bought together. At the end the chance is told by other
 * draws.
 * @source derived (Lagrange's condition); Chase1990 (its closed form)
 */

import { type Chance, chanceOf, Z95 } from './limits.ts';
import { BLOCK, drawer } from './odds.ts';
import type { Question } from './outcomes.ts';
import { type Linear, samplerOf, withSpreads } from './sampler.ts';
import type { Asked } from './shares.ts';
import { modelOf } from './shares.ts';

type AllInBand = Extract<Asked, string>;

export interface Wish {
  linear: Linear;
  question: Question;
  /** at the position asked, or each pair at its best */
  asked: AllInBand;
  /** places of the sources that go together, of each input */
  inputs: readonly (readonly number[])[];
  draws: { blocks: number; seed: number };
}

interface Bought {
  /** with this input's spread multiplied */
  chance: Chance;
  /** over the chance as it is, ± 95 % of pairs drawn alike */
  gain: number;
  uncertainty: number;
}

/** The chance as it is, and with the spread of each input halved. */
export const halvedInTurn = (wish: Wish) =>
  boughtInTurn(
    wish,
    wish.inputs.map((sources) => new Map(sources.map((source) => [source, 0.5]))),
  );

/** The same with the spreads of some sources multiplied, each set in turn: what they are multiplied by, by source. */
export function boughtInTurn(
  { linear, question, asked, draws }: Omit<Wish, 'inputs'>,
  sets: readonly ReadonlyMap<number, number>[],
): { now: Chance; inputs: Bought[] } {
  const variants = [new Map<number, number>(), ...sets];
  const models = variants.map((by) =>
    modelOf(
      withSpreads(
        linear,
        linear.sources.map((_, source) => by.get(source) ?? 1),
      ),
      question,
      asked,
    ),
  );
  const drawn = drawer(samplerOf(linear), draws.seed);
  const times = variants.map(() => 0);
  const [better, worse] = [variants.map(() => 0), variants.map(() => 0)];
  for (let block = 0; block < draws.blocks; block++) {
    const u = drawn(block * BLOCK);
    const [now, ...others] = models.map((model) => model(u));
    others.forEach((other, i) => {
      for (let k = 0; k < BLOCK; k++) {
        times[i + 1]! += other[k]!;
        if (other[k]! > now![k]!) better[i + 1]!++;
        else if (other[k]! < now![k]!) worse[i + 1]!++;
      }
    });
    for (let k = 0; k < BLOCK; k++) times[0]! += now![k]!;
  }
  const n = draws.blocks * BLOCK;
  return {
    now: chanceOf(times[0]!, n),
    inputs: sets.map((_, i) => {
      const [up, down] = [better[i + 1]!, worse[i + 1]!];
      const gain = (up - down) / n;
      return {
        chance: chanceOf(times[i + 1]!, n),
        gain,
        uncertainty: (Z95 * Math.sqrt(Math.max(0, (up + down) / n - gain * gain))) / Math.sqrt(n),
      };
    }),
  };
}

const modelWith = ({ linear, question, asked, inputs }: Wish, by: ArrayLike<number>) => {
  const ofSource = linear.sources.map((_, s) =>
    inputs.reduce((product, input, i) => (input.includes(s) ? product * by[i]! : product), 1),
  );
  return modelOf(withSpreads(linear, ofSource), question, asked);
};

interface Allocation {
  /** what the spread of each input is multiplied by */
  multipliers: Float64Array;
  /** told by draws other than those it was found with */
  chance: Chance;
  /** Σ c_i/m_i over Σ c_i: 1 as it is now */
  difficulty: number;
}

/** No input is let looser than so many times what it is. */
const LOOSEST = 4;
const ROUNDS = 12;
const SETTLED = 0.02;
const NUDGE = 1.25;

/**
 * Spreads for a wanted chance that all are in band, at least difficulty (`difficulty` of each input, 1 when left out);
 * null where none is small enough: the pair in the middle is itself out of band.
 */
export function spreadsFor(wish: Wish, wanted: number, difficulty?: ArrayLike<number>): Allocation | null {
  const count = wish.inputs.length;
  const costs = Float64Array.from({ length: count }, (_, i) => difficulty?.[i] ?? 1);
  const chance = chanceFor(wish, wish.draws.seed);
  const none = new Float64Array(count).fill(LEAST);
  if (count === 0 || chance(none) < wanted) return null;
  let multipliers = factored(chance, new Float64Array(count).fill(1), wanted);
  for (let round = 0; round < ROUNDS; round++) {
    const before = multipliers;
    const effect = effects(chance, before);
    const shape = before.map((m, i) =>
      Math.sqrt(m * (costs[i]! / effect[i]!) ** (1 / 3) * scaleOf(costs, effect, before)),
    );
    multipliers = factored(chance, shape, wanted);
    if (multipliers.every((m, i) => Math.abs(Math.log(m / before[i]!)) < SETTLED)) break;
  }
  const other = chanceFor(wish, wish.draws.seed + 1);
  const n = wish.draws.blocks * BLOCK;
  const total = costs.reduce((sum, c) => sum + c, 0);
  return {
    multipliers,
    chance: chanceOf(Math.round(other(multipliers) * n), n),
    difficulty: costs.reduce((sum, c, i) => sum + c / multipliers[i]!, 0) / total,
  };
}

/** Brings the new shape to the size of the old one, so that their middle is one of shapes. */
const scaleOf = (costs: Float64Array, effect: Float64Array, before: Float64Array) =>
  Math.exp(before.reduce((sum, m, i) => sum + Math.log(m) - Math.log(costs[i]! / effect[i]!) / 3, 0) / before.length);

function chanceFor(wish: Wish, seed: number): (by: ArrayLike<number>) => number {
  const drawn = drawer(samplerOf(wish.linear), seed);
  return (by) => {
    const model = modelWith(wish, by);
    let times = 0;
    for (let block = 0; block < wish.draws.blocks; block++) {
      const inBand = model(drawn(block * BLOCK));
      for (let k = 0; k < BLOCK; k++) times += inBand[k]!;
    }
    return times / (wish.draws.blocks * BLOCK);
  };
}

/** -∂P/∂(m_i²), never quite nothing. */
function effects(chance: (by: Float64Array) => number, at: Float64Array): Float64Array {
  const raw = at.map((m, i) => {
    const [more, less] = [at.slice(), at.slice()];
    more[i] = m * NUDGE;
    less[i] = m / NUDGE;
    return (chance(less) - chance(more)) / (m * m * (NUDGE ** 2 - NUDGE ** -2));
  });
  const least = Math.max(...raw) * 1e-4 || 1e-9;
  return raw.map((e) => Math.max(e, least));
}

const LEAST = 1e-3;
/** Halvings of the factor: to a hundred-thousandth. */
const HALVINGS = 24;

/** The shape times the greatest factor that keeps the wanted chance, each at most LOOSEST. */
function factored(chance: (by: Float64Array) => number, shape: Float64Array, wanted: number): Float64Array {
  const at = (by: number) => shape.map((m) => Math.min(LOOSEST, Math.max(LEAST, m * by)));
  let [low, high] = [LEAST / Math.max(...shape), LOOSEST / Math.min(...shape)];
  if (chance(at(high)) >= wanted) return at(high);
  for (let i = 0; i < HALVINGS; i++) {
    const middle = Math.sqrt(low * high);
    if (chance(at(middle)) >= wanted) low = middle;
    else high = middle;
  }
  return at(low);
}
