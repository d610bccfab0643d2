/** The way back from a nose pulled aside: a button, and Escape wherever the focus is. */
import { memo, useEffect } from 'react';
import { useStore } from 'zustand';
import type { State, Work } from '../state/store.ts';
import { letGo } from './useNoseHand.ts';

const isPulling = ({ pull }: State) => pull !== null;

export const LetGo = memo(function LetGo({ work }: { work: Work }) {
  const pulling = useStore(work.store, isPulling);
  useEffect(() => {
    if (!pulling) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.key === 'Escape' && !event.defaultPrevented) letGo(work);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [work, pulling]);
  if (!pulling) return null;
  return (
    <button
      type="button"
      className="let-go"
      title="The nose goes back to the middle (Escape)"
      onClick={() => letGo(work)}
    >
      Let go
    </button>
  );
});
