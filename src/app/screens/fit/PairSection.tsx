/** The pair as it is drawn now in section, the same on Fit and large. */
import type { ReactNode } from 'react';
import type { BeliefReport } from '../../../report/belief/definition.ts';
import { Section } from '../../pictures/Section.tsx';
import type { Work } from '../../state/store.ts';
import type { usePair } from './usePair.ts';

export type Pair = Pick<ReturnType<typeof usePair>, 'design' | 'fit' | 'drawn' | 'ghost' | 'scale' | 'system'>;

interface Props {
  work: Work;
  pair: Pair;
  belief?: BeliefReport | null;
  /** which picture is shown, where it takes turns with another */
  which?: ReactNode;
}

export const PairSection = ({
  work,
  pair: { design, fit, drawn, ghost, scale, system },
  belief = null,
  which,
}: Props) => (
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
    which={which}
  />
);
