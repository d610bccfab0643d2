/**
 * The work: a design, how it is shown, and what can be undone. Whatever the browser keeps of it is kept by the keeper
 * (src/jobs).
 */

import { createStore } from 'zustand/vanilla';
import type { Design } from '../../design/definition.ts';
import type { Millimetres } from '../../design/dimension.ts';
import type { System } from '../../design/units.ts';
import type { DesignError, Validation } from '../../design/validate.ts';
import { createHistory } from '../../jobs/history.ts';
import type { Keeper, Started } from '../../jobs/keeper.ts';
import { USUAL_FACTOR } from '../../jobs/record.ts';
import type { OpenJob } from '../../jobs/shelf.ts';
import { createBegun } from './begun.ts';
import { draftsOf, takenTogether, withDrafts, withTypedHere } from './draft.ts';
import { keepingOf } from './keeping.ts';
import { firstNotices, type Notice } from './notices.ts';

/** Why something on offer was not opened. `others`: how many jobs of the same file are on this device now. */
export interface Refusal {
  file: string;
  errors: DesignError[];
  others?: number;
}

export interface State {
  design: Design;
  /** The job the design is of. */
  piece: string;
  /** The example that is being looked at, by its file; null: a job. */
  example: string | null;
  /** Whether another window has this job; this one then follows it. */
  elsewhere: boolean;
  /** What can be undone and done again, in steps. */
  steps: { back: number; forth: number };
  /** What is to be said of what is kept, and what is not. */
  notices: readonly Notice[];
  /** What a file on offer was refused for; the design stays. */
  refused: Refusal | null;
  system: System;
  /** How many times gaps and displacements are drawn larger. */
  factor: number;
  /** Whether that factor stays as it is drawn now, whatever moves. */
  scaleLocked: boolean;
  /** Opening of the bush in the scene, degrees. */
  sector: number;
  /** What the solid picture shows between the parts: the film, or the print each would show in blue. */
  skin: 'film' | 'blue';
  /** Whether the journal was turned while it was pressed, for the print. */
  turned: boolean;
  /** What stands in forms that are not taken yet, by the name of the form, and the job it belongs to. */
  unfinished: Readonly<Record<string, { piece: string; written: unknown }>>;
  /**
   * Where the axis of the journal is being pulled to as it passes a station (mm, to the right and upward); null: let
   * go.
   */
  pull: { station: number; x: number; y: number } | null;
  /** The job whose pair is to be drawn as it is in the design, though trials tell of another. */
  drawnOf?: string | null;
}

const ELSEWHERE: DesignError = {
  path: '',
  message: 'this job is open in another window; take it over here first',
};

