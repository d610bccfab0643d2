/** What is so now, then what that means for the pair; the rest opens. */
import { useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { asAssumed, measuredFirst, partsAre } from '../../../report/assumed.ts';
import type { BeliefReport } from '../../../report/belief/definition.ts';
import { behindOthers, othersSentence } from '../../../report/belief/filmTold.ts';
import { behindReadings } from '../../../report/belief/notAsRead.ts';
import type { FitReport } from '../../../report/fit/definition.ts';
import { ratioSentence, standsNow } from '../../../report/fit/now.ts';
import { fitVerdict } from '../../../report/fit/verdict.ts';
import { Explained } from '../../glossary/Explained.tsx';
import '../../frame/shortVerdict.css';
import { LetGo } from '../../pictures/LetGo.tsx';
import { pullText } from '../../pictures/SectionPull.tsx';
import { useAngles } from '../../state/angles.ts';
import type { Work } from '../../state/store.ts';
import { useHeld } from '../../state/useHeld.ts';
import { useThrottled } from '../../state/useThrottled.ts';

interface Props {
  work: Work;
  design: Design;
  fit: FitReport;
  system: System;
  /** seats that hold the nose pulled aside; null: it is let go */
  holding: readonly string[] | null;
  belief: BeliefReport | null;
}

/** ms between two things a screen reader is told. */
const PACE = 1200;

export function FitVerdict({ work, design, fit, system, holding, belief }: Props) {
  const way = useAngles();
  const plain = fitVerdict(design, fit, system, way);
  const measured = measuredFirst(asAssumed(plain, design, ['seats']), design, 'mend');
  const others = belief?.notAsRead ? '' : othersSentence(belief, fit, system);
  const { tone, headline, sentences } = behindOthers(behindReadings(measured, belief?.notAsRead), others);
  const bare = headline === plain.headline;
  // What nobody has read, or was read otherwise, is so on paper alone.
  const paper = () => (partsAre(design) === 'assumed' ? 'As assumed: ' : 'As drawn: ');
  const now = `${bare ? '' : paper()}${standsNow(design, fit, system, holding)}`;
  const announced = useThrottled(now, PACE);
  const ratio = ratioSentence(fit);
  const told = [...sentences, ...(ratio === '' ? [] : [ratio])];
  const [why, ...rest] = holding
    ? [pullText(system), headline, ...told]
    : plain.onlyNow && bare && told.length > 0
      ? told
      : [headline, ...told];
  return (
    <section className={`verdict short fit ${tone}${holding ? ' pulled' : ''}`}>
      <p className="now">
        <Explained>{now}</Explained>
      </p>
      <LetGo work={work} />
      <p className="visually-hidden" role="status">
        {announced}
      </p>
      <h2>
        <Explained>{why!}</Explained>
      </h2>
      <More work={work}>{rest.join(' ')}</More>
    </section>
  );
}

/** Shut, it stands still while a hand moves the journal. */
function More({ work, children }: { work: Work; children: string }) {
  const [open, setOpen] = useState(false);
  const rested = useHeld(children, work);
  const told = open ? children : rested;
  if (told === '') return null;
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Why, and how far to move</summary>
      <p>
        <Explained>{told}</Explained>
      </p>
    </details>
  );
}
