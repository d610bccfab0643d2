/**
 * What a set-up would read on the parts as the design has them, with the metal on or off as it was when it was taken.
 */
import type { Design } from '../../design/definition.ts';
import { predict, surfacesOf } from '../../engine/gauging/readings/index.ts';
import { millimetres, toSeats } from '../convert.ts';
import type { FaultReport } from './definition.ts';
import { faultReport } from './faultText.ts';
import type { Reading } from './kinds.ts';
import { historyOf, overtakenOn } from './metalBetween.ts';
import { toReading, toReadingThen } from './toReading.ts';

interface PredictedReading {
  /** mm; null where the set-up has no reading at all */
  value: number | null;
  /** why it should not be trusted or cannot be; null where nothing is wrong */
  fault: FaultReport | null;
}

/** @param index its place in the list of readings, for the fault */
export function predictedReading(design: Design, reading: Reading, index = 0): PredictedReading {
  const { value, fault } = predict(toReadingThen(design, reading), toSeats(design));
  return { value: value === null ? null : millimetres(value), fault: fault && faultReport(design, index, fault) };
}

/** Whether a reading is of a line that was cut to another one between it and the design's surfaces. */
export const isOvertaken = (design: Design, reading: Reading): boolean =>
  overtakenOn(historyOf(design), reading, surfacesOf(toReading(design, reading), toSeats(design))).length > 0;
