/** What the trials say is left of every surface and face, in words. */
import { doubtedText, fineText, type System } from '../../design/units.ts';
import type { CutReport } from './definition.ts';
import { NOTHING } from './listed.ts';

export type Remaining = NonNullable<CutReport['remaining']>;

export interface Left {
  text: string;
  /** to be put on, not taken off */
  on: boolean;
  /** what may be taken now */
  safe: string;
  taken: number;
  share: number;
  doubted: string;
}

export function leftOf({ steps, faces }: Remaining, system: System): Left[] {
  const surfaces = steps
    .filter((s) => s.normal >= NOTHING)
    .map(
      ({ seat, part, normal, sigma, limits, safe, doubted }): Left => ({
        text: `${doubtedText(normal, sigma, system, limits)} off the ${seat} ${part}`,
        safe: `${fineText(safe, system)} off the ${seat} ${part}`,
        on: false,
        taken: safe,
        share: safe / normal,
        doubted,
      }),
    );
  const moved = faces
    .filter((f) => Math.abs(f.off) >= NOTHING)
    .map(({ name, off, sigma, limits, safe, doubted }): Left => {
      const on = off > 0 ? `off ${name}` : `to be put on ${name}`;
      return {
        text: `${doubtedText(Math.abs(off), sigma, system, sizes(limits))} ${on}`,
        on: off <= 0,
        safe: `${fineText(Math.abs(safe), system)} ${on}`,
        taken: Math.abs(safe),
        share: safe / off,
        doubted,
      };
    });
  return [...surfaces, ...moved];
}

/** The same limits of an amount that is told without its sign. */
const sizes = (limits: readonly number[] | undefined) => limits?.map(Math.abs).sort((a, b) => a - b);

/** From this share on the safe amount is most of what is left. */
const SURE = 0.8;
/** Whether much of it may not be there. */
export const isUnsure = ({ share }: Left) => share < SURE;
