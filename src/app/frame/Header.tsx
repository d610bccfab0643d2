/**
 * The bar at the top: screens, demo designs, files, history, units. Draws nothing anew while the journal is dragged.
 */
import { useRef } from 'react';
import { useStore } from 'zustand';
import type { Design } from '../../design/definition.ts';
import { NEW_JOB, SCREENS, type ScreenEntry } from '../screens/index.ts';
import { DEMOS } from '../state/demos.ts';
import { openFile, saveFile } from '../state/files.ts';
import type { Work } from '../state/store.ts';

interface Props {
  work: Work;
  screen: ScreenEntry;
  /** whether the earlier work is listed */
  earlier: boolean;
  toggleEarlier(): void;
  /** whether what can be taken along is listed */
  taking: boolean;
  toggleTaking(): void;
}

export function Header({ work, screen, earlier, toggleEarlier, taking, toggleTaking }: Props) {
  const title = useStore(
    work.store,
    (state) => `${state.design.title ?? 'untitled'}${ownWork(state.design) ? ' (changed)' : ''}`,
  );
  const system = useStore(work.store, (state) => state.system);
  const canUndo = useStore(work.store.temporal, (history) => history.pastStates.length > 0);
  const canRedo = useStore(work.store.temporal, (history) => history.futureStates.length > 0);
  const picker = useRef<HTMLInputElement>(null);
  const pick = async (input: HTMLInputElement) => {
    await openFile(work, input.files?.[0]);
    input.value = '';
  };
  return (
    <header>
      <h1>Conepair</h1>
      {SCREENS.length > 1 && (
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
      )}
      <label>
        <span className="unseen">Demo design</span>
        <select
          value=""
          onChange={(event) =>
            work.open(event.target.value, {
              ok: true,
              design: DEMOS.find((d) => d.file === event.target.value)!.design,
            })
          }
        >
          <option value="" disabled>
            {title}
          </option>
          {DEMOS.map((demo) => (
            <option key={demo.file} value={demo.file}>
              {demo.design.title}
            </option>
          ))}
        </select>
      </label>
      <div className="buttons">
        <button
          type="button"
          aria-current={screen === NEW_JOB ? 'page' : undefined}
          onClick={() => {
            window.location.hash = '#new';
          }}
        >
          New job
        </button>
        <button type="button" onClick={() => picker.current?.click()}>
          Open…
        </button>
        <button type="button" aria-label="Earlier work" aria-expanded={earlier} onClick={toggleEarlier}>
          Earlier
        </button>
        <input
          ref={picker}
          type="file"
          accept=".json,application/json"
          hidden
          onChange={(event) => pick(event.target)}
        />
        <button type="button" onClick={() => saveFile(work)}>
          Save
        </button>
        <button type="button" aria-expanded={taking} onClick={toggleTaking}>
          Take along
        </button>
        <button type="button" onClick={() => work.undo()} disabled={!canUndo}>
          Undo
        </button>
        <button type="button" onClick={() => work.redo()} disabled={!canRedo}>
          Redo
        </button>
        <button type="button" onClick={() => work.store.setState({ system: system === 'inch' ? 'metric' : 'inch' })}>
          Units: {system === 'inch' ? 'inch, tenths' : 'mm, µm'}
        </button>
      </div>
    </header>
  );
}

/**
 * Whether a design that bears the title of a demo has other parts than that demo. Told by its parts alone, so that a
 * drag asks little.
 */
function ownWork({ title, seats }: Design): boolean {
  const demo = DEMOS.find(({ design }) => design.title === title);
  if (!demo || demo.design.seats === seats) return false;
  const known = compared.get(seats) ?? JSON.stringify(seats) !== JSON.stringify(demo.design.seats);
  compared.set(seats, known);
  return known;
}

const compared = new WeakMap<Design['seats'], boolean>();
