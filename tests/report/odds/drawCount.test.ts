/** As many pairs as an accuracy takes, and no more. */

import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { chanceOf } from '../../../src/engine/odds/limits.ts';
import { accuracyOf, drawCount } from '../../../src/report/odds/drawCount.ts';
import { oddsTold } from '../../../src/report/odds/section.ts';

const plain: Design = JSON.parse(
  readFileSync(new URL('../../../assets/designs/steep-first.conepair.json', import.meta.url), 'utf8'),
);
const count = (odds: Design['odds']) => drawCount({ ...plain, odds });

test('whatever share of the draws works, its limits lie no further off; of fewer draws those of one half would', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.0005, max: 0.09, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (a, share) => {
        const n = count({ accuracy: a });
        const half = (times: number, of: number) => {
          const { low, high } = chanceOf(times, of);
          return (high - low) / 2;
        };
        expect(half(Math.round(share * n), n)).toBeLessThanOrEqual(a * (1 + 1e-9));
        if (n > 100) expect(half((n - 1) / 2, n - 1)).toBeGreaterThan(a);
      },
    ),
  );
});

test('it takes the place of the number asked for; without either it is the usual number', () => {
  expect(count({ accuracy: 0.01, draws: 5000 })).toBe(count({ accuracy: 0.01 }));
  expect(count({ draws: 5000 })).toBe(5000);
  expect(count(undefined)).toBe(20_000);
  const { draws, limits } = oddsTold({ ...plain, odds: { accuracy: 0.03 } })!;
  expect(draws).toBe(count({ accuracy: 0.03 }));
  for (const { low, high } of Object.values(limits.best)) expect((high - low) / 2).toBeLessThanOrEqual(0.03);
});

test('what so many pairs reach is what was asked of them', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.0005, max: 0.09, noNaN: true }), (a) => {
      const n = count({ accuracy: a });
      expect(accuracyOf(n)).toBeLessThanOrEqual(a * (1 + 1e-9));
      if (n > 100) expect(accuracyOf(n - 1)).toBeGreaterThan(a);
    }),
  );
});
