/** The tools of the shop: those of its system, with the balls and rolls there are where the job says which. */
import type { Design } from '../design/definition.ts';
import type { System } from '../design/units.ts';
import { TOOLS, type Tooling } from '../engine/gauging/tooling.ts';
import { metres } from './convert.ts';

/** Smallest first, as the engine takes them. */
const sizes = (own: readonly number[] | undefined) => own && [...own].sort((a, b) => a - b).map(metres);

export function shopTools({ shop }: Pick<Design, 'shop'>, system: System): Tooling {
  const usual = TOOLS[system];
  return { ...usual, balls: sizes(shop?.balls) ?? usual.balls, rolls: sizes(shop?.rolls) ?? usual.rolls };
}
