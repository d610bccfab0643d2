/** How sure what a screen tells is: everything known of the parts, with its doubt. Worked out beside the screen. */
import type { Design } from '../../design/definition.ts';
import type { System } from '../../design/units.ts';
import type { BeliefReport } from '../../report/belief/definition.ts';
import { beliefSentences, offSentences } from '../../report/belief/words.ts';
import type { FitReport } from '../../report/fit/definition.ts';
import type { Solved } from '../state/useNewest.ts';
import { Fault } from './Fault.tsx';

interface Props {
  design: Design;
  /** with it the films as believed are told beside those drawn; without it how far films may be off */
  fit?: FitReport;
  system: System;
  solved: Solved<BeliefReport>;
}

export default function Believed({ design, fit, system, solved: { value: belief, fresh, fault, again } }: Props) {
  const drawn = fit && Object.fromEntries(fit.seats.map(({ name, leastFilm }) => [name, leastFilm]));
  const sentences = !belief
    ? []
    : drawn
      ? beliefSentences(design, belief, drawn, system)
      : offSentences(design, belief, system);
  return (
    <>
      <Fault what="How sure that is" fault={fault} again={again} />
      {sentences.length > 0 && <p className={fresh ? 'believed' : 'believed stale'}>{sentences.join(' ')}</p>}
    </>
  );
}
