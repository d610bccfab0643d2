/**
 * A value that stays what it was while the design is being dragged, so that the ground does not move under the hand.
 */
import { useRef } from 'react';
import type { Work } from './store.ts';

export function useHeld<T>(value: T, work: Work): T {
  const held = useRef(value);
  if (!work.dragging()) held.current = value;
  return held.current;
}
