/** A reading that lies so far from the drawing that a slip of the pen is likelier than such a part. */
import type { Design } from '../../design/definition.ts';
import { lengthText, type System } from '../../design/units.ts';
import { radians } from '../convert.ts';
import { isOvertaken, predictedReading } from './predictedReading.ts';
import type { Reading } from './toReading.ts';

/**
 * What no part is off by: 1 mm on a diameter or 2 % of it, whichever is less; a line that leans 2 in 100 (1.1°) or
 * stands 0.1 mm proud; a position or a shake of 1 mm.
 * @source practice
 */
const OFF = { most: 1, share: 0.02, proud: 0.1 };

/**
 * How far (mm) a reading of this set-up may lie from the drawing before it is asked after; `drawn`: what the drawing
 * would read.
 */
function limitOf(design: Design, reading: Reading, drawn: number): number {
  switch (reading.kind) {
    case 'diameter':
    case 'overRolls':
      return Math.min(OFF.most, OFF.share * Math.abs(drawn));
    case 'ballDepth': {
      // A ball sinks 1/(2·tan a) for every unit that the bore is larger.
      const { halfAngle } = design.seats.find(({ name }) => name === reading.seat)!.bush;
      return Math.min(OFF.most, OFF.share * reading.ball) / (2 * Math.tan(Math.abs(radians(halfAngle))));
    }
    case 'sineRise':
      return OFF.share * reading.travel;
    case 'straightness':
      return OFF.proud;
    case 'standOff':
    case 'shake':
      return OFF.most;
  }
}

/**
 * A warning where the reading is far from what the parts as drawn would read; null where it is not, or they would read
 * nothing.
 */
export function farOffText(design: Design, reading: Reading, system: System): string | null {
  const { value } = predictedReading(design, reading);
  if (value === null || isOvertaken(design, reading)) return null;
  const off = Math.abs(reading.value - value);
  return off > limitOf(design, reading, value)
    ? `${lengthText(Number(off.toFixed(3)), system)} from the drawing: really?`
    : null;
}
