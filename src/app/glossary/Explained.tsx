/**
 * A sentence of which every trade word can be asked what it means. It stands as it is at once; the glossary comes when
 * the page has nothing else to do.
 */
import { type ComponentType, memo, useSyncExternalStore } from 'react';

interface Props {
  children: string;
}

let Asked: ComponentType<Props> | null = null;
let loading = false;
const waiting = new Set<() => void>();

function load() {
  if (loading) return;
  loading = true;
  import('./Words.tsx').then(
    ({ default: Words }) => {
      Asked = Words;
      for (const told of waiting) told();
    },
    // The sentence stands without; the next one asks again.
    () => {
      loading = false;
    },
  );
}

const whenIdle = (work: () => void) =>
  'requestIdleCallback' in window ? requestIdleCallback(work, { timeout: 2000 }) : setTimeout(work, 500);

function subscribe(told: () => void) {
  waiting.add(told);
  if (Asked === null) whenIdle(load);
  return () => {
    waiting.delete(told);
  };
}

export const Explained = memo(function Explained({ children }: Props) {
  const Words = useSyncExternalStore(
    subscribe,
    () => Asked,
    () => null,
  );
  return Words === null ? children : <Words>{children}</Words>;
});
