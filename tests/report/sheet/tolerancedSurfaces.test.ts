/** Drawn dimensions and tolerances against closed forms, and against the films they are to keep. */
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { tolerancedSurfaces } from '../../../src/report/sheet/tolerancedSurfaces.ts';

const radians = (degrees: number) => (degrees * Math.PI) / 180;
const design: Design = {
  conepair: 1,
  seats: [
    {
      name: 'shallow',
      journal: { halfAngle: 3, diameter: 22, station: 0, from: -26, to: 0 },
      bush: { halfAngle: 3, diameter: 22 + 0.005 / Math.cos(radians(3)), station: 0, from: -25, to: -0.5 },
      film: { target: 0.0025, tolerance: 0.0005 },
    },
    { name: 'rear', journal: { halfAngle: 0, diameter: 18, station: -60, from: -70, to: -50 }, bush: { halfAngle: 0, diameter: 18.005, station: -60, from: -70, to: -50 } },
  ],
};
const surfaces = tolerancedSurfaces(design, 0, []);
const of = (seat: string, part: string) => surfaces.find((s) => s.seat === seat && s.part === part)!;

test('gauge plane within the surface, the diameter of the line there, taper 1 in 1/(2 tan a)', () => {
  const bush = of('shallow', 'bush');
  expect(bush.gaugePlane).toBe(-0.5);
  expect(bush.diameter).toBeCloseTo(22 + 0.005 / Math.cos(radians(3)) - 2 * 0.5 * Math.tan(radians(3)), 12);
  expect(bush.taper).toBeCloseTo(1 / (2 * Math.tan(radians(3))), 10);
  expect(of('rear', 'journal')).toMatchObject({ taper: null, gaugePlane: -60, diameterTolerance: null, halfAngleTolerance: null });
});

test('the diameters of both parts at the ends of their tolerances just use up that of the film', () => {
  const { diameterTolerance } = of('shallow', 'journal');
  expect(diameterTolerance).toBeCloseTo(0.0005 / Math.cos(radians(3)), 12);
  const [seat] = design.seats;
  const worst: Design = { ...design, seats: [{ ...seat!, journal: { ...seat!.journal, diameter: 22 - diameterTolerance! }, bush: { ...seat!.bush, diameter: seat!.bush.diameter + of('shallow', 'bush').diameterTolerance! } }] };
  expect(fitSection(worst).seats[0]!.leastFilm).toBeCloseTo(0.003, 9);
});

test('a half angle wrong by twice its tolerance, turned about the gauge plane, brings the film to the end of its own', () => {
  const { halfAngleTolerance, gaugePlane, diameter } = of('shallow', 'journal');
  const [seat] = design.seats;
  const films = [1, -1].map((sign) => {
    const turned: Design = { ...design, seats: [{ ...seat!, journal: { ...seat!.journal, station: gaugePlane, diameter, halfAngle: 3 + sign * 2 * halfAngleTolerance! } }] };
    return fitSection(turned).seats[0]!;
  });
  const off = Math.max(...films.flatMap(({ leastFilm, greatestFilm }) => [0.0025 - leastFilm!, greatestFilm! - 0.0025]));
  expect(off).toBeCloseTo(0.0005, 8);
});

test('what the plan takes off a diameter stands with its surface', () => {
  const step = { seat: 'shallow', part: 'journal', diameter: -0.004 } as Parameters<typeof tolerancedSurfaces>[2][number];
  const planned = tolerancedSurfaces(design, 0, [step]);
  expect(planned.map(({ cut }) => cut)).toEqual([-0.004, null, null, null]);
});
