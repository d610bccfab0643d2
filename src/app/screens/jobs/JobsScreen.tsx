/** All jobs on this device: begun, opened, put away; and the examples. */
import { type ReactNode, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { bringBackJob, KEPT_DELETED, removeForGood } from '../../../jobs/list.ts';
import { fileOfJobs } from '../../../jobs/many.ts';
import type { Head } from '../../../jobs/shelf.ts';
import { listed } from '../../../report/listed.ts';
import { canPick, offer, openFile, pickFile } from '../../state/files.ts';
import type { Work } from '../../state/store.ts';
import { Examples } from './Examples.tsx';
import { JobRow, SaveUnread } from './JobRow.tsx';
import './jobs.css';
import { StorageLine } from './StorageLine.tsx';
import { useJobs } from './useJobs.ts';
import { Versions } from './Versions.tsx';

export default function JobsScreen({ work }: { work: Work }) {
  const { jobs, refresh } = useJobs(work);
  const [gone, setGone] = useState<string | null>(null);
  const piece = useStore(work.store, (state) => state.piece);
  const example = useStore(work.store, (state) => state.example);
  const begun = useStore(work.begun.store, (state) => state.written !== null);
  const givenUp = useStore(work.begun.store, (state) => state.givenUp);
  if (!jobs) return <p className="loading">The jobs are being read.</p>;
  const openId = example === null ? piece : null;
  const of = (which: (head: Head) => boolean) => jobs.heads.filter(which);
  const listed = of(({ id, away, deleted }) => deleted === null && (!away || id === openId));
  const away = of(({ id, away, deleted }) => deleted === null && away && id !== openId);
  const deleted = of((head) => head.deleted !== null);
  const justDeleted = deleted.find(({ id }) => id === gone);
  const first = [...listed].sort((a, b) => Number(b.id === openId) - Number(a.id === openId));
  const open = async (id: string) => {
    if (await work.reopen(id)) goOn();
    refresh();
  };
  const row = (head: Head) => (
    <JobRow
      key={head.id}
      work={work}
      head={head}
      isOpen={head.id === openId}
      open={(id) => void open(id)}
      refresh={refresh}
      deleted={() => setGone(head.id)}
    >
      {head.id === openId && <Versions work={work} id={head.id} />}
    </JobRow>
  );
  const bringBackBegun = () => {
    work.begun.undo();
    window.location.hash = '#new';
  };
  return (
    <div className="jobs">
      <Begin work={work} refresh={refresh} />
      <section aria-labelledby="yours">
        <h3 id="yours">On this device</h3>
        {begun && (
          <p role="status">
            A new job is begun and not started yet: <a href="#new">go on with it</a>.
          </p>
        )}
        {givenUp && (
          <p role="status" className="gone">
            The new job is given up.{' '}
            <button type="button" onClick={bringBackBegun}>
              Bring it back
            </button>
          </p>
        )}
        {listed.length === 0 && !begun && (
          <p>
            {away.length + deleted.length > 0 ? 'No other job of your own is here.' : 'No job of your own yet.'} Start
            one, open a file, or look at an example.
          </p>
        )}
        {justDeleted && (
          <p role="status" className="gone">
            “{justDeleted.title}” is deleted.{' '}
            <button type="button" onClick={() => bringBackJob(work.keeper!, justDeleted.id).then(refresh)}>
              Bring it back
            </button>
          </p>
        )}
        <ul className="plain rows">{first.map(row)}</ul>
        <Fold what="Put away" heads={away} row={row} />
        <Fold
          what="Deleted"
          heads={deleted}
          row={row}
          about={`A deleted job can be brought back for ${DAYS} days; then it goes from this device, photographs and all.`}
        >
          <button
            type="button"
            onClick={() =>
              removeForGood(
                work.keeper!,
                deleted.map(({ id }) => id),
              ).then(refresh)
            }
          >
            Delete {deleted.length === 1 ? 'it' : 'all'} for good
          </button>
        </Fold>
        {jobs.aside.length > 0 && (
          <section aria-labelledby="aside">
            <h3 id="aside">Set aside, unread</h3>
            <ul className="plain rows">
              {jobs.aside.map((one) => (
                <li key={one.name}>
                  <p className="what">Cannot be opened: {one.why}.</p>
                  <div className="buttons">
                    <SaveUnread unreadable={one} />
                    <button type="button" onClick={() => work.keeper?.shelf.remove([one.name]).then(refresh)}>
                      Delete for good
                    </button>
                  </div>
                </li>
              ))}
            </ul>
          </section>
        )}
        {listed.length + away.length > 0 && <SaveAll work={work} />}
        <StorageLine work={work} />
      </section>
      <Examples work={work} opened={goOn} />
    </div>
  );
}

const DAYS = KEPT_DELETED / 86_400_000;

/** What is opened is looked at on the opening screen. */
const goOn = () => {
  window.location.hash = '#fit';
  window.scrollTo({ top: 0 });
};

function Begin({ work, refresh }: { work: Work; refresh(): void }) {
  const picker = useRef<HTMLInputElement>(null);
  const pick = async (input: HTMLInputElement) => {
    const before = work.store.getState().piece;
    await openFile(work, input.files?.[0]);
    input.value = '';
    // Several jobs in one file are listed here; one is gone on with.
    if (work.store.getState().piece !== before) goOn();
    else refresh();
  };
  const choose = async () => {
    if (!canPick()) return picker.current?.click();
    const before = work.store.getState().piece;
    if (!(await pickFile(work))) return;
    if (work.store.getState().piece !== before) goOn();
    else refresh();
  };
  const begin = () => {
    window.location.hash = '#new';
  };
  return (
    <div className="begin">
      <h2>Jobs</h2>
      <div className="buttons">
        <button type="button" className="main" onClick={begin}>
          New job
        </button>
        <button type="button" onClick={() => void choose()}>
          Open a file…
        </button>
        <input
          ref={picker}
          type="file"
          accept=".json,application/json"
          aria-label="A design file"
          hidden
          onChange={(event) => pick(event.target)}
        />
      </div>
    </div>
  );
}

/** All of them in one file, for another device; opened there like any other file. */
function SaveAll({ work }: { work: Work }) {
  const [told, setTold] = useState('');
  const save = async () => {
    const { text, jobs, left } = await fileOfJobs(work.keeper!);
    setTold(savedText(jobs, left));
    const day = new Date().toISOString().slice(0, 10);
    offer(`conepair-jobs-${day}.json`, text, 'application/json');
    work.fileSaved(true);
  };
  return (
    <>
      <p className="buttons">
        <button type="button" onClick={() => void save()}>
          Save all jobs as one file
        </button>
      </p>
      <p role="status">{told}</p>
    </>
  );
}

/** What is in the file, and what is not. */
function savedText(jobs: number, left: readonly string[]): string {
  const saved = `${jobs === 1 ? 'One job is' : `${jobs} jobs are`} in the file.`;
  if (left.length === 0) return saved;
  const names = listed(left.map((title) => `“${title}”`));
  return `${saved} ${left.length === 1 ? 'One that cannot be read is' : `${left.length} that cannot be read are`} left out: ${names}. Save ${left.length === 1 ? 'it' : 'them'} by ${left.length === 1 ? 'itself' : 'themselves'}, above.`;
}

interface FoldProps {
  what: string;
  heads: readonly Head[];
  row(head: Head): ReactNode;
  about?: string;
  children?: ReactNode;
}

function Fold({ what, heads, row, about, children }: FoldProps) {
  if (heads.length === 0) return null;
  return (
    <details>
      <summary>
        {what} ({heads.length})
      </summary>
      {about && <p className="fine">{about}</p>}
      <ul className="plain rows">{heads.map(row)}</ul>
      {children && <p className="buttons">{children}</p>}
    </details>
  );
}
