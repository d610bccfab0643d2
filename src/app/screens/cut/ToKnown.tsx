/** Leads to the field that is mended, where what most likely is wrong among clashing trials has one. */
import type { CauseReport } from '../../../report/cut/causes.ts';
import { mendedAt } from '../../../report/cut/causeWords.ts';

interface Props {
  causes: readonly CauseReport[] | undefined;
  go(cause: CauseReport): void;
}

/** Causes told one by one, as in words. */
const FEW = 2;

export function ToKnown({ causes = [], go }: Props) {
  return causes
    .filter((cause, i, all) => {
      const of = (one: CauseReport) => `${one.trial} ${mendedAt(one)}`;
      return mendedAt(cause) !== null && all.findIndex((one) => of(one) === of(cause)) === i;
    })
    .slice(0, FEW)
    .map((cause) => (
      <button key={`${cause.trial} ${mendedAt(cause)}`} type="button" onClick={() => go(cause)}>
        Mend “{mendedAt(cause)}” of trial {cause.trial}
      </button>
    ));
}
