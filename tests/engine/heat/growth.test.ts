/** Growth of warm parts against the fit of lines that really are larger. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type SeatInput, seatLines, fit as solveFit } from '../../../src/engine/contact/fit.ts';
import { filmGrowth, type Growth } from '../../../src/engine/heat/filmGrowth.ts';
import type { Surface } from '../../../src/engine/parts/line.ts';
import { surface } from '../cutting/pairs.ts';

/** Every length from the anchor and the axis larger by the strain. */
const grown = (s: Surface, { strain, anchor }: Growth): Surface => {
  const at = (z: number) => anchor + (z - anchor) * (1 + strain);
  return { ...s, radius: s.radius * (1 + strain), station: at(s.station), from: at(s.from), to: at(s.to) };
};

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const warmth = fc.record({ strain: between(-1e-4, 1e-3), anchor: between(-0.1, 0.1) });

test('is what the film of the larger lines gains, wherever the parts are held', () => {
  fc.assert(
    fc.property(
      between(-60, 60),
      between(18, 30),
      between(-5, 5),
      warmth,
      warmth,
      (angle, diameter, station, bush, journal) => {
        const seat: SeatInput = {
          name: 'a',
          journal: surface(angle, diameter, station, -4, 4),
          bush: surface(angle, diameter, station, -3, 3),
        };
        const warm: SeatInput = { name: 'a', journal: grown(seat.journal, journal), bush: grown(seat.bush, bush) };
        const filmOf = (one: SeatInput) => solveFit([one], 0).seats[0]!.leastFilm!;
        const gained = filmOf(warm) - filmOf(seat);
        expect(Math.abs(filmGrowth(seatLines(seat).gap, bush, journal) - gained)).toBeLessThan(
          1e-12 + 1e-6 * Math.abs(gained),
        );
      },
    ),
    { seed: 11, numRuns: 200 },
  );
});

test('a cone held at its apex keeps its film however warm it gets', () => {
  const seat: SeatInput = { name: 'a', journal: surface(45, 24, 0, -4, 4), bush: surface(45, 24, 0, -3, 3) };
  const apex = { strain: 1e-3, anchor: -0.012 };
  expect(filmGrowth(seatLines(seat).gap, apex, { strain: 0, anchor: 0 })).toBeCloseTo(0, 15);
  expect(filmGrowth(seatLines(seat).gap, { strain: 0, anchor: 0 }, apex)).toBeCloseTo(0, 15);
});
