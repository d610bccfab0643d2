/** A seat among the others: another like it, its place in the row, and taking it away with whatever names it. */
import { useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import {
  goesWithSeat,
  NEW_SEATS,
  type NewSeat,
  withoutSeat,
  withSeatAdded,
  withSeatCopied,
  withSeatMoved,
} from '../../../design/seats.ts';
import { listed } from '../../../report/listed.ts';
import type { Work } from '../../state/store.ts';

const MOST_SEATS = 8;

export function SeatTools({ work, seats, index }: { work: Work; seats: Design['seats']; index: number }) {
  const { name } = seats[index]!;
  const [asked, setAsked] = useState<string[] | null>(null);
  const remove = () => {
    setAsked(null);
    work.change((design) => withoutSeat(design, index));
  };
  // What names it is told before anything is lost.
  const ask = () => {
    const lost = goesWithSeat(work.store.getState().design, index);
    if (lost.length === 0) remove();
    else setAsked(lost);
  };
  const move = (by: 1 | -1) => work.change((design) => withSeatMoved(design, index, by));
  return (
    <>
      <div className="buttons">
        <button
          type="button"
          onClick={() => work.change((design) => withSeatCopied(design, index, work.store.getState().system))}
          disabled={seats.length >= MOST_SEATS}
        >
          Add a seat like the {name} one
        </button>
        <button type="button" onClick={() => move(-1)} disabled={index === 0}>
          List {name} earlier
        </button>
        <button type="button" onClick={() => move(1)} disabled={index === seats.length - 1}>
          List {name} later
        </button>
        <button type="button" onClick={ask} disabled={seats.length <= 1} aria-expanded={asked !== null}>
          Remove the {name} seat
        </button>
      </div>
      {asked && (
        <div className="asked-first" role="alert">
          <p>
            With the {name} seat {asked.length === 1 && asked[0]!.startsWith('1 ') ? 'goes' : 'go'} {listed(asked)}.
            Undo brings all of it back in one step.
          </p>
          <div className="buttons">
            <button type="button" onClick={remove}>
              Remove all of it
            </button>
            <button type="button" onClick={() => setAsked(null)}>
              Leave it
            </button>
          </div>
        </div>
      )}
    </>
  );
}

const KINDS: Record<NewSeat, string> = {
  straight: 'straight bearing',
  shallow: 'shallow cone',
  steep: 'steep cone',
  opposed: 'cone facing the rear',
};

export function AddSeat({ work, count }: { work: Work; count: number }) {
  const full = count >= MOST_SEATS;
  return (
    <details>
      <summary>Add a seat</summary>
      <p className="fine">
        It stands behind all others, in proportion to them; its sizes are assumed until you type or measure them.
      </p>
      <div className="buttons">
        {(Object.keys(NEW_SEATS) as NewSeat[]).map((kind) => (
          <button
            key={kind}
            type="button"
            disabled={full}
            onClick={() => work.change((design) => withSeatAdded(design, kind, work.store.getState().system))}
          >
            + {KINDS[kind]}
          </button>
        ))}
      </div>
    </details>
  );
}
