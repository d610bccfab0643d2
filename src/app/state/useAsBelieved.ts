/** The work with the pair that is told of once trials told of the parts: as it is believed, or as it was drawn. */
import { useMemo, useRef } from 'react';
import { useStore } from 'zustand';
import type { BeliefReport } from '../../report/belief/definition.ts';
import { isSettled } from '../../report/belief/filmTold.ts';
import { asBelieved, isOf, type Stands } from './asBelieved.ts';
import type { Work } from './store.ts';

interface Belief {
  value: BeliefReport | null;
  of: Stands['of'] | null;
}

interface AsBelieved {
  work: Work;
  /** whether there is another pair than the drawn one to show */
  isOther: boolean;
  asDrawn: boolean;
  /** of the other pair, whichever is chosen; null where there is none */
  other: Stands['seats'] | null;
}

export function useAsBelieved(work: Work, belief: Belief): AsBelieved {
  const asDrawn = useStore(work.store, ({ drawnOf, piece }) => drawnOf === piece);
  const stands = useStands(work, belief);
  const shown = useMemo(() => (stands && !asDrawn ? asBelieved(work, stands) : work), [work, stands, asDrawn]);
  return { work: shown, isOther: stands !== null, asDrawn, other: stands?.seats ?? null };
}

/** The same for as long as it tells the same, and while a hand moves the journal. */
function useStands(work: Work, { value, of }: Belief): Stands | null {
  const held = useRef<Stands | null>(null);
  const before = held.current;
  const parts = value && of && isSettled(value) ? value.stands : undefined;
  if (!parts || !of) held.current = null;
  else {
    const same = before !== null && isOf(before.of, of);
    if (!(same && (work.dragging() || told(before.seats) === told(parts))))
      held.current = {
        of,
        seats: of.seats.map((seat, i) => ({ ...seat, journal: parts[i]!.journal, bush: parts[i]!.bush })),
      };
  }
  return held.current;
}

const told = (seats: readonly { journal: unknown; bush: unknown }[]) =>
  JSON.stringify(seats.map(({ journal, bush }) => [journal, bush]));
