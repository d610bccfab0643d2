/**
 * A lesson made by an instructor: fields on the left, the real lesson beside them. What is typed is kept as a draft at
 * once; it becomes a lesson of this device, a file or a link when asked for.
 */
import './edit.css';
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../../../design/definition.ts';
import type { Lesson } from '../../../../lessons/definition.ts';
import { newLesson, newQuestion, pressedIn, standingFree } from '../../../../lessons/draft.ts';
import { placesOf } from '../../../../lessons/places.ts';
import type { Speech } from '../../../../lessons/template.ts';
import { useAngles } from '../../../state/angles.ts';
import { DEMOS } from '../../../state/demos.ts';
import type { Work } from '../../../state/store.ts';
import { withItsDesign } from '../builtIn.ts';
import { draftBefore, readDraft, setDraftAside, writeDraft } from '../ownLessons.ts';
import { changed, type Editing, EditingProvider } from './editing.ts';
import { ChoiceField, FormulaField, ListOf, NumberField, TextField } from './fields.tsx';
import { Preview } from './Preview.tsx';
import { AS, Put } from './Put.tsx';
import { QuestionForm } from './QuestionForm.tsx';
import { Standing } from './Standing.tsx';
import { TakeOut } from './TakeOut.tsx';
import { faultSaid, type LessonFaults, numbersSaid, useFaults } from './useFaults.ts';

const HERE = '#learn/edit';

interface Props {
  work: Work;
  /** what it begins with; else the draft, or a new one over the open job */
  from: Lesson | null;
  leave(): void;
}

export default function LessonEditor({ work, from, leave }: Props) {
  const [start] = useState(() => {
    const draft = from ? { lesson: from, damaged: false } : readDraft();
    return { ...draft, lesson: withItsDesign(draft.lesson ?? newLesson(work.store.getState().design)) };
  });
  const [lesson, setLesson] = useState(start.lesson);
  const [lasts, setLasts] = useState(true);
  const take = (next: Lesson) => {
    setLesson(next);
    setLasts(writeDraft(next));
  };
  const [before, setBefore] = useState(draftBefore);
  // A copy of another lesson is a draft from the first on: the page loaded anew, it is what was made of it.
  useEffect(() => {
    if (!from) return;
    setDraftAside(withItsDesign(from));
    const kept = writeDraft(withItsDesign(from));
    setLasts(kept);
    setBefore(draftBefore);
    if (kept && window.location.hash.startsWith(`${HERE}/`)) window.history.replaceState(null, '', HERE);
  }, [from]);
  const another = (next: Lesson) => {
    setDraftAside(next);
    take(next);
  };
  const found = useFaults(lesson);
  const system = useStore(work.store, (state) => state.system);
  const way = useAngles();
  const speech = useMemo<Speech>(() => ({ system, way }), [system, way]);
  const editing = useEditingOf(lesson, found, speech, (path, value) => take(changed(lesson, path, value)));
  const seat = (lesson.design as Partial<Design>).seats?.[0]?.name ?? 'shallow';
  return (
    <EditingProvider value={editing}>
      <article className="lesson editor">
        <header className="lesson-head">
          <h2>A lesson of your own</h2>
          <p>
            <button
              type="button"
              onClick={() => {
                another(newLesson(work.store.getState().design));
                setBefore(lesson);
              }}
            >
              Begin anew
            </button>
            {before && (
              <button
                type="button"
                onClick={() => {
                  another(before);
                  setBefore(lesson);
                }}
              >
                Back to the draft before
              </button>
            )}
            <button type="button" onClick={leave}>
              All lessons
            </button>
          </p>
        </header>
        {start.damaged && <p role="status">The draft could not be read. It lies aside; this is a new one.</p>}
        {!lasts && <p role="status">This browser keeps nothing: save a file before you leave.</p>}
        <Standing found={found} />
        <TakeOut lesson={lesson} ready={found.errors.length === 0} doubts={found.doubts.length} />
        <div className="editor-sides">
          <div className="edit-form">
            <DesignPart lesson={lesson} work={work} take={take} />
            <details open>
              <summary>Title and story</summary>
              <TextField path="title" label="Title" />
              <TextField path="about" label="What is learnt, in one line" />
              <TextField path="by" label="Who made it" hint="Told to whoever gets it; may stay empty." optional />
              <ListOf path="story" one="Story" fresh="What is so, before any question." least={1} most={6}>
                {(one) => <FormulaField words path={one} label="What is so" />}
              </ListOf>
            </details>
            <details>
              <summary>Numbers: {lesson.numbers.map(({ name }) => name).join(', ')}</summary>
              <ListOf
                path="numbers"
                one="Number"
                fresh={{ name: 'more', from: 1, to: 5, step: 1, as: 'number' }}
                least={1}
                most={12}
              >
                {(one) => (
                  <>
                    <TextField path={`${one}.name`} label="Name" />
                    <NumberField path={`${one}.from`} label="From" />
                    <NumberField path={`${one}.to`} label="To" />
                    <NumberField path={`${one}.step`} label="In steps of" />
                    <ChoiceField path={`${one}.as`} label="Told in" options={AS} />
                  </>
                )}
              </ListOf>
              <h3>What they make of the design</h3>
              <ListOf path="where" one="Place" fresh={{ path: 'position', is: 'design.position' }} most={24}>
                {(one) => <Put path={one} />}
              </ListOf>
              <ListOf path="keep" one="Condition" fresh="by > 0" most={8}>
                {(one) => <FormulaField path={one} label="These numbers are given where" />}
              </ListOf>
            </details>
            <ListOf path="questions" one="Question" fresh={newQuestion(seat)} least={1} most={4}>
              {(one) => <QuestionForm path={one} />}
            </ListOf>
            <details>
              <summary>What to carry away</summary>
              <FormulaField words path="carry" label="To carry away" />
              <TextField long optional path="caution" label="Caution, where the work can hurt" />
            </details>
          </div>
          <Preview lesson={lesson} found={found} work={work} />
        </div>
      </article>
    </EditingProvider>
  );
}

