/** The odds of a run in pieces, for whoever shares them out. */
import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import { CHECKED, RUN_BLOCK } from '../../engine/odds/runningGrid.ts';

/** What is worked out at a time: so many draws, on the small grid or on that of the run itself. */
export interface Piece {
  from: number;
  count: number;
  fine: boolean;
}

/** Every piece of the odds of a run; those that check the grid come early, so that the error is soon told. */
export function piecesOf(draws: number): Piece[] {
  const blocks = (of: number, fine: boolean): Piece[] =>
    Array.from({ length: Math.ceil(of / RUN_BLOCK) }, (_, b) => ({
      from: b * RUN_BLOCK,
      count: Math.min(RUN_BLOCK, of - b * RUN_BLOCK),
      fine,
    }));
  const small = blocks(draws, false);
  const checks = blocks(Math.min(CHECKED, draws), true);
  return [...small.slice(0, checks.length), ...checks, ...small.slice(checks.length)];
}

export const drawsOf = ({ odds }: Design) => odds?.running?.draws ?? defaultAt('odds.running.draws');
