/** A label that says a seat touches ends on the contact that the engine found, in section and solid picture. */
import { expect, test } from 'vitest';
import { type Drawn, drawnAt } from '../../../src/app/pictures/drawn.ts';
import { holdOf, noteEnd } from '../../../src/app/pictures/holding.ts';
import { leaningOf } from '../../../src/app/pictures/leaning.ts';
import { middleOf } from '../../../src/app/pictures/SeatNotes.tsx';
import { frameOf } from '../../../src/app/pictures/sceneGeometry.ts';
import { anchorsOf } from '../../../src/app/pictures/solid/anchors.ts';
import { DEMOS } from '../../../src/app/state/demos.ts';
import { metres, toSeats } from '../../../src/report/convert.ts';
import { seatLines } from '../../../src/report/inFrame.ts';
import { bodyOf, pulledTo } from '../../../src/report/play/pulling.ts';

const EYE = [0.4, 1.2, 3] as const;
/** m of film at a contact: what the engine lets stand open (README, seat and play) */
const SHUT = 1e-9;

/** It ends amid the film, up or down, and nothing of the film that is drawn is thinner on either side. */
function expectThinnest(drawn: Drawn, i: number) {
  const seen = [drawn.seats, drawn.below].flatMap((half, k) =>
    half[i]!.oil.map(({ bush, journal, film }) => ({
      at: [(bush[0] + journal[0]) / 2, ((k === 0 ? 1 : -1) * (bush[1] + journal[1])) / 2],
      film,
    })),
  );
  const end = noteEnd(drawn, i);
  if (seen.length === 0) {
    expect(end).toEqual(middleOf(drawn.seats[i]!));
    return;
  }
  const least = Math.min(...seen.map(({ film }) => film));
  const there = seen.filter(({ at }) => Math.hypot(at[0]! - end[0], at[1]! - end[1]) < 1e-12);
  expect(there.length).toBeGreaterThan(0);
  expect(Math.min(...there.map(({ film }) => film))).toBe(least);
}

const DESIGNS = DEMOS.map(({ file, design }) => [file, design] as const);
test.each(DESIGNS)('%s pulled up and down', (file, design) => {
  // Where there is room for a pull; of opposed cones that is where they stand.
  const open = { ...design, position: (design.position ?? 0) + (file.startsWith('opposed') ? 0 : 0.01) };
  const body = bodyOf(open)!;
  const parts = toSeats(open);
  for (const y of [0.3, -0.3]) {
    const pulled = pulledTo(body, { station: 0, x: 0, y });
    const drawn = drawnAt(
      parts.map(seatLines),
      metres(open.position),
      200,
      leaningOf(parts, pulled!.pose, pulled!.contacts),
    );
    expect(drawn.forces.length).toBeGreaterThan(0);
    const frame = frameOf(drawn);
    const anchors = anchorsOf(drawn, frame, { clip: Number.POSITIVE_INFINITY, sector: 120 }, EYE, 'metric');
    drawn.seats.forEach((seat, i) => {
      const held = holdOf(drawn, seat.name);
      if (!held) {
        expectThinnest(drawn, i);
        return;
      }
      // By the films alone: round the seat it is shut where the label ends, and nowhere less open.
      const there = drawn.at!(held.angle)[i]!.film;
      const least = Math.min(...there.map(({ film }) => film));
      expect(Math.abs(least)).toBeLessThan(SHUT);
      const [z, r] = noteEnd(drawn, i);
      const nearest = there.toSorted(
        (a, b) => Math.hypot(a.bush[0] - z, a.bush[1] - held.at[1]) - Math.hypot(b.bush[0] - z, b.bush[1] - held.at[1]),
      )[0]!;
      expect(Math.abs(nearest.film)).toBeLessThan(1e-7);
      expect(r).toBeCloseTo(held.at[1] * Math.sin(held.angle), 12);
      // In the scene y is up and x along the axis: the same place.
      const [x, up, across] = anchors[i]!.at;
      expect(x / frame.scale + frame.centre).toBeCloseTo(z, 9);
      expect(up / frame.scale).toBeCloseTo(r, 9);
      expect(Math.hypot(up, across) / frame.scale).toBeCloseTo(held.at[1], 9);
    });
    // What holds a nose pulled down lies below the axis somewhere, of one pulled up above it.
    expect(drawn.seats.some((_seat, i) => holdOf(drawn, drawn.seats[i]!.name) && noteEnd(drawn, i)[1] * y > 0)).toBe(
      true,
    );
  }
});

test('on one axis a label ends amid the film of the upper half', () => {
  for (const [, design] of DESIGNS) {
    const drawn = drawnAt(toSeats(design).map(seatLines), metres(design.position ?? 0), 200);
    drawn.seats.forEach((seat, i) => {
      expect(noteEnd(drawn, i)).toEqual(middleOf(seat));
    });
  }
});
