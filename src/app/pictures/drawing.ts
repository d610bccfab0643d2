/** What is drawn now, for pictures that follow it outside React: a drag then costs them no rendering. */
import type { Drawn } from './drawn.ts';

export interface Drawing {
  now(): Drawn;
  subscribe(changed: () => void): () => void;
}

export function createDrawing(first: Drawn): Drawing & { set(drawn: Drawn): void } {
  let drawn = first;
  const listeners = new Set<() => void>();
  return {
    now: () => drawn,
    set(next) {
      if (next === drawn) return;
      drawn = next;
      for (const listener of listeners) listener();
    },
    subscribe(changed) {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
  };
}
