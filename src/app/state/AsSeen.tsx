/**
 * What is out of sight stands still while a hand moves something, and follows when it comes into sight or the hand lets
 * go: so a drag draws no more than is looked at.
 */
import { memo, type ReactNode, useEffect, useMemo, useRef, useState } from 'react';
import type { State, Work } from './store.ts';

/** `children` draws from the work it is given, whose store stands still meanwhile. */
export function AsSeen({ work, children }: { work: Work; children(work: Work): ReactNode }) {
  const box = useRef<HTMLDivElement>(null);
  const following = useMemo(() => followedAsSeen(work), [work]);
  useEffect(() => {
    const observer = new IntersectionObserver((entries) => following.see(entries.at(-1)!.isIntersecting));
    observer.observe(box.current!);
    return () => observer.disconnect();
  }, [following]);
  return <div ref={box}>{children(following.work)}</div>;
}

/** The same for what is drawn from above: what it is given stands still instead. */
export function WhileSeen({ work, children }: { work: Work; children: ReactNode }) {
  const box = useRef<HTMLDivElement>(null);
  const [seen, setSeen] = useState(true);
  useEffect(() => {
    const observer = new IntersectionObserver((entries) => setSeen(entries.at(-1)!.isIntersecting));
    observer.observe(box.current!);
    return () => observer.disconnect();
  }, []);
  return (
    <div ref={box}>
      <Held still={!seen && work.dragging()}>{children}</Held>
    </div>
  );
}

/** What stands still stays as it was last drawn. */
const Held = memo(
  ({ children }: { still: boolean; children: ReactNode }) => children,
  (_, { still }) => still,
);

/** The work, with a store that tells nothing new while it is unseen and a hand moves something. */
export function followedAsSeen(work: Work): { work: Work; see(seen: boolean): void } {
  let inSight = true;
  let shown = work.store.getState();
  const tellers = new Set<() => void>();
  const stands = () => !inSight && work.dragging();
  const getState = (): State => {
    if (!stands()) shown = work.store.getState();
    return shown;
  };
  const subscribe = (listener: (now: State, before: State) => void) => {
    let told = getState();
    const tell = () => {
      const before = told;
      told = getState();
      if (told !== before) listener(told, before);
    };
    tellers.add(tell);
    const leave = work.store.subscribe(tell);
    return () => {
      tellers.delete(tell);
      leave();
    };
  };
  return {
    work: { ...work, store: { ...work.store, getState, subscribe } },
    see: (seen) => {
      inSight = seen;
      for (const tell of tellers) tell();
    },
  };
}
