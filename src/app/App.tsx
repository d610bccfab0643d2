/** The frame: the bar with files, demos, history and units, and the screen below it. */
import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { parseDesign } from '../design/validate.ts';
import { DEMOS } from './demos.ts';
import { SCREENS } from './screens/index.ts';
import type { Work } from './store.ts';

export function App({ work }: { work: Work }) {
  const { design, refused, system } = useStore(work.store);
  const history = useStore(work.store.temporal);
  const picker = useRef<HTMLInputElement>(null);
  const Screen = SCREENS[0]!.component;

  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.target instanceof HTMLInputElement) return;
      const redo = event.key === 'y' || (event.shiftKey && event.key.toLowerCase() === 'z');
      if (!redo && event.key !== 'z') return;
      event.preventDefault();
      if (redo) work.redo();
      else work.undo();
    };
    const onDragOver = (event: DragEvent) => event.preventDefault();
    const onDrop = (event: DragEvent) => {
      event.preventDefault();
      void openFile(work, event.dataTransfer?.files[0]);
    };
    window.addEventListener('keydown', onKey);
    window.addEventListener('dragover', onDragOver);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('keydown', onKey);
      window.removeEventListener('dragover', onDragOver);
      window.removeEventListener('drop', onDrop);
    };
  }, [work]);

  const pick = async (input: HTMLInputElement) => {
    await openFile(work, input.files?.[0]);
    input.value = '';
  };
  const save = () => {
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([`${JSON.stringify(design, null, 2)}\n`], { type: 'application/json' }));
    link.download = `${(design.title ?? 'design').toLowerCase().replace(/[^a-z0-9]+/g, '-')}.conepair.json`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 1000);
  };

  return (
    <div className="app">
      <header>
        <h1>Conepair</h1>
        <label>
          <span>Demo design</span>
          <select value="" onChange={(event) => work.open(event.target.value, { ok: true, design: DEMOS.find((d) => d.file === event.target.value)!.design })}>
            <option value="" disabled>
              {design.title ?? 'untitled'}
            </option>
            {DEMOS.map((demo) => (
              <option key={demo.file} value={demo.file}>
                {demo.design.title}
              </option>
            ))}
          </select>
        </label>
        <div className="buttons">
          <button type="button" onClick={() => picker.current?.click()}>
            Open…
          </button>
          <input ref={picker} type="file" accept=".json,application/json" hidden onChange={(event) => pick(event.target)} />
          <button type="button" onClick={save}>
            Save
          </button>
          <button type="button" onClick={() => work.undo()} disabled={history.pastStates.length === 0}>
            Undo
          </button>
          <button type="button" onClick={() => work.redo()} disabled={history.futureStates.length === 0}>
            Redo
          </button>
          <button type="button" onClick={() => work.store.setState({ system: system === 'inch' ? 'metric' : 'inch' })}>
            Units: {system === 'inch' ? 'inch, tenths' : 'mm, µm'}
          </button>
        </div>
      </header>
      {refused && (
        <div role="alert" className="refused">
          <h2>
            {refused.file} was not opened: {refused.errors.length} {refused.errors.length === 1 ? 'error' : 'errors'}. What was on the screen is unchanged.
          </h2>
          <ul>
            {refused.errors.slice(0, 50).map(({ path, message }) => (
              <li key={path + message}>
                {path && <code>{path}</code>} {message}
              </li>
            ))}
          </ul>
          <button type="button" onClick={() => work.store.setState({ refused: null })}>
            Close
          </button>
        </div>
      )}
      <main>
        <Screen work={work} />
      </main>
      <footer>Advice, to be proved by measurement before metal is cut. Guards, eye protection and the machine’s own manual come first.</footer>
    </div>
  );
}

async function openFile(work: Work, file: File | undefined): Promise<void> {
  if (file) work.open(file.name, parseDesign(await file.text()));
}
