/**
 * Whether a place in the scene is seen from where the camera stands: no metal of bush or journal on the way. Both are
 * asked at their half section at 0, which is all of them where they are round.
 */
import type { Drawn, Point } from '../drawn.ts';
import type { Frame } from '../revolve.ts';
import { linesAt } from '../sceneGeometry.ts';
import { radiusAt } from './noseCut.ts';

type Place = readonly [x: number, y: number, z: number];

interface Metal {
  frame: Frame;
  /** rad: half of the opening of the bush */
  half: number;
  journal: readonly Point[];
  bushes: readonly { bore: readonly Point[]; outside: number }[];
}

export const metalOf = (drawn: Drawn, frame: Frame, half: number): Metal => ({
  frame,
  half,
  ...linesAt(drawn, frame, 0),
});

/** Looks on the way to the eye, and how far (of the scene) metal is let off: oil lies on it. */
const LOOKS = 160;
const SKIN = 0.003;

export function isSeen({ frame, half, journal, bushes }: Metal, from: Place, eye: Place): boolean {
  const way = eye.map((to, k) => to - from[k]!);
  const long = Math.hypot(...way) || 1;
  // Everything lies within a scene's length of the middle.
  const until = Math.min(1, 2.3 / long);
  for (let i = 1; i <= LOOKS; i++) {
    const [x, y, z] = from.map((at, k) => at + (until * way[k]! * i) / LOOKS) as [number, number, number];
    const station = x / frame.scale + frame.centre;
    const r = Math.hypot(y, z) / frame.scale;
    const skin = SKIN / frame.scale;
    const steel = radiusAt(journal, station);
    if (steel !== null && r < steel - skin) return false;
    if (Math.abs(Math.atan2(y, z)) < half) continue;
    for (const { bore, outside } of bushes) {
      const inside = radiusAt(bore, station);
      if (inside !== null && r > inside + skin && r < outside - skin) return false;
    }
  }
  return true;
}
