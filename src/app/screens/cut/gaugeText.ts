/** The set-up of a gauge, and its reading, in a few words. */
import { toolText } from '../../../design/tools.ts';
import { fineText, placeText, type System } from '../../../design/units.ts';
import { KINDS, type Reading } from '../measure/kinds.ts';

export function gaugeText(reading: Reading, system: System): string {
  const { name } = KINDS[reading.kind];
  switch (reading.kind) {
    case 'diameter':
    case 'straightness':
      return `${name} at station ${placeText(reading.station, system)}`;
    case 'overRolls':
      return `${name} of ${toolText(reading.roll, system)}, centres at station ${placeText(reading.station, system)}`;
    case 'ballDepth':
      return `${name}, ball ${toolText(reading.ball, system)}, from the face at ${placeText(reading.face, system)}`;
    case 'sineRise':
      return `${name}, stack ${toolText(reading.stack, system)}`;
    case 'standOff':
      return name;
    case 'shake':
      return `${name} at position ${fineText(reading.position, system)}`;
  }
}