function useEditingOf(lesson: Lesson, found: LessonFaults, speech: Speech, set: Editing['set']): Editing {
  const places = useMemo(() => placesOf(lesson.design as Design), [lesson.design]);
  return {
    lesson,
    set,
    speech,
    places,
    faults: (path) => found.errors.filter((error) => error.path === path).map(({ message }) => message),
    doubts: (path) => found.doubts.filter((doubt) => doubt.path === path).map(({ message }) => message),
    notGiven: (path) =>
      (found.tried ?? []).flatMap(({ seed, fault }) =>
        fault?.at === path ? [`Not given with ${numbersSaid(lesson, seed)}: ${faultSaid(fault.message)}`] : [],
      ),
  };
}

function DesignPart({ lesson, work, take }: { lesson: Lesson; work: Work; take(next: Lesson): void }) {
  const job = useStore(work.store, (state) => state.design);
  const title = (lesson.design as Partial<Design>).title ?? 'without a title';
  const choose = (which: string) => {
    const design = which === 'job' ? job : DEMOS.find(({ file }) => file === which)?.design;
    if (design) take({ ...lesson, design: standingFree(design) });
  };
  return (
    <p className="edit-field">
      <label>
        Design: <strong>{title}</strong>{' '}
        <select value="" onChange={({ target }) => choose(target.value)}>
          <option value="">take another…</option>
          <option value="job">the open job: {job.title ?? 'without a title'}</option>
          {DEMOS.map(({ file, design }) => (
            <option key={file} value={file}>
              {design.title ?? file}
            </option>
          ))}
        </select>
      </label>
      <span className="fine">A design from a file: open it as a job first.</span>
      {pressedIn(job) && (
        <span className="fine">
          The open job was left with metal pressed into metal. Taken for a lesson, its spindle stands where it first
          touches.
        </span>
      )}
    </p>
  );
}
