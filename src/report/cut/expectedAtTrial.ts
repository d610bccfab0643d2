/**
 * What a trial is expected to read, of pairs drawn as all that is known allows: each pressed home, and shaken. Where
 * another seat may stop it first, or the shake goes round a corner, that is no straight line with a ±.
 */
import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import { fit, type SeatInput } from '../../engine/contact/fit.ts';
import { predict } from '../../engine/gauging/readings/index.ts';
import { pairsAfter } from '../belief/believed.ts';
import { BEYOND, quantilesOf } from '../belief/spread.ts';
import { millimetres } from '../convert.ts';
import { openTrials, tellsAnything } from './openTrials.ts';
import { type Cut, toPlanInput, toTrials } from './toCut.ts';

type Trial = NonNullable<Cut['trials']>[number];

export interface Expected {
  /** half of the pairs read less */
  value: Millimetres;
  /** 19 times in 20 between these */
  low: Millimetres;
  high: Millimetres;
}

/** So many pairs tell the ends of 19 in 20 to about a tenth of what lies between them. */
const SHAKEN = 160;

/**
 * @param design its last trial is the one at which it is shaken, with what was taken before that
 * @returns null where that is none of a shake, nothing that could be reads like the others, or a tenth have no shake
 */
export function expectedShake(design: Design): Expected | null {
  const { cut } = design;
  const asked = cut?.trials?.at(-1);
  if (!cut || !asked?.shake || asked.inShapes) return null;
  const { pairs, weights } = pairsBefore(design, asked, cut);
  const shake = toTrials(design, { ...cut, trials: [asked] })[0]!.shake!;
  const chosen = evenly(pairs, weights);
  const shakes = chosen.flatMap((pair) => predict({ kind: 'shake', ...shake }, pair).value ?? []).sort((a, b) => a - b);
  if (shakes.length < 0.9 * chosen.length || shakes.length === 0) return null;
  const at = (share: number) => millimetres(shakes[Math.min(shakes.length - 1, Math.floor(share * shakes.length))]!);
  return { value: at(1 / 2), low: at(BEYOND), high: at(1 - BEYOND) };
}

/**
 * Where the first of the seats stops the journal at the last trial of a design, noseward counted up: of pairs drawn,
 * for another seat than the likeliest may be the first, and then the stand-off goes by the doubt of that one.
 * @returns null where hardly a pair is stopped, or nothing that could be reads like the trials before
 */
export function expectedTouch(design: Design): Expected | null {
  const { cut } = design;
  const asked = cut?.trials?.at(-1);
  if (!cut || !asked) return null;
  const { pairs, weights } = pairsBefore(design, asked, cut);
  const places = pairs.map((pair) => fit(pair, 0).firstPosition);
  const found = quantilesOf(places, weights, [BEYOND, 1 / 2, 1 - BEYOND]);
  if (!found) return null;
  const [low, value, high] = found.map(millimetres) as [number, number, number];
  return { value, low, high };
}

/** As all that is known before this trial is read allows. */
function pairsBefore(design: Design, asked: Trial, cut: Cut) {
  const { shake: _, standOff: __, blue: ___, ...metal } = asked;
  const trials = [...cut.trials!.slice(0, -1), ...(tellsAnything(metal) ? [metal] : [])];
  const before = { ...design, cut: { ...cut, trials } };
  const told = openTrials(before.cut).length > 0 ? toTrials(before, before.cut) : [];
  return pairsAfter(before, toPlanInput(before, before.cut), told);
}

/** Pairs taken evenly from all, by their shares: all of one weight. */
function evenly(pairs: readonly SeatInput[][], weights: readonly number[]): SeatInput[][] {
  const chosen: SeatInput[][] = [];
  let sum = 0;
  for (const [k, weight] of weights.entries()) {
    sum += weight;
    while (chosen.length < SHAKEN && sum > (chosen.length + 0.5) / SHAKEN) chosen.push(pairs[k]!);
  }
  return chosen;
}
