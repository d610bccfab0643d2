/**
 * What was read, with what and where, in words: the line of an entry. Tools go by their own names, whatever units the
 * screen shows.
 */
import { madeIn, toolText } from '../../../design/tools.ts';
import { fineText, lengthText, placeText, type System, sidedText } from '../../../design/units.ts';
import { KINDS, type Reading } from './kinds.ts';

/** The set-up, without what was read. */
export function setUpText(reading: Reading, system: System): string {
  const on = 'seat' in reading ? `the ${reading.seat} ${reading.part}` : '';
  switch (reading.kind) {
    case 'diameter':
    case 'straightness':
      return `${KINDS[reading.kind].name} of ${on} at station ${placeText(reading.station, system)}`;
    case 'overRolls':
      return `Over two rolls of ${toolText(reading.roll, system)} on ${on}, centres at station ${placeText(reading.station, system)}`;
    case 'ballDepth':
      return `Ball of ${toolText(reading.ball, system)} resting in ${on}, depth from the face at station ${placeText(reading.face, system)}`;
    case 'sineRise':
      return `Sine bar of ${toolText(reading.bar, system)} ${reading.stack === 0 ? 'lying level' : `on a stack of ${stackOf(reading, system)}`} under ${on}, travel ${placeText(reading.travel, system)}`;
    case 'standOff':
      return 'Stand-off on trial assembly';
    case 'shake':
      return `Shake at station ${placeText(reading.indicator, system)}, the journal ${sidedText(reading.position, system)}${reading.direction === 0 ? '' : `, pulled at ${reading.direction}°`}`;
  }
}

/** When it was read, in a notebook from before and after cuts. */
export const whenText = ({ after = 0 }: Reading): string => (after === 0 ? 'before any cut' : `after trial ${after}`);

/** The whole reading. */
export function readingText(reading: Reading, system: System): string {
  const { value } = reading;
  const size = fineText(Math.abs(value), system);
  const setUp = setUpText(reading, system);
  switch (reading.kind) {
    case 'diameter':
    case 'overRolls':
      return `${setUp}: ${lengthText(value, system)}`;
    case 'ballDepth':
      return `${setUp}: ${lengthText(Math.abs(value), system)} ${value < 0 ? 'proud of it' : 'down to its top'}`;
    case 'sineRise':
      return `${setUp}: ${value === 0 ? 'the indicator stays' : `the indicator ${value > 0 ? 'rises' : 'falls'} ${size}`}`;
    case 'straightness':
      return `${setUp}: ${value === 0 ? 'straight' : `${size} ${value > 0 ? 'proud' : 'hollow'}`}`;
    case 'standOff':
      return `${setUp}: first touch ${sidedText(value, system)}`;
    case 'shake':
      return `${setUp}: ${size} from side to side`;
  }
}

/** A stack is made of the blocks that go with the bar; which end it lifts, its sign in the file, is not told here. */
export const stackOf = ({ stack, bar }: { stack: number; bar: number }, system: System) =>
  lengthText(Math.abs(stack), madeIn(bar, system));
