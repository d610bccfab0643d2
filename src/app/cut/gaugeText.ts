/** The set-up of a gauge, and its reading, in a few words. */
import { fineText, lengthText, type System } from '../../design/units.ts';
import { KINDS, type Reading } from '../measure/kinds.ts';

/** A size that is set up or read: to a tenth of a micrometre (mm). */
export const readText = (mm: number, system: System) => lengthText(Number(mm.toFixed(4)), system);

export function gaugeText(reading: Reading, system: System): string {
  const { name } = KINDS[reading.kind];
  switch (reading.kind) {
    case 'diameter':
    case 'straightness':
      return `${name} at station ${readText(reading.station, system)}`;
    case 'overRolls':
      return `${name} of ${readText(reading.roll, system)}, centres at station ${readText(reading.station, system)}`;
    case 'ballDepth':
      return `${name}, ball ${readText(reading.ball, system)}, from the face at ${readText(reading.face, system)}`;
    case 'sineRise':
      return `${name}, stack ${readText(reading.stack, system)}`;
    case 'standOff':
      return name;
    case 'shake':
      return `${name} at position ${fineText(reading.position, system)}`;
  }
}
