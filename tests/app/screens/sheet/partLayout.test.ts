/** The drawing of a part: everything told stands on it, no figure over another, and as large as there is room for. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { FIGURE, SMALL, WIDTH } from '../../../../src/app/screens/sheet/ink.ts';
import { type PartLayout, partLayout } from '../../../../src/app/screens/sheet/partLayout.ts';

const width = (text: string, size: number) => 0.6 * size * text.length;
const SIZE = { width: WIDTH, height: 300 };

const seat = fc.record({
  gap: fc.double({ min: 0, max: 60, noNaN: true }),
  length: fc.double({ min: 2, max: 60, noNaN: true }),
  r: fc.double({ min: 5, max: 40, noNaN: true }),
});

/** A part with these seats one behind the other, told as a drawing tells it. */
function laidOut(
  seats: readonly { gap: number; length: number; r: number }[],
  height = SIZE.height,
  long = '',
): PartLayout {
  let z = 0;
  const ends = seats.map(({ gap, length, r }) => {
    const from = z + gap;
    z = from + length;
    return { from, to: z, r };
  });
  const tell = {
    stations: ends.flatMap(({ from, to, r }) =>
      [from, to].map((at) => ({ z: at, r, text: at.toFixed(2), exact: at === from })),
    ),
    diameters: ends.length > 4 ? [] : ends.map(({ from, r }) => ({ z: from, r, lines: ['⌀22.0000', '±0.0005'] })),
    notes: ends.map(({ from, to, r }, i) => ({
      name: `${long}seat ${i}`,
      cone: '(1:9.541)',
      hasSymbol: true,
      widens: 1 as const,
      angle: 'half angle 3.0° ±2.1″',
      z: (from + to) / 2,
      r,
    })),
  };
  return partLayout(
    { left: ends[0]!.from - 5, right: z + 5, outer: 1.3 * Math.max(...ends.map(({ r }) => r)) },
    tell,
    { ...SIZE, height },
    width,
  );
}

test('stations stand apart in their order, on the drawing, whatever the part', () => {
  fc.assert(
    fc.property(fc.array(seat, { minLength: 1, maxLength: 8 }), (seats) => {
      const { stations } = laidOut(seats);
      expect(stations.length).toBe(2 * seats.length);
      for (const [i, { figureAt, z }] of stations.entries()) {
        expect(figureAt).toBeGreaterThan(FIGURE / 2 - 1);
        expect(figureAt).toBeLessThan(WIDTH - FIGURE / 2 + 1);
        if (i === 0) continue;
        expect(z).toBeGreaterThanOrEqual(stations[i - 1]!.z);
        expect(figureAt - stations[i - 1]!.figureAt).toBeGreaterThan(FIGURE - 0.01);
      }
    }),
    { seed: 6, numRuns: 200 },
  );
});

test('the part, its stations and its diameters stand within the drawing', () => {
  fc.assert(
    fc.property(fc.array(seat, { minLength: 1, maxLength: 4 }), (seats) => {
      const { stations, figures, rear, nose, x, y } = laidOut(seats);
      for (const { text } of stations) expect(figures + width(text, FIGURE)).toBeLessThan(SIZE.height);
      for (const { line } of rear) expect(line - 2 * FIGURE).toBeGreaterThan(0);
      for (const { line } of nose) expect(line).toBeLessThan(WIDTH);
      for (const { z, r } of stations) {
        expect(x(z)).toBeGreaterThan(0);
        expect(x(z)).toBeLessThan(WIDTH);
        expect(y(r, 1)).toBeGreaterThan(0);
        expect(y(r, -1)).toBeLessThan(SIZE.height);
      }
    }),
    { seed: 6, numRuns: 200 },
  );
});

test('more room is a larger drawing', () => {
  const seats = [
    { gap: 0, length: 26, r: 11 },
    { gap: 1, length: 3, r: 13 },
  ];
  const scales = [260, 320, 400].map((height) => laidOut(seats, height).scale);
  expect(scales[1]!).toBeGreaterThan(scales[0]!);
  expect(scales[2]!).toBeGreaterThan(scales[1]!);
});

test('a name too long for its room is cut; the figures beside it never, and none stands on another', () => {
  const four = [1, 2, 3, 4].map(() => ({ gap: 5, length: 10, r: 10 }));
  const { notes } = laidOut(four, SIZE.height, 'the one that nobody would call so ');
  for (const [i, { lines, x, cone, symbol }] of notes.entries()) {
    expect(lines[0]).toMatch(/…$/);
    expect(cone).toBe('(1:9.541)');
    const end = x + Math.max(symbol + width(` ${cone}`, FIGURE), width(lines[1], SMALL));
    expect(end).toBeLessThan(notes[i + 1]?.x ?? WIDTH);
  }
});
