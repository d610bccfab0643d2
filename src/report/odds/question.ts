/** What is asked of every pair drawn: where the journal is set, how far it may go, and its friction. */
import type { Design } from '../../design/definition.ts';
import { defaultAt } from '../../design/place.ts';
import type { Question } from '../../engine/odds/outcomes.ts';
import { metres } from '../convert.ts';

/** `position` in mm. */
export function questionOf({ cut, friction }: Design, position: number): Question {
  const reach = cut?.reach;
  return {
    position: metres(position),
    friction: friction ?? defaultAt('friction'),
    ...(reach && {
      reach: {
        from: reach.from === undefined ? Number.NEGATIVE_INFINITY : metres(reach.from),
        to: reach.to === undefined ? Number.POSITIVE_INFINITY : metres(reach.to),
      },
    }),
  };
}
