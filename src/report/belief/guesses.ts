/** Sizes that neither a gauge nor a drawing tells: how far off they are taken to be until a trial or a reading does. */
import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import type { Guess } from '../../engine/gauging/believe.ts';
import { unreadSurfaces } from '../assumed.ts';
import { metres } from '../convert.ts';

/**
 * How far such a size may be off square to its line, as a standard uncertainty, where the person states no doubt of the
 * films and no prior of that size: what a bore made to its journal is seldom beyond twice over. @source practice
 */
export const GUESS_DOUBT: Millimetres = 0.05;

export function guessesOf(design: Design): Guess[] {
  if (design.cut?.doubt !== undefined) return [];
  return unreadSurfaces(design).flatMap(({ seat, part, guessed }) =>
    guessed.some((key) => key !== 'halfAngle')
      ? [{ seat: design.seats.findIndex(({ name }) => name === seat), part, sigma: metres(GUESS_DOUBT) }]
      : [],
  );
}
