/** What a fit says of seats beside each other, and of a place where two corners meet. */
import { describe, expect, test } from 'vitest';
import { filmAlong, gapOf } from '../../../src/engine/contact/film.ts';
import { type SeatInput, fit as solveFit } from '../../../src/engine/contact/fit.ts';
import { lineOf } from '../../../src/engine/parts/line.ts';
import { MM, rad, surface, UM, withFilm } from '../cutting/pairs.ts';

/** Touches at 0: journal and bush alike. */
const home: SeatInput = { name: 'home', journal: surface(45, 24, 0, -2, 2), bush: surface(45, 24, 0, -1, 1) };
/** Its journal is far smaller than its bush anywhere: it passes through. */
const loose = (sign: 1 | -1): SeatInput => ({
  name: 'loose',
  journal: surface(3 * sign, 10, -20, -26, -14),
  bush: surface(3 * sign, 22, -20, -25, -15),
});

describe('a seat that never touches', () => {
  test('is not among those that touch together', () => {
    const { firstPosition, together } = solveFit([home, loose(1)], 0);
    expect(firstPosition).toBeCloseTo(0, 15);
    expect(together).toEqual(['home']);
  });

  test('is no stop noseward', () => {
    expect(solveFit([home, loose(-1)], 0).endPlay).toBeNull();
    const stop: SeatInput = { name: 'stop', journal: surface(-45, 24, 8, 6, 10), bush: surface(-45, 24.02, 8, 7, 9) };
    for (const seats of [
      [home, loose(-1), stop],
      [home, stop, loose(-1)],
    ])
      expect(solveFit(seats, 0).endPlay).toBeCloseTo(0.01 * MM, 12);
  });
});

describe('films at the position for a film', () => {
  const wanted = withFilm(home);

  test("are those of the fit there, the seat's own to the last digit", () => {
    const seats = [wanted, { ...loose(1), name: 'other' }];
    const [own, other] = solveFit(seats, 0).seats;
    expect(own!.filmsAtTarget![0]).toBe(wanted.target);
    expect(own!.filmsAtTarget![1]).toBe(solveFit(seats, own!.positionForTarget!).seats[1]!.leastFilm);
    expect(other).toMatchObject({ positionForTarget: null, filmsAtTarget: null, tolerated: null });
  });

  test('a straight seat that wants no film leaves what the cone permits', () => {
    const straight: SeatInput = {
      name: 'straight',
      journal: surface(0, 20, -20, -26, -14),
      bush: surface(0, 20.01, -20, -25, -15),
    };
    const alone = solveFit([wanted], 0).permitted!;
    expect(alone.to - alone.from).toBeCloseTo((2 * 0.5 * UM) / Math.sin(Math.PI / 4), 12);
    expect(solveFit([wanted, straight], 0).permitted).toEqual(alone);
    expect(solveFit([straight, wanted], 0).permitted).toEqual(alone);
  });

  test('a straight seat apart from its bush leaves it too, unless it wants a film', () => {
    const apart: SeatInput = {
      name: 'apart',
      journal: surface(0, 20, -20, -26, -22),
      bush: surface(0, 20.01, -20, -18, -15),
    };
    expect(solveFit([wanted, apart], 0).permitted).toEqual(solveFit([wanted], 0).permitted);
    expect(solveFit([wanted, withFilm(apart, 0.005)], 0).permitted).toBeNull();
  });
});

test.each([1, -1] as const)(
  'where a ridge of the bush stands on a crown of the journal the film opens as its own difference says (%s)',
  (sign) => {
    const peak = (height: number, at: number) => [-2, 0, 2].map((z) => [z + at, z === 0 ? height : 0] as const);
    for (const [crown, ridge] of [
      [0.02, 0.005],
      [0.005, 0.02],
    ] as const) {
      // The journal stands so far off that the two peaks meet.
      const position = (crown + ridge) / Math.sin(rad(10 * sign));
      const seat: SeatInput = {
        name: 'peaks',
        journal: surface(10 * sign, 24, 0, -4, 4, peak(crown, -position)),
        bush: surface(10 * sign, 24, 0, -4, 4, peak(ridge, 0)),
      };
      const at = (z: number) => solveFit([seat], z).seats[0]!;
      const touch = position * MM;
      expect(at(touch).leastFilm).toBeCloseTo(0, 12);
      const step = 0.1 * UM * sign;
      const slope = (at(touch + step).leastFilm! - at(touch).leastFilm!) / step;
      expect(at(touch).sensitivity).toBeCloseTo(slope, 6);
      expect(Math.abs(slope - Math.sin(seat.bush.halfAngle))).toBeGreaterThan(1e-4);
    }
  },
);

describe('a line', () => {
  const points = [-30, -26, -20, -10, -4, 0, 5].map((z, i) => [z, 0.001 * (i % 3)] as const);

  test.each([
    [-26, -4],
    [-28, 2],
    [-10, -9],
    [-40, -35],
  ])('from %s to %s has every station once, its ends and the points between them', (from, to) => {
    const { z } = lineOf(surface(3, 22, 0, from, to, points), 'inside');
    const within = points.map(([at]) => at).filter((at) => at > from && at < to);
    expect(Array.from(z, (at) => Number((at / MM).toFixed(9)))).toEqual([from, ...within, to]);
  });

  test('leaves one film at a place where breakpoints of both parts meet', () => {
    const inside = surface(3, 22, 0, -26, -4, points);
    const { count, u, film } = filmAlong(
      gapOf(lineOf({ ...inside, profile: [] }, 'outside'), lineOf(inside, 'inside')),
      0,
    );
    expect(count).toBe(4);
    for (let i = 1; i < count; i++) expect(u[i]).toBeGreaterThan(u[i - 1]!);
    // proud of the straight bush: as much as it stands out
    for (const [i, one] of [1, 2, 0, 1].entries()) expect(-film[i]! / UM).toBeCloseTo(one, 3);
  });
});
