import { expect, test } from 'vitest';
import { type Drawn, drawnAt } from '../../../../src/app/pictures/drawn.ts';
import { leaningOf } from '../../../../src/app/pictures/leaning.ts';
import { lensDepth, thinnestSections } from '../../../../src/app/screens/fit/lens.ts';
import { DEMOS } from '../../../../src/app/state/demos.ts';
import { seatLines } from '../../../../src/engine/contact/fit.ts';
import { metres, toSeats } from '../../../../src/report/convert.ts';

const { design } = DEMOS.find(({ file }) => file.startsWith('steep-first'))!;
const parts = toSeats(design);
const seats = parts.map(seatLines);
const at = (position: number, leaning: Parameters<typeof drawnAt>[3] = null): Drawn =>
  drawnAt(seats, metres(position), 200, leaning);

test('all lenses are as deep wherever the journal stands, by the films wanted', () => {
  for (const position of [-0.15, -0.004, 0, 0.02, 0.1]) expect(lensDepth(at(position).seats)).toBeCloseTo(12e-6, 12);
  const unwanted = (position: number) => at(position).seats.map((seat) => ({ ...seat, wanted: null }));
  const depth = lensDepth(unwanted(0.02));
  expect(depth).toBeGreaterThan(17e-6);
  // In steps, so that it seldom changes.
  expect(lensDepth(unwanted(0.021))).toBe(depth);
});

test('the edges of a lens stand as far apart as the film is thick, the bush level where it is straight', () => {
  for (const { film } of at(0.02).seats)
    for (const place of film) {
      expect(Math.abs(place.edge)).toBeLessThan(1e-12);
      expect(Math.hypot(place.bush[0] - place.journal[0], place.bush[1] - place.journal[1])).toBeGreaterThan(
        200 * place.film * (1 - 1e-9),
      );
    }
});

test('pulled aside, every seat is shown where its film is thinnest', () => {
  const pose = { x: 2e-6, y: -1e-6, z: metres(0.02), tiltX: 0, tiltY: 0 };
  const least = (drawn: Drawn['seats'][number]) => Math.min(...drawn.film.map(({ film }) => film));
  const straight = at(0.02);
  const leaning = at(0.02, leaningOf(parts, pose));
  const shown = thinnestSections(leaning);
  shown.forEach((seat, i) => {
    expect(seat.name).toBe(design.seats[i]!.name);
    for (const angle of [0, 1, 2, 3, 4, 5, 6]) expect(least(seat)).toBeLessThan(least(leaning.at!(angle)[i]!) + 1e-8);
    expect(least(seat)).toBeLessThan(least(straight.seats[i]!));
  });
  expect(thinnestSections(straight)).toBe(straight.seats);
});
