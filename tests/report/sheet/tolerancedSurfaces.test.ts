/** Drawn dimensions and tolerances against closed forms, and against the films they are to keep. */
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { gaugePlaneOf, tolerancedSurfaces } from '../../../src/report/sheet/tolerancedSurfaces.ts';

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
    {
      name: 'rear',
      journal: { halfAngle: 0, diameter: 18, station: -60, from: -70, to: -50 },
      bush: { halfAngle: 0, diameter: 18.005, station: -60, from: -70, to: -50 },
    },
  ],
};
const surfaces = tolerancedSurfaces(design, 0, [], 'metric');
const of = (seat: string, part: string) => surfaces.find((s) => s.seat === seat && s.part === part)!;

test('gauge plane within the surface, the diameter of the line there, taper 1 in 1/(2 tan a)', () => {
  const bush = of('shallow', 'bush');
  expect(bush.gaugePlane).toBe(-0.5);
  expect(bush.diameter).toBeCloseTo(22 + 0.005 / Math.cos(radians(3)) - 2 * 0.5 * Math.tan(radians(3)), 12);
  expect(bush.taper).toBeCloseTo(1 / (2 * Math.tan(radians(3))), 10);
  expect(of('rear', 'journal')).toMatchObject({
    taper: null,
    gaugePlane: -60,
    diameterTolerance: null,
    halfAngleTolerance: null,
  });
});

test('a surface so nearly straight that its ends are alike is straight; one that tapers slowly on purpose is a cone', () => {
  const tapering = (halfAngle: number) => {
    const rear = design.seats[1]!;
    const changed: Design = { ...design, seats: [{ ...rear, journal: { ...rear.journal, halfAngle } }] };
    return tolerancedSurfaces(changed, 0, [], 'metric')[0]!;
  };
  expect(tapering(0)).toMatchObject({ straight: true, taperOver: 0 });
  expect(tapering(-0.0052)).toMatchObject({ straight: true, taper: null });
  expect(tapering(-0.0052).taperOver).toBeCloseTo(2 * 20 * Math.tan(radians(0.0052)), 12);
  // 10 µm over the 20 mm is the most.
  const most = (Math.atan(0.01 / 40) * 180) / Math.PI;
  expect([most * 0.999, most * 1.001, 0.3].map((angle) => tapering(angle).straight)).toEqual([true, false, false]);
});

test('the diameters of both parts at the ends of their tolerances just use up that of the film', () => {
  const { diameterTolerance } = of('shallow', 'journal');
  expect(diameterTolerance).toBeCloseTo(0.0005 / Math.cos(radians(3)), 12);
  const [seat] = design.seats;
  const worst: Design = {
    ...design,
    seats: [
      {
        ...seat!,
        journal: { ...seat!.journal, diameter: 22 - diameterTolerance! },
        bush: { ...seat!.bush, diameter: seat!.bush.diameter + of('shallow', 'bush').diameterTolerance! },
      },
    ],
  };
  expect(fitSection(worst).seats[0]!.leastFilm).toBeCloseTo(0.003, 9);
});

test('a half angle wrong by twice its tolerance, turned about the gauge plane, brings the film to the end of its own', () => {
  const { halfAngleTolerance, gaugePlane, diameter } = of('shallow', 'journal');
  const [seat] = design.seats;
  const films = [1, -1].map((sign) => {
    const turned: Design = {
      ...design,
      seats: [
        {
          ...seat!,
          journal: { ...seat!.journal, station: gaugePlane, diameter, halfAngle: 3 + sign * 2 * halfAngleTolerance! },
        },
      ],
    };
    return fitSection(turned).seats[0]!;
  });
  const off = Math.max(
    ...films.flatMap(({ leastFilm, greatestFilm }) => [0.0025 - leastFilm!, greatestFilm! - 0.0025]),
  );
  expect(off).toBeCloseTo(0.0005, 8);
});

test('what the plan takes off a diameter stands with its surface', () => {
  const step = { seat: 'shallow', part: 'journal', diameter: -0.004 } as const;
  const planned = tolerancedSurfaces(design, 0, [step], 'metric');
  expect(planned.map(({ cut }) => cut)).toEqual([-0.004, null, null, null]);
});

test('a gauge plane stands where it can be told exactly, on the surface, and the diameter is that of the plane told', () => {
  // 1.2 mm is no whole number of thous: the next that lies on the surface is 0.048 in.
  expect(gaugePlaneOf({ station: 1.2, from: 1.2, to: 4.2 }, 'metric')).toBe(1.2);
  expect(gaugePlaneOf({ station: 1.2, from: 1.2, to: 4.2 }, 'inch')).toBeCloseTo(0.048 * 25.4, 12);
  expect(gaugePlaneOf({ station: 0, from: -25, to: -0.5 }, 'inch')).toBeCloseTo(-0.02 * 25.4, 12);
  expect(gaugePlaneOf({ station: 1.346447, from: 1, to: 4 }, 'metric')).toBeCloseTo(1.35, 12);
  // Shorter than a thou: there is nothing rounder.
  expect(gaugePlaneOf({ station: 1.2001, from: 1.2001, to: 1.201 }, 'inch')).toBe(1.2001);
  const inch = tolerancedSurfaces(design, 0, [], 'inch').find((s) => s.seat === 'shallow' && s.part === 'bush')!;
  expect(inch.gaugePlane).toBeCloseTo(-0.508, 12);
  expect(inch.diameter).toBeCloseTo(22 + 0.005 / Math.cos(radians(3)) - 2 * 0.508 * Math.tan(radians(3)), 12);
});

test('form and run-out: a part as far out as they allow uses half of the tolerance of the film, all by itself', () => {
  const { form, runOut } = of('shallow', 'journal');
  const [seat] = design.seats;
  const bulged = fitSection({
    ...design,
    seats: [
      {
        ...seat!,
        journal: {
          ...seat!.journal,
          profile: [
            [-26, 0],
            [-13, form!],
            [0, 0],
          ],
        },
      },
    ],
  });
  expect(0.0025 - bulged.seats[0]!.leastFilm!).toBeCloseTo(0.00025, 8);
  // The line of an axis aside by e, and how far it then stands from the line of the bush, square to it; the indicator
  // reads that to both sides.
  const eccentricity = runOut! / 2 / Math.cos(radians(3));
  const [u, v] = [Math.cos(radians(3)), Math.sin(radians(3))];
  const distance = Math.abs(u * eccentricity - v * 0);
  expect(distance).toBeCloseTo(0.0005 / 2, 12);
  expect(runOut).toBeCloseTo(2 * distance, 12);
  expect(of('rear', 'bush')).toMatchObject({ form: null, runOut: null });
});
