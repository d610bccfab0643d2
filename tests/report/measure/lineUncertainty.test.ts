/** How sure a measured line is, against plain propagation by differences of the line itself. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lineUncertainty } from '../../../src/report/measure/lineUncertainty.ts';

const rad = (degrees: number) => (degrees * Math.PI) / 180;
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const surfaceOf = (halfAngle: number) => ({ halfAngle, diameter: 24, station: 1, from: -20, to: 6 });
const told = (
  halfAngle: number,
  sigma: { halfAngle: number | null; diameter: number | null },
  correlation: number | null,
) => ({ seat: 'a', part: 'journal' as const, halfAngle, diameter: 24, sigma, correlation });

test('is what the covariance of diameter and half angle makes of the radius, square to the line', () => {
  fc.assert(
    fc.property(
      between(-60, 60),
      between(1e-4, 1e-2),
      between(1e-4, 1e-2),
      between(-1, 1),
      between(-20, 6),
      (halfAngle, sigmaD, sigmaA, rho, station) => {
        const radius = (d: number, a: number) => d / 2 + (station - 1) * Math.tan(a);
        const [d, a] = [24, rad(halfAngle)];
        const step = 1e-6;
        const byD = (radius(d + step, a) - radius(d - step, a)) / (2 * step);
        const byA = (radius(d, a + step) - radius(d, a - step)) / (2 * step);
        const [sd, sa] = [sigmaD, rad(sigmaA)];
        const expected =
          Math.cos(a) * Math.sqrt(Math.max(0, (byD * sd) ** 2 + (byA * sa) ** 2 + 2 * rho * byD * sd * byA * sa));
        const found = lineUncertainty(
          surfaceOf(halfAngle),
          told(halfAngle, { halfAngle: sigmaA, diameter: sigmaD }, rho),
          station,
        )!;
        expect(Math.abs(found - expected)).toBeLessThan(1e-8 + 1e-5 * expected);
      },
    ),
    { seed: 3, numRuns: 300 },
  );
});

test('is not known where either is open', () => {
  expect(lineUncertainty(surfaceOf(3), told(3, { halfAngle: null, diameter: 0.001 }, null), 0)).toBeNull();
  expect(lineUncertainty(surfaceOf(3), told(3, { halfAngle: 0.001, diameter: null }, null), 0)).toBeNull();
});
