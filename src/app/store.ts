/**
 * What the screens share: the design with its history, and how a person likes it shown. Lives outside React.
 * A change of the design is one step to undo; a drag is one step from its start to its end.
 */
import { temporal } from 'zundo';
import { createStore } from 'zustand/vanilla';
import type { Design } from '../design/definition.ts';
import type { DesignError } from '../design/rules.ts';
import type { System } from '../design/units.ts';
import { type Validation, validateDesign } from '../design/validate.ts';

export interface State {
  design: Design;
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
  /** Where the axis of the journal is being pulled to as it passes a station (mm, to the right and upward); null: let go. */
  pull: { station: number; x: number; y: number } | null;
}

const KEY = 'conepair.work.1';

export function createWork(initial: Design, storage: Storage | undefined) {
  const kept = readKept(storage);
  const store = createStore<State>()(
    temporal((): State => ({ design: kept?.design ?? initial, refused: null, system: kept?.system ?? 'metric', factor: kept?.factor ?? 400, sector: 120, skin: 'film', turned: false, pull: null }), {
      partialize: ({ design }) => ({ design }),
      // What is the same to read is no step to undo: a slider let go tells its last value once more.
      equality: (a, b) => a.design === b.design || JSON.stringify(a.design) === JSON.stringify(b.design),
      limit: 200,
    }),
  );
  let dragFrom: Design | null = null;
  store.subscribe(({ design, system, factor }) => {
    if (dragFrom === null) keep(storage, { design, system, factor });
  });
  const history = () => store.temporal.getState();

  return {
    store,
    /** Changes the design by a function; refuses (and says so) a result that is no valid design. */
    change(edit: (design: Design) => Design): DesignError[] {
      const result = validateDesign(edit(store.getState().design));
      if (!result.ok) return result.errors;
      store.setState({ design: result.design, refused: null });
      return [];
    },
    moveTo(position: number) {
      const bounded = Math.min(1000, Math.max(-1000, position));
      if (Number.isFinite(bounded)) store.setState({ design: { ...store.getState().design, position: bounded } });
    },
    open(file: string, result: Validation) {
      this.dragEnd();
      store.setState(result.ok ? { design: result.design, refused: null, pull: null } : { refused: { file, errors: result.errors } });
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

type Kept = Pick<State, 'design' | 'system' | 'factor'>;

/** Keeps the work on the device; where the device has no room or forbids it, the work goes on unkept. */
function keep(storage: Storage | undefined, kept: Kept): void {
  try {
    storage?.setItem(KEY, JSON.stringify(kept));
  } catch {
    // Nothing is lost that was not going to be: the design can still be saved as a file.
  }
}

function readKept(storage: Storage | undefined): Kept | null {
  try {
    const kept = JSON.parse(storage?.getItem(KEY) ?? 'null') as { design?: unknown; system?: unknown; factor?: unknown } | null;
    const result = validateDesign(kept?.design);
    if (!kept || !result.ok) return null;
    return { design: result.design, system: kept.system === 'inch' ? 'inch' : 'metric', factor: typeof kept.factor === 'number' && kept.factor >= 1 && kept.factor <= 5000 ? kept.factor : 400 };
  } catch {
    return null;
  }
}
