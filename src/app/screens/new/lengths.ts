/**
 * Lengths and distances a person typed on the drawing of a job. A design holds the stations they make, which stay
 * assumed while nobody knows where the seat stands; so what was typed is kept beside it, with what is unfinished.
 */

import type { Work } from '../../state/store.ts';
import { type Lengths, SAME_LENGTH, TYPED_LENGTHS } from '../../state/typedLengths.ts';
import { useUnfinished } from '../../state/useUnfinished.ts';
import type { Arrangement } from './arrangements.ts';
import { sizesOf, type Typed } from './newDesign.ts';

/** @param now as the drawing has them: one that is another by now was typed elsewhere, and is told by its ends */
export function useLengths(work: Work, now: Readonly<Record<string, number>>): [Lengths, (lengths: Lengths) => void] {
  const [written, set] = useUnfinished<Lengths>(work, TYPED_LENGTHS);
  const standing = Object.entries(written ?? {}).filter(
    ([id, mm]) => Math.abs(mm - (now[id] ?? Number.NaN)) < SAME_LENGTH,
  );
  return [Object.fromEntries(standing), set];
}

/** Those typed on the page of a new job go with the job. */
export function keepLengths({ store }: Pick<Work, 'store'>, plan: Arrangement, typed: Typed): void {
  const written = Object.fromEntries(
    sizesOf(plan).flatMap(({ id, ask }) =>
      (ask === 'length' || ask === 'behind') && typed[id] !== undefined ? [[id, typed[id]]] : [],
    ),
  );
  if (Object.keys(written).length === 0) return;
  const { unfinished, piece } = store.getState();
  store.setState({ unfinished: { ...unfinished, [TYPED_LENGTHS]: { piece, written } } });
}
