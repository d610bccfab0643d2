/** What is so now, then what that means for the pair; the rest opens. */
import type { Design } from '../../../design/definition.ts';
import type { System } from '../../../design/units.ts';
import { asAssumed, measuredFirst } from '../../../report/assumed.ts';
import { behindReadings, type NotAsRead } from '../../../report/belief/notAsRead.ts';
import type { FitReport } from '../../../report/fit/definition.ts';
import { ratioSentence, standsNow } from '../../../report/fit/now.ts';
import { fitVerdict } from '../../../report/fit/verdict.ts';
import { useAngles } from '../../state/angles.ts';
import { useThrottled } from '../../state/useThrottled.ts';

interface Props {
  design: Design;
  fit: FitReport;
  system: System;
  /** seats that hold the nose pulled aside; null: it is let go */
  holding: readonly string[] | null;
  notAsRead: NotAsRead | null;
}

/** ms between two things a screen reader is told. */
const PACE = 1200;

export function FitVerdict({ design, fit, system, holding, notAsRead }: Props) {
  const way = useAngles();
  const measured = measuredFirst(asAssumed(fitVerdict(design, fit, system, way), design, ['seats']), design, 'mend');
  const { tone, headline, sentences } = behindReadings(measured, notAsRead);
  const now = standsNow(design, fit, system, holding);
  const told = useThrottled(now, PACE);
  const ratio = ratioSentence(fit);
  const rest = [...sentences, ...(ratio === '' ? [] : [ratio])];
  return (
    <section className={`verdict fit ${tone}`}>
      <p className="now">{now}</p>
      <p className="visually-hidden" role="status">
        {told}
      </p>
      <h2>{headline}</h2>
      {rest.length > 0 && (
        <details>
          <summary>Why, and how far to move</summary>
          <p>{rest.join(' ')}</p>
        </details>
      )}
    </section>
  );
}
