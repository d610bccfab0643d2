/** The hollow flank: the hyperbola against exact geometry, its profile, and what it does to the film. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { seatLines, fit as solveFit } from '../../../src/engine/contact/fit.ts';
import { lineOf } from '../../../src/engine/parts/line.ts';
import { hollowOf, offCentreRadius, offCentreSeat, offCentreSurface } from '../../../src/engine/parts/offCentre.ts';
import { MM, pair, rad, surface, UM, withFilm } from '../cutting/pairs.ts';

const draws = fc.record({
  angle: fc.oneof(fc.double({ min: 1, max: 60, noNaN: true }), fc.double({ min: -60, max: -1, noNaN: true })),
  height: fc.double({ min: 0.01, max: 2, noNaN: true }),
  gauged: fc.double({ min: -2, max: 2, noNaN: true }),
});

/** Distance from the axis of a point that turns with the work: the tool's straight path in space, turned. */
function turnedRadius(angle: number, diameter: number, gauged: number, height: number, z: number): number {
  // the path starts where the radius is right, at height k, and leans by the half angle in its own plane
  const start = [Math.sqrt((diameter / 2 + gauged * Math.tan(rad(angle))) ** 2 - height ** 2), height, gauged] as const;
  const along = [Math.sin(rad(angle)), 0, Math.cos(rad(angle))] as const;
  const t = (z - start[2]) / along[2];
  return Math.hypot(start[0] + t * along[0], start[1] + t * along[1]);
}

describe('the radius', () => {
  it('is that of a straight path in space, turned about the axis', () => {
    fc.assert(
      fc.property(draws, fc.double({ min: -2, max: 2, noNaN: true }), ({ angle, height, gauged }, z) => {
        const cone = surface(angle, 24, 0, -2, 2);
        const found = offCentreRadius(cone, gauged * MM, height * MM, z * MM);
        expect(found! / MM).toBeCloseTo(turnedRadius(angle, 24, gauged, height, z), 11);
      }),
      { seed: 3 },
    );
  });

  it('is right where it was gauged, and the same above as below the centre', () => {
    const cone = surface(45, 24, 0, -2, 2);
    expect(offCentreRadius(cone, MM, 0.3 * MM, MM)).toBeCloseTo(13 * MM, 15);
    expect(offCentreRadius(cone, 0, 0.3 * MM, MM)).toBe(offCentreRadius(cone, 0, -0.3 * MM, MM));
  });

  it('has none beyond the axis', () => {
    const cone = surface(45, 4.2, 0, -2, 2);
    expect(offCentreRadius(cone, 0, 3 * MM, 0)).toBeNull();
    expect(offCentreRadius(cone, 2 * MM, MM, -2 * MM)).toBeNull();
    expect(offCentreSurface(cone, 'journal', 2 * MM, MM)).toBeNull();
    expect(hollowOf(cone, 2 * MM, MM)).toBeNull();
  });
});

