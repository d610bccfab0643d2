/** Section and solid picture of Fit: beside each other where there is room, one at a time where there is not. */
import { memo, type ReactNode, useState } from 'react';
import type { BeliefReport } from '../../../report/belief/definition.ts';
import type { Work } from '../../state/store.ts';
import { type Pair, PairSection } from './PairSection.tsx';

interface Props {
  work: Work;
  pair: Pair;
  belief: BeliefReport | null;
  /** which pair is drawn, where that can be chosen */
  choice: ReactNode;
  /** draws the solid picture, which takes turns with the section; null where it stands elsewhere, or cannot */
  solid: ((which: ReactNode) => ReactNode) | null;
}

type Shown = 'section' | 'solid';

/** Stays as it is while the journal moves. */
const Which = memo(function Which({ shown, show }: { shown: Shown; show(name: Shown): void }) {
  return (
    <fieldset className="buttons which">
      <legend className="visually-hidden">Picture</legend>
      {(['section', 'solid'] as const).map((name) => (
        <button key={name} type="button" aria-pressed={shown === name} onClick={() => show(name)}>
          {name === 'section' ? 'Section' : 'Solid'}
        </button>
      ))}
    </fieldset>
  );
});

export function FitPictures({ work, pair, belief, choice, solid }: Props) {
  const [shown, setShown] = useState<Shown>('section');
  const which = (
    <>
      <Which shown={shown} show={setShown} />
      {choice}
    </>
  );
  return solid && shown === 'solid' ? (
    solid(which)
  ) : (
    <PairSection work={work} pair={pair} belief={belief} which={solid ? which : choice} />
  );
}
