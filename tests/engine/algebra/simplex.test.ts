/** Small linear programmes: textbook cases, and random ones against a general package. */

import fc from 'fast-check';
import loadHighs from 'highs';
import { describe, expect, it, vi } from 'vitest';
import { dot } from '../../../src/engine/algebra/dot.ts';
import { minimised, type Programme } from '../../../src/engine/algebra/simplex.ts';

// The machine may be busy; nothing here is timed.
vi.setConfig({ testTimeout: 60_000 });

const highs = await loadHighs();
const INF = Number.POSITIVE_INFINITY;

/** The same programme in the LP format, its first objective only. */
function textOf({ variables, rows, objectives }: Programme): string {
  const sum = (coefficients: readonly number[]) =>
    coefficients.map((c, i) => `${c < 0 ? '-' : '+'} ${Math.abs(c)} x${i}`).join(' ');
  const lines = rows.flatMap(({ coefficients, min = -INF, max = INF }, r) => [
    ...(Number.isFinite(min) ? [` a${r}: ${sum(coefficients)} >= ${min}`] : []),
    ...(Number.isFinite(max) ? [` b${r}: ${sum(coefficients)} <= ${max}`] : []),
  ]);
  const bounds = variables.map(
    ({ least, most }, i) =>
      ` ${Number.isFinite(least) ? least : '-inf'} <= x${i} <= ${Number.isFinite(most) ? most : '+inf'}`,
  );
  return ['Minimize', ` obj: ${sum(objectives[0]!)}`, 'Subject To', ...lines, 'Bounds', ...bounds, 'End'].join('\n');
}

describe('textbook programmes', () => {
  // @source Beale1955
  it('Beale’s example, on which a careless simplex cycles', () => {
    const found = minimised({
      variables: Array.from({ length: 4 }, () => ({ least: 0, most: INF })),
      rows: [
        { coefficients: [0.25, -60, -0.04, 9], max: 0 },
        { coefficients: [0.5, -90, -0.02, 3], max: 0 },
        { coefficients: [0, 0, 1, 0], max: 1 },
      ],
      objectives: [[-0.75, 150, -0.02, 6]],
    });
    expect(found.status).toBe('solved');
    if (found.status === 'solved') expect(dot([-0.75, 150, -0.02, 6], found.values)).toBeCloseTo(-0.05, 9);
  });

  it('tells unbounded and infeasible apart', () => {
    const x = { least: Number.NEGATIVE_INFINITY, most: INF };
    expect(minimised({ variables: [x], rows: [], objectives: [[1]] }).status).toBe('unbounded');
    expect(
      minimised({
        variables: [x],
        rows: [
          { coefficients: [1], min: 2 },
          { coefficients: [1], max: 1 },
        ],
        objectives: [[1]],
      }).status,
    ).toBe('infeasible');
    expect(minimised({ variables: [{ least: 2, most: 1 }], rows: [], objectives: [[1]] }).status).toBe('infeasible');
  });

  it('minimises the second objective among what the first leaves', () => {
    const found = minimised({
      variables: [
        { least: 0, most: 10 },
        { least: 0, most: 10 },
        { least: 0, most: 10 },
      ],
      rows: [{ coefficients: [1, 1, 1], min: 6, max: 6 }],
      objectives: [
        [1, 0, 0],
        [0, 2, 1],
      ],
    });
    expect(found).toMatchObject({ status: 'solved' });
    if (found.status === 'solved') for (const [i, x] of [0, 0, 6].entries()) expect(found.values[i]).toBeCloseTo(x, 7);
  });
});

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

