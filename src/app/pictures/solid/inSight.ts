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
  const [dx, dy, dz] = [eye[0] - from[0], eye[1] - from[1], eye[2] - from[2]];
  // Everything lies within a scene's length of the middle.
  const until = Math.min(1, 2.3 / (Math.hypot(dx, dy, dz) || 1)) / LOOKS;
  const skin = SKIN / frame.scale;
  // Asked of every label in every frame: no list is made on the way.
  for (let i = 1; i <= LOOKS; i++) {
    const y = from[1] + until * dy * i;
    const z = from[2] + until * dz * i;
    const station = (from[0] + until * dx * i) / frame.scale + frame.centre;
    const r = Math.sqrt(y * y + z * z) / frame.scale;
    const steel = radiusAt(journal, station);
    if (steel !== null && r < steel - skin) return false;
    if (Math.abs(Math.atan2(y, z)) < half) continue;
    for (const { bore, outside } of bushes) {
      if (r >= outside - skin) continue;
      const inside = radiusAt(bore, station);
      if (inside !== null && r > inside + skin) return false;
    }
  }
  return true;
}
