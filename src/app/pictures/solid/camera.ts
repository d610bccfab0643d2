/** From where the pair is looked at: the views, and from how far it just fills the picture. */
import type { Drawn } from '../drawn.ts';

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

/** A circle round the axis: its place along it and its radius, scene lengths. */
export type Disc = readonly [x: number, r: number];

/** What the camera keeps away from even where everything would fit nearer. */
const NEAR = 0.25;
const FAR_OFF = 60;
const ROUND = Array.from({ length: 24 }, (_, k) => (k * Math.PI) / 12);

/**
 * From how far the circles just fill the view, looked at along `toward` (unit vector to the camera; the picture's
 * upright is y), and where their middle is then. Everything across the view in tangents: half the view, the middle.
 */
export function framing(discs: readonly Disc[], toward: Way, tanUp: number, tanAcross: number) {
  const [x, y, z] = toward;
  const flat = Math.hypot(x, z) || 1;
  const right: Way = [z / flat, 0, -x / flat];
  const up: Way = [y * right[2], z * right[0] - x * right[2], -y * right[0]];
  const points = discs.flatMap(([at, r]) => ROUND.map((turn): Way => [at, r * Math.sin(turn), r * Math.cos(turn)]));
  const along = (point: Way, axis: Way) => point[0] * axis[0] + point[1] * axis[1] + point[2] * axis[2];
  const seen = points.map((point) => [along(point, toward), along(point, right), along(point, up)] as const);
  const extents = (distance: number) => {
    let [left, most, low, high] = [
      Number.POSITIVE_INFINITY,
      Number.NEGATIVE_INFINITY,
      Number.POSITIVE_INFINITY,
      Number.NEGATIVE_INFINITY,
    ];
    for (const [deep, across, upward] of seen) {
      const [u, v] = [across / (distance - deep), upward / (distance - deep)];
      [left, most, low, high] = [Math.min(left, u), Math.max(most, u), Math.min(low, v), Math.max(high, v)];
    }
    return { half: [(most - left) / 2, (high - low) / 2], middle: [(most + left) / 2, (high + low) / 2] } as const;
  };
  let near = Math.max(0, ...seen.map(([deep]) => deep)) + NEAR;
  let far = FAR_OFF;
  for (let k = 0; k < 40; k++) {
    const half = (near + far) / 2;
    const [across, upward] = extents(half).half;
    if (across > tanAcross || upward > tanUp) near = half;
    else far = half;
  }
  const [across, upward] = extents(far).middle;
  return { distance: far, across, up: upward };
}
