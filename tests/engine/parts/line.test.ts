/** The line of a surface against its profile read straight off: point by point, level beyond its ends. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { deviationAt, lineOf, profilePieceAt, radiusOf, type Surface } from '../../../src/engine/parts/line.ts';
import { offCentreSurface } from '../../../src/engine/parts/offCentre.ts';

/** The profile read by looking at every piece. */
function read(profile: Surface['profile'], z: number): number {
  const [first, last] = [profile[0]!, profile[profile.length - 1]!];
  for (let k = 1; k < profile.length; k++) {
    const [[za, a], [zb, b]] = [profile[k - 1]!, profile[k]!];
    if (z >= za && z <= zb) return a + ((b - a) * (z - za)) / (zb - za);
  }
  return z < first[0] ? first[1] : last[1];
}

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** m: points on a grid within and beyond the ends of the surface, which lie on it too. */
const surface = fc
  .record({
    halfAngle: number(-1, 1),
    stations: fc.uniqueArray(fc.integer({ min: -30, max: 30 }), { minLength: 1, maxLength: 9 }),
    deviations: fc.array(number(-5e-6, 5e-6), { minLength: 9, maxLength: 9 }),
    from: fc.integer({ min: -20, max: -1 }),
    to: fc.integer({ min: 1, max: 20 }),
  })
  .map(
    ({ halfAngle, stations, deviations, from, to }): Surface => ({
      halfAngle,
      radius: 0.05,
      station: 0,
      from: from / 1000,
      to: to / 1000,
      profile: stations.sort((a, b) => a - b).map((z, i) => [z / 1000, deviations[i]!] as const),
    }),
  );

test('a deviation is that of the piece it lies on', () => {
  fc.assert(
    fc.property(surface, number(-0.035, 0.035), ({ profile }, z) => {
      expect(Math.abs(deviationAt(profile, z) - read(profile, z))).toBeLessThan(1e-18);
      if (profile.length < 2 || z < profile[0]![0] || z >= profile[profile.length - 1]![0]) return;
      const k = profilePieceAt(profile, z);
      expect(profile[k]![0] <= z && z < profile[k + 1]![0]).toBe(true);
    }),
    { numRuns: 300 },
  );
});

test('a line ends with its surface, bends at the points between, and nowhere twice', () => {
  fc.assert(
    fc.property(surface, fc.constantFrom('inside', 'outside'), (of, metal) => {
      const { from, to, profile } = of;
      const { z, r } = lineOf(of, metal);
      const inner = profile.map(([at]) => at).filter((at) => at > from && at < to);
      expect([...z]).toEqual([from, ...inner, to]);
      const part = metal === 'inside' ? 'journal' : 'bush';
      for (const [i, at] of z.entries()) expect(Math.abs(r[i]! - radiusOf(of, part, at))).toBeLessThan(1e-16);
    }),
    { numRuns: 200 },
  );
});

test('a flank cut off the centre keeps every point of the profile on it, and none beyond its ends', () => {
  fc.assert(
    fc.property(surface, number(1e-5, 5e-4), (of, height) => {
      const cut = offCentreSurface(of, 'journal', 0, height)!;
      const stations = cut.profile.map(([z]) => z);
      expect(stations).toEqual([...new Set(stations)].sort((a, b) => a - b));
      expect([stations[0], stations[stations.length - 1]]).toEqual([of.from, of.to]);
      for (const [z] of of.profile) {
        if (z > of.from && z < of.to) expect(stations).toContain(z);
        else if (z < of.from || z > of.to) expect(stations).not.toContain(z);
      }
    }),
    { numRuns: 100 },
  );
});
