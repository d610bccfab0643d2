/** The chain of what is done to a part: metal off, moved, warmed. */
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { leastFilm } from '../../../src/engine/contact/film.ts';
import { type SeatInput, seatLines } from '../../../src/engine/contact/fit.ts';
import { filmGrowth } from '../../../src/engine/heat/filmGrowth.ts';
import { withMetalOff } from '../../../src/engine/parts/asTheyStand.ts';
import { grown } from '../../../src/engine/parts/growth.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const coneOf = (halfAngle: number): SeatInput => {
  const surface = { halfAngle, radius: 0.02, station: 0, from: -0.005, to: 0.005, profile: [] };
  return {
    name: 'cone',
    bush: surface,
    journal: { ...surface, radius: 0.02 - 3e-6 / Math.cos(halfAngle), from: -0.006, to: 0.006 },
  };
};
const filmOf = (seat: SeatInput) => leastFilm(seatLines(seat).gap, 0)!;

it('stock off either part opens the film by as much; a face opens it by sin a of its metal; put back, all is as it was', () => {
  fc.assert(
    fc.property(
      between(-1, 1),
      between(0, 2e-5),
      between(0, 2e-5),
      fc.constantFrom('journal' as const, 'bush' as const),
      (halfAngle, normal, off, part) => {
        const seats = [coneOf(halfAngle)];
        const metal = [
          { of: 'surface', seat: 0, part, normal },
          { of: 'face', part: 'journal', seats: [0], moves: 1, normal: off },
        ] as const;
        const cut = withMetalOff(seats, metal);
        expect(filmOf(cut[0]!)).toBeCloseTo(3e-6 + normal + off * Math.sin(halfAngle), 15);
        const back = withMetalOff(
          cut,
          metal.map((one) => ({ ...one, normal: -one.normal })),
        );
        expect(filmOf(back[0]!)).toBeCloseTo(3e-6, 15);
        expect(seats).toEqual([coneOf(halfAngle)]);
      },
    ),
    { seed: 5 },
  );
});

it('parts grown as surfaces have the film that the closed form gives', () => {
  fc.assert(
    fc.property(
      between(-1.2, 1.2),
      between(-2e-4, 2e-4),
      between(-2e-4, 2e-4),
      between(-0.1, 0.1),
      between(-0.1, 0.1),
      (halfAngle, bush, journal, bushAnchor, journalAnchor) => {
        const seat = coneOf(halfAngle);
        const warm = {
          ...seat,
          bush: grown(seat.bush, 1 + bush, bushAnchor),
          journal: grown(seat.journal, 1 + journal, journalAnchor),
        };
        const gained = filmGrowth(
          seatLines(seat).gap,
          { strain: bush, anchor: bushAnchor },
          { strain: journal, anchor: journalAnchor },
        );
        // The film itself grows with the journal's line, 3 µm by 2e-4.
        expect(Math.abs(filmOf(warm) - filmOf(seat) - gained)).toBeLessThan(1e-9);
      },
    ),
    { seed: 5 },
  );
});
