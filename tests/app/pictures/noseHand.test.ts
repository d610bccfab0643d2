/** The first plain direction of a drag at the nose decides: along the axis it moves the journal. */
import { expect, test } from 'vitest';
import { wayOf } from '../../../src/app/pictures/useNoseHand.ts';

test('a push along the axis that starts unlevel is a push along; only a plain pull up or down goes aside', () => {
  const sets = (path: [number, number][]) => path.map(([x, y]) => wayOf(x, y)).find((way) => way !== null) ?? null;
  expect(sets([[0, 3]])).toBeNull();
  // A hand that jerks up before it pushes in.
  const jerk: [number, number][] = [
    [-2, 3],
    [-4, 5],
    [-8, 5],
    [-20, 6],
  ];
  expect(sets(jerk)).toBe('along');
  expect(sets([[9, 1]])).toBe('along');
  expect(sets([[-12, 12]])).toBe('along');
  expect(
    sets([
      [1, -4],
      [2, -9],
    ]),
  ).toBe('aside');
  expect(sets([[-10, 22]])).toBe('aside');
});
