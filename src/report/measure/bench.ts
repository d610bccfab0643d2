/** The small calculations of the bench in the units of the file: mm, degrees, °C. */

import type { Design } from '../../design/definition.ts';
import type { Degrees, Millimetres } from '../../design/dimension.ts';
import { toolExact } from '../../design/rounded.ts';
import type { System } from '../../design/units.ts';
import type { BlockSet } from '../../engine/gauging/blockSets.ts';
import { stackFor } from '../../engine/gauging/blockStack.ts';
import { bestPair, deepestOf, type Tried, triedBalls, triedRolls } from '../../engine/gauging/choice.ts';
import { cosineError, trueTravel } from '../../engine/gauging/cosineError.ts';
import { angleOfStack, stackOfAngle } from '../../engine/gauging/sineBar.ts';
import { atReference, correctionUncertainty, type Warmth } from '../../engine/gauging/temperature.ts';
import { TOOLS } from '../../engine/gauging/tooling.ts';
import { degrees, metres, millimetres, radians, toSeats } from '../convert.ts';
import { shopTools } from '../shopTools.ts';
import type { FaultReport } from './definition.ts';
import { faultReport } from './faultText.ts';

export { BLOCK_SETS, type BlockSet } from '../../engine/gauging/blockSets.ts';
export { REFERENCE } from '../../engine/gauging/temperature.ts';

/** The sine bar of a shop, and the name of its set of blocks. */
export const usualBench = (tools: System) => ({ bar: millimetres(TOOLS[tools].bar), blocks: TOOLS[tools].blocks.name });

export const sineStack = (angle: Degrees, bar: Millimetres): number =>
  millimetres(stackOfAngle(radians(angle), metres(bar)));

/** Null where the stack is longer than the bar. */
export function sineAngle(stack: Millimetres, bar: Millimetres): number | null {
  const angle = angleOfStack(metres(stack), metres(bar));
  return angle === null ? null : degrees(angle);
}

export type Blocks =
  /** heights that the set reaches */
  | { kind: 'outOfReach'; least: Millimetres; greatest: Millimetres }
  /** by how much they miss, 0 where they do not, and the bar then its angle; null where it would stand upright */
  | { kind: 'stack'; blocks: number[]; error: Millimetres; off: number | null };

/** Less is none (m). */
const EXACT = 1e-12;

/** The blocks of a set, beside wear blocks, for the stack of a sine bar. */
export function blocksFor(
  set: BlockSet,
  { stack, wear, bar }: { stack: Millimetres; wear: Millimetres; bar: Millimetres },
): Blocks {
  const found = stackFor(set, metres(stack), metres(wear));
  if (found.kind === 'outOfReach')
    return { kind: 'outOfReach', least: millimetres(found.least), greatest: millimetres(found.greatest) };
  const made = angleOfStack(metres(stack) + found.error, metres(bar));
  return {
    kind: 'stack',
    blocks: found.blocks.map(millimetres),
    error: Math.abs(found.error) < EXACT ? 0 : millimetres(found.error),
    off: made === null ? null : Math.abs(degrees(made) - degrees(Math.asin(stack / bar))),
  };
}

/** A length read warm, as it is at 20 °C, and what `degree` more or less on the part does to it. */
export function readWarm(read: Millimetres, part: Warmth, instrument: Warmth, degree: number) {
  const doubt = {
    part: { expansion: 0, temperature: degree },
    standard: { expansion: 0, temperature: 0 },
  };
  return {
    atReference: millimetres(atReference(metres(read), part, instrument)),
    perDegree: millimetres(correctionUncertainty(metres(read), part, instrument, doubt)),
  };
}

/** What moved where an indicator that leans shows a travel, and by how much it shows too much. */
export function readLeaning(travel: Millimetres, lean: Degrees) {
  const moved = trueTravel(metres(travel), radians(lean));
  return { moved: millimetres(moved), tooMuch: millimetres(cosineError(moved, radians(lean))) };
}

/** A ball or roll tried on a surface: stations null where it touches nothing. */
export interface TriedTool {
  diameter: Millimetres;
  station: number | null;
  /** place of the touch along the line: 0 the rear end, 1 the nose end */
  share: number | null;
  centre: number | null;
  /** station to which a ball reaches down */
  deepest: number | null;
  fault: FaultReport | null;
}