describe('the profile', () => {
  it('is the hyperbola at its points, and departs from it by a thousandth of a nanometre between them', () => {
    fc.assert(
      fc.property(draws, fc.constantFrom('journal' as const, 'bush' as const), ({ angle, height, gauged }, part) => {
        const cone = surface(angle, 24, 0, -2, 2);
        const line = lineOf(
          offCentreSurface(cone, part, gauged * MM, (height / 4) * MM)!,
          part === 'journal' ? 'inside' : 'outside',
        );
        for (let i = 1; i < line.z.length; i++) {
          const exact = (z: number) => offCentreRadius(cone, gauged * MM, (height / 4) * MM, z)!;
          expect(Math.abs(line.r[i]! - exact(line.z[i]!))).toBeLessThan(1e-15);
          const middle = (line.z[i - 1]! + line.z[i]!) / 2;
          expect(Math.abs((line.r[i - 1]! + line.r[i]!) / 2 - exact(middle))).toBeLessThan(1.1e-12);
        }
      }),
      { seed: 4, numRuns: 40 },
    );
  });

  it('is hollow on a journal, proud in a bush, and nothing on a straight surface', () => {
    const cone = surface(45, 24, 0, -2, 2);
    const middle = (part: 'journal' | 'bush') => {
      const { profile } = offCentreSurface(cone, part, -2 * MM, 0.5 * MM)!;
      const nose = profile.at(-1)![1];
      const half = profile[Math.floor(profile.length / 2)]!;
      return half[1] - (nose * (half[0] + 2 * MM)) / (4 * MM);
    };
    expect(middle('journal')).toBeLessThan(-UM / 10);
    expect(middle('bush')).toBeGreaterThan(UM / 10);
    for (const [, d] of offCentreSurface(surface(0, 24, 0, -2, 2), 'journal', 0, 0.5 * MM)!.profile)
      expect(Math.abs(d)).toBeLessThan(1e-17);
  });

  it('keeps the line’s own deviations', () => {
    const worn = surface(45, 24, 0, -2, 2, [
      [-1, 0.002],
      [1, -0.001],
    ]);
    const at = (s: typeof worn, z: number) => s.profile.find(([station]) => Math.abs(station - z) < 1e-12)![1];
    const cut = offCentreSurface(worn, 'journal', 0, 0.2 * MM)!;
    const clean = offCentreSurface({ ...worn, profile: [] }, 'journal', 0, 0.2 * MM)!;
    expect(at(cut, 2 * MM) - at(clean, 2 * MM)).toBeCloseTo(-0.001 * MM, 15);
  });
});

describe('what it does', () => {
  it('the depth of the hollow is the greatest distance from the chord, found by looking', () => {
    fc.assert(
      fc.property(draws, ({ angle, height, gauged }) => {
        const cone = surface(angle, 24, 0, -2, 2);
        const hollow = hollowOf(cone, gauged * MM, height * MM)!;
        const r = (z: number) => offCentreRadius(cone, gauged * MM, height * MM, z)!;
        const [rear, nose] = [r(-2 * MM), r(2 * MM)];
        let most = 0;
        for (let i = 0; i <= 4000; i++) {
          const z = (-2 + i / 1000) * MM;
          most = Math.max(most, rear + ((nose - rear) * (z + 2 * MM)) / (4 * MM) - r(z));
        }
        const chord = Math.atan((nose - rear) / (4 * MM));
        expect(Math.abs(hollow.depth - most * Math.cos(chord))).toBeLessThan(1e-6 * most + 1e-16);
        expect(hollow.angleError).toBeCloseTo(chord - rad(angle), 12);
        expect(Math.sign(hollow.angleError)).toBe(-Math.sign(angle));
      }),
      { seed: 5, numRuns: 60 },
    );
  });

  it('on centre it is nothing', () => {
    expect(hollowOf(surface(45, 24, 0, -2, 2), 0, 0)).toEqual({ depth: 0, angleError: 0 });
  });

  it('the film of a steep cone gauged at one end loses to first order (L/cos a)·sin a·cos a·k²/(2·r²) at the other', () => {
    const [, steep] = pair(0.01, 0.01);
    const k = 0.2 * MM;
    const seat = offCentreSeat(
      withFilm({ ...steep!, journal: surface(45, 24, 1.2, 1, 4), bush: surface(45, 24.01, 1.2, 1, 4) }),
      'journal',
      4 * MM,
      k,
    )!;
    const before = solveFit([{ ...seat, journal: surface(45, 24, 1.2, 1, 4) }], 0).seats[0]!.leastFilm!;
    const after = solveFit([seat], 0).seats[0]!.leastFilm!;
    // the radius falls less than it should from where it was gauged: at the rear end it is larger by about (z - z₀)·tan
    // a·((r₀/x₀) - 1)
    const mean = 13.3 * MM;
    const lost = 3 * MM * Math.sin(rad(45)) * 0.5 * (k / mean) ** 2;
    expect((before - after) / lost).toBeGreaterThan(0.9);
    expect((before - after) / lost).toBeLessThan(1.2);
    expect(seatLines(seat).closes).toBe('rearward');
  });
});
