/** Shares that are all of the doubt are told to add up to all of it. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hundredthsOf } from '../../../../src/app/screens/odds/Matters.tsx';

test('they add up, and each is one of its two nearest hundredths', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 1, max: 1000 }), { minLength: 1, maxLength: 9 }), (parts) => {
      const all = parts.reduce((a, b) => a + b, 0);
      const shares = parts.map((part) => part / all);
      const told = hundredthsOf(shares);
      expect(told.reduce((a, b) => a + b, 0)).toBe(100);
      for (const [i, share] of shares.entries()) expect(Math.abs(told[i]! - 100 * share)).toBeLessThan(1 + 1e-9);
    }),
  );
});
