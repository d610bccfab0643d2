/**
 * The journal as it is drawn is one rigid body: wherever it goes, all of it goes as far, the displacement times the
 * factor, in the section and in the solid; and it meets its bush where it does in the solver.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawnAt, type Point } from '../../../src/app/pictures/drawn.ts';
import { factorFor } from '../../../src/app/pictures/factor.ts';
import { landmarks, reachOf } from '../../../src/app/pictures/journalMove.ts';
import { frameOf, journalMesh } from '../../../src/app/pictures/sceneGeometry.ts';
import { sectionFrame } from '../../../src/app/pictures/sectionFrame.ts';
import { DEMOS } from '../../../src/app/state/demos.ts';
import { leastFilm } from '../../../src/engine/contact/film.ts';
import { positionForFilm, seatLines } from '../../../src/engine/contact/fit.ts';
import { metres, millimetres, toSeats } from '../../../src/report/convert.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { drawnMeeting } from './meeting.ts';

const pairs = DEMOS.map(({ file, design }) => {
  const fit = fitSection(design);
  const seats = toSeats(design).map(seatLines);
  const reach = reachOf(fit.position, landmarks(fit)).map(metres) as [number, number];
  return { file, seats, at: (share: number) => reach[0] + ((reach[1] - reach[0]) * share) / 1000 };
});

const share = fc.integer({ min: 0, max: 1000 });
const factors = fc.double({ min: 0, max: 3.3, noNaN: true }).map((power) => 10 ** power);

test.each(pairs)('$file: every corner of the journal goes as far as the hand, its bush stays', ({ seats, at }) => {
  fc.assert(
    fc.property(share, share, factors, (a, b, factor) => {
      const [one, other] = [drawnAt(seats, at(a), factor), drawnAt(seats, at(b), factor)];
      const by = factor * (at(b) - at(a));
      const [before, after] = [sectionFrame(one), sectionFrame(other)];
      expect(after.bush).toEqual(before.bush);
      expect([after.left, after.right, after.outer]).toEqual([before.left, before.right, before.outer]);
      for (const side of ['above', 'below'] as const) {
        expect(after.journal[side].length).toBe(before.journal[side].length);
        before.journal[side].forEach(([z, r], i) => {
          expect(after.journal[side][i]![0] - z).toBeCloseTo(millimetres(by), 6);
          expect(after.journal[side][i]![1]).toBeCloseTo(r, 6);
        });
      }
      expect(other.moved - one.moved).toBeCloseTo(by, 12);
      const frame = frameOf(one);
      const [solid, moved] = [journalMesh(one, frame).positions, journalMesh(other, frame).positions];
      expect(moved.length).toBe(solid.length);
      const most = solid.reduce(
        (far, value, k) => Math.max(far, Math.abs(moved[k]! - value - (k % 3 === 0 ? by * frame.scale : 0))),
        0,
      );
      // Single precision, of places up to some tens of scene lengths.
      expect(most).toBeLessThan(2e-5 * (1 + Math.abs(by) * frame.scale));
    }),
    { numRuns: 40, seed: 5 },
  );
});

test.each(pairs)('$file: its outline never folds over itself, whatever the factor', ({ seats, at }) => {
  fc.assert(
    fc.property(share, factors, (a, factor) => {
      const { above } = sectionFrame(drawnAt(seats, at(a), factor)).journal;
      above.forEach(([z], i) => {
        if (i > 0) expect(z).toBeGreaterThan(above[i - 1]![0] - 1e-9);
      });
    }),
    { numRuns: 60, seed: 6 },
  );
});

test.each(pairs)('$file: moved as one body it still meets its bush where it does in the solver', ({ seats, at }) => {
  const chains = (position: number) =>
    drawnAt(seats, position, factorFor(seats, position, 400)).seats.map(({ bush, journal, oil }) => ({
      ...drawnMeeting(bush, journal as Point[]),
      oil,
    }));
  seats.forEach((seat, i) => {
    const touch = positionForFilm(seat, 0);
    if (touch !== null) expect(chains(touch)[i]!.least, seat.name).toBeLessThan(1e-9);
  });
  let compared = 0;
  for (let k = 0; k <= 1000; k += 20)
    chains(at(k)).forEach(({ least, overlap, oil }, i) => {
      const film = leastFilm(seats[i]!.gap, at(k));
      if (film === null || Math.abs(film) < 1e-8) return;
      compared++;
      if (film > 0) expect([overlap, least > 1e-8], `${seats[i]!.name} at ${at(k)}`).toEqual([false, true]);
      else if (oil.length > 0) expect(overlap, `${seats[i]!.name} at ${at(k)}`).toBe(true);
    });
  expect(compared).toBeGreaterThan(40);
});
