/**
 * What every solver of a small linear system keeps, held against ml-matrix; and what a solver of least squares under
 * bounds and a simplex keep, beside their own tests.
 */
import fc from 'fast-check';
import { Matrix, solve } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import {
  eliminated,
  inverseTimes,
  solveSmall,
  solveTwo,
  stillSolved,
  type Two,
} from '../../../src/engine/algebra/elimination.ts';
import { minimised } from '../../../src/engine/algebra/simplex.ts';
import { lowerRoot, lowerSolved, upperSolved } from '../../../src/engine/algebra/triangular.ts';

type Solver = (a: readonly (readonly number[])[], b: readonly number[]) => number[] | null;
const at = (a: readonly (readonly number[])[]) => (i: number, k: number) => a[i]![k]!;

/** Every solver of a·x = b; `any` also where a is not positive. */
const SOLVERS: { name: string; any: boolean; solver: Solver }[] = [
  { name: 'elimination', any: true, solver: solveSmall },
  {
    name: 'elimination, unscaled',
    any: true,
    solver: (a, b) =>
      eliminated(
        a.map((row, i) => [...row, b[i]!]),
        1e-13,
      ),
  },
  {
    name: 'elimination by the diagonal',
    any: false,
    solver: (a, b) =>
      stillSolved(
        a.map((row, i) => [...row, b[i]!]),
        1e-10,
      ),
  },
  {
    name: 'inverse times columns',
    any: false,
    solver: (a, b) =>
      inverseTimes(
        a,
        b.map((value) => [value, ...b.slice(1).map(() => 0)]),
        1,
      ).map(([value]) => value!),
  },
  {
    name: 'root and triangles',
    any: false,
    solver: (a, b) => {
      const root = lowerRoot(a.length, at(a));
      return upperSolved(root, lowerSolved(root, b));
    },
  },
  {
    name: 'simplex, where every row is an equation',
    any: true,
    solver: (a, b) => {
      const found = minimised({
        variables: b.map(() => ({ least: Number.NEGATIVE_INFINITY, most: Number.POSITIVE_INFINITY })),
        rows: a.map((coefficients, i) => ({ coefficients, min: b[i]!, max: b[i]! })),
        objectives: [b.map(() => 0)],
      });
      return found.status === 'solved' ? found.values : null;
    },
  },
];

const number = fc.double({ min: -1, max: 1, noNaN: true });
const system = fc
  .integer({ min: 1, max: 6 })
  .chain((n) =>
    fc.tuple(
      fc.array(fc.array(number, { minLength: n, maxLength: n }), { minLength: n, maxLength: n }),
      fc.array(number, { minLength: n, maxLength: n }),
      fc.array(fc.integer({ min: -3, max: 3 }), { minLength: n, maxLength: n }),
    ),
  );

/** Positive, its condition some hundreds. */
const positive = (m: readonly (readonly number[])[]) =>
  m.map((row, i) => m.map((other, k) => row.reduce((sum, value, j) => sum + value * other[j]!, i === k ? 0.05 : 0)));

describe.each(SOLVERS)('$name', ({ solver }) => {
  it('solves what ml-matrix solves, and leaves what it is handed', () => {
    fc.assert(
      fc.property(system, ([m, b]) => {
        const a = positive(m);
        const kept = JSON.stringify([a, b]);
        const known = solve(new Matrix(a), Matrix.columnVector([...b])).to1DArray();
        solver(a, b)!.forEach((value, i) => {
          expect(value).toBeCloseTo(known[i]!, 6);
        });
        expect(JSON.stringify([a, b])).toBe(kept);
      }),
      { seed: 11 },
    );
  });
});

describe.each(SOLVERS.filter(({ any }) => any))('$name', ({ solver }) => {
  it('rows and columns in another order are the same system, and none need be positive', () => {
    fc.assert(
      fc.property(system, ([m, b]) => {
        const a = positive(m);
        const turned = a.map((_, i) => a[(i + 1) % a.length]!.map((value, k) => (k % 2 === 0 ? value : -value)));
        const x = solver(a, b)!;
        solver(
          turned,
          b.map((_, i) => b[(i + 1) % b.length]!),
        )!.forEach((value, k) => {
          expect(value).toBeCloseTo(k % 2 === 0 ? x[k]! : -x[k]!, 6);
        });
      }),
      { seed: 12 },
    );
  });
});

it('elimination is blind to the units of equations and unknowns', () => {
  fc.assert(
    fc.property(system, ([m, b, powers]) => {
      const a = positive(m);
      const scale = powers.map((power) => 1000 ** power);
      const x = solveSmall(a, b)!;
      const other = solveSmall(
        a.map((row, i) => row.map((value, j) => value * scale[j]! * scale[(i + 1) % scale.length]!)),
        b.map((value, i) => value * scale[(i + 1) % scale.length]!),
      )!;
      other.forEach((value, j) => {
        expect(value * scale[j]!).toBeCloseTo(x[j]!, 6);
      });
    }),
    { seed: 13 },
  );
});

it('a system that tells one unknown twice has no answer', () => {
  for (const a of [
    [
      [1, 2],
      [2, 4],
    ],
    [
      [0, 0],
      [1, 1],
    ],
    [
      [1, 0],
      [1, 0],
    ],
  ])
    expect(solveSmall(a, [1, 1])).toBeNull();
});

it('a root times itself is the matrix, and no square on its diagonal is less than the floor', () => {
  fc.assert(
    fc.property(system, ([m]) => {
      const a = positive(m);
      const l = lowerRoot(a.length, at(a));
      for (const [i, row] of a.entries())
        for (let k = 0; k <= i; k++)
          expect(l[i]!.reduce((sum, value, j) => sum + value * (l[k]![j] ?? 0), 0)).toBeCloseTo(row[k]!, 12);
    }),
    { seed: 14 },
  );
  expect(lowerRoot(2, () => 1, 0.25)[1]).toEqual([1, 0.5]);
});

it('what nothing resists stays still', () => {
  fc.assert(
    fc.property(system, ([m, b]) => {
      const a = positive(m);
      const known = stillSolved(
        a.map((row, i) => [...row, b[i]!]),
        1e-10,
      );
      // The same system with an unknown that is in no equation.
      const idle = a.map((row, i) => [...row, 0, b[i]!]);
      const found = stillSolved([...idle, [...b.map(() => 0), 0, 0]], 1e-10);
      expect(found).toEqual([...known, 0]);
    }),
    { seed: 11, numRuns: 100 },
  );
});

it('two equations by determinants are as by elimination', () => {
  fc.assert(
    fc.property(fc.array(number, { minLength: 6, maxLength: 6 }), ([a, b, c, d, x, y]) => {
      const matrix: [Two, Two] = [
        [a! + 2, b!],
        [c!, d! + 3],
      ];
      const found = solveTwo(matrix, [x!, y!]);
      solveSmall(matrix, [x!, y!])!.forEach((value, i) => {
        expect(Math.abs(found[i]! - value)).toBeLessThan(1e-12);
      });
    }),
    { seed: 12, numRuns: 300 },
  );
});
