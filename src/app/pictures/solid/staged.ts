/** How the pair is opened for a view, followed as it eases from one view to the next. */
export interface Opening {
  /** station (scene lengths) beyond which everything is left out; infinite where nothing is */
  clip: number;
  /** degrees left out of the bush */
  sector: number;
}

export interface Staged {
  now(): Opening;
  set(next: Opening): void;
  subscribe(changed: () => void): () => void;
}

export function createStaged(first: Opening): Staged {
  let opening = first;
  const listeners = new Set<() => void>();
  return {
    now: () => opening,
    set(next) {
      if (next.clip === opening.clip && next.sector === opening.sector) return;
      opening = next;
      for (const listener of listeners) listener();
    },
    subscribe(changed) {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
  };
}
