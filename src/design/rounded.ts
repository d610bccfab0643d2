/** Sizes that the program makes, rounded to what a shop reads in the person's own units. */
import { INCH, type System } from './units.ts';

/** To what a drawing would say: half a millimetre, or a hundredth of an inch; less for what is small. */
export function tidy(mm: number, system: System): number {
  const [unit, large, small] = system === 'inch' ? [INCH, 0.01, 0.005] : [1, 0.5, 0.05];
  const step = unit * (Math.abs(mm) > 5 ? large : small);
  return exact(Math.sign(mm) * Math.max(1, Math.round(Math.abs(mm) / step)) * step);
}

/** To a tenth of a micrometre, or ten millionths of an inch: what a film is told to. */
export function fine(mm: number, system: System): number {
  const step = system === 'inch' ? 1e-5 * INCH : 1e-4;
  return exact(Math.round(mm / step) * step);
}

/** To a hundredth of a nanometre: an inch size keeps every digit, and rounding is gone. */
export const toolExact = (mm: number): number => Number(mm.toFixed(8));

/** To a nanometre. */
export const exact = (mm: number): number => Number(mm.toFixed(6));

/** To four digits: what is in proportion to something that may be of any size. */
export const proportional = (value: number): number => Number(value.toPrecision(4));
