/** A reading that lies so far from the drawing that a slip of the pen is likelier than such a part. */
import type { Design } from '../../design/definition.ts';
import { lengthText, type System } from '../../design/units.ts';
import type { Reading } from './kinds.ts';
import { kindOf } from './kinds.ts';
import { isOvertaken, predictedReading } from './predictedReading.ts';

/**
 * A warning where the reading is far from what the parts as drawn would read; null where it is not, or they would read
 * nothing.
 */
export function farOffText(design: Design, reading: Reading, system: System): string | null {
  const { value } = predictedReading(design, reading);
  if (value === null || isOvertaken(design, reading)) return null;
  const off = Math.abs(reading.value - value);
  return off > kindOf(reading).plausible(reading, value, design)
    ? `${lengthText(Number(off.toFixed(3)), system)} from the drawing: really?`
    : null;
}