const inMm = (metres: number | null) => (metres === null ? null : millimetres(metres));

const toolReport = (design: Design, seat: number, tried: Tried): TriedTool => ({
  diameter: millimetres(tried.diameter),
  station: inMm(tried.station),
  share: tried.share,
  centre: inMm(tried.centre),
  deepest: inMm(deepestOf(tried, design.seats[seat]!.bush.halfAngle > 0 ? 'rearward' : 'noseward')),
  fault: tried.fault && faultReport(design, 0, tried.fault),
});

/** A ball in the bush of a seat. */
export const ballTried = (design: Design, seat: number, ball: Millimetres): TriedTool =>
  toolReport(design, seat, triedBalls(toSeats(design), seat, [metres(ball)])[0]!);

type Pair = readonly [rear: TriedTool, nose: TriedTool];

/** The two balls of the shop that touch a bush where they should; null where no two do. */
export function ballsFor(design: Design, seat: number, tools: System): Pair | null {
  const pair = bestPair(triedBalls(toSeats(design), seat, shopTools(design, tools).balls));
  return pair && [toolReport(design, seat, pair[0]), toolReport(design, seat, pair[1])];
}

/** So many steps from end to end that two of them are a tenth. */
const PLACES = 20;

/** The thickest roll of the shop with two places on a journal, and these; null where there is none. */
export function rollsFor(design: Design, seat: number, tools: System): Pair | null {
  const seats = toSeats(design);
  const { from, to, halfAngle } = seats[seat]!.journal;
  const { rolls } = shopTools(design, tools);
  const fitting = rolls.filter((roll) => roll <= (to - from) / 3).reverse();
  for (const roll of fitting.length > 0 ? fitting : rolls.slice(0, 1)) {
    // Where it touches goes from end to end; its centre stands off that, and may stand beyond the line.
    const stations = Array.from(
      { length: PLACES + 1 },
      (_, k) => from + ((to - from) * k) / PLACES - (roll / 2) * Math.sin(halfAngle),
    );
    const pair = bestPair(triedRolls(seats, seat, [roll], stations));
    if (pair) return [toolReport(design, seat, pair[0]), toolReport(design, seat, pair[1])];
  }
  return null;
}

/** The roll of the shop for a line of a length: the thickest that leaves room for two places along it. */
export function rollFor(design: Design, length: Millimetres, tools: System): number {
  const rolls = shopTools(design, tools).rolls.map(millimetres);
  return toolExact(rolls.findLast((roll) => roll <= length / 3) ?? rolls[0]!);
}

/**
 * The ball of the shop that touches nearest to half way along a bush; the nearest to a square touch there where none
 * rests on the line.
 */
export function ballFor(design: Design, seat: number, tools: System): number {
  const { from, to, halfAngle, diameter, station } = design.seats[seat]!.bush;
  const { balls } = shopTools(design, tools);
  const good = triedBalls(toSeats(design), seat, balls).filter(
    (t): t is Tried & { share: number } => t.fault === null && t.share !== null,
  );
  if (good.length > 0)
    return toolExact(
      millimetres(good.reduce((best, t) => (Math.abs(t.share - 0.5) < Math.abs(best.share - 0.5) ? t : best)).diameter),
    );
  const wanted =
    (diameter + ((from + to) / 2 - station) * 2 * Math.tan(radians(halfAngle))) / Math.cos(radians(halfAngle));
  return toolExact(
    balls.map(millimetres).reduce((best, ball) => (Math.abs(ball - wanted) < Math.abs(best - wanted) ? ball : best)),
  );
}

/** The sine bar of the shop, and the stack it stands on for an angle, to the step stacks are made to. */
export function sineSetUp(design: Design, angle: Degrees, tools: System): { bar: Millimetres; stack: Millimetres } {
  const shop = shopTools(design, tools);
  const [bar, step] = [toolExact(millimetres(shop.bar)), millimetres(shop.stack)];
  return { bar, stack: toolExact(Math.round((bar * Math.sin(radians(angle))) / step) * step) };
}
