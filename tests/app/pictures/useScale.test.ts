import { expect, test } from 'vitest';
import { easedFactor, isWorthAChange } from '../../../src/app/pictures/useScale.ts';

test('a factor too great for what stands there is changed, one too small only when much is gained', () => {
  expect([100, 101, 149, 150, 400].map((suits) => isWorthAChange(100, suits))).toEqual([
    false,
    false,
    false,
    true,
    true,
  ]);
  expect([99.9, 50, 1].map((suits) => isWorthAChange(100, suits))).toEqual([true, true, true]);
});

test('the way from one to the other is even in times as large, ends exactly there, and never goes back', () => {
  expect(easedFactor(100, 400, 0)).toBe(100);
  expect(easedFactor(100, 400, 0.5)).toBeCloseTo(200, 9);
  expect(easedFactor(227, 400, 1)).toBe(400);
  expect(easedFactor(227, 400, 7)).toBe(400);
  for (const [from, to] of [
    [227, 400],
    [400, 37],
  ] as const)
    for (let i = 0; i < 50; i++)
      expect(Math.sign(easedFactor(from, to, (i + 1) / 50) - easedFactor(from, to, i / 50))).toBe(Math.sign(to - from));
});
