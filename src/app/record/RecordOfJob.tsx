/** The record of the job: every surface before and after, and all that happened to it; opened when it is asked for. */
import { type FormEvent, useId, useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../design/definition.ts';
import { LONGEST_NOTE } from '../../design/recordDefinition.ts';
import type { Particulars } from '../../report/record/story.ts';
import { Fault } from '../frame/Fault.tsx';
import type { PartEntry } from '../frame/Parts.tsx';
import type { Work } from '../state/store.ts';
import { useSolved } from '../state/useSolved.ts';
import { useUnfinished } from '../state/useUnfinished.ts';
import { BeforeAfter } from './BeforeAfter.tsx';
import { Entered } from './Entered.tsx';
import { bare, offered } from './entered.ts';
import { withoutRecorded, withRecorded } from './entries.ts';
import { AddPhotograph, Shown } from './Photographs.tsx';
import { photographCount } from './photographCount.ts';
import { Story } from './Story.tsx';
import './record.css';

/** As a named part of a screen. What is inside is worked out when it is looked at. */
export const recordPart = (work: Work): PartEntry => ({
  id: 'record',
  title: 'The record of the job',
  short: 'Record',
  told: 'before and after, what was done, when and by whom',
  whenOpen: true,
  children: (
    <div className="record">
      <Record work={work} />
    </div>
  ),
});

function Record({ work }: { work: Work }) {
  const design = useStore(work.store, (state) => state.design);
  const system = useStore(work.store, (state) => state.system);
  const { value, of, fresh, fault, again } = useSolved('states', design);
  const more = (index: number) => {
    const { photograph, note = '' } = design.record![index]!;
    return (
      <>
        {photograph !== undefined && <Shown work={work} name={photograph} about={note} />}
        <p className="buttons">
          <button type="button" onClick={() => work.change((d) => withoutRecorded(d, index))}>
            Strike out
          </button>
        </p>
      </>
    );
  };
  return (
    <>
      <section aria-label="Before and after">
        <h3>Before and after</h3>
        <Fault what="Before and after" fault={fault} again={again} />
        {fault === null && !(value && of) && <p className="loading">Before and after are being worked out.</p>}
        {value && of && (
          <div className={fresh ? '' : 'stale'}>
            <BeforeAfter design={of} states={value} system={system} />
          </div>
        )}
      </section>
      <section aria-label="What was done">
        <h3>What was done</h3>
        <Story design={design} system={system} more={more} />
        <NewNote work={work} design={design} />
        {photographCount(design) > 0 && (
          <p className="fine">
            Photographs are kept with the job on this device; a file or a link of the job goes without them. Save those
            that matter as pictures.
          </p>
        )}
      </section>
    </>
  );
}

/** An entry of the record that is being written. */
interface Half {
  text: string;
  told: Particulars;
}

function NewNote({ work, design }: { work: Work; design: Design }) {
  const id = useId();
  const [half, setHalf] = useUnfinished<Half>(work, 'note');
  const [error, setError] = useState('');
  const now: Half = half ?? { text: '', told: offered(design) };
  const done = () => {
    setError('');
    setHalf(null);
  };
  const write = (event: FormEvent) => {
    event.preventDefault();
    if (now.text.trim() === '') return setError('Write something first.');
    const [refused] = work.change((d) => withRecorded(d, { note: now.text.trim(), ...bare(now.told) }));
    if (refused) return setError(refused.message);
    done();
  };
  return (
    <form className="new-note" aria-label="A new note" onSubmit={write}>
      <label htmlFor={id}>A note</label>
      <textarea
        id={id}
        rows={2}
        maxLength={LONGEST_NOTE}
        value={now.text}
        onChange={(event) => setHalf({ ...now, text: event.target.value })}
      />
      {/* Enter takes what is typed in a field here; it does not write the note down. */}
      <fieldset onKeyDown={(event) => event.key === 'Enter' && event.preventDefault()}>
        <legend>when, who, stage</legend>
        <Entered told={now.told} change={(told) => setHalf({ ...now, told })} note={false} />
      </fieldset>
      {error !== '' && (
        <p className="error" role="alert">
          {error}
        </p>
      )}
      <p className="buttons">
        <button type="submit">Write it down</button>
        <AddPhotograph work={work} note={now.text.trim()} told={now.told} done={done} refuse={setError} />
      </p>
    </form>
  );
}
