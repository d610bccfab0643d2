/** What a force at a station moves the axis there by, of any stiffness of the films. */
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import type { Solved } from '../../../src/engine/run/solveRun.ts';
import { stiffnessAt } from '../../../src/engine/run/stiffnessAt.ts';

const solvedWith = (stiffness: number[][], status: Solved['status'] = 'found') =>
  ({ coefficients: { stiffness, damping: [] }, status }) as unknown as Solved;

const diagonal = (...parts: number[]) => parts.map((part, i) => parts.map((_, j) => (i === j ? part : 0)));

describe('the stiffness at a station', () => {
  // A force at S pushes with k and turns with S on the tilt: 1/k + S²/κ.
  it.each([0, 0.03, -0.2])('of springs that do not act on each other, closed form, at %f m', (station) => {
    const [kx, ky, kz, aboutX, aboutY] = [2e7, 3e7, 5e7, 4e4, 6e4];
    const found = stiffnessAt(solvedWith(diagonal(kx, ky, kz, aboutX, aboutY)), station)!;
    const wanted = [1 / (1 / kx + station ** 2 / aboutY), 1 / (1 / ky + station ** 2 / aboutX), kz];
    for (let i = 0; i < 3; i++)
      for (let j = 0; j < 3; j++) expect(found[i]![j]! / wanted[i]!).toBeCloseTo(i === j ? 1 : 0, 12);
  });

  // Not symmetric: oil films push across.
  const part = fc.double({ min: -1, max: 1, noNaN: true });
  const films = fc
    .array(fc.array(part, { minLength: 5, maxLength: 5 }), { minLength: 5, maxLength: 5 })
    .map((rows) => rows.map((row, i) => row.map((value, j) => (i === j ? 4 + value : value))));

  it.each(['found', 'stopped'] as const)('gives back the force for the displacement that it causes (%s)', (status) => {
    fc.assert(
      fc.property(films, fc.double({ min: -2, max: 2, noNaN: true }), part, part, part, (k, station, x, y, z) => {
        const free = status === 'stopped' ? [0, 1, 3, 4] : [0, 1, 2, 3, 4];
        const force = [x, y, status === 'stopped' ? 0 : z, -station * y, station * x];
        const moved = solve(
          new Matrix(free.map((i) => free.map((j) => k[i]![j]!))),
          Matrix.columnVector(free.map((i) => force[i]!)),
        ).to1DArray();
        const q = [0, 0, 0, 0, 0];
        free.forEach((i, j) => {
          q[i] = moved[j]!;
        });
        const there = [q[0]! + station * q[4]!, q[1]! - station * q[3]!, q[2]!];
        const found = stiffnessAt(solvedWith(k, status), station)!;
        expect(found).toHaveLength(status === 'stopped' ? 2 : 3);
        found.forEach((row, i) => {
          expect(row).toHaveLength(found.length);
          expect(row.reduce((sum, value, j) => sum + value * there[j]!, 0)).toBeCloseTo(force[i]!, 8);
        });
      }),
      { seed: 3, numRuns: 50 },
    );
  });

  it('where nothing resists along the axis: of x and y alone', () => {
    const found = stiffnessAt(solvedWith(diagonal(2, 3, 0, 1, 1)), 0)!;
    expect(found).toEqual([
      [2, 0],
      [0, 3],
    ]);
  });

  it('none where something else is not resisted', () => {
    expect(stiffnessAt(solvedWith(diagonal(2, 3, 5, 0, 1)), 0)).toBeNull();
    expect(stiffnessAt(solvedWith(diagonal(0, 3, 5, 1, 1)), 0)).toBeNull();
  });
});
