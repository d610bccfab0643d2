/** A seat keeps its colour wherever it stands in the list, and no two of a pair have the same. */
import { expect, test } from 'vitest';
import { DEMOS } from '../../../src/app/state/demos.ts';
import { colouredNow, readColoured, seatColours } from '../../../src/app/state/seatColours.ts';

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

test('a seat keeps its colour while others come, go, change places, angles and names; no two have the same', () => {
  const like = (name: string, halfAngle: number) => {
    const seat = DEMOS[0]!.design.seats[0]!;
    return { ...seat, name, bush: { ...seat.bush, halfAngle } };
  };
  const [a, b, c, d] = [like('a', 3), like('b', 45), like('c', 1), like('d', 0)];
  const of = (now: { names: readonly string[]; colours: readonly number[] }) =>
    Object.fromEntries(now.names.map((name, i) => [name, now.colours[i]]));
  const first = colouredNow(null, 'job', [a, b]);
  expect(of(first)).toEqual({ a: 0, b: 1 });
  // The shallowest of all comes first in the list, and takes what is free.
  const second = colouredNow(first, 'job', [c, a, b]);
  expect(of(second)).toEqual({ a: 0, b: 1, c: 2 });
  const third = colouredNow(second, 'job', [d, b, c]);
  expect(of(third)).toEqual({ b: 1, c: 2, d: 0 });
  expect(of(colouredNow(third, 'job', [like('rear', 0), c, b]))).toEqual({ b: 1, c: 2, rear: 0 });
  expect(colouredNow(third, 'job', [like('d', 7), b, c])).toBe(third);
  expect(of(colouredNow(third, 'another', [d, b, c]))).toEqual({ c: 0, b: 1, d: 2 });
  const many = Array.from({ length: 6 }, (_, i) => like(`s${i}`, i));
  expect(colouredNow(third, 'job', many).colours).toEqual(seatColours(many));
});

test('what was kept is taken as it was, and nothing that cannot be so', () => {
  const kept = { piece: 'job', names: ['a', 'b'], colours: [1, 0] };
  const read = (what: unknown) => readColoured(typeof what === 'string' ? what : JSON.stringify(what));
  expect(read(kept)).toEqual(kept);
  expect(readColoured(null)).toBeNull();
  for (const other of [
    '',
    '{',
    'null',
    '7',
    {},
    { ...kept, names: 'ab' },
    { ...kept, names: [1, 2] },
    { ...kept, colours: [0] },
    { ...kept, colours: [0, 4] },
    { ...kept, colours: [0, 1, 2] },
  ])
    expect(read(other), JSON.stringify(other)).toBeNull();
});
