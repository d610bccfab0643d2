/** Fit of a job with trials: drawn as the parts are believed to stand now, or as they were drawn. */
import { type ComponentType, type ReactNode, useMemo } from 'react';
import { useStore } from 'zustand';
import type { BeliefReport } from '../../../report/belief/definition.ts';
import { CutsSince } from '../../frame/CutsSince.tsx';
import { SettleOnCut } from '../../frame/SettleOnCut.tsx';
import { WhichPair } from '../../frame/WhichPair.tsx';
import type { Work } from '../../state/store.ts';
import type { Solved } from '../../state/useNewest.ts';
import { usePairTold } from '../../state/usePairTold.ts';
import { type Retold, retoldBy } from './retold.ts';

export interface FitProps {
  /** with the pair that is drawn and told of */
  work: Work;
  /** with the design itself, which is changed by typing */
  own: Work;
  belief: Solved<BeliefReport>;
  draw: ComponentType<FitProps>;
  /** which pair is drawn, where that can be chosen */
  choice?: ReactNode;
  /** what came off since, where what is drawn is of before it */
  since?: ReactNode;
  retold?: Retold;
  /** whether what is drawn is of before the last change, until what is known now is worked out */
  before?: boolean;
}

export default function FitBelieved({ own, belief: found, draw: Draw }: FitProps) {
  const design = useStore(own.store, (state) => state.design);
  const { work, belief, stands, withheld, slip, isOther, asDrawn, other } = usePairTold(
    own,
    found,
    Boolean(design.cut?.trials),
  );
  const { seats } = design;
  const retold = useMemo(
    () => retoldBy(stands, withheld, { drawn: seats, believed: other }, slip),
    [stands, withheld, slip, seats, other],
  );
  return (
    <Draw
      work={work}
      own={own}
      belief={belief}
      draw={Draw}
      retold={retold}
      before={withheld === 'working'}
      since={withheld ? <SettleOnCut why={withheld} /> : !isOther && <CutsSince design={design} trials />}
      choice={<WhichPair work={own} isOther={isOther} asDrawn={asDrawn} />}
    />
  );
}
