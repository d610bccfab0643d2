/** The odds of a run, shared out among as many workers as there are cores, told as they come. */
import type { Design } from '../../design/definition.ts';
import { type Piece, piecesOf } from '../../report/odds/pieces.ts';
import type { Done } from '../../report/odds/running.ts';
import type { RunningShown } from '../../report/odds/runningShown.ts';
import { handsHere, shareOut } from '../../worker/crew.ts';
import { dismiss, job } from '../../worker/pool.ts';

export interface Asking {
  design: Design;
  /** as it is set, whatever the plan */
  now: boolean;
  draws: number;
  /** those looked at again on the finer grid are left out */
  unchecked?: boolean;
}

/** Pieces between two answers that are shown. */
const TOLD_EVERY = 12;
/** The first comes as soon as something counts. */
const FIRST_TOLD = 2;

/** Whoever uses the crew: the last one out sends it home. */
let users = 0;

/** `tell` hears how far it is, and every so often what that shows. The answer of all; null where nothing runs. */
export async function runningOdds(
  { design, now, draws, unchecked = false }: Asking,
  tell: (done: number, of: number, shown?: RunningShown | null) => void,
  signal: AbortSignal,
): Promise<RunningShown | null> {
  const pieces = piecesOf(draws).filter(({ fine }) => !(fine && unchecked));
  const done: Done[] = [];
  let [ended, asking] = [0, false];
  const shown = () => job('runShown', { design, now, done }, { signal, hand: 0 });
  const show = async () => {
    asking = true;
    const found = await shown().catch(() => null);
    if (!signal.aborted && found) tell(ended, pieces.length, found);
    asking = false;
  };
  users++;
  try {
    await shareOut<Piece, Done | null>(
      pieces,
      handsHere(),
      (piece, hand) => job('runPiece', { design, now, piece }, { signal, hand }),
      (found) => {
        ended++;
        if (found) done.push(found);
        tell(ended, pieces.length);
        if ((ended === FIRST_TOLD || ended % TOLD_EVERY === 0) && !asking) void show();
      },
      signal,
    );
    return await shown();
  } finally {
    users--;
    if (users === 0) dismiss();
  }
}
