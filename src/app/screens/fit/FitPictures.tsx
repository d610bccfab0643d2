/** Section and solid picture of Fit: beside each other where there is room, one at a time where there is not. */
import { type ReactNode, useState } from 'react';
import { useStore } from 'zustand';
import type { BeliefReport } from '../../../report/belief/definition.ts';
import type { FitReport } from '../../../report/fit/definition.ts';
import type { Drawn } from '../../pictures/drawn.ts';
import { Section } from '../../pictures/Section.tsx';
import type { Scale } from '../../pictures/useScale.ts';
import type { Work } from '../../state/store.ts';

interface Props {
  work: Work;
  fit: FitReport;
  drawn: Drawn;
  /** where the journal stood when it was taken hold of */
  ghost: Drawn | null;
  scale: Scale;
  belief: BeliefReport | null;
}

/** `solid`: the solid picture where it takes turns with the section; null where it stands elsewhere, or cannot. */
export function FitPictures({ work, fit, drawn, ghost, scale, belief, solid }: Props & { solid: ReactNode | null }) {
  const design = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const [shown, setShown] = useState<'section' | 'solid'>('section');
  return (
    <>
      {solid && (
        <fieldset className="buttons which">
          <legend className="visually-hidden">Picture</legend>
          {(['section', 'solid'] as const).map((name) => (
            <button key={name} type="button" aria-pressed={shown === name} onClick={() => setShown(name)}>
              {name === 'section' ? 'Section' : 'Solid'}
            </button>
          ))}
        </fieldset>
      )}
      {solid && shown === 'solid' ? (
        solid
      ) : (
        <Section
          design={design}
          drawn={drawn}
          ghost={ghost}
          scale={scale}
          first="none"
          fit={fit}
          system={system}
          work={work}
          belief={belief}
        />
      )}
    </>
  );
}
