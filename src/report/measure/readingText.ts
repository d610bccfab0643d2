/** An entry of the notebook in words. */
import type { Design } from '../../design/definition.ts';
import { fineText, lengthText, type System } from '../../design/units.ts';
import type { Reading } from './toReading.ts';

export const KIND = {
  diameter: 'diameter',
  overRolls: 'rolls',
  ballDepth: 'ball',
  sineRise: 'sine bar',
  straightness: 'straightness',
  standOff: 'stand-off',
  shake: 'shake',
} as const;

/** An entry of the notebook by its number, counted from 1. */
export function entryText(design: Design, index: number): string {
  const reading = design.readings![index]!;
  return `Reading ${index + 1} (${KIND[reading.kind]}${'seat' in reading ? `, ${reading.seat} ${reading.part}` : ''})`;
}

export function valueText(reading: Reading, system: System): string {
  return reading.kind === 'diameter' || reading.kind === 'overRolls' || reading.kind === 'ballDepth'
    ? lengthText(reading.value, system)
    : fineText(reading.value, system);
}
