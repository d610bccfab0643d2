import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawnAt } from '../../../src/app/pictures/drawn.ts';
import { groundOf } from '../../../src/app/pictures/drawnMap.ts';
import { factorFor } from '../../../src/app/pictures/factor.ts';
import { landmarks, reachOf } from '../../../src/app/pictures/journalMove.ts';
import { easedFactor, restingFactor } from '../../../src/app/pictures/useScale.ts';
import { DEMOS } from '../../../src/app/state/demos.ts';
import { metres, toSeats } from '../../../src/report/convert.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { seatLines } from '../../../src/report/inFrame.ts';

test('a factor stays at rest while the picture holds it and something is left to see, else goes to the nearest that will do', () => {
  expect([250, 249, 101, 100].map((suits) => restingFactor(100, suits))).toEqual([100, 100, 100, 100]);
  expect([1000, 251].map((suits) => restingFactor(100, suits))).toEqual([400, 100.4]);
  expect([99.9, 50, 1].map((suits) => restingFactor(100, suits))).toEqual([99.9, 50, 1]);
});

/** From rest to rest, each as the one before left the factor: what is drawn there. */
function rests(design: (typeof DEMOS)[number]['design'], places: readonly number[]) {
  const seats = toSeats(design).map(seatLines);
  const ground = groundOf(seats);
  let factor: number | null = null;
  return places.map((position) => {
    const fit = fitSection({ ...design, position });
    const reach = reachOf(position, landmarks(fit)).map(metres);
    const suits = factorFor(seats, metres(position), 400, null, reach, ground);
    factor = factor === null ? suits : restingFactor(factor, suits);
    return {
      off: metres(position) - ground.home,
      drawn: drawnAt(seats, metres(position), factor, null, ground),
      suits,
    };
  });
}

test('of two rests the one that stands further off is never drawn nearer, and nothing outgrows the picture', () => {
  const demos = DEMOS.map(({ design }) => design);
  fc.assert(
    fc.property(
      fc.constantFrom(...demos),
      fc.array(fc.double({ min: -0.3, max: 0.3, noNaN: true }), { minLength: 2, maxLength: 8 }),
      (design, places) => {
        const stood = rests(design, places);
        for (const [i, { off, drawn, suits }] of stood.entries()) {
          expect(drawn.factor).toBeLessThanOrEqual(suits);
          const before = stood[i - 1];
          if (!before || Math.sign(before.off) !== Math.sign(off)) continue;
          const [near, far] = Math.abs(before.off) < Math.abs(off) ? [before.drawn, drawn] : [drawn, before.drawn];
          expect(Math.abs(far.moved)).toBeGreaterThanOrEqual(Math.abs(near.moved) * (1 - 1e-9));
        }
      },
    ),
    { numRuns: 150 },
  );
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
