/**
 * The cosine error of an indicator whose stylus does not move in the direction that is measured.
 *   true = read·cos t
 * t angle (rad) between the direction measured and that in which the tip moves: of a lever indicator, the lean
 * of its lever; of a plunger, that of its spindle. To first order for travels small beside the lever.
 * @source JIS-B7533 (compensation of lever indicators)
 */
import type { Radians } from '../../design/dimension.ts';

export const trueTravel = (read: number, lean: Radians): number => read * Math.cos(lean);

/** What the indicator shows too much, of a true travel (m). */
export const cosineError = (travel: number, lean: Radians): number => travel / Math.cos(lean) - travel;