/** Without a keeper nothing is kept, and nothing said of it. */
export function createWork(initial: Design, keeper?: Keeper, started?: Started) {
  const kept = started?.job;
  let history = kept?.history ?? createHistory();
  const example = kept || !keeper || keeper.isOwn(initial) ? null : (started?.example ?? '');
  const store = createStore<State>()(() => ({
    design: kept?.found.design ?? initial,
    piece: kept?.id ?? keeper?.begin(history, example) ?? '',
    example,
    elsewhere: started?.held === false,
    steps: stepsOf(history),
    notices: started ? firstNotices(started) : [],
    refused: null,
    system: kept?.found.system ?? 'metric',
    factor: kept?.found.factor ?? USUAL_FACTOR,
    scaleLocked: false,
    sector: 120,
    skin: 'film',
    turned: false,
    unfinished: kept ? formsOf(kept) : {},
    pull: null,
  }));
  let dragFrom: Design | null = null;
  let opened = 0;
  const keeping = keepingOf(store, keeper, () => dragFrom !== null, {
    follow: (job) => {
      dragFrom = null;
      take(job, false);
    },
  });
  const now = () => keeper?.device.elapsed() ?? performance.now();
  const begun = createBegun(started?.begun, (written) => keeper?.keepBegun(written), now);

  /** A job in the place of another. */
  function take({ id, found, history: steps }: OpenJob, anew: boolean) {
    history = steps;
    const before = store.getState();
    const forms = formsOf({ id, found });
    store.setState({
      design: found.design,
      piece: id,
      example: null,
      refused: null,
      steps: stepsOf(history),
      unfinished: anew ? forms : withTypedHere(forms, before),
      ...(anew && { system: found.system, factor: found.factor, pull: null, elsewhere: keeper?.held() === false }),
    });
  }
  /** Says why where this window may not write. */
  const mayWrite = () => !store.getState().elsewhere || keeping.refuse();
  const set = (design: Design) => {
    const before = store.getState().design;
    if (dragFrom === null) history.push(before, design, now());
    store.setState({ design, refused: null, steps: stepsOf(history) });
  };
  const stepTo = (step: (now: Design) => Design) => {
    if (!mayWrite()) return;
    const design = step(store.getState().design);
    store.setState({ design, steps: stepsOf(history) });
  };

  const work = {
    store,
    begun,
    ...keeping,
    mayWrite,
    /**
     * Changes the design by a function, and takes with it what was typed before and goes with it now (draft.ts);
     * refuses (and says so) a result that is no valid design. `kept`: what is assumed stays so where it changes.
     */
    change(edit: (design: Design) => Design, { kept = false } = {}): DesignError[] {
      if (!mayWrite()) return [ELSEWHERE];
      const state = store.getState();
      const taken = takenTogether(state.design, edit(state.design), draftsOf(state), {
        kept,
        system: state.system,
      });
      if (!taken.ok) return taken.errors;
      store.setState({ unfinished: withDrafts(state, taken.drafts) });
      set(taken.design);
      return [];
    },
    /** A state of before as it was, what was assumed of it then too. */
    backTo(design: Design): DesignError[] {
      if (!mayWrite()) return [ELSEWHERE];
      set(design);
      return [];
    },
    moveTo(position: Millimetres) {
      const bounded = Math.min(1000, Math.max(-1000, position));
      if (Number.isFinite(bounded) && mayWrite()) set({ ...store.getState().design, position: bounded });
    },
    /**
     * Another job, or an example, which becomes one once it is changed; the one before stays kept. `system`: its units,
     * where they are its own.
     */
    open(file: string, result: Validation, system: System = store.getState().system) {
      work.dragEnd();
      if (!result.ok) {
        store.setState({ refused: { file, errors: result.errors } });
        return;
      }
      const { design } = result;
      const example = keeper && !keeper.isOwn(design) ? file : null;
      keeping.leaving();
      history = createHistory();
      opened++;
      store.setState({
        design,
        piece: keeper?.begin(history, example) ?? `${opened}`,
        example,
        system,
        elsewhere: false,
        refused: null,
        pull: null,
        steps: stepsOf(history),
      });
    },
    /** Goes on with a job that is kept; false where it cannot be read. */
    async reopen(id: string): Promise<boolean> {
      if (!keeper) return false;
      if (id === store.getState().piece && store.getState().example === null) return true;
      work.dragEnd();
      keeping.leaving();
      const found = await keeper.open(id);
      keeping.reopened(found);
      if (found.ok) take(found.job, true);
      return found.ok;
    },
    dragStart() {
      if (mayWrite()) dragFrom = store.getState().design;
    },
    dragEnd() {
      if (dragFrom === null) return;
      history.push(dragFrom, store.getState().design);
      dragFrom = null;
      // Told once more, so that what follows the work knows that it may be kept.
      store.setState({ steps: stepsOf(history) });
    },
    /** What is not kept yet is, the state of a drag with it: the page may be closed next. */
    keepAll() {
      work.dragEnd();
      const { example, design } = store.getState();
      if (example !== null) keeper?.stand(design.position ?? 0);
      void keeper?.flush();
    },
    /** What undo would take back; null: nothing. The same object until there is another. */
    lastStep: () => history.done,
    /** Whether a drag goes on; opening a file, undo and redo end it. */
    dragging: () => dragFrom !== null,
    /** The design as it was taken hold of. */
    takenHold: () => dragFrom,
    undo() {
      work.dragEnd();
      stepTo((design) => history.undo(design));
    },
    redo() {
      work.dragEnd();
      stepTo((design) => history.redo(design));
    },
  };
  return work;
}

export type Work = ReturnType<typeof createWork>;

const stepsOf = ({ first, at, end }: { first: number; at: number; end: number }) => ({
  back: at - first,
  forth: end - at,
});

const formsOf = ({ id, found }: Pick<OpenJob, 'id' | 'found'>): State['unfinished'] =>
  Object.fromEntries(Object.entries(found.unfinished).map(([name, written]) => [name, { piece: id, written }]));
