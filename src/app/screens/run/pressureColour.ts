/** The colour of oil pressure: from the paper's own (none) by vermilion to a deep violet (the most), in even steps. */
import { colourScale, polar, type Rgb } from '../../pictures/colourScale.ts';

const scale = colourScale([polar(0.965, 0.03, 90), polar(0.66, 0.22, 30), polar(0.27, 0.1, 315)]);

/** Pressure and that of the scale's far end in the same unit. */
export const pressureColour = (pressure: number, max: number): Rgb => scale(max > 0 ? pressure / max : 0);
