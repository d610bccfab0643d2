/** Fit of a job with trials: drawn as the parts are believed to stand now, or as they were drawn. */
import './fitBelieved.css';
import type { ComponentType, ReactNode } from 'react';
import { useStore } from 'zustand';
import type { BeliefReport } from '../../../report/belief/definition.ts';
import { CutsSince } from '../../frame/CutsSince.tsx';
import type { Work } from '../../state/store.ts';
import type { Solved } from '../../state/useNewest.ts';
import { useAsBelieved } from './useAsBelieved.ts';

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
}

export default function FitBelieved({ own: work, belief, draw: Draw }: FitProps) {
  const design = useStore(work.store, (state) => state.design);
  const { work: shown, isOther, asDrawn } = useAsBelieved(work, belief);
  const choose = (drawn: boolean) => work.store.setState(({ piece }) => ({ drawnOf: drawn ? piece : null }));
  return (
    <Draw
      work={shown}
      own={work}
      belief={belief}
      draw={Draw}
      since={!isOther && <CutsSince design={design} trials />}
      choice={
        isOther && (
          <select
            className="which-pair"
            aria-label="Parts drawn"
            value={asDrawn ? 'drawn' : 'believed'}
            onChange={({ target }) => choose(target.value === 'drawn')}
          >
            <option value="believed">As believed</option>
            <option value="drawn">As drawn</option>
          </select>
        )
      }
    />
  );
}
