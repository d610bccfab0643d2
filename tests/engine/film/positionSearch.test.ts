/** The search along the axis: from wherever it starts it ends in the same balance, in metal, or off the seats. */
import { describe, expect, it } from 'vitest';
import type { DescentEnd } from '../../../src/engine/film/descent.ts';
import { newGrids } from '../../../src/engine/film/films.ts';
import { searchPosition } from '../../../src/engine/film/positionSearch.ts';
import { loadAt } from '../../../src/engine/spindle/pose.ts';
import { at, type Cone, coneSeat, RAD } from './bearings.ts';

const SIZE = { rows: 8, columns: 32 };
const shallow: Cone = { halfAngle: 8 * RAD, radius: 0.011, from: -0.025, to: -0.005, film: 2.5e-6 };
const steep: Cone = { halfAngle: 45 * RAD, radius: 0.013, from: 0, to: 0.003, film: 2.5e-6 };
/** Seen from the other end. */
const turned = (cone: Cone): Cone => ({ ...cone, halfAngle: -cone.halfAngle, from: -cone.to, to: -cone.from });

/** As seen from the other end (-1): the axis turns about x, so y, z and the sense of rotation change sign. */
function search(cones: readonly Cone[], side: 1 | -1, thrust: number, z: number): DescentEnd {
  const seats = cones.map((cone, i) => coneSeat(side === 1 ? cone : turned(cone), `${i}`));
  const run = { omega: -side * 120, viscosity: seats.map(() => 0.01), growth: seats.map(() => 0) };
  return searchPosition(
    {
      grids: newGrids(seats, SIZE),
      load: loadAt(0, -20 * side, side * thrust, 0),
      run,
      held: false,
      caught: false,
      close: 1e-8,
    },
    at({ x: 3e-7, z: side * z }),
  );
}

const placed = (found: DescentEnd) => {
  if (found.status !== 'solved') throw new Error(found.status);
  return found;
};

describe.each<[string, Cone[], number[], number]>([
  ['one shallow cone', [shallow], [0, -8e-6, 1e-5], 10],
  ['a shallow and a steep one', [shallow, steep], [0, -2e-6, 2e-5], 10],
  ['the same pressed near metal', [shallow, steep], [0, 5e-6], 200],
])('%s', (_, cones, starts, thrust) => {
  it('wherever it starts the oil balances the load at one position', () => {
    const found = starts.map((z) => placed(search(cones, 1, -thrust, z)));
    for (const { pose, total } of found) {
      expect(pose.z / found[0]!.pose.z).toBeCloseTo(1, 6);
      expect(total.force[2]).toBeCloseTo(thrust, 5);
      expect(total.force[1]).toBeCloseTo(20, 5);
    }
  });

  it('seen from the other end it is the same', () => {
    const [one, other] = [placed(search(cones, 1, -thrust, 0)), placed(search(cones, -1, -thrust, 0))];
    expect(other.pose.z / one.pose.z).toBeCloseTo(-1, 6);
    expect(other.pose.x / one.pose.x).toBeCloseTo(1, 5);
    expect(other.pose.y / one.pose.y).toBeCloseTo(-1, 5);
  });

  it.each([1, -1] as const)('pulled off its seats it is pushed off, pressed beyond the oil it touches (%s)', (side) => {
    expect(search(cones, side, 50, 0).status).toBe('pushedOff');
    expect(search(cones, side, -5e6, 0).status).toBe('contact');
  });
});