it('random programmes: status and optimum as a general package finds them', () => {
  let solved = 0;
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 7 }).chain((n) =>
        fc.record({
          variables: fc.array(
            fc.tuple(
              fc.oneof(fc.constant(Number.NEGATIVE_INFINITY), number(-20, 0)),
              fc.oneof(fc.constant(INF), number(0, 30)),
            ),
            { minLength: n, maxLength: n },
          ),
          rows: fc.array(
            fc.record({
              coefficients: fc.array(number(-2, 2), { minLength: n, maxLength: n }),
              at: number(-15, 15),
              kind: fc.constantFrom('equal', 'min', 'max'),
            }),
            { minLength: 1, maxLength: 5 },
          ),
          cost: fc.array(number(-3, 3), { minLength: n, maxLength: n }),
        }),
      ),
      ({ variables, rows, cost }) => {
        // Where a number is all but 0, whether it is one is a matter of tolerances, which differ.
        const clean = (c: number) => (Math.abs(c) < 1e-3 ? 0 : c);
        const programme: Programme = {
          variables: variables.map(([least, most]) => ({ least: clean(least), most: clean(most) })),
          rows: rows.map(({ coefficients, at, kind }) => ({
            coefficients: coefficients.map(clean),
            ...(kind !== 'max' && { min: clean(at) }),
            ...(kind !== 'min' && { max: clean(at) }),
          })),
          objectives: [cost.map(clean)],
        };
        const wanted = highs.solve(textOf(programme), {
          primal_feasibility_tolerance: 1e-10,
          dual_feasibility_tolerance: 1e-10,
        });
        const found = minimised(programme);
        if (wanted.Status === 'Optimal') {
          solved++;
          expect(found.status).toBe('solved');
          if (found.status !== 'solved') return;
          const optimum = dot(programme.objectives[0]!, found.values);
          expect(Math.abs(optimum - wanted.ObjectiveValue)).toBeLessThan(1e-6 * Math.max(1, Math.abs(optimum)));
          for (const { coefficients, min = -INF, max = INF } of programme.rows) {
            const value = dot(coefficients, found.values);
            expect(value).toBeGreaterThan(min - 1e-7);
            expect(value).toBeLessThan(max + 1e-7);
          }
        } else if (wanted.Status === 'Infeasible') expect(found.status).toBe('infeasible');
        else expect(found.status).not.toBe('solved');
      },
    ),
    { seed: 7, numRuns: 200 },
  );
  expect(solved).toBeGreaterThan(50);
});

describe('what is the same but for rounding', () => {
  const twice = (value: number, off: number) =>
    minimised({
      variables: [{ least: 0, most: INF }],
      rows: [value, value + off].map((at) => ({ coefficients: [1], min: at, max: at })),
      objectives: [[1]],
    }).status;

  it.each([1e8, 1e4, 1])('two equations for %f that differ by a part in ten thousand million are one', (value) => {
    expect(twice(value, 1e-10 * value)).toBe('solved');
    expect(twice(value, 1e-7 * value)).toBe('infeasible');
  });

  it('numbers are meant to be near 1: below that it is rounding by its own size', () => {
    expect(twice(1e-3, 1e-10)).toBe('solved');
    expect(twice(1e-3, 1e-8)).toBe('infeasible');
  });
});

describe('a bound', () => {
  it('that leaves a variable one value is one', () => {
    const found = minimised({
      variables: [
        { least: 2, most: 2 },
        { least: 0, most: 9 },
      ],
      rows: [{ coefficients: [1, 1], min: 5 }],
      objectives: [[1, 1]],
    });
    expect(found).toMatchObject({ status: 'solved', values: [2, 3] });
    expect(minimised({ variables: [{ least: 2, most: 1.999 }], rows: [], objectives: [[1]] }).status).toBe(
      'infeasible',
    );
  });

  // Letting x up to one more raises what is wanted most of by one.
  it('counts on its own side alone', () => {
    const upTo = (least: number) =>
      minimised({ variables: [{ least, most: 3 }], rows: [], objectives: [[-1]] }) as { multipliers: unknown };
    for (const least of [-INF, 0]) expect(upTo(least).multipliers).toEqual({ least: [0], most: [1] });
    const downTo = (most: number) =>
      minimised({ variables: [{ least: -3, most }], rows: [], objectives: [[1]] }) as { multipliers: unknown };
    for (const most of [INF, 0]) expect(downTo(most).multipliers).toEqual({ least: [1], most: [0] });
  });
});
