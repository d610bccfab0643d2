/**
 * On which seat a stand-off was read: against plain sampling of pairs from the same belief, each weighed by how likely
 * it makes the reading (written apart from the closed form; JCGM101 5.9 for the sampling).
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawOf } from '../../../src/engine/belief/decomposition.ts';
import { standardNormals } from '../../../src/engine/belief/draws.ts';
import { withNumbers } from '../../../src/engine/belief/unknowns.ts';
import { positionForFilm, type SeatInput, seatLines } from '../../../src/engine/contact/fit.ts';
import { believe } from '../../../src/engine/gauging/believe.ts';
import type { Reading } from '../../../src/engine/gauging/reading.ts';
import { HARDLY, isOpen, touchersOf } from '../../../src/engine/gauging/whichTouched.ts';
import { LONG } from '../../long.ts';

const rad = (degrees: number) => (degrees * Math.PI) / 180;
const surface = (halfAngle: number, radius: number, station: number, from: number, to: number) =>
  ({ halfAngle: rad(halfAngle), radius, station, from, to, profile: [], lobes: [] }) as SeatInput['journal'];
/** Shallow behind, steep in front; so much (m) looser than a film of 2.5 µm the one and the other. */
const pair = (shallow: number, steep: number): SeatInput[] =>
  [
    {
      journal: surface(3, 0.011, 0, -0.026, 0),
      bush: surface(3, 0.011 + shallow / Math.cos(rad(3)), 0, -0.025, -0.0005),
    },
    {
      journal: surface(45, 0.014, 0.005, 0.001, 0.005),
      bush: surface(45, 0.014 + steep / Math.cos(rad(45)), 0.005, 0.0014, 0.0046),
    },
  ] as SeatInput[];

const standOff = (value: number, sigma: number) => ({ kind: 'standOff' as const, value, sigma });

/** Share of weight by seat, of so many pairs drawn, and how many pairs count. */
function sampled(belief: ReturnType<typeof believe>, value: number, sigma: number, draws: number) {
  const size = belief.numbers.length;
  const normals = standardNormals(7, draws * size);
  const shares = belief.seats.map(() => 0);
  let [all, squares] = [0, 0];
  for (let k = 0; k < draws; k++) {
    const change = drawOf(belief.decomposition, normals.subarray(k * size, (k + 1) * size));
    const drawn = withNumbers(
      belief.seats,
      belief.unknowns,
      Float64Array.from(belief.numbers, (x, j) => x + change[j]!),
    );
    const touches = drawn.map((seat) => positionForFilm(seatLines(seat), 0)!);
    const first = Math.max(...touches);
    const weight = Math.exp(-(((value - first) / sigma) ** 2) / 2);
    shares[touches.indexOf(first)]! += weight;
    all += weight;
    squares += weight * weight;
  }
  return { shares: shares.map((share) => share / all), counted: all ** 2 / squares };
}

describe('which seat touched', () => {
  it('is as pairs drawn from everything else that is known have it', () => {
    let checked = 0;
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1e-5, noNaN: true }),
        fc.double({ min: 1e-6, max: 1e-5, noNaN: true }),
        fc.double({ min: -2e-5, max: 2e-5, noNaN: true }),
        fc.double({ min: 2e-6, max: 1e-5, noNaN: true }),
        fc.boolean(),
        (shallow, steep, value, sigma, read) => {
          const diameter = (station: number): Reading => ({
            kind: 'diameter',
            seat: 0,
            part: 'bush',
            station,
            value: 2 * (0.011 + shallow / Math.cos(rad(3)) + station * Math.tan(rad(3))),
            sigma: 1e-6,
          });
          const belief = believe(pair(shallow, steep), read ? [diameter(-0.02), diameter(-0.004)] : [], [], 5e-6, 0);
          const { shares, counted } = sampled(belief, value, sigma, 20_000);
          if (!(counted >= 400)) return;
          checked++;
          const told = touchersOf(belief, standOff(value, sigma));
          for (const [seat, share] of shares.entries()) {
            const chance = told.find((one) => one.seat === seat)?.chance ?? 0;
            // Four deviations of the sampling, what is told as none, and the bend of the touch near the ends.
            const wide = 4 * Math.sqrt(Math.max(share * (1 - share), 0.01) / counted) + HARDLY + 0.02;
            expect(Math.abs(chance - share)).toBeLessThan(wide);
          }
        },
      ),
      { numRuns: 25 * LONG },
    );
    expect(checked).toBeGreaterThan(10);
  });

  it('is open while one that may have touched was never read, and settled once it can only have been the one', () => {
    const drawn = pair(2.5e-6, 2.5e-6);
    const belief = believe(drawn, [], [], 5e-6, 0);
    const near = touchersOf(belief, standOff(0, 1e-6));
    expect(near.map(({ seat }) => seat)).toEqual([0, 1]);
    expect(near[0]!.chance + near[1]!.chance).toBeCloseTo(1, 12);
    expect(isOpen(belief, near)).toBe(true);
    // The steep seat so loose that it cannot have been.
    const loose = believe(pair(2.5e-6, 2e-4), [], [], 5e-6, 0);
    const only = touchersOf(loose, standOff(-0.00004, 1e-6));
    expect(only.map(({ seat }) => seat)).toEqual([0]);
    expect(isOpen(loose, only)).toBe(false);
    // All of it known, though two may have touched: then the readings judge it together.
    const priors = drawn.flatMap((_, seat) =>
      (['journal', 'bush'] as const).flatMap((part) => [
        { seat, part, of: 'halfAngle' as const, sigma: 1e-5 },
        { seat, part, of: 'radius' as const, sigma: 2e-6 },
      ]),
    );
    const known = believe(drawn, [], priors, 5e-6, 0);
    expect(isOpen(known, touchersOf(known, standOff(-0.000004, 1e-6)))).toBe(false);
  });
});
