/** Leads to the field of how well metal off is known, where other metal than typed may be behind what clashes. */
import type { CauseReport } from '../../../report/cut/causes.ts';
import { knownToTitle } from '../../../report/cut/causeWords.ts';

interface Props {
  causes: readonly CauseReport[] | undefined;
  go(cause: CauseReport): void;
}

export function ToKnown({ causes = [], go }: Props) {
  const metal = causes.filter(({ what, enough }) => (what === 'taken' || what === 'faces') && enough !== null);
  return metal.map((cause) => (
    <button key={`${cause.trial} ${knownToTitle(cause)}`} type="button" onClick={() => go(cause)}>
      To “{knownToTitle(cause)}” of trial {cause.trial}
    </button>
  ));
}
