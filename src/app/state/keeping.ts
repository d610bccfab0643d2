/** Hands every change to the keeper, once for a drag, and tells what becomes of it. */
import type { StoreApi } from 'zustand/vanilla';
import type { Keeper } from '../../jobs/keeper.ts';
import type { Opened, OpenJob } from '../../jobs/shelf.ts';
import { photographCount } from '../record/photographCount.ts';
import { asOwn } from './draft.ts';
import { type Notice, unread } from './notices.ts';
import type { State } from './store.ts';

export function keepingOf(
  store: StoreApi<State>,
  keeper: Keeper | undefined,
  dragging: () => boolean,
  { follow }: { follow(job: OpenJob): void },
) {
  const tell = (notice: Notice) =>
    store.setState(({ notices: before }) => ({
      notices: [...before.filter(({ what }) => what !== notice.what), notice],
    }));
  const untell = (gone: (notice: Notice) => boolean) => {
    const { notices } = store.getState();
    if (notices.some(gone)) store.setState({ notices: notices.filter((one) => !gone(one)) });
  };
  const untellAll = (...kinds: Notice['what'][]) => untell(({ what }) => kinds.includes(what));
  const listeners = new Set<() => void>();
  const keepNow = () => keeper?.keep(keptOf(store.getState()));

  keeper?.hear({
    outcome: (outcome) => {
      if (outcome === 'kept') untellAll('full', 'failed');
      else tell({ what: outcome });
      for (const listener of listeners) listener();
    },
    held: (held) => {
      store.setState((state) => ({ elsewhere: !held, unfinished: held ? asOwn(state) : state.unfinished }));
      if (held) untellAll('elsewhere');
      else tell({ what: 'elsewhere', refused: 0 });
    },
    followed: follow,
    evicted: () => {
      tell({ what: 'evicted' });
      if (store.getState().example === null) keepNow();
    },
    listed: () => {
      for (const listener of listeners) listener();
    },
    remind: (saved) => tell({ what: 'file', saved }),
  });

  /** jobs that were kept before they were opened here */
  const known = new Set<string>();
  if (store.getState().example === null) known.add(store.getState().piece);
  let last: unknown[] = keptParts(store.getState());
  store.subscribe((state, before) => {
    if (!keeper || dragging()) return;
    const parts = keptParts(state);
    if (parts.every((part, i) => part === last[i])) return;
    last = parts;
    if (state.elsewhere) return;
    const anew = state.piece !== before.piece;
    // Once something else is worked on, or the former job is back, it need not be said where that went.
    const goneOn = !anew && state.design !== before.design;
    untell((notice) => notice.what === 'aside' && (goneOn || notice.piece === state.piece));
    if (state.example !== null) {
      if (!keeper.isOwn(state.design) && !hasForms(state)) return;
      store.setState({ example: null });
    }
    if (!anew || !known.has(state.piece)) keepNow();
  });

  return {
    keeper,
    /** Said when something is tried that only the window that has the job may do; false. */
    refuse(): false {
      const before = store.getState().notices.find(({ what }) => what === 'elsewhere');
      tell({ what: 'elsewhere', refused: before?.what === 'elsewhere' ? before.refused + 1 : 1 });
      return false;
    },
    /** Another job is about to be opened: where this one stays is said. */
    leaving() {
      const { piece, example, design } = store.getState();
      untellAll('aside', 'elsewhere', 'older');
      if (keeper && example === null) tell({ what: 'aside', piece, title: design.title ?? 'untitled' });
    },
    reopened(opened: Opened) {
      if (opened.ok) {
        known.add(opened.job.id);
        if (opened.job.older) tell({ what: 'older' });
        if (!keeper?.held()) tell({ what: 'elsewhere', refused: 0 });
      } else if (opened.id !== null) tell(unread(opened.id, opened));
    },
    /** Called when the list of jobs may have changed. */
    onListed(listener: () => void): () => void {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    /** Whether work would be lost if the page were closed now. */
    unkept: () =>
      keeper !== undefined && store.getState().example === null && (keeper.lasting !== 'device' || keeper.unkept()),
    /** A file of the job was saved, or of all: nobody need be reminded of that. */
    fileSaved(all?: boolean) {
      keeper?.fileSaved(all);
      untellAll('file');
      const count = photographCount(store.getState().design);
      if (count > 0) tell({ what: 'photographs', count });
    },
    takeOver: () => keeper?.takeOver(),
    close: (notice: Notice) => untell((one) => one === notice),
  };
}

/** What is looked at to know whether there is anything to keep. */
const keptParts = ({ design, system, factor, unfinished, piece }: State) => [design, system, factor, unfinished, piece];

const keptOf = ({ design, system, factor, unfinished, piece }: State) => ({
  design,
  system,
  factor,
  unfinished: Object.fromEntries(
    Object.entries(unfinished).flatMap(([name, form]) => (form.piece === piece ? [[name, form.written]] : [])),
  ),
});

const hasForms = ({ unfinished, piece }: State) => Object.values(unfinished).some((form) => form.piece === piece);
