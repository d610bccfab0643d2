/** What the parts as they stand leave of a film's tolerance is what their drawing may share out. */
import { expect, test } from 'vitest';
import type { Design } from '../../../src/design/definition.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { drawnParts } from '../../../src/report/sheet/drawnParts.ts';

const WANTED = { target: 0.0025, tolerance: 0.0005 };
const cos3 = Math.cos((3 * Math.PI) / 180);

/** A cone whose film (mm), the journal standing at 0, is this. */
const withFilm = (film: number): Design => ({
  conepair: 1,
  seats: [
    {
      name: 'shallow',
      journal: { halfAngle: 3, diameter: 22, station: 0, from: -26, to: 0 },
      bush: { halfAngle: 3, diameter: 22 + (2 * film) / cos3, station: 0, from: -25, to: -0.5 },
      film: WANTED,
    },
  ],
});

const drawn = (film: number, kind: 'parts' | 'refused' = 'parts') => drawnParts(withFilm(film), null, kind, 'metric');

test.each([0.0025, 0.0027, 0.0022])('both diameters off by all of theirs just use up what is left (%f mm)', (film) => {
  const { surfaces, made, untoleranced } = drawn(film);
  expect(untoleranced).toEqual([]);
  const wider = surfaces.map(({ diameterTolerance }) => diameterTolerance!);
  for (const sign of [1, -1]) {
    const [seat] = made.seats;
    const worst: Design = {
      ...made,
      seats: [
        {
          ...seat!,
          journal: { ...seat!.journal, diameter: seat!.journal.diameter - sign * wider[0]! },
          bush: { ...seat!.bush, diameter: seat!.bush.diameter + sign * wider[1]! },
        },
      ],
    };
    const off = Math.abs(fitSection(worst).seats[0]!.leastFilm! - WANTED.target);
    expect(off).toBeLessThan(WANTED.tolerance + 1e-8);
    if (sign === Math.sign(film - WANTED.target)) expect(off).toBeGreaterThan(WANTED.tolerance - 1e-8);
  }
  expect(surfaces[0]!.halfAngleTolerance).toBeGreaterThan(0);
});

test.each([
  [0.003, 'parts'],
  [0.002, 'parts'],
  [0.004, 'refused'],
  [-0.001, 'refused'],
] as const)('at the end of its tolerance or beyond no surface has one, and the seat is named (%f mm)', (film, kind) => {
  // Held where it stands: an axial move would bring one cone back into the middle.
  const { surfaces, untoleranced } = drawn(film, kind);
  const { position, seats } = fitSection(drawn(film, kind).made);
  expect([position, seats[0]!.leastFilm]).toEqual([0, expect.closeTo(film, 9)]);
  expect(untoleranced).toEqual(['shallow']);
  for (const { diameterTolerance, halfAngleTolerance, form, runOut } of surfaces)
    expect([diameterTolerance, halfAngleTolerance, form, runOut]).toEqual([null, null, null, null]);
});
