/**
 * The film to first order against the true distance in space: a ray from the bush along its normal, met with the
 * journal's surface after an exact turn and shift. The difference is of second order: a tenth of the motion leaves
 * a hundredth of it.
 */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { SeatInput } from '../../../src/engine/contact/fit.ts';
import { filmAt } from '../../../src/engine/spindle/height.ts';
import type { Pose } from '../../../src/engine/spindle/pose.ts';
import { spindleOf } from '../../../src/engine/spindle/rigid.ts';
import { ALL, coneSeat } from '../play/designs.ts';

type Vector = readonly [number, number, number];

/** Rodrigues' turn about the axis of `w` by |w|. */
function turned(w: Vector, [x, y, z]: Vector): Vector {
  const angle = Math.hypot(...w);
  if (angle === 0) return [x, y, z];
  const [a, b, c] = w.map((part) => part / angle) as unknown as Vector;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const along = (a * x + b * y + c * z) * (1 - cos);
  return [
    x * cos + (b * z - c * y) * sin + a * along,
    y * cos + (c * x - a * z) * sin + b * along,
    z * cos + (a * y - b * x) * sin + c * along,
  ];
}

/**
 * Distance from the bush at (station, angle) along its inner normal to the journal at a pose, by bisection along the
 * ray.
 */
function trueFilm(seat: SeatInput, station: number, angle: number, pose: Pose): number {
  const { halfAngle } = seat.bush;
  const r =
    seat.bush.radius +
    (station - seat.bush.station) * Math.tan(halfAngle) -
    (seat.bush.lobes ?? []).reduce((sum, l) => sum + l.amplitude * Math.cos(l.count * (angle - l.phase)), 0) /
      Math.cos(halfAngle);
  const start: Vector = [r * Math.cos(angle), r * Math.sin(angle), station];
  const inward: Vector = [
    -Math.cos(halfAngle) * Math.cos(angle),
    -Math.cos(halfAngle) * Math.sin(angle),
    Math.sin(halfAngle),
  ];
  const outside = (t: number): number => {
    const p: Vector = [
      start[0] + t * inward[0] - pose.x,
      start[1] + t * inward[1] - pose.y,
      start[2] + t * inward[2] - pose.z,
    ];
    const [x, y, z] = turned([-pose.tiltX, -pose.tiltY, 0], p);
    const phi = Math.atan2(y, x);
    const proud = (seat.journal.lobes ?? []).reduce(
      (sum, l) => sum + l.amplitude * Math.cos(l.count * (phi - l.phase)),
      0,
    );
    return (
      Math.hypot(x, y) -
      (seat.journal.radius +
        (z - seat.journal.station) * Math.tan(seat.journal.halfAngle) +
        proud / Math.cos(seat.journal.halfAngle))
    );
  };
  let [low, high] = [-1e-3, 1e-3];
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (outside(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

it.each([
  ['shallow', 3],
  ['steep', 45],
  ['opposed', -30],
  ['straight', 0],
])('%s, %i°', (name, angle) => {
  const seat = coneSeat(name, angle, 40, 40, [-6, 0], [-8, 2], {
    journal: [{ count: 3, amplitude: 0.0004, phase: 20 }],
    bush: [{ count: 2, amplitude: 0.0003, phase: -50 }],
  });
  const spindle = spindleOf([seat], ALL);
  const rigid = spindle.seats[0]!;
  const motion = fc.record({
    x: between(-1, 1),
    y: between(-1, 1),
    z: between(-1, 1),
    tiltX: between(-1, 1),
    tiltY: between(-1, 1),
  });
  fc.assert(
    fc.property(motion, between(-5, -1), between(0, 2 * Math.PI), (m, station, phi) => {
      const off = (size: number): number => {
        const pose: Pose = {
          x: 1e-5 * size * m.x,
          y: 1e-5 * size * m.y,
          z: 1e-5 * size * m.z,
          tiltX: 5e-4 * size * m.tiltX,
          tiltY: 5e-4 * size * m.tiltY,
        };
        const z = station / 1000;
        const r = seat.bush.radius + z * Math.tan(seat.bush.halfAngle);
        const u = z * rigid.cos + r * rigid.sin;
        // lines of one half angle: the centred film is that of the position alone
        return Math.abs(filmAt(rigid, pose.z * rigid.sin, u, phi, pose) - trueFilm(seat, z, phi, pose));
      };
      // second order: products of the motions and the tilts, and of tilts and lobes' slopes
      expect(off(1)).toBeLessThan(1.2e-8);
      expect(off(0.1)).toBeLessThan(2e-10);
    }),
    { seed: 31, numRuns: 300 },
  );
});
