/**
 * What the indicator is expected to travel as the journal is shaken: of pairs drawn as all that is known allows, each
 * shaken. Where the shake goes round a corner, another seat or end stopping the nose, it is no straight line with a ±.
 */
import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import type { SeatInput } from '../../engine/contact/fit.ts';
import { predict } from '../../engine/gauging/readings/index.ts';
import { pairsAfter } from '../belief/believed.ts';
import { millimetres } from '../convert.ts';
import { openTrials, tellsAnything } from './openTrials.ts';
import { toPlanInput, toTrials } from './toCut.ts';

export interface ExpectedShake {
  /** half of the pairs shake by less */
  value: Millimetres;
  /** 19 times in 20 between these */
  low: Millimetres;
  high: Millimetres;
}

/** So many pairs tell the ends of 19 in 20 to about a tenth of what lies between them. */
const SHAKEN = 160;
const BEYOND = 1 / 40;

/**
 * @param design its last trial is the one at which it is shaken, with what was taken before that
 * @returns null where that is none of a shake, nothing that could be reads like the others, or a tenth have no shake
 */
export function expectedShake(design: Design): ExpectedShake | null {
  const { cut } = design;
  const asked = cut?.trials?.at(-1);
  if (!cut || !asked?.shake || asked.inShapes) return null;
  const { shake: _, standOff: __, blue: ___, ...metal } = asked;
  const trials = [...cut.trials!.slice(0, -1), ...(tellsAnything(metal) ? [metal] : [])];
  const before = { ...design, cut: { ...cut, trials } };
  const told = openTrials(before.cut).length > 0 ? toTrials(before, before.cut) : [];
  const { pairs, weights } = pairsAfter(before, toPlanInput(before, before.cut), told);
  const shake = toTrials(design, { ...cut, trials: [asked] })[0]!.shake!;
  const chosen = evenly(pairs, weights);
  const shakes = chosen.flatMap((pair) => predict({ kind: 'shake', ...shake }, pair).value ?? []).sort((a, b) => a - b);
  if (shakes.length < 0.9 * chosen.length || shakes.length === 0) return null;
  const at = (share: number) => millimetres(shakes[Math.min(shakes.length - 1, Math.floor(share * shakes.length))]!);
  return { value: at(1 / 2), low: at(BEYOND), high: at(1 - BEYOND) };
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
