/** An amount of stock as it is taken at the machine: every feed, its divisions and passes (cutting/steps.ts). */
import type { Design, Part } from '../../design/definition.ts';
import { feedsOf } from '../../engine/cutting/steps.ts';
import { metres, millimetres, radians } from '../convert.ts';
import type { CutStepReport } from './definition.ts';
import { orNull, toMachine } from './toCut.ts';

/** mm, but for the divisions of the dials. */
export type Taking = NonNullable<CutStepReport['first']>;

/** @param normal mm, square to the surface · halfAngle degrees: that at which it is cut */
export function takingOf(
  { cut = { allow: [] } }: Pick<Design, 'cut'>,
  normal: number,
  halfAngle: number,
  part: Part,
): Taking {
  const feeds = feedsOf(metres(normal), radians(halfAngle), part, toMachine(cut));
  return {
    normal,
    diameter: millimetres(feeds.diameter),
    crossFeed: millimetres(feeds.crossFeed),
    crossDivisions: feeds.crossDivisions,
    axialFeed: orNull(feeds.axialFeed),
    axialDivisions: feeds.axialDivisions,
    tableFeed: millimetres(feeds.tableFeed),
    slideFeed: orNull(feeds.slideFeed),
    passes: { count: feeds.passes.count, depth: millimetres(feeds.passes.depth), last: millimetres(feeds.passes.last) },
  };
}
