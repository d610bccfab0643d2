/** What is to be said of the work that is kept on this device, each in a sentence with what can be done about it. */
import { type ReactNode, useEffect } from 'react';
import { useStore } from 'zustand';
import { offer, saveFile } from '../state/files.ts';
import type { Told, Work } from '../state/store.ts';

export function Keeping({ work }: { work: Work }) {
  const told = useStore(work.store, (state) => state.told);
  useLeaving(work);
  if (told.length === 0) return null;
  return (
    <section aria-label="Kept work" className="keeping">
      {told.map((one) => (
        <div key={one.what === 'unreadable' ? one.piece.name : one.what} role="status">
          <p>{textOf(one)}</p>
          <p className="buttons">
            {remedyOf(one, work)}
            <button type="button" onClick={() => work.close(one)}>
              Close
            </button>
          </p>
        </div>
      ))}
    </section>
  );
}

function textOf(told: Told): string {
  switch (told.what) {
    case 'nowhere':
      return 'This browser keeps nothing for this page: what is done here is gone when it is closed. Save it as a file.';
    case 'full':
      return 'There is no room left on this device: what was changed last is not kept. Save it as a file, or take something off the earlier work.';
    case 'elsewhere':
      return 'The same work is open in another tab. What is done in this one is kept by itself from now on; neither overwrites the other.';
    case 'unreadable':
      return `Work kept on this device cannot be opened: ${told.piece.unreadable!.why}. It is set aside whole, under Earlier work.`;
    case 'aside':
      return told.kept
        ? `“${told.title}” stays kept, under Earlier work.`
        : `“${told.title}” is not kept on this device: going back to it is possible only while this page is open.`;
  }
}

function remedyOf(told: Told, work: Work): ReactNode {
  if (told.what === 'nowhere' || told.what === 'full')
    return (
      <button type="button" onClick={() => saveFile(work)}>
        Save as a file
      </button>
    );
  if (told.what === 'unreadable') {
    const { name, text } = told.piece.unreadable!.file;
    return (
      <button type="button" onClick={() => offer(name, text, 'text/plain')}>
        Save it as a file
      </button>
    );
  }
  if (told.what === 'aside')
    return (
      <button type="button" onClick={() => (told.kept && work.reopen(told.piece)) || work.undo()}>
        Back to it
      </button>
    );
  return null;
}

/** Asks before the page is closed on work that is kept nowhere. */
function useLeaving(work: Work) {
  useEffect(() => {
    const onLeave = (event: BeforeUnloadEvent) => {
      if (work.unkept()) event.preventDefault();
    };
    window.addEventListener('beforeunload', onLeave);
    return () => window.removeEventListener('beforeunload', onLeave);
  }, [work]);
}
