/** One job of the list: its picture, what it is, and what can be done with it. */
import { type ReactNode, useEffect, useState } from 'react';
import type { Design } from '../../../design/definition.ts';
import { bringBackJob, deleteJob, duplicateJob, lookAt, putJobAway, renameJob } from '../../../jobs/list.ts';
import type { Unreadable } from '../../../jobs/record.ts';
import type { Head } from '../../../jobs/shelf.ts';
import { sizeText } from '../../sizeText.ts';
import { offer } from '../../state/files.ts';
import { OPENING } from '../../state/opening.ts';
import type { Work } from '../../state/store.ts';
import { PairPicture } from './PairPicture.tsx';
import { Rescue } from './Rescue.tsx';

interface Props {
  work: Work;
  head: Head;
  /** it is the one at work in this window */
  isOpen: boolean;
  open(id: string): void;
  refresh(): void;
  deleted(): void;
  children?: ReactNode;
}

export function JobRow({ work, head, isOpen, open, refresh, deleted, children }: Props) {
  const seen = useSeen(work, head);
  const [renaming, setRenaming] = useState(false);
  const [refused, setRefused] = useState(false);
  const keeper = work.keeper!;
  const tried = async (act: Promise<boolean>) => {
    setRefused(!(await act));
    refresh();
  };
  const remove = async () => {
    await keeper.flush();
    const done = await deleteJob(keeper, head.id);
    setRefused(!done);
    if (done) deleted();
    refresh();
    if (!done || !isOpen) return;
    work.open('', { ok: true, design: OPENING.design });
    for (const notice of work.store.getState().notices) if (notice.what === 'aside') work.close(notice);
  };
  const putAway = async () => {
    await keeper.flush();
    const done = await putJobAway(keeper, head.id, !head.away);
    setRefused(!done);
    refresh();
    // What is put away is worked on no longer; where it is is said.
    if (done && isOpen && !head.away) work.open('', { ok: true, design: OPENING.design });
  };
  const rename = async (title: string) => {
    setRenaming(false);
    if (title.trim() === '' || title === head.title) return;
    if (isOpen) work.change((design) => ({ ...design, title: title.trim() }));
    else await tried(renameJob(keeper, head.id, title.trim()));
  };
  const copy = async () => {
    if (isOpen) await keeper.flush();
    await duplicateJob(keeper, head.id);
    refresh();
  };
  return (
    <li data-job={head.id} className={isOpen ? 'open' : undefined}>
      {seen.design ? <PairPicture design={seen.design} /> : <span className="pair-picture" />}
      <div className="what">
        {renaming ? (
          <Rename title={head.title} take={rename} cancel={() => setRenaming(false)} />
        ) : (
          <h4>
            {head.title} {isOpen && <span className="mark">open here</span>}
          </h4>
        )}
        <p className="fine">
          {whenText(head)} · {holdsText(head)} · {sizeText(head.size)}
        </p>
        {seen.unreadable && <p className="error">Cannot be opened: {seen.unreadable.why}. It stays as it is.</p>}
        {refused && <p className="error">Not done: this job is open in another window.</p>}
      </div>
      <div className="buttons">
        {seen.unreadable ? (
          <SaveUnread unreadable={seen.unreadable} />
        ) : head.deleted !== null ? (
          <button type="button" onClick={() => tried(bringBackJob(keeper, head.id))}>
            Bring it back
          </button>
        ) : (
          <>
            <button type="button" className={isOpen ? undefined : 'main'} onClick={() => open(head.id)}>
              {isOpen ? 'Go on' : 'Open'}
            </button>
            {!renaming && (
              <button type="button" onClick={() => setRenaming(true)}>
                Rename
              </button>
            )}
            <button type="button" onClick={copy}>
              Duplicate
            </button>
            <button type="button" onClick={putAway}>
              {head.away ? 'Take out again' : 'Put away'}
            </button>
          </>
        )}
        {head.deleted === null && (
          <button type="button" onClick={remove}>
            Delete
          </button>
        )}
      </div>
      {seen.unreadable && <Rescue work={work} head={head} open={open} />}
      {children}
    </li>
  );
}

export const SaveUnread = ({ unreadable: { file } }: { unreadable: Unreadable }) => (
  <button type="button" onClick={() => offer(file.name, file.text, 'text/plain')}>
    Save it as a file
  </button>
);

/** The design, read as the row is shown and again as it is kept; or why it cannot be. */
function useSeen(work: Work, { id, worked }: Head): { design: Design | null; unreadable: Unreadable | null } {
  const [seen, setSeen] = useState<{ design: Design | null; unreadable: Unreadable | null }>({
    design: null,
    unreadable: null,
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: what was worked on since is read again
  useEffect(() => {
    let wanted = true;
    lookAt(work.keeper!, id).then(
      (job) => {
        if (!wanted || job === null) return;
        setSeen('why' in job ? { design: null, unreadable: job } : { design: job.found.design, unreadable: null });
      },
      () => {},
    );
    return () => {
      wanted = false;
    };
  }, [work, id, worked]);
  return seen;
}

function Rename({ title, take, cancel }: { title: string; take(title: string): void; cancel(): void }) {
  const [text, setText] = useState(title);
  return (
    <form
      className="rename"
      onSubmit={(event) => {
        event.preventDefault();
        take(text);
      }}
    >
      <input
        // biome-ignore lint/a11y/noAutofocus: it was asked for a moment ago
        autoFocus
        aria-label="Title of the job"
        value={text}
        maxLength={200}
        onChange={(event) => setText(event.target.value)}
        onKeyDown={(event) => event.key === 'Escape' && cancel()}
      />
      <button type="submit">Rename</button>
    </form>
  );
}

const WHEN = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });
const DAY = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium' });

export function whenText({ made, worked, deleted }: Pick<Head, 'made' | 'worked' | 'deleted'>): string {
  if (deleted !== null) return `deleted ${WHEN.format(deleted)}`;
  const begun = made === null ? '' : `begun ${DAY.format(made)}, `;
  return worked === null ? 'date not known' : `${begun}worked on ${WHEN.format(worked)}`;
}

const counted = (count: number, one: string) => `${count} ${one}${count === 1 ? '' : 's'}`;

/** What tells two jobs of one title apart. */
const holdsText = ({ seats, readings, trials }: Pick<Head, 'seats' | 'readings' | 'trials'>): string =>
  [
    counted(seats, 'seat'),
    ...(readings > 0 ? [counted(readings, 'reading')] : []),
    ...(trials > 0 ? [counted(trials, 'trial')] : []),
  ].join(', ');
