/** What a hand drags past the end of the axis widens it seldom, and never moves the other end. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { widened } from '../../../src/app/charts/useHeldRange.ts';

const finite = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test('a position in the range leaves it as it is, one beyond is in it afterwards, the other end stays', () => {
  fc.assert(
    fc.property(finite(-1, 1), finite(1e-3, 2), finite(-5, 5), (low, span, position) => {
      const range = [low, low + span] as const;
      const after = widened([...range], position);
      expect(position).toBeGreaterThanOrEqual(after[0]);
      expect(position).toBeLessThanOrEqual(after[1]);
      expect(after[0] === range[0] || after[1] === range[1]).toBe(true);
      expect(after[1] - after[0]).toBeGreaterThanOrEqual(span);
    }),
    { seed: 41 },
  );
});

test('a drag in small steps to five times as far changes it five times at most', () => {
  let range: [number, number] = [-0.1, 0.1];
  let changed = 0;
  for (let position = 0; position <= 1; position += 0.002) {
    const after = widened(range, position) as [number, number];
    if (after !== range) changed++;
    range = after;
  }
  expect(changed).toBeLessThanOrEqual(5);
});

test('held, it is the same range', () => {
  const range: [number, number] = [0, 1];
  expect(widened(range, 0.5)).toBe(range);
});
