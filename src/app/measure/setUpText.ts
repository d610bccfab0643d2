/** What was read, and where, in a few words: the line of an entry. */
import { fineText, lengthText, type System } from '../../design/units.ts';
import { KINDS, type Reading } from './kinds.ts';

export function setUpText(reading: Reading, system: System): string {
  const on = 'seat' in reading ? `, ${reading.seat} ${reading.part}` : '';
  const where = placeOf(reading, system);
  return `${KINDS[reading.kind].name}${on}${where === '' ? '' : ` ${where}`}`;
}

function placeOf(reading: Reading, system: System): string {
  switch (reading.kind) {
    case 'diameter':
    case 'straightness':
      return `at station ${lengthText(reading.station, system)}`;
    case 'overRolls':
      return `rolls ${lengthText(reading.roll, system)} at ${lengthText(reading.station, system)}`;
    case 'ballDepth':
      return `ball ${lengthText(reading.ball, system)}`;
    case 'sineRise':
      return `stack ${lengthText(reading.stack, system)} on ${lengthText(reading.bar, system)}`;
    case 'standOff':
      return '';
    case 'shake':
      return `at station ${lengthText(reading.indicator, system)}, position ${fineText(reading.position, system)}`;
  }
}
