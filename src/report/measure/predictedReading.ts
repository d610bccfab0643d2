/** What a set-up would read on the parts as the design has them: to check a set-up, or to know when to stop cutting. */
import type { Design } from '../../design/definition.ts';
import { predict } from '../../engine/gauging/readings/index.ts';
import { toPlaySeats } from '../play/toPlay.ts';
import { millimetres } from '../toEngine.ts';
import type { FaultReport } from './definition.ts';
import { faultReport } from './faultText.ts';
import { type Reading, toReading } from './toReading.ts';

export interface PredictedReading {
  /** mm; null where the set-up has no reading at all */
  value: number | null;
  /** why it should not be trusted or cannot be; null where nothing is wrong */
  fault: FaultReport | null;
}

/** @param index its place in the list of readings, for the fault */
export function predictedReading(design: Design, reading: Reading, index = 0): PredictedReading {
  const { value, fault } = predict(toReading(design, reading), toPlaySeats(design));
  return { value: value === null ? null : millimetres(value), fault: fault && faultReport(design, index, fault) };
}
