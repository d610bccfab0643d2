/** How thin a film may be: published guidance, and roughness. */
import { type Metres, MICROMETRE } from '../../design/dimension.ts';

/**
 * Least permissible film (m) of a plain bearing, by shaft diameter (m) and sliding speed (m/s). Stated for shafts of Rz
 * 4 µm and better, small tilt, clean oil. The table begins at 24 mm: smaller shafts take its first row, `within` then
 * being false. A small spindle lapped to a tenth of that roughness is commonly run thinner: advice, not a wall.
 * @source ISO7902-3 table 1; practice (thinner when lapped)
 */
export function leastFilmGuidance(diameter: number, speed: number): { film: Metres; within: boolean } {
  const row = GUIDANCE.findLast(([from]) => diameter >= from) ?? GUIDANCE[0]!;
  const band = SPEEDS.filter((limit) => Math.abs(speed) > limit).length;
  return { film: row[1][band]! * MICROMETRE, within: diameter >= GUIDANCE[0]![0] && diameter <= 2.5 };
}

/** m/s: upper ends of all speed bands but the last */
const SPEEDS = [1, 3, 10, 30] as const;
/** from this diameter (m): µm in the five speed bands */
const GUIDANCE: readonly (readonly [number, readonly [number, number, number, number, number]])[] = [
  [0.024, [3, 4, 5, 7, 10]],
  [0.063, [4, 5, 7, 9, 12]],
  [0.16, [6, 7, 9, 11, 14]],
  [0.4, [8, 9, 11, 13, 16]],
  [1, [10, 12, 14, 16, 18]],
];

/**
 * Film ratio Λ = least film/√(Rq₁² + Rq₂²) of a film (m) between two surfaces of root-mean-square roughness (m). From 3
 * up the film keeps the metals apart; below 1 they run on each other.
 * @source Tallian1967
 */
export const filmRatio = (film: Metres, journalRoughness: number, bushRoughness: number) =>
  film / Math.hypot(journalRoughness, bushRoughness);
export const FULL_FILM = 3;

/** W: half a horsepower, what a small lathe's motor gives. @source practice */
export const SMALL_MOTOR = 370;
