/** A seat keeps its colour wherever it stands in the list, and no two of a pair have the same. */
import { expect, test } from 'vitest';
import { DEMOS } from '../../../src/app/state/demos.ts';
import { seatColours } from '../../../src/app/state/seatColours.ts';

test.each(DEMOS.map(({ file, design }) => [file, design] as const))('%s', (_, { seats }) => {
  const colours = seatColours(seats);
  expect(new Set(colours).size).toBe(seats.length);
  expect(seatColours(seats.toReversed())).toEqual(colours.toReversed());
  // The shallowest cone has the first.
  const cones = seats.map(({ bush }) => Math.abs(bush.halfAngle) || 90);
  expect(cones[colours.indexOf(0)]).toBe(Math.min(...cones));
});

test('more seats than colours share them in turn', () => {
  const seats = Array.from({ length: 6 }, () => DEMOS[0]!.design.seats[0]!);
  expect(seatColours(seats)).toEqual([0, 1, 2, 3, 0, 1]);
});
