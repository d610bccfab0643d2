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
  const isNew = screen === NEW_JOB;
  const piece = useStore(work.store, (state) => state.piece);
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
        title={`${isNew ? 'New job, not started' : title}. ${JOBS.about}`}
        aria-current={screen === JOBS ? 'page' : undefined}
      >
        <span>Jobs{example && !isNew && <span className="example"> · example</span>}</span>{' '}
        <strong>{isNew ? 'New job' : title}</strong>
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
        <button
          type="button"
          onClick={() => steps.undo()}
          disabled={!steps.canUndo}
          title={steps.undoes && `Takes back: ${steps.undoes}`}
        >
          Undo
        </button>
        <Undone text={steps.undoes} forth={steps.forth} key={`${screen.name} ${piece}`} />
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
        {!isNew && (
          <button type="button" onClick={() => work.store.setState({ system: system === 'inch' ? 'metric' : 'inch' })}>
            Units: {system === 'inch' ? 'inch, tenths' : 'mm, µm'}
          </button>
        )}
        {!isNew && <SaveButton work={work} />}
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

/** ms */
const SHOWN = 4000;

/** What was taken back, for a moment, however that was asked for. */
function Undone({ text, forth }: { text: string | undefined; forth: number }) {
  const [was, setWas] = useState({ text, forth });
  // Another object each time: the same thing taken back twice is said for as long again.
  const [said, setSaid] = useState<{ text: string } | null>(null);
  if (was.text !== text || was.forth !== forth) {
    setWas({ text, forth });
    setSaid(forth > was.forth && was.text ? { text: `Taken back: ${was.text}` } : null);
  }
  useEffect(() => {
    if (!said) return;
    const over = setTimeout(() => setSaid(null), SHOWN);
    return () => clearTimeout(over);
  }, [said]);
  return (
    <span role="status" className="undone">
      {said?.text}
    </span>
  );
}

/** On the page of a new job of what is begun there, whose units are asked for on the page; else of the job. */
function useSteps(work: Work, screen: ScreenEntry) {
  const { begun } = work;
  // Told anew at every word: so is its last step.
  const { steps } = useStore(begun.store);
  const ofBegun = [steps.back > 0, steps.forth] as const;
  const ofJob = [
    useStore(work.store, (state) => state.steps.back > 0),
    useStore(work.store, (state) => state.steps.forth),
  ] as const;
  const last = useStore(work.store, work.lastStep);
  const isNew = screen === NEW_JOB;
  const [canUndo, forth] = isNew ? ofBegun : ofJob;
  const { undo, redo } = isNew ? begun : work;
  const undoes = isNew ? begun.lastStep() : last === null ? undefined : stepText(work.store.getState().design, last);
  return { canUndo, canRedo: forth > 0, forth, undo, redo, undoes };
}
