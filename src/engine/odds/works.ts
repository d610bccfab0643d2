/**
 * Whether one pair works: every film within its tolerance at the position that suits it best, as the odds have it
 * (oneByOne.ts, kernel.ts); and how often pairs drawn do, uncut or cut.
 *
 *   chance = Σ w_k·[pair k works]        w_k its share
 */
import { standardNormals } from '../belief/draws.ts';
import type { SeatInput } from '../contact/fit.ts';
import type { PairsDrawn } from '../cutting/pairsDrawn.ts';
import { type CutOff, cutPair } from './cut.ts';
import { bands } from './kernel.ts';
import { answerOne } from './oneByOne.ts';
import { type Question, roomFor } from './outcomes.ts';

/** @param middle the pair about which it is drawn, with what is wanted of each seat */
export function worksAtBest(pair: readonly SeatInput[], middle: readonly SeatInput[], question: Question): boolean {
  const room = roomFor(middle, 1);
  answerOne(pair, middle, question, room, 0);
  bands(middle, room);
  return room.inBandAtBest[0] === (1 << middle.length) - 1;
}

interface Asked {
  middle: readonly SeatInput[];
  question: Question;
  /** what comes off every one of them, each by a dial that errs; null: nothing */
  off: CutOff | null;
}

/** The dial errs alike whichever cut is asked about, so that two chances differ by the cuts alone. */
const SEED = 7;

export function chanceOfPairs({ pairs, weights }: Pick<PairsDrawn, 'pairs' | 'weights'>, asked: Asked): number {
  const { middle, question, off } = asked;
  const sigmas = off ? [...off.off.taken, ...(off.off.faces ?? [])].map(({ sigma }) => sigma) : [];
  const normals = standardNormals(SEED, pairs.length * sigmas.length);
  const chance = pairs.reduce((sum, pair, k) => {
    const errors = sigmas.map((sigma, c) => sigma * normals[k * sigmas.length + c]!);
    return worksAtBest(off ? cutPair(off, pair, errors) : pair, middle, question) ? sum + weights[k]! : sum;
  }, 0);
  return Math.min(1, chance);
}
