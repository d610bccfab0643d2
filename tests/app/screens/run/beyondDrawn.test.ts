import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { DrawnSeat } from '../../../../src/app/pictures/drawn.ts';
import { beyond, reachesBeyond } from '../../../../src/app/screens/run/BeyondDrawn.tsx';
import { leaningAt, runningPair } from '../../../../src/app/screens/run/runningPair.ts';
import type { Design } from '../../../../src/design/definition.ts';
import { parseDesign } from '../../../../src/design/parse.ts';
import type { RunFields } from '../../../../src/report/film/fields.ts';

const file = new URL('../../../../assets/designs/steep-first.conepair.json', import.meta.url);
const read = parseDesign(readFileSync(file, 'utf8'));
const design = (read as { design: Design }).design;

/** m along the bush that the pieces reach over */
const over = (places: DrawnSeat['film']) => (places.length ? places[places.length - 1]!.along - places[0]!.along : 0);

test('what is drawn of a running film and what is added in dashes make up the whole contact, to its least film', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -0.05, max: 0.1, noNaN: true }),
      fc.double({ min: -1e-4, max: 1e-4, noNaN: true }),
      fc.double({ min: 1, max: 600, noNaN: true }),
      (z, tiltX, factor) => {
        const pose = { x: 0.001, y: -0.001, z, tiltX, tiltY: 0 };
        const drawn = leaningAt(runningPair(design, { pose } as RunFields, 1, null), factor);
        for (const seat of [...drawn.seats, ...drawn.below]) {
          const pieces = beyond(seat);
          const whole = over(seat.oil) + pieces.reduce((sum, piece) => sum + over(piece), 0);
          expect(Math.abs(whole - over(seat.film))).toBeLessThan(2.5e-6);
          const least = (places: DrawnSeat['film']) => Math.min(...places.map(({ film }) => film));
          const shown = Math.min(least(seat.oil), ...pieces.map(least));
          // What is told of the seat stands in the picture, but for a piece too short to see.
          expect(shown - least(seat.film)).toBeLessThan(2e-9);
        }
      },
    ),
    { numRuns: 60, seed: 6 },
  );
});

test('a journal drawn no further than it stands needs no dashes; one moved 20 µm on the screen ×270 does', () => {
  const at = (factor: number) => {
    const pose = { x: 0, y: 0, z: 0.02, tiltX: 0, tiltY: 0 };
    return reachesBeyond(leaningAt(runningPair(design, { pose } as RunFields, 1, null), factor));
  };
  expect([at(1), at(270)]).toEqual([false, true]);
});
