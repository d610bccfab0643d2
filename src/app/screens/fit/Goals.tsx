/** Runs to where the journal is wanted. A goal it stands at already keeps its place. */
import { memo } from 'react';
import { metres } from '../../../report/convert.ts';
import type { FitReport } from '../../../report/fit/definition.ts';
import { useClosing } from '../../pictures/useClosing.ts';
import { useMedia } from '../../pictures/useMedia.ts';
import type { Work } from '../../state/store.ts';

interface Props {
  work: Work;
  seats: FitReport['seats'];
  /** mm: where the first touches */
  touch: number | null;
  /** at which of the goals the journal stands, if any */
  at: number | null;
}

const SAME = 1e-12;

/** Where the journal stands, as far as the buttons tell it: most of its moves change nothing of it. */
export function standing({ position, firstPosition, seats }: FitReport): Pick<Props, 'at'> {
  const goals = [firstPosition, ...seats.map(({ positionForTarget }) => positionForTarget)];
  return {
    at: goals.find((goal) => goal !== null && isAt(goal, position)) ?? null,
  };
}

const isAt = (goal: number, position: number) => Math.abs(metres(goal - position)) < SAME;

export const Goals = memo(function Goals({ work, seats, touch, at }: Props) {
  const still = useMedia('(prefers-reduced-motion: reduce)');
  const { running, toggle } = useClosing(work, still);
  const films = seats.flatMap(({ name, positionForTarget }) =>
    positionForTarget === null ? [] : [{ goal: positionForTarget, text: `${name} film` }],
  );
  const goals = [...(touch === null ? [] : [{ goal: touch, text: 'first touch' }]), ...films];
  return (
    <fieldset className="buttons goals">
      <legend>Go to</legend>
      {goals.map(({ goal, text }) => {
        // Not disabled: the focus would fall from it as it is reached.
        const there = running === null && at !== null && isAt(goal, at);
        return (
          <button
            key={goal}
            type="button"
            data-room={text}
            aria-disabled={there}
            onClick={() => !there && toggle(goal)}
          >
            {running === goal ? 'Pause' : text}
          </button>
        );
      })}
    </fieldset>
  );
});
