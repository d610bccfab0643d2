/** A spindle that turns in the picture: slowed to what an eye can follow, its marks alone move. */

import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { seconds } from '../../../report/convert.ts';
import type { Look } from './look.ts';

/** rad/s, whatever the spindle's own speed. */
const RATE = 0.9;
/** A frame longer than this (ms) is no motion; so many of them in a row, and it stands still. */
const SLOW = 120;
const ENOUGH = 8;

/** `turns`: -1, 0 or 1, from x toward y seen from the nose. */
export function useTurning({ shared }: Look, turns: number, onSlow: () => void): void {
  const invalidate = useThree((state) => state.invalidate);
  const last = useRef<number | null>(null);
  const slow = useRef(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the other way round it begins anew
  useEffect(() => {
    last.current = null;
    slow.current = 0;
    invalidate();
  }, [turns, invalidate]);
  useFrame(() => {
    if (turns === 0) return;
    const now = performance.now();
    const passed = last.current === null ? 0 : now - last.current;
    last.current = now;
    slow.current = passed > SLOW ? slow.current + 1 : 0;
    if (slow.current >= ENOUGH) return onSlow();
    // The scene's angle runs the other way: sceneGeometry.ts.
    shared.turn.value = (shared.turn.value - turns * RATE * seconds(Math.min(passed, SLOW))) % (2 * Math.PI);
    invalidate();
  });
}
