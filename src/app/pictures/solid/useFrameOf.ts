/** The frame of a drawing, the same object while its numbers are the same. */
import { useRef, useSyncExternalStore } from 'react';
import type { Drawing } from '../drawing.ts';
import type { Frame } from '../revolve.ts';
import { frameOf } from '../sceneGeometry.ts';

export function useFrameOf(drawing: Drawing): Frame {
  const last = useRef<Frame>(null);
  return useSyncExternalStore(drawing.subscribe, () => {
    const next = frameOf(drawing.now());
    if (!last.current || Object.entries(next).some(([key, value]) => last.current![key as keyof Frame] !== value))
      last.current = next;
    return last.current;
  });
}
