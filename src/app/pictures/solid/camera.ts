/** From where the pair is looked at: the views, and how far off it just fills the picture. */
import type { Drawn } from '../drawn.ts';
import type { Frame } from '../revolve.ts';

/** Toward the camera from the middle; x is the axis, y up. */
export type Way = readonly [x: number, y: number, z: number];

export const VIEWS = ['Three-quarter', 'From the side', 'From the nose'] as const;
export type View = (typeof VIEWS)[number];

/** Over the opening of the bush, from the side to which most of a steep seat faces. */
const AT: Record<View, Way> = {
  'Three-quarter': [0.46, 0.34, 0.82],
  'From the side': [0, 0, 1],
  'From the nose': [1, 0, 0],
};

/** Sine of the half angle from which a seat is seen from one end only. */
const FACING = 0.25;

/** `side`: 1 toward the nose, -1 toward the rear; all but the nose is seen from there. */
export const wayTo = (view: View, side: 1 | -1): Way => {
  const [x, y, z] = AT[view];
  return view === 'Three-quarter' ? [side * x, y, z] : [x, y, z];
};

/**
 * From which end the journal's seats are seen: a steep one hides behind its own collar from the end to which it
 * widens. The end from which more of their slopes are seen; the nose where there is no difference.
 */
export function seenFrom({ seats }: Drawn): 1 | -1 {
  let toward = 0;
  for (const { journal } of seats) {
    const [first, last] = [journal[0], journal[journal.length - 1]];
    if (!first || !last) continue;
    const [dz, dr] = [last[0] - first[0], last[1] - first[1]];
    const slope = -dr / (Math.hypot(dz, dr) || 1);
    if (Math.abs(slope) > FACING) toward += slope;
  }
  return toward < -1e-9 ? -1 : 1;
}

/**
 * Distance of a camera from the middle at which the pair just fills the view, looked at along `toward`
 * (unit vector to the camera; the picture's upright is y); of what stands between two ends. Tangents of half the view.
 */
export function fillingDistance(
  { halfLength, halfHeight }: Frame,
  toward: Way,
  tanUp: number,
  tanAcross: number,
  ends: readonly [rear: number, nose: number] = [-halfLength, halfLength],
): number {
  const [x, y, z] = toward;
  const flat = Math.hypot(x, z) || 1;
  const right = [z / flat, 0, -x / flat] as const;
  const up = [y * right[2], z * right[0] - x * right[2], -y * right[0]] as const;
  let distance = 0;
  for (const end of ends) {
    for (let k = 0; k < 16; k++) {
      const corner = [end, halfHeight * Math.sin((k * Math.PI) / 8), halfHeight * Math.cos((k * Math.PI) / 8)] as const;
      const along = (axis: readonly [number, number, number]) =>
        corner[0] * axis[0] + corner[1] * axis[1] + corner[2] * axis[2];
      distance = Math.max(
        distance,
        along(toward) + Math.max(Math.abs(along(right)) / tanAcross, Math.abs(along(up)) / tanUp),
      );
    }
  }
  return distance;
}

