/** What stock does: the four formulas against the lines themselves, and their limits. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { positionForFilm, seatLines } from '../../../src/engine/contact/fit.ts';
import { axialFeed, cleanUp, crossFeed, feedAlong } from '../../../src/engine/cutting/feeds.ts';
import { lineOf } from '../../../src/engine/parts/line.ts';
import { movedAxially } from '../../../src/engine/parts/shift.ts';
import { diameterChange, renewed, withStock } from '../../../src/engine/parts/stock.ts';
import { MM, rad, surface, UM, withFilm } from '../cutting/pairs.ts';

const angles = fc.double({ min: -88, max: 88, noNaN: true }).filter((a) => Math.abs(a) > 0.5);
const stock = fc.double({ min: 0.0001, max: 0.2, noNaN: true });

/** Distance of a point from the straight line through a surface's two ends. */
function distance(line: { z: Float64Array; r: Float64Array }, z: number, r: number): number {
  const [dz, dr] = [line.z[1]! - line.z[0]!, line.r[1]! - line.r[0]!];
  return Math.abs((z - line.z[0]!) * dr - (r - line.r[0]!) * dz) / Math.hypot(dz, dr);
}

describe('a normal stock s at the half angle a', () => {
  it('stands square to the old line all along, whatever the feed that took it off', () => {
    fc.assert(
      fc.property(angles, stock, fc.double({ min: 0, max: 180, noNaN: true }), (a, s, direction) => {
        const old = surface(a, 400, 0, -2, 2);
        const line = lineOf(old, 'inside');
        const cut = lineOf(withStock(old, 'journal', s * MM), 'inside');
        for (const i of [0, 1]) expect(Math.abs(distance(line, cut.z[i]!, cut.r[i]!) - s * MM)).toBeLessThan(1e-15);
        // a point of the old line moved by the feed lies on the new one
        const feed = feedAlong(s * MM, rad(a), rad(direction));
        if (feed === null) return;
        const sign = Math.sin(rad(direction) - rad(a)) > 0 ? -1 : 1;
        const [z, r] = [
          line.z[0]! + sign * feed * Math.cos(rad(direction)),
          line.r[0]! + sign * feed * Math.sin(rad(direction)),
        ];
        expect(distance(cut, z, r)).toBeLessThan(1e-13 * Math.max(1, feed / (s * MM)));
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('changes the diameter, moves the touch, and is a cross and an axial feed as the triangle says', () => {
    fc.assert(
      fc.property(
        angles.filter((a) => Math.abs(a) > 6),
        stock,
        fc.constantFrom('journal' as const, 'bush' as const),
        (a, s, part) => {
          const seat = withFilm({ name: 'a', journal: surface(a, 400, 0, -2, 2), bush: surface(a, 400.02, 0, -2, 2) });
          const cut = { ...seat, [part]: withStock(seat[part], part, s * MM) };
          const moved = positionForFilm(seatLines(cut), 0)! - positionForFilm(seatLines(seat), 0)!;
          expect(Math.abs(moved + (s * MM) / Math.sin(rad(a)))).toBeLessThan(1e-13);
          expect(Math.sign(moved)).toBe(-Math.sign(a));
          expect(2 * (cut[part].radius - seat[part].radius)).toBeCloseTo(diameterChange(s * MM, rad(a), part), 15);
          expect(Math.sign(diameterChange(s * MM, rad(a), part))).toBe(part === 'journal' ? -1 : 1);
          expect(crossFeed(s * MM, rad(a))).toBeCloseTo(Math.abs(diameterChange(s * MM, rad(a), part)) / 2, 15);
          expect(axialFeed(s * MM, rad(a))).toBeCloseTo(Math.abs(moved), 12);
        },
      ),
      { seed: 2, numRuns: 300 },
    );
  });

  it('at 45° is the same feed across and along; with the table set over it is itself', () => {
    expect(crossFeed(1, rad(45))).toBeCloseTo(Math.SQRT2, 12);
    expect(axialFeed(1, rad(45))).toBeCloseTo(Math.SQRT2, 12);
    expect(feedAlong(1, rad(45), rad(135))).toBeCloseTo(1, 12);
  });
});

describe('the limits', () => {
  it('a straight surface has no axial feed', () => {
    expect(axialFeed(UM, 0)).toBeNull();
    expect(crossFeed(UM, 0)).toBe(UM);
    expect(diameterChange(UM, 0, 'journal')).toBe(-2 * UM);
  });

  it('no feed along the surface itself cuts it', () => {
    expect(feedAlong(UM, rad(30), rad(30))).toBeNull();
    expect(feedAlong(UM, rad(30), rad(210))).toBeNull();
  });

  it('toward a flat face the axial feed becomes the stock', () => {
    expect(axialFeed(1, rad(89))! - 1).toBeLessThan(2e-4);
    expect(axialFeed(1, rad(-89))! - 1).toBeLessThan(2e-4);
  });

  it('no stock is the same surface', () => {
    const s = surface(3, 22, 0, -2, 2);
    expect(withStock(s, 'journal', 0)).toBe(s);
    expect(movedAxially(s, 0)).toBe(s);
  });
});

describe('a new line', () => {
  const worn = surface(3, 22, 0, -20, 0, [
    [-20, 0],
    [-8, -0.004],
    [-2, 0.001],
    [0, -0.012],
  ]);

  it.each(['journal', 'bush'] as const)(
    'clears the old one of a %s all along with just the stock of its deepest place',
    (part) => {
      const fresh = renewed(worn, rad(3));
      const s = cleanUp(worn, fresh, part);
      expect(s).toBeCloseTo(0.012 * MM, 14);
      const metal = part === 'journal' ? 'inside' : 'outside';
      const old = lineOf(worn, metal);
      const cut = withStock(fresh, part, s);
      const left = [...old.z].map(
        (z, i) =>
          (part === 'journal' ? 1 : -1) * (old.r[i]! - (cut.radius + (z - cut.station) * Math.tan(cut.halfAngle))),
      );
      expect(Math.min(...left)).toBeGreaterThan(-1e-16);
      expect(Math.min(...left)).toBeLessThan(1e-16);
    },
  );

  it('at another half angle needs what the two lines differ', () => {
    const straight = surface(3, 22, 0, -20, 0);
    // turned about its nose end, where the diameter is told: 20 mm behind, the new line lies 20·(tan 3.1° - tan 3°)
    // inside the old
    expect(cleanUp(straight, renewed(straight, rad(3.1)), 'journal')).toBe(0);
    expect(cleanUp(straight, renewed(straight, rad(3.1)), 'bush')).toBeCloseTo(
      20 * MM * (Math.tan(rad(3.1)) - Math.tan(rad(3))) * Math.cos(rad(3.1)),
      14,
    );
  });
});
