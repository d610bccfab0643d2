/** The bar that shows how large a small gap is drawn. */
import { fineUnit, lengthUnit, type System, TENTH } from '../../design/units.ts';

/** From here on (mm) a gap is told as a length: 1 mm, or ten thou. */
const LARGE: Record<System, number> = { metric: 1, inch: 100 * TENTH };

/**
 * A gap of 1, 2 or 5 × 10ⁿ of the user's unit that draws a bar of at most `room` pixels. `perMm` pixels to one mm of
 * gap.
 */
export function scaleBar(perMm: number, room: number, system: System): { width: number; text: string } {
  const fine = fineUnit(system).size;
  const unit =
    roundBelow(room / perMm / fine) * fine >= LARGE[system] * (1 - 1e-9) ? lengthUnit(system) : fineUnit(system);
  const size = roundBelow(room / perMm / unit.size);
  const name = unit.name === 'tenths' && size === 1 ? 'tenth' : unit.name;
  return { width: size * unit.size * perMm, text: `${size} ${name}` };
}

/** The greatest of 1, 2, 5 × 10ⁿ not above a value. */
function roundBelow(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value) + 1e-9);
  const step = [5, 2, 1].find((n) => n * power <= value * (1 + 1e-9)) ?? 1;
  return Number((step * power).toPrecision(1));
}
