/** Two states over each other: what differs is as thick on the screen as a film of that thickness. */
import { expect, test } from 'vitest';
import type { Point } from '../../../src/app/pictures/drawn.ts';
import { drawnOver } from '../../../src/app/pictures/drawnOver.ts';
import type { Design } from '../../../src/design/definition.ts';
import { seatLines } from '../../../src/engine/contact/fit.ts';
import { metres, toSeats } from '../../../src/report/convert.ts';

const cone = (halfAngle: number, diameter: number) => ({ halfAngle, diameter, station: 0, from: -20, to: 0 });
const design = (journal: number, bush: number, halfAngle = 3, name = 'seat'): Design => ({
  conepair: 1,
  seats: [{ name, journal: cone(halfAngle, journal), bush: cone(halfAngle, bush) }],
});
const state = (of: Design) => ({ seats: toSeats(of).map(seatLines), position: metres(of.position ?? 0) });
const FACTOR = 200;

/** Of a straight line drawn from its first point to its last. */
function radiusAt(line: readonly Point[], z: number): number {
  const [[z0, r0], [z1, r1]] = [line[0]!, line[line.length - 1]!];
  return r0 + ((r1 - r0) * (z - z0)) / (z1 - z0);
}

test('a bush ground larger and a journal ground smaller stand apart by the factor times what came off', () => {
  const { seats, factor, apart } = drawnOver(state(design(22, 22)), state(design(21.99, 22.02)), FACTOR);
  expect([factor, apart]).toEqual([FACTOR, []]);
  const [{ before, after }] = seats as [(typeof seats)[number]];
  for (const z of [-0.018, -0.001]) {
    expect(radiusAt(after.bush, z) - radiusAt(before.bush, z)).toBeCloseTo(FACTOR * 1e-5, 12);
    expect(radiusAt(after.journal, z) - radiusAt(before.journal, z)).toBeCloseTo(-FACTOR * 0.5e-5, 12);
  }
});

test('the same twice lies on itself; a journal moved is moved alone', () => {
  const one = design(22, 22.01);
  const same = drawnOver(state(one), state(one), FACTOR).seats[0]!;
  expect(same.after).toEqual(same.before);
  const moved = drawnOver(state(one), state({ ...one, position: 0.1 }), FACTOR).seats[0]!;
  expect(moved.after.bush).toEqual(moved.before.bush);
  // A cone of 3° moved toward its large end by 0.1 mm opens by 0.1·tan 3°.
  expect(radiusAt(moved.before.journal, -0.01) - radiusAt(moved.after.journal, -0.01)).toBeCloseTo(
    FACTOR * 1e-4 * Math.tan((3 * Math.PI) / 180),
    12,
  );
});

test('seats that only one state has, or that are steep and shallow, are named and not drawn', () => {
  const two = { ...design(22, 22), seats: [...design(22, 22).seats, ...design(22, 22, 45, 'steep').seats] };
  expect(drawnOver(state(two), state(design(22, 22)), FACTOR).apart).toEqual(['steep']);
  expect(drawnOver(state(design(22, 22)), state(design(22, 22, 45)), FACTOR)).toMatchObject({
    seats: [],
    apart: ['seat'],
  });
});
