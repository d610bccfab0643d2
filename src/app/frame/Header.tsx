/**
 * The bar at the top: the job, screens, history, units, and a file of it; on a phone one row, what is asked for seldom
 * behind one button. Draws nothing anew while the journal is dragged.
 */
import { useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../design/definition.ts';
import { JOBS, NEW_JOB, SCREENS, type ScreenEntry } from '../screens/index.ts';
import { saveFile } from '../state/files.ts';
import { stepText } from '../state/stepText.ts';
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
  const system = useStore(work.store, (state) => state.system);
  const steps = useSteps(work, screen);
  // Belongs to the screen it was opened on.
  const [openOn, setOpenOn] = useState<string | null>(null);
  const open = openOn === screen.name;
  const row = useRef<HTMLElement>(null);
  // On a phone the row of screens is longer than its room.
  useEffect(() => {
    const { current: box } = row;
    const at = box?.querySelector<HTMLElement>(`[href="#${screen.name.toLowerCase()}"]`);
    if (box && at) box.scrollLeft = at.offsetLeft - box.offsetLeft - (box.clientWidth - at.offsetWidth) / 2;
  }, [screen]);
  return (
    <header>
      <h1>Conepair</h1>
      <a
        className="job"
        href="#jobs"
        title={`${title}. ${JOBS.about}`}
        aria-current={screen === JOBS ? 'page' : undefined}
      >
        <span>Jobs{example && <span className="example"> · example</span>}</span> <strong>{title}</strong>
      </a>
      <nav aria-label="Screens" ref={row}>
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
        <button type="button" onClick={() => steps.undo()} disabled={!steps.canUndo} title={steps.undoes}>
          Undo
        </button>
        <button
          type="button"
          className="menu"
          aria-expanded={open}
          onClick={() => setOpenOn(open ? null : screen.name)}
        >
          More
        </button>
      </div>
      <div className="buttons seldom">
        <button type="button" onClick={() => steps.redo()} disabled={!steps.canRedo}>
          Redo
        </button>
        {screen !== NEW_JOB && (
          <button type="button" onClick={() => work.store.setState({ system: system === 'inch' ? 'metric' : 'inch' })}>
            Units: {system === 'inch' ? 'inch, tenths' : 'mm, µm'}
          </button>
        )}
        {screen !== NEW_JOB && <SaveButton work={work} />}
        <button
          type="button"
          aria-expanded={taking}
          onClick={() => {
            setOpenOn(null);
            toggleTaking();
          }}
        >
          Take along
        </button>
      </div>
    </header>
  );
}

/** On the page of a new job of what is begun there, whose units are asked for on the page; else of the job. */
function useSteps(work: Work, screen: ScreenEntry) {
  const { begun } = work;
  const ofBegun = [
    useStore(begun.store, (state) => state.steps.back > 0),
    useStore(begun.store, (state) => state.steps.forth > 0),
  ] as const;
  const ofJob = [
    useStore(work.store, (state) => state.steps.back > 0),
    useStore(work.store, (state) => state.steps.forth > 0),
  ] as const;
  const [canUndo, canRedo] = screen === NEW_JOB ? ofBegun : ofJob;
  const { undo, redo } = screen === NEW_JOB ? begun : work;
  const last = useStore(work.store, work.lastStep);
  const undoes =
    screen === NEW_JOB || last === null ? undefined : `Takes back: ${stepText(work.store.getState().design, last)}`;
  return { canUndo, canRedo, undo, redo, undoes };
}
