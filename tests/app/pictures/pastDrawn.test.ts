/**
 * A journal pulled up or down, wherever it stands: every contact lies on the bush that is drawn and on the journal's
 * line, which goes on where the drawn journal ends before it; and no outline crosses itself.
 */
import fc from 'fast-check';
import { afterAll, expect, test } from 'vitest';
import { type Drawn, drawnAt, type Point } from '../../../src/app/pictures/drawn.ts';
import { factorFor } from '../../../src/app/pictures/factor.ts';
import { landmarks, reachOf } from '../../../src/app/pictures/journalMove.ts';
import { leaningOf } from '../../../src/app/pictures/leaning.ts';
import { pastDrawn } from '../../../src/app/pictures/pastDrawn.ts';
import { frameOf, journalProfile } from '../../../src/app/pictures/sceneGeometry.ts';
import { sectionFrame } from '../../../src/app/pictures/sectionFrame.ts';
import { arrowsOf, dashesOf } from '../../../src/app/pictures/solid/contact.ts';
import { DEMOS } from '../../../src/app/state/demos.ts';
import { metres, millimetres, toSeats } from '../../../src/report/convert.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { seatLines } from '../../../src/report/inFrame.ts';
import { bodyOf, pulledTo } from '../../../src/report/play/pulling.ts';
import { cross } from './meeting.ts';

const pairs = DEMOS.map(({ file, design }) => {
  const fit = fitSection(design);
  const parts = toSeats(design);
  const lines = parts.map(seatLines);
  const [from, to] = reachOf(fit.position, landmarks(fit)) as [number, number];
  /** Null where there is no room to pull. */
  const pulled = (share: number, way: 1 | -1, far: number): Drawn | null => {
    // Cones against one another leave room for a pull where they stand, and next to none beside it.
    const position = file.startsWith('opposed') ? fit.position : from + (to - from) * share;
    const pull = pulledTo(bodyOf({ ...design, position: position as typeof fit.position }), {
      station: 0,
      x: 0,
      y: way * far,
    });
    const leaning = pull && leaningOf(parts, pull.pose, pull.contacts);
    const reach = [from, to].map((place) => metres(place as typeof fit.position));
    const at = metres(position as typeof fit.position);
    return leaning && drawnAt(lines, at, factorFor(lines, at, 400, null, reach), leaning);
  };
  return { file, pulled };
});
const way = fc.constantFrom(1 as const, -1 as const);
const share = fc.double({ min: 0, max: 1, noNaN: true });

/** How far a point lies from a line. */
function off(line: readonly Point[], [z, r]: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const [dz, dr] = [b[0] - a[0], b[1] - a[1]];
    const t = Math.min(1, Math.max(0, ((z - a[0]) * dz + (r - a[1]) * dr) / (dz * dz + dr * dr || 1)));
    least = Math.min(least, Math.hypot(z - a[0] - t * dz, r - a[1] - t * dr));
  }
  return least;
}

let [held, past] = [0, 0];
test.each(pairs)('$file: every contact of a nose pulled up or down is drawn on bush and journal', ({ pulled }) => {
  fc.assert(
    fc.property(share, way, (at, up) => {
      const drawn = pulled(at, up, 1);
      fc.pre(drawn !== null);
      // Of metal, to a nanometre, drawn.
      const near = 1e-9 * (drawn?.factor ?? 0);
      const arrows = drawn ? arrowsOf(drawn, 120) : [];
      for (const [i, force] of (drawn?.forces ?? []).entries()) {
        const { bush, journal, film } = drawn!.at!(force.angle).find(({ name }) => name === force.seat)!;
        const line = pastDrawn(drawn!, force);
        held++;
        // The solid picture has the same line, and its arrow ends on it or on the journal drawn.
        expect(arrows[i]!.past).toEqual(line);
        expect(arrows[i]!.at).toEqual(force.at);
        expect(off(bush, force.at)).toBeLessThan(near);
        expect(Math.min(off(journal, force.at), off(line, force.at))).toBeLessThan(near);
        if (line.length === 0) continue;
        past++;
        // It goes on from the journal's end, on its own side of the bush.
        expect([journal[0], journal[journal.length - 1]]).toContain(line[0]);
        for (const place of film) expect(place.film).toBeGreaterThan(-1e-9);
        for (const point of line.slice(1)) expect(film.map((place) => place.journal)).toContain(point);
      }
    }),
    { numRuns: 25, seed: 4 },
  );
});

afterAll(() => {
  // That the journal drawn ends before a contact is no rarity.
  expect(held).toBeGreaterThan(200);
  expect(past).toBeGreaterThan(20);
});

/** Whether a closed line crosses itself. */
function crosses(line: readonly (readonly [number, number])[]): boolean {
  const sides = line.map((to, i) => [line[(i + line.length - 1) % line.length]! as Point, to as Point] as const);
  return sides.some(([a, b], i) =>
    sides
      .slice(i + 2)
      .some(([c, d]) => cross(a, b, c) * cross(a, b, d) < -1e-18 && cross(c, d, a) * cross(c, d, b) < -1e-18),
  );
}

test.each(pairs)('$file: pulled up or down by any amount its outline does not cross itself', ({ pulled }) => {
  fc.assert(
    fc.property(share, way, fc.double({ min: 0, max: 0.05, noNaN: true }), (at, up, far) => {
      const drawn = pulled(at, up, far);
      fc.pre(drawn !== null);
      if (!drawn) return;
      const { above, below } = sectionFrame(drawn).journal;
      for (const half of [above, below]) {
        const closed = [...half, [half[half.length - 1]![0], millimetres(0)], [half[0]![0], millimetres(0)]] as const;
        expect(crosses(closed as never)).toBe(false);
      }
      expect(journalProfile(drawn, frameOf(drawn)).flat().every(Number.isFinite)).toBe(true);
    }),
    { numRuns: 25, seed: 9 },
  );
});

test('dashes lie on their line, in order from its start, and leave out as much as they should', () => {
  const corner = fc.tuple(fc.double({ min: -1, max: 1, noNaN: true }), fc.double({ min: 0.1, max: 1, noNaN: true }));
  fc.assert(
    fc.property(fc.array(corner, { minLength: 2, maxLength: 6 }), (corners) => {
      const line = corners as unknown as Point[];
      const lengthOf = (all: readonly Point[]) =>
        all.slice(1).reduce((sum, [z, r], i) => sum + Math.hypot(z - all[i]![0], r - all[i]![1]), 0);
      const whole = lengthOf(line);
      fc.pre(whole > 0.01);
      const [long, space] = [0.045, 0.03];
      const dashes = dashesOf(line, long, space);
      expect(Math.hypot(dashes[0]![0][0] - line[0]![0], dashes[0]![0][1] - line[0]![1])).toBeLessThan(1e-9);
      for (const [from, to] of dashes) for (const point of [from, to]) expect(off(line, point)).toBeLessThan(1e-9);
      const full = Math.floor(whole / (long + space));
      const drawn = full * long + Math.min(long, whole - full * (long + space));
      expect(dashes.reduce((sum, dash) => sum + lengthOf(dash), 0)).toBeCloseTo(drawn, 6);
    }),
    { numRuns: 200, seed: 3 },
  );
});
