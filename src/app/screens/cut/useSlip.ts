/** What most likely is wrong where trials do not go together, for every screen that is withheld by it. */

import { useStore } from 'zustand';
import { slipText } from '../../../report/cut/causeWords.ts';
import type { Withheld } from '../../../report/cut/withheld.ts';
import type { Work } from '../../state/store.ts';
import { useShopDesign } from '../../state/useShopDesign.ts';
import { useSolved } from '../../state/useSolved.ts';

/** As Cut names it, which works it out; empty where nothing is withheld, or nothing told would explain it. */
export function useSlip(work: Work, withheld: Withheld | null): string {
  const system = useStore(work.store, (state) => state.system);
  const design = useShopDesign(
    useStore(work.store, (state) => state.design),
    system,
  );
  const { value, fresh } = useSolved('cut', withheld === 'clash' ? design : null);
  return withheld === 'clash' && fresh && value ? slipText(value.causes, system) : '';
}
