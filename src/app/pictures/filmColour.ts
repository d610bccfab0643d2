/**
 * The colour of an oil film by its true thickness: from pale straw (nothing) to deep amber (the most), in even steps
 * (colourScale.ts). Interference has a colour off the scale.
 */
import { colourScale, polar, type Rgb } from './colourScale.ts';

export type { Rgb } from './colourScale.ts';

export const INTERFERENCE: Rgb = [0.85, 0.05, 0.16];
/** Marking blue where two surfaces touch. */
export const touchColour = (dark: boolean): Rgb => (dark ? [0.43, 0.6, 0.96] : [0.114, 0.247, 0.561]);

/** Straw, amber, brown. */
const scale = colourScale([polar(0.95, 0.05, 95), polar(0.74, 0.2, 75), polar(0.36, 0.09, 50)]);

/** Film and the film of the scale's far end in the same unit; beyond the end the end's colour. */
export const filmColour = (film: number, max: number): Rgb =>
  film < 0 ? INTERFERENCE : scale(max > 0 ? film / max : 0);

export const cssColour = (colour: Rgb) => `rgb(${colour.map((part) => Math.round(part * 255)).join(', ')})`;

/** Linear light of an sRGB colour (IEC 61966-2-1), as vertex colours are kept. */
export const linear = (colour: Rgb): Rgb => [linearPart(colour[0]), linearPart(colour[1]), linearPart(colour[2])];

/** Relative luminance, 0 to 1 (IEC 61966-2-1 primaries). */
export function luminance(colour: Rgb): number {
  const [red, green, blue] = linear(colour);
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

const linearPart = (part: number) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4);
