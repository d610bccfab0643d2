/** An entry of the notebook in words. */
import type { Design } from '../../design/definition.ts';
import { fineText, lengthText, type System } from '../../design/units.ts';
import { kindOf, type Reading, tellsSize } from './kinds.ts';

/** An entry of the notebook by its number, counted from 1. */
export function entryText(design: Design, index: number): string {
  const reading = design.readings![index]!;
  return `Reading ${index + 1} (${kindOf(reading).name}${'seat' in reading ? `, ${reading.seat} ${reading.part}` : ''})`;
}

export function valueText(reading: Reading, system: System): string {
  return tellsSize(reading) ? lengthText(reading.value, system) : fineText(reading.value, system);
}
