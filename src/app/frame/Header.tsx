/**
 * The bar at the top: the job, screens, history, units, and a file of it. Draws nothing anew while the journal is
 * dragged.
 */
import { useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../design/definition.ts';
import { JOBS, NEW_JOB, SCREENS, type ScreenEntry } from '../screens/index.ts';
import { saveFile } from '../state/files.ts';
import type { Work } from '../state/store.ts';

interface Props {
  work: Work;
  screen: ScreenEntry;
  /** whether what can be taken along is listed */
  taking: boolean;
  toggleTaking(): void;
}

/** Says that it did, until something is changed. */
function SaveButton({ work }: { work: Work }) {
  const [saved, setSaved] = useState<Design | null>(null);
  const isSaved = useStore(work.store, (state) => state.design === saved);
  const save = async () => {
    const { design } = work.store.getState();
    if (await saveFile(work)) setSaved(design);
  };
  return (
    <button type="button" onClick={() => void save()} aria-live="polite">
      {isSaved ? 'Saved' : 'Save'}
    </button>
  );
}

export function Header({ work, screen, taking, toggleTaking }: Props) {
  const title = useStore(work.store, (state) => state.design.title ?? 'untitled');
  const example = useStore(work.store, (state) => state.example !== null);
  return (
    <header>
      <h1>Conepair</h1>
      <a className="job" href="#jobs" title={JOBS.about} aria-current={screen === JOBS ? 'page' : undefined}>
        <span>{example ? 'Jobs · example' : 'Jobs'}</span> <strong>{title}</strong>
      </a>
      <nav aria-label="Screens">
        {SCREENS.map(({ name, about }) => (
          <a
            key={name}
            href={`#${name.toLowerCase()}`}
            title={about}
            aria-current={name === screen.name ? 'page' : undefined}
          >
            {name}
          </a>
        ))}
      </nav>
      <div className="buttons">
        {screen === NEW_JOB ? <StepsOfBegun work={work} /> : <StepsOfJob work={work} />}
        <SaveButton work={work} />
        <button type="button" aria-expanded={taking} onClick={toggleTaking}>
          Take along
        </button>
      </div>
    </header>
  );
}

/** Undo, redo and units of the job that is open. */
function StepsOfJob({ work }: { work: Work }) {
  const system = useStore(work.store, (state) => state.system);
  const steps = useStore(work.store, (state) => state.steps);
  return (
    <>
      <Steps {...steps} undo={work.undo} redo={work.redo} />
      <button type="button" onClick={() => work.store.setState({ system: system === 'inch' ? 'metric' : 'inch' })}>
        Units: {system === 'inch' ? 'inch, tenths' : 'mm, µm'}
      </button>
    </>
  );
}

/** On the page of a new job they are of what is begun there; its units are asked for on the page. */
function StepsOfBegun({ work: { begun } }: { work: Work }) {
  const steps = useStore(begun.store, (state) => state.steps);
  return <Steps {...steps} undo={begun.undo} redo={begun.redo} />;
}

function Steps({ back, forth, undo, redo }: { back: number; forth: number; undo(): void; redo(): void }) {
  return (
    <>
      <button type="button" onClick={() => undo()} disabled={back === 0}>
        Undo
      </button>
      <button type="button" onClick={() => redo()} disabled={forth === 0}>
        Redo
      </button>
    </>
  );
}
