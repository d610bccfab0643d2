/**
 * What the screens share: the design with its history, and how a person likes it shown. Lives outside React.
 * A change of the design is one step to undo; a drag is one step from its start to its end. Another design opened is
 * another piece of work: the one before stays kept (jobs/keeper.ts), and undo goes back to it.
 */
import { temporal } from 'zundo';
import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Design } from '../../design/definition.ts';
import type { DesignError } from '../../design/rules.ts';
import type { System } from '../../design/units.ts';
import type { Validation } from '../../design/validate.ts';
import type { Keeper, Outcome, Piece } from '../../jobs/keeper.ts';
import { USUAL_FACTOR } from '../../jobs/record.ts';
import { draftsOf, takenTogether, withDrafts } from './draft.ts';

export interface State {
  design: Design;
  /** The piece of work the design is; another one is kept by itself. */
  piece: string;
  /** What is to be said of what is kept, and what is not. */
  told: readonly Told[];
  /** What a file on offer was refused for; the design stays. */
  refused: { file: string; errors: DesignError[] } | null;
  system: System;
  /** How many times gaps and displacements are drawn larger. */
  factor: number;
  /** Opening of the bush in the scene, degrees. */
  sector: number;
  /** What the solid picture shows between the parts: the film, or the print each would show in blue. */
  skin: 'film' | 'blue';
  /** Whether the journal was turned while it was pressed, for the print. */
  turned: boolean;
  /** What stands in forms that are not taken yet, by the name of the form, and the piece of work it belongs to. */
  unfinished: Readonly<Record<string, { piece: string; written: unknown }>>;
  /**
   * Where the axis of the journal is being pulled to as it passes a station (mm, to the right and upward); null: let
   * go.
   */
  pull: { station: number; x: number; y: number } | null;
}

/**
 * `nowhere`: the browser keeps nothing · `full`: no room · `elsewhere`: open in another tab too · `aside`: put away by
 * opening another.
 */
export type Told =
  | { what: 'nowhere' | 'full' | 'elsewhere' }
  | { what: 'unreadable'; piece: Piece }
  | { what: 'aside'; piece: string; title: string; kept: boolean };

/** Without a keeper nothing is kept, and nothing said of it. */
export function createWork(initial: Design, keeper?: Keeper) {
  const started = keeper?.start();
  const kept = started?.found;
  const opening: Told[] = [
    ...(keeper && !keeper.keeps ? [{ what: 'nowhere' } as const] : []),
    ...(started?.unreadable ?? []).map((piece) => ({ what: 'unreadable', piece }) as const),
  ];
  const store = createStore<State>()(
    temporal(
      (): State => ({
        design: kept?.design ?? initial,
        piece: started?.piece ?? '',
        told: opening,
        refused: null,
        system: kept?.system ?? 'metric',
        factor: kept?.factor ?? USUAL_FACTOR,
        sector: 120,
        skin: 'film',
        turned: false,
        unfinished: {},
        pull: null,
      }),
      {
        partialize: ({ design, piece }) => ({ design, piece }),
        // What is the same to read is no step to undo: a slider let go tells its last value once more.
        equality: (a, b) => a.design === b.design || JSON.stringify(a.design) === JSON.stringify(b.design),
        limit: 200,
      },
    ),
  );
  let dragFrom: Design | null = null;
  const history = () => store.temporal.getState();
  const keeping = keepingOf(store, keeper, kept != null, () => dragFrom !== null);
  let opened = 0;

  return {
    store,
    ...keeping,
    /**
     * Changes the design by a function, and takes with it what was typed before and goes with it now (draft.ts);
     * refuses (and says so) a result that is no valid design. `kept`: what is assumed stays so where it changes.
     */
    change(edit: (design: Design) => Design, { kept = false } = {}): DesignError[] {
      const state = store.getState();
      const taken = takenTogether(state.design, edit(state.design), draftsOf(state), kept);
      if (!taken.ok) return taken.errors;
      store.setState({ design: taken.design, refused: null, unfinished: withDrafts(state, taken.drafts) });
      return [];
    },
    moveTo(position: number) {
      const bounded = Math.min(1000, Math.max(-1000, position));
      if (Number.isFinite(bounded)) store.setState({ design: { ...store.getState().design, position: bounded } });
    },
    /** Another piece of work; the one before is kept by itself. */
    open(file: string, result: Validation) {
      this.dragEnd();
      opened++;
      if (result.ok) keeping.replace(result.design, keeper?.newPiece() ?? `${opened}`);
      else store.setState({ refused: { file, errors: result.errors } });
    },
    /** Goes on with a piece of work that is kept; false where it cannot be read any more. */
    reopen(piece: string): boolean {
      this.dragEnd();
      const found = keeper?.takeUp(piece);
      if (found) keeping.replace(found.design, piece);
      return found != null;
    },
    dragStart() {
      dragFrom = store.getState().design;
      history().pause();
    },
    dragEnd() {
      if (dragFrom === null) return;
      const end = store.getState().design;
      store.setState({ design: dragFrom });
      history().resume();
      dragFrom = null;
      store.setState({ design: end });
    },
    /** Whether a drag goes on; opening a file, undo and redo end it. */
    dragging: () => dragFrom !== null,
    undo() {
      this.dragEnd();
      history().undo();
    },
    redo() {
      this.dragEnd();
      history().redo();
    },
  };
}

export type Work = ReturnType<typeof createWork>;

/**
 * Every change kept as it is made, but once for a drag; and what is to be said of that. `wasKept`: what it begins with
 * is kept already.
 */
function keepingOf(store: StoreApi<State>, keeper: Keeper | undefined, wasKept: boolean, dragging: () => boolean) {
  let outcome: Outcome = wasKept ? 'kept' : 'nowhere';
  const tell = (told: Told) =>
    store.setState(({ told: before }) => ({ told: [...before.filter(({ what }) => what !== told.what), told] }));
  const untell = (gone: (told: Told) => boolean) => {
    const { told } = store.getState();
    if (told.some(gone)) store.setState({ told: told.filter((one) => !gone(one)) });
  };
  keeper?.onElsewhere(() => tell({ what: 'elsewhere' }));
  store.subscribe(({ design, piece, system, factor }, before) => {
    if (
      !keeper ||
      dragging() ||
      (design === before.design && piece === before.piece && system === before.system && factor === before.factor)
    )
      return;
    outcome = keeper.keep(piece, { design, system, factor });
    if (outcome === 'full') tell({ what: 'full' });
    else untell(({ what }) => what === 'full');
    // Once something else is worked on, or the former piece is back, it need not be said where that went.
    const goneOn = piece === before.piece && design !== before.design;
    untell((told) => told.what === 'aside' && (goneOn || told.piece === piece));
  });
  return {
    keeper,
    /** Puts another piece of work in the place of this one, which stays kept where it is the person's own. */
    replace(design: Design, piece: string) {
      const before = store.getState();
      const kept = outcome === 'kept';
      store.setState({ design, piece, refused: null, pull: null });
      untell(({ what }) => what === 'aside' || what === 'elsewhere');
      if (keeper?.isOwn(before.design) && before.piece !== piece)
        tell({ what: 'aside', piece: before.piece, title: before.design.title ?? 'untitled', kept });
    },
    /** Whether work would be lost if the page were closed now. */
    unkept: () => keeper?.isOwn(store.getState().design) === true && outcome !== 'kept',
    close: (told: Told) => untell((one) => one === told),
  };
}
