/** The person's last pieces of work, to be gone on with, saved as a file, or taken off the device. */
import { useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../design/definition.ts';
import type { Piece } from '../../jobs/keeper.ts';
import { fileText } from '../../jobs/record.ts';
import { nameOf, offer } from '../state/files.ts';
import type { Work } from '../state/store.ts';

export function EarlierWork({ work, close }: { work: Work; close(): void }) {
  // Another piece at work is another list.
  useStore(work.store, (state) => state.piece);
  const [, redraw] = useState(0);
  const pieces = work.keeper?.earlier() ?? [];
  const drop = (piece: Piece) => {
    work.keeper?.drop(piece.name);
    redraw((times) => times + 1);
  };
  return (
    <section aria-label="Earlier work" className="earlier">
      <h2>Earlier work</h2>
      <p className="fine">
        {pieces.length === 0 ? 'Nothing yet. ' : ''}The last ten pieces of your own work are kept on this device as you
        go. A file is safer.
      </p>
      <ul className="plain">
        {pieces.map((piece) => (
          <Entry
            key={piece.name}
            piece={piece}
            open={() => work.reopen(piece.name) && close()}
            drop={() => drop(piece)}
          />
        ))}
      </ul>
      <p className="buttons">
        <button type="button" onClick={close}>
          Close
        </button>
      </p>
    </section>
  );
}

/** What tells two pieces of one title apart. */
function holdsText({ seats, readings = [], cut }: Design): string {
  const trials = cut?.trials?.length ?? 0;
  const counts = [
    `${seats.length} ${seats.length === 1 ? 'seat' : 'seats'}`,
    ...(readings.length > 0 ? [`${readings.length} readings`] : []),
    ...(trials > 0 ? [`${trials} ${trials === 1 ? 'trial' : 'trials'}`] : []),
  ];
  return `; ${counts.join(', ')}`;
}

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });

function Entry({ piece: { name, found, unreadable }, open, drop }: { piece: Piece; open(): void; drop(): void }) {
  const [sure, setSure] = useState(false);
  const title = found ? (found.design.title ?? 'untitled') : 'Set aside, unread';
  const when = found ? (found.changed === null ? '' : `, ${WHEN.format(found.changed)}`) : `: ${unreadable!.why}`;
  const save = () =>
    found
      ? offer(`${nameOf(title)}.conepair.json`, fileText(found.design), 'application/json')
      : offer(unreadable!.file.name, unreadable!.file.text, 'text/plain');
  return (
    <li data-piece={name}>
      <span>
        <strong>{title}</strong>
        {when}
        {found && holdsText(found.design)}
      </span>
      <span className="buttons">
        {found && (
          <button type="button" onClick={open}>
            Open
          </button>
        )}
        <button type="button" onClick={save}>
          Save as a file
        </button>
        <button type="button" onClick={() => (sure ? drop() : setSure(true))} onBlur={() => setSure(false)}>
          {sure ? 'Take it off for good' : 'Take off'}
        </button>
      </span>
    </li>
  );
}
