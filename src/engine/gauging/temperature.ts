/**
 * A length read in a room that is not at 20 °C, as it would be at 20 °C.
 *
 *   at 20 °C = read·[1 + a_s·(T_s - 20)]/[1 + a_p·(T_p - 20)]
 *
 * read length told by the instrument (m) · a_s, T_s expansion (1/K) and temperature (°C) of the instrument or of the
 * blocks it was set to · a_p, T_p those of the part. A half angle does not change as a part warms evenly.
 * @source ISO1 (reference temperature); JCGM100 H.1.1, equation H.1
 */
export interface Warmth {
  /** 1/K */
  expansion: number;
  /** °C */
  temperature: number;
}

/** °C. @source ISO1 */
export const REFERENCE = 20;

/** Length (m) at 20 °C of what an instrument tells as `read` (m). */
export function atReference(read: number, part: Warmth, standard: Warmth): number {
  return (
    (read * (1 + standard.expansion * (standard.temperature - REFERENCE))) /
    (1 + part.expansion * (part.temperature - REFERENCE))
  );
}

/**
 * Standard uncertainty (m) of the correction from those of the temperatures (K) and the expansions (1/K), independent
 * of each other.
 */
export function correctionUncertainty(
  length: number,
  part: Warmth,
  standard: Warmth,
  sigma: { part: Warmth; standard: Warmth },
): number {
  const terms = [
    part.expansion * sigma.part.temperature,
    standard.expansion * sigma.standard.temperature,
    (part.temperature - REFERENCE) * sigma.part.expansion,
    (standard.temperature - REFERENCE) * sigma.standard.expansion,
  ];
  return length * Math.hypot(...terms);
}
