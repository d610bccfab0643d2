/**
 * What every trial did to the doubt of the one thing that counts: the axial relation of the first two seats that ask
 * for a film. Its standard uncertainty before and after, over pairs drawn as all that was known then allows.
 */
import type { Design } from '../../design/definition.ts';
import type { PlanInput } from '../../engine/cutting/problem.ts';
import type { Trial } from '../../engine/cutting/trial.ts';
import { believedOf, pairsAfter, toldByTrials } from '../belief/believed.ts';
import { relationSpread } from '../belief/spread.ts';
import { millimetres } from '../convert.ts';
import type { CutReport } from './definition.ts';

type Surer = NonNullable<NonNullable<CutReport['trials']>[number]['relation']>;

/** Only so many of the last trials are told of. */
export const TOLD_SURER = 4;
/** Where fewer pairs than this count, they tell no spread. */
const FEWEST = 50;

/** By trial; null where there is no such relation, or hardly a pair that goes with what was read. */
export function surerByTrials(design: Design, input: PlanInput, trials: readonly Trial[]): (Surer | null)[] {
  const from = Math.max(0, trials.length - TOLD_SURER);
  // As many pairs for each, so that what a trial was told to do stays so when others follow.
  const known = Array.from({ length: trials.length - from + 1 }, (_, k) =>
    spreadAfter(design, input, trials.slice(0, from + k)),
  );
  return trials.map((_, k) => {
    const [before, after] = k < from ? [null, null] : [known[k - from]!, known[k - from + 1]!];
    return before === null || after === null ? null : { before: millimetres(before), after: millimetres(after) };
  });
}

/** m, about the most likely, as the metal is told that follows from it. */
function spreadAfter(design: Design, input: PlanInput, trials: readonly Trial[]): number | null {
  const last = toldByTrials(design, input, trials).at(-1);
  if (last && last.status !== 'updated') return null;
  const films = believedOf(design).films.mean.slice(0, input.seats.length);
  const { parts, films: likely } = last ?? { parts: input.seats, films };
  return relationSpread(parts, likely, pairsAfter(design, input, trials), FEWEST);
}
