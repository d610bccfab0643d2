/** What many pairs drawn answer, in the units and names of the report. */
import type { Design } from '../../design/definition.ts';
import type { Chance } from '../../engine/odds/limits.ts';
import type { Question } from '../../engine/odds/outcomes.ts';
import type { OddsAnswer, Spread } from '../../engine/odds/tally.ts';
import { millimetres } from '../convert.ts';
import type { StateReport } from './definition.ts';

/** Null where no draw is a pair at all. */
export function stateSection(design: Design, { position }: Question, answer: OddsAnswer): StateReport | null {
  if (answer.draws === 0) return null;
  const { first, inBand, inBandAtBest, holds, spreads, draws } = answer;
  const named = <T>(of: (seat: number) => T) => Object.fromEntries(design.seats.map(({ name }, i) => [name, of(i)]));
  const spreadOf = (of: Spread['answered']['of'], seat?: number) =>
    spreadSection(
      spreads.find(({ answered }) => answered.of === of && (!('seat' in answered) || answered.seat === seat)),
      draws,
    );
  const chances = (each: readonly Chance[]) => named((i) => each[i]!.share);
  const limits = (each: readonly Chance[]) => named((i) => limitsOf(each[i]!));
  return {
    position: millimetres(position),
    first: chances(first),
    inBand: { ...chances(inBand.each), all: inBand.all.share },
    films: named((i) => spreadOf('film', i)),
    selfHolding: holds.share,
    best: {
      position: spreadOf('bestPosition'),
      inBand: { ...chances(inBandAtBest.each), all: inBandAtBest.all.share },
      films: named((i) => spreadOf('filmAtBest', i)),
    },
    limits: {
      first: limits(first),
      inBand: { ...limits(inBand.each), all: limitsOf(inBand.all) },
      best: { ...limits(inBandAtBest.each), all: limitsOf(inBandAtBest.all) },
      selfHolding: limitsOf(holds),
    },
    noShape: answer.noShape,
  };
}

const limitsOf = ({ low, high }: Chance) => ({ low, high });

/** Share of the draws that must have a quantity for it to say anything of the parts. */
const MOST_HAVE = 0.5;

function spreadSection(spread: Spread | undefined, draws: number): StateReport['films'][string] {
  if (!spread || spread.count < MOST_HAVE * draws) return null;
  const told = {
    mean: millimetres(spread.mean),
    sd: millimetres(spread.sd),
    p05: millimetres(spread.p05.value),
    p95: millimetres(spread.p95.value),
  };
  return Object.values(told).every(Number.isFinite) ? told : null;
}
