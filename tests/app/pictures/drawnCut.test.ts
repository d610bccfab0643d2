/** Stock as drawn: as thick as a film of that thickness, and the state after just where its own films are. */
import { expect, test } from 'vitest';
import { drawnCut } from '../../../src/app/pictures/drawnCut.ts';
import { straightened } from '../../../src/app/pictures/straightened.ts';
import { type SeatInput, seatLines } from '../../../src/engine/contact/fit.ts';
import { withStock } from '../../../src/engine/parts/stock.ts';

const surface = (halfAngle: number, radius: number, from: number, to: number) => ({
  halfAngle,
  radius,
  station: from,
  from,
  to,
  profile: [],
});
const cone = (halfAngle: number): SeatInput => ({
  name: `${halfAngle}`,
  journal: surface(halfAngle, 0.011, 0, 0.02),
  bush: surface(halfAngle, 0.01101, 0, 0.02),
});
const STOCK = 4e-6;
const FACTOR = 50;

test.each([0.05, Math.PI / 4])(
  'stock of a cone of %d rad is drawn square to the line as thick as it is',
  (halfAngle) => {
    const before = cone(halfAngle);
    const after = {
      ...before,
      journal: withStock(before.journal, 'journal', STOCK),
      bush: withStock(before.bush, 'bush', STOCK),
    };
    const { cutTo, before: drawn } = drawnCut([seatLines(before)], [seatLines(after)], 0, 0, FACTOR);
    expect(drawn.factor).toBe(FACTOR);
    const [sin, cos] = [Math.sin(halfAngle), Math.cos(halfAngle)];
    // Distance outward from the old line, square to it.
    const off = (old: readonly (readonly [number, number])[], fresh: readonly (readonly [number, number])[]) =>
      (fresh[0]![1] - old[0]![1]) * cos - (fresh[0]![0] - old[0]![0]) * sin;
    expect(off(drawn.seats[0]!.journal, cutTo[0]!.journal)).toBeCloseTo(-FACTOR * STOCK, 12);
    expect(off(drawn.seats[0]!.bush, cutTo[0]!.bush)).toBeCloseTo(FACTOR * STOCK, 12);
  },
);

test('a measured bush keeps its profile on the line it is cut to', () => {
  const before: SeatInput = {
    ...cone(0.05),
    bush: {
      ...surface(0.05, 0.01101, 0, 0.02),
      profile: [
        [0, 1e-6],
        [0.01, -2e-6],
        [0.02, 0],
      ],
    },
  };
  const after = { ...before, bush: withStock(before.bush, 'bush', STOCK) };
  const { cutTo, before: drawn } = drawnCut([seatLines(before)], [seatLines(after)], 0, 0, FACTOR);
  const [old, fresh] = [drawn.seats[0]!.bush, cutTo[0]!.bush];
  expect(fresh.length).toBe(old.length);
  for (const [i, [z, r]] of old.entries())
    expect((fresh[i]![1] - r) * Math.cos(0.05) - (fresh[i]![0] - z) * Math.sin(0.05)).toBeCloseTo(FACTOR * STOCK, 12);
});

test('both states have one factor, the least that either needs', () => {
  const before = cone(0.05);
  const after = { ...before, journal: withStock(before.journal, 'journal', 0.0005) };
  const drawn = drawnCut([seatLines(before)], [seatLines(after)], 0, 0, 1000);
  expect(drawn.after.factor).toBe(drawn.before.factor);
  expect(drawn.before.factor).toBeLessThan(20);
});

test('straightened, a parallel line lies level at its film', () => {
  const { bush, journal } = seatLines(cone(Math.PI / 4));
  const film = 0.01e-3 * Math.cos(Math.PI / 4);
  for (const [, out] of straightened(bush, journal, 0)) expect(out).toBeCloseTo(-1000 * film, 9);
  for (const [, out] of straightened(bush, journal, 2e-5))
    expect(out).toBeCloseTo(-1000 * (film + 2e-5 * Math.sin(Math.PI / 4)), 9);
});
