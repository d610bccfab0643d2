/** The frame: the bar at the top and one screen below it, named in the address. */
import { lazy, Suspense, useEffect, useLayoutEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { useStore } from 'zustand';
import { DraftLine } from './frame/DraftLine.tsx';
import { Guard, GuardedWork } from './frame/Guard.tsx';
import { Header } from './frame/Header.tsx';
import { onDemand } from './frame/onDemand.tsx';
import { NEW_JOB, PAGES, SCREENS, type ScreenEntry } from './screens/index.ts';
import { openDropped } from './state/files.ts';
import { type Coloured, colouredNow, keepColours, keptColours, seatColoursStyle } from './state/seatColours.ts';
import type { Work } from './state/store.ts';
import { useLeaving } from './state/useLeaving.ts';
import { useLink } from './takeAlong/useLink.ts';

const Keeping = onDemand(() => import('./frame/Keeping.tsx'), { what: 'What is to be said of kept work' });
const Refused = onDemand(() => import('./frame/Refused.tsx'), { what: 'Why the file was not opened' });
const TakeAlong = onDemand(() => import('./takeAlong/TakeAlong.tsx'), { what: 'What can be taken along' });

/** Once the first picture stands; without it the page works as it did, while there is a network. */
const Newer = lazy(() =>
  new Promise<void>((idle) => (window.requestIdleCallback ?? window.setTimeout)(() => idle()))
    .then(() => import('./frame/Newer.tsx'))
    .catch(() => ({ default: () => null })),
);

export function App({ work }: { work: Work }) {
  const screen = useScreen();
  const [takeOn, setTakeOn] = useState<string | null>(null);
  const taking = takeOn === screen.name;
  useShortcuts(screen === NEW_JOB ? work.begun : work);
  useLink(work);
  useFromTheTop(screen);
  useLeaving(work);
  const noticed = useStore(work.store, ({ notices }) => notices.length > 0);
  const refused = useStore(work.store, (state) => state.refused !== null);
  useDropped(work);
  const colours = useSeatColours(work);
  return (
    <div className="app">
      <Header work={work} screen={screen} taking={taking} toggleTaking={() => setTakeOn(taking ? null : screen.name)} />
      {refused && <Refused work={work} />}
      {noticed && <Keeping work={work} />}
      <Suspense>
        <Newer work={work} />
      </Suspense>
      {taking && <TakeAlong work={work} close={() => setTakeOn(null)} />}
      <DraftLine work={work} />
      <main style={colours} className={`at-${screen.name.toLowerCase()}`}>
        <GuardedWork value={work}>
          <Guard key={screen.name} what="This screen">
            <screen.component work={work} />
          </Guard>
        </GuardedWork>
      </main>
      <footer>
        Advice, to be proved by measurement before metal is cut. Guards, eye protection and the machine’s own manual
        come first. <a href="#words">The words of the trade</a>
      </footer>
    </div>
  );
}

/** Told anew only where seats come, go or are called otherwise. */
function useSeatColours(work: Work) {
  useStore(work.store, ({ piece, design }) => [piece, ...design.seats.map(({ name }) => name)].join('\n'));
  const { piece, design } = work.store.getState();
  const [held, setHeld] = useState<Coloured | null>(() => keptColours(piece, design.seats));
  const now = colouredNow(held, piece, design.seats);
  if (now !== held) setHeld(now);
  useEffect(() => keepColours(now), [now]);
  const { colours } = now;
  return useMemo(() => seatColoursStyle(colours), [colours]);
}

/** The screen that the address names, perhaps with a part of it behind a stroke; Fit where it names none. */
function useScreen(): ScreenEntry {
  const hash = useSyncExternalStore(
    (changed) => {
      window.addEventListener('hashchange', changed);
      return () => window.removeEventListener('hashchange', changed);
    },
    () => window.location.hash,
  );
  const opening = SCREENS.find(({ name }) => name === 'Fit')!;
  return [...SCREENS, ...PAGES].find(({ name }) => `#${name.toLowerCase()}` === hash.split('/')[0]) ?? opening;
}

/** Another screen begins at its top; a part that the address names is brought into sight after that. */
function useFromTheTop({ name }: ScreenEntry) {
  // biome-ignore lint/correctness/useExhaustiveDependencies: another screen, nothing else
  useLayoutEffect(() => {
    window.scrollTo(0, 0);
  }, [name]);
}

/** Undo and redo by the usual keys, but not within a field, which has its own. */
function useShortcuts(work: Pick<Work, 'undo' | 'redo'>) {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (
        !(event.ctrlKey || event.metaKey) ||
        event.target instanceof HTMLInputElement ||
        event.target instanceof HTMLTextAreaElement
      )
        return;
      const redo = event.key === 'y' || (event.shiftKey && event.key.toLowerCase() === 'z');
      if (!redo && event.key !== 'z') return;
      event.preventDefault();
      if (redo) work.redo();
      else work.undo();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [work]);
}

/** A file dropped anywhere on the page. */
function useDropped(work: Work) {
  useEffect(() => {
    const onDragOver = (event: DragEvent) => event.preventDefault();
    const onDrop = (event: DragEvent) => {
      event.preventDefault();
      void openDropped(work, event.dataTransfer);
    };
    window.addEventListener('dragover', onDragOver);
    window.addEventListener('drop', onDrop);
    return () => {
      window.removeEventListener('dragover', onDragOver);
      window.removeEventListener('drop', onDrop);
    };
  }, [work]);
}
