/** How marking blue is shown, on the unrolled prints and in the round. */
import type { Metres } from '../../design/dimension.ts';
import type { Rgb } from './filmColour.ts';

/** Prussian blue; lighter on a dark ground, so that it stands out. */
export const BLUE: { light: Rgb; dark: Rgb } = { light: [0.047, 0.173, 0.408], dark: [0.47, 0.69, 1] };

/**
 * 0 for bare metal; from a half at the edge of the blue, so that the edge is seen, to 1 where the parts touched. Film
 * and thickness in one unit.
 */
export const blueStrength = (film: Metres, thickness: Metres): number =>
  film > thickness ? 0 : 0.5 + 0.5 * Math.min(1, Math.max(0, 1 - film / thickness));
