/** The odds of a run in pieces, for whoever shares them out. */
import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import { checkedOf, RUN_BLOCK } from '../../engine/odds/runningGrid.ts';

/** What is worked out at a time: so many draws, on the small grid or on that of the run itself. */
export interface Piece {
  from: number;
  count: number;
  fine: boolean;
}

/**
 * Every piece of the odds of a run; those that check the grid, far slower and so one by one, come early, so that the
 * error is soon told.
 */
export function piecesOf(draws: number): Piece[] {
  const small = Array.from({ length: Math.ceil(draws / RUN_BLOCK) }, (_, b): Piece => {
    const from = b * RUN_BLOCK;
    return { from, count: Math.min(RUN_BLOCK, draws - from), fine: false };
  });
  const checks = Array.from({ length: checkedOf(draws) }, (_, from): Piece => ({ from, count: 1, fine: true }));
  const first = Math.ceil(checks.length / RUN_BLOCK);
  return [...small.slice(0, first), ...checks, ...small.slice(first)];
}

export const drawsOf = ({ odds }: Design) => odds?.running?.draws ?? defaultAt('odds.running.draws');
