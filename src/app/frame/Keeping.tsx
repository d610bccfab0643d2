/** What is to be said of the work that is kept on this device, each in a sentence with what can be done about it. */
import type { ReactNode } from 'react';
import { useStore } from 'zustand';
import { offer, saveFile } from '../state/files.ts';
import type { Notice } from '../state/notices.ts';
import type { Work } from '../state/store.ts';

export default function Keeping({ work }: { work: Work }) {
  const notices = useStore(work.store, (state) => state.notices);
  return (
    <section aria-label="Kept work" className="keeping">
      {notices.map((one) => (
        <div
          key={one.what === 'unreadable' ? one.name : one.what}
          role={isRefusal(one) ? 'alert' : 'status'}
          className={isRefusal(one) ? 'asked' : undefined}
        >
          <p>{textOf(one)}</p>
          <p className="buttons">
            {remedyOf(one, work)}
            {one.what !== 'elsewhere' && (
              <button type="button" onClick={() => work.close(one)}>
                Close
              </button>
            )}
          </p>
        </div>
      ))}
    </section>
  );
}

const DAY = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium' });

/** Something was tried that the other window alone may do. */
const isRefusal = (notice: Notice) => notice.what === 'elsewhere' && notice.refused > 0;

function textOf(notice: Notice): string {
  switch (notice.what) {
    case 'nowhere':
      return 'This browser keeps nothing for this page: what is done here is gone when it is closed. Save it as a file.';
    case 'newer':
      return 'The jobs on this device were kept by a newer version of the program. They stay as they are; nothing is kept from this page. Load it anew.';
    case 'full':
      return 'There is no room left on this device: what was changed last is not kept. Save it as a file, or delete jobs that are done with.';
    case 'failed':
      return 'The browser did not keep what was changed last. Save it as a file.';
    case 'evicted':
      return 'The browser threw away what was kept on this device. The job that is open is being kept anew; save it as a file.';
    case 'older':
      return 'The last change to this job cannot be read; what is open is the state before it. What is left of the other is set aside, under Jobs.';
    case 'file':
      if (notice.saved !== null)
        return `This job was changed since its file was saved, on ${DAY.format(notice.saved)}. What is on this device alone can be lost. A file is safer.`;
      return 'This job stands on this device alone, and no file of it was ever saved. Some browsers drop what a page keeps after seven days without a visit. A file is safer.';
    case 'photographs':
      return `The file goes without ${notice.count === 1 ? 'the photograph' : `the ${notice.count} photographs`} of this job: they stay on this device. Save those that matter as pictures, in its record.`;
    case 'elsewhere':
      return isRefusal(notice)
        ? 'Not changed: this job is open in another window. Take it over to change it here.'
        : 'This job is open in another window. This one follows it.';
    case 'unreadable':
      return `A job on this device cannot be opened: ${notice.unreadable.why}. It is set aside whole, under Jobs.`;
    case 'taken':
      return `${notice.count === 1 ? 'One job was' : `${notice.count} jobs were`} taken in${notice.away > 0 ? `, ${notice.away} of them put away` : ''}.`;
    case 'aside':
      return `“${notice.title}” stays kept, under Jobs.`;
  }
}

function remedyOf(notice: Notice, work: Work): ReactNode {
  switch (notice.what) {
    case 'nowhere':
    case 'full':
    case 'failed':
    case 'evicted':
    case 'file':
      return (
        <button type="button" onClick={() => saveFile(work)}>
          Save as a file
        </button>
      );
    case 'elsewhere':
      return (
        <button type="button" className="main" onClick={() => work.takeOver()}>
          Take over here
        </button>
      );
    case 'unreadable': {
      const { name, text } = notice.unreadable.file;
      return (
        <button type="button" onClick={() => offer(name, text, 'text/plain')}>
          Save it as a file
        </button>
      );
    }
    case 'aside':
      return (
        <button type="button" onClick={() => void work.reopen(notice.piece)}>
          Back to it
        </button>
      );
    default:
      return null;
  }
}
