/** The worst angle of a lobed round against a search of a hundred thousand angles. */
import fc from 'fast-check';
import { expect, it, vi } from 'vitest';
import type { Lobe } from '../../../src/engine/parts/line.ts';
import { greatestAngles, proudAt, roundOf, type Worst, worstAngle } from '../../../src/engine/spindle/lobes.ts';

// a busy machine is no fault
vi.setConfig({ testTimeout: 60_000 });

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const lobes = (finest: number) =>
  fc.array(
    fc.record({ count: fc.integer({ min: 1, max: finest }), amplitude: between(0, 2e-6), phase: between(-7, 7) }),
    { maxLength: 4 },
  );

function brute(journal: Lobe[], bush: Lobe[], a: number, b: number, count: number) {
  let best = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < count; k++) {
    const angle = (2 * Math.PI * k) / count;
    const d = [...journal, ...bush].reduce((sum, l) => sum + l.amplitude * Math.cos(l.count * (angle - l.phase)), 0);
    best = Math.max(best, a * Math.cos(angle) + b * Math.sin(angle) + d);
  }
  return best;
}

it.each([8, 60])('no angle is worse, lobes up to %i', (finest) => {
  fc.assert(
    fc.property(lobes(finest), lobes(finest), between(-5e-6, 5e-6), between(-5e-6, 5e-6), (journal, bush, a, b) => {
      const round = roundOf(journal, bush);
      const worst: Worst = { value: 0, angle: 0 };
      worstAngle(round, a, b, true, worst);
      const reached = a * Math.cos(worst.angle) + b * Math.sin(worst.angle) + proudAt(round, worst.angle);
      expect(Math.abs(reached - worst.value)).toBeLessThan(1e-18);
      const found = brute(journal, bush, a, b, 20_000);
      // the search itself misses a crest by no more than count²·amplitude·step²/8
      const missed =
        ([...journal, ...bush].reduce((sum, l) => sum + l.count ** 2 * l.amplitude, 0) + Math.hypot(a, b)) *
        ((2 * Math.PI) / 20_000) ** 2 *
        0.125;
      expect(worst.value).toBeGreaterThanOrEqual(found - 1e-14);
      expect(worst.value).toBeLessThanOrEqual(found + missed + 1e-16);
    }),
    { seed: 41, numRuns: 150 },
  );
});

it('a journal turned in its bush carries its lobes along', () => {
  const lobe: Lobe = { count: 3, amplitude: 1e-6, phase: 0.2 };
  const bush: Lobe = { count: 2, amplitude: 1e-6, phase: -0.4 };
  const turned = roundOf([lobe], [bush], 0.7);
  for (const angle of [0, 1, 2.5, 4])
    expect(proudAt(turned, angle)).toBeCloseTo(
      1e-6 * Math.cos(3 * (angle - 0.7 - 0.2)) + 1e-6 * Math.cos(2 * (angle + 0.4)),
      18,
    );
});

it('names every equal crest', () => {
  const round = roundOf([{ count: 5, amplitude: 1e-6, phase: 0.3 }], []);
  const found = greatestAngles(round, 0, 0, 1e-6, 1e-13).sort((a, b) => a - b);
  expect(found).toHaveLength(5);
  for (const angle of found) expect(Math.abs(Math.sin((5 * (angle - 0.3)) / 2))).toBeLessThan(1e-6);
});

it('a true round is worst where it is pushed', () => {
  const worst: Worst = { value: 0, angle: 0 };
  worstAngle(roundOf([], []), 3e-6, -4e-6, true, worst);
  expect(worst.value).toBeCloseTo(5e-6, 18);
  expect(worst.angle).toBeCloseTo(Math.atan2(-4, 3), 12);
});
