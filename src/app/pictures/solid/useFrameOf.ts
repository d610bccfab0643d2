/** The frame of a drawing, and what is to fill the picture. */
import { useCallback, useRef, useSyncExternalStore } from 'react';
import type { Drawing } from '../drawing.ts';
import type { Frame } from '../revolve.ts';
import { discsOf, frameOf } from '../sceneGeometry.ts';
import type { Disc } from './camera.ts';

/** The same object while its numbers are the same. */
export function useFrameOf(drawing: Drawing): Frame {
  const last = useRef<Frame>(null);
  return useSyncExternalStore(drawing.subscribe, () => {
    const next = frameOf(drawing.now());
    if (!last.current || Object.entries(next).some(([key, value]) => last.current![key as keyof Frame] !== value))
      last.current = next;
    return last.current;
  });
}

/** What a view shows whole: everything, or where it is cut the bush that is cut. */
export function useDiscs(drawing: Drawing, frame: Frame): (cut: number | null) => readonly Disc[] {
  return useCallback(
    (cut) => {
      const { bushes, journal } = discsOf(drawing.now(), frame);
      if (cut === null) return [...bushes, ...journal];
      // Two faces of a bush, one after the other.
      const here = bushes.flatMap(([x, r], i) => {
        const nose = bushes[i + 1];
        return i % 2 === 0 && nose && x <= cut && nose[0] >= cut ? [r] : [];
      });
      return [[cut, here[0] ?? frame.halfHeight]];
    },
    [drawing, frame],
  );
}
