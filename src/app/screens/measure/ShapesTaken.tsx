/** What taking the fitted shapes over changed, with the way back; gone once the design is another. */
import { useStore } from 'zustand';
import type { Design } from '../../../design/definition.ts';
import { listed } from '../../../report/listed.ts';
import type { Work } from '../../state/store.ts';

export interface Taken {
  before: Design;
  after: Design;
}

/** Surfaces whose shape is another than before. */
const changedSurfaces = ({ before, after }: Taken): string[] =>
  after.seats.flatMap((seat, i) =>
    (['journal', 'bush'] as const).flatMap((part) =>
      JSON.stringify(seat[part]) === JSON.stringify(before.seats[i]?.[part]) ? [] : [`the ${seat.name} ${part}`],
    ),
  );

export function ShapesTaken({ work, taken }: { work: Work; taken: Taken }) {
  const design = useStore(work.store, (state) => state.design);
  const changed = changedSurfaces(taken);
  if (design !== taken.after) return null;
  return (
    <p className="buttons">
      <span role="status">
        {changed.length === 0
          ? 'The design had these shapes already.'
          : `The design has these shapes now. Changed: ${listed(changed)}.`}
      </span>
      {changed.length > 0 && (
        <button type="button" onClick={() => work.undo()}>
          Undo that
        </button>
      )}
    </p>
  );
}
