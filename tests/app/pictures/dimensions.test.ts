/** What of the dimensions drawn is assumed. */
import { expect, test } from 'vitest';
import { dimensionsOf } from '../../../src/app/pictures/dimensions.ts';
import { drawnPair } from '../../../src/app/pictures/drawn.ts';
import { DEMOS } from '../../../src/app/state/demos.ts';
import { withAssumed } from '../../../src/design/assumed.ts';
import { toSeats } from '../../../src/report/convert.ts';
import { seatLines } from '../../../src/report/inFrame.ts';

const plain = DEMOS.find(({ file }) => file.startsWith('steep-first'))!.design;
const { name, journal } = plain.seats[1]!;
const ends = (['journal', 'bush'] as const).flatMap((part) =>
  ['station', 'from', 'to'].map((key) => `seats[1].${part}.${key}`),
);
const design = withAssumed(plain, ends);
const drawn = drawnPair(toSeats(design).map(seatLines), 0, 1);

test('a length that was typed is known though nobody knows where its seat stands; another, and that of the bush, is not', () => {
  const isAssumed = (typed: Record<string, number>, part: 'journal' | 'bush' = 'journal') =>
    dimensionsOf(design, drawn, part, 'metric', 'half', typed).lengths.find((one) => one.name === name)!.assumed;
  const length = journal.to - journal.from;
  expect(isAssumed({})).toBe(true);
  expect(isAssumed({ [`${name} length`]: length })).toBe(false);
  expect(isAssumed({ [`${name} length`]: length + 0.001 })).toBe(true);
  expect(isAssumed({ [`${name} behind`]: length })).toBe(true);
  expect(isAssumed({ [`${name} length`]: length }, 'bush')).toBe(true);
});
