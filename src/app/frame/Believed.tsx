/** How sure what a screen tells is: everything known of the parts, with its doubt. Worked out beside the screen. */
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import type { BeliefReport } from '../../report/belief/definition.ts';
import { beliefSentences, offSentences, unknownSentence } from '../../report/belief/words.ts';
import { isKnown } from '../state/belief.ts';
import type { Solved } from '../state/useNewest.ts';
import { Fault } from './Fault.tsx';

interface Props {
  design: Design;
  /** the films as believed are told beside those drawn; else how far films told elsewhere may be off */
  films?: boolean;
  system: System;
  solved: Solved<BeliefReport>;
}

export default function Believed({
  design,
  films = false,
  system,
  solved: { value: belief, fresh, fault, again },
}: Props) {
  const told = isKnown(design) ? belief : null;
  const sentences = told
    ? (films ? beliefSentences : offSentences)(design, told, system)
    : !isKnown(design)
      ? [unknownSentence(design, system)]
      : [];
  return (
    <>
      <Fault what="How sure that is" fault={fault} again={again} />
      {sentences.length > 0 && <p className={fresh ? 'believed' : 'believed stale'}>{sentences.join(' ')}</p>}
    </>
  );
}
