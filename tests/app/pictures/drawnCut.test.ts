/**
 * Stock as drawn: as thick as a film of that thickness; and the state after, the journal where it will stand: the move
 * and every film as large as the engine has them, by one factor, from the drawn lines alone.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Drawn, Point } from '../../../src/app/pictures/drawn.ts';
import { type CutPair, cutFactor, cutFrames, drawnCut } from '../../../src/app/pictures/drawnCut.ts';
import { straightened } from '../../../src/app/pictures/straightened.ts';
import { closeUpPlaces } from '../../../src/app/screens/cut/closeUpPlaces.ts';
import { DEMOS } from '../../../src/app/state/demos.ts';
import { type SeatInput, seatLines } from '../../../src/engine/contact/fit.ts';
import { withStock } from '../../../src/engine/parts/stock.ts';
import { metres } from '../../../src/report/convert.ts';
import { cutSection } from '../../../src/report/cut/section.ts';
import { designWithCut } from '../../../src/report/cut/withCut.ts';
import { fitSection } from '../../../src/report/fit/section.ts';
import { linesOf } from '../../../src/report/inFrame.ts';
import { drawnMeeting } from './meeting.ts';

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
    const { cutTo, before: drawn } = drawnCut(
      { before: [seatLines(before)], after: [seatLines(after)], from: 0, to: 0 },
      FACTOR,
    );
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
  const { cutTo, before: drawn } = drawnCut(
    { before: [seatLines(before)], after: [seatLines(after)], from: 0, to: 0 },
    FACTOR,
  );
  const [old, fresh] = [drawn.seats[0]!.bush, cutTo[0]!.bush];
  expect(fresh.length).toBe(old.length);
  for (const [i, [z, r]] of old.entries())
    expect((fresh[i]![1] - r) * Math.cos(0.05) - (fresh[i]![0] - z) * Math.sin(0.05)).toBeCloseTo(FACTOR * STOCK, 12);
});

test('both states have one factor, the least that either needs', () => {
  const before = cone(0.05);
  const after = { ...before, journal: withStock(before.journal, 'journal', 0.0005) };
  const pair: CutPair = { before: [seatLines(before)], after: [seatLines(after)], from: 0, to: 0 };
  const factor = cutFactor(pair, 1000);
  expect(factor).toBeLessThan(20);
  expect(factor).toBeGreaterThan(5);
  const drawn = drawnCut(pair, factor);
  expect([drawn.before.factor, drawn.after.factor]).toEqual([factor, factor]);
});

test('straightened, a parallel line lies level at its film', () => {
  const { bush, journal } = seatLines(cone(Math.PI / 4));
  const film = 0.01e-3 * Math.cos(Math.PI / 4);
  for (const [, out] of straightened(bush, journal, 0)) expect(out).toBeCloseTo(-1000 * film, 9);
  for (const [, out] of straightened(bush, journal, 2e-5))
    expect(out).toBeCloseTo(-1000 * (film + 2e-5 * Math.sin(Math.PI / 4)), 9);
});

const micrometre = (most: number) => fc.double({ min: 0, max: most, noNaN: true }).map((um) => um * 1e-6);
/** A shallow and a steep cone, metal off any of their surfaces, and the journal taken anywhere near. */
const anyCut = fc.record({
  shallow: fc.double({ min: 0.02, max: 0.2, noNaN: true }),
  steep: fc.double({ min: 0.6, max: 1, noNaN: true }),
  off: fc.array(micrometre(60), { minLength: 4, maxLength: 4 }),
  from: micrometre(40),
  move: fc.double({ min: -100, max: 100, noNaN: true }).map((um) => um * 1e-6),
});
const two = (shallow: number, steep: number): SeatInput[] =>
  [
    {
      name: 'shallow',
      journal: surface(shallow, 0.011, -0.026, 0),
      bush: surface(shallow, 0.01102, -0.025, -0.0005),
    },
    { name: 'steep', journal: surface(steep, 0.012, 0.0012, 0.0052), bush: surface(steep, 0.01204, 0.001, 0.005) },
  ].map((seat) => ({ ...seat, bush: { ...seat.bush, station: seat.journal.station } }));
const moved = (line: readonly Point[], by: number): Point[] => line.map(([z, r]) => [z + by, r]);
const expectSame = (line: readonly Point[], other: readonly Point[]) => {
  expect(line.length).toBe(other.length);
  for (const [i, [z, r]] of line.entries()) {
    expect(z).toBeCloseTo(other[i]![0], 9);
    expect(r).toBeCloseTo(other[i]![1], 9);
  }
};

test('after the cut every line is drawn where the cut takes it, and the journal the factor times its move further', () => {
  fc.assert(
    fc.property(anyCut, ({ shallow, steep, off, from, move }) => {
      const inputs = two(shallow, steep);
      const cut = inputs.map(
        (seat, i): SeatInput => ({
          ...seat,
          journal: withStock(seat.journal, 'journal', off[2 * i]!),
          bush: withStock(seat.bush, 'bush', off[2 * i + 1]!),
        }),
      );
      const pair: CutPair = { before: inputs.map(seatLines), after: cut.map(seatLines), from, to: from + move };
      const factor = cutFactor(pair, 200);
      const { before, after, cutTo } = drawnCut(pair, factor);
      for (const [i, seat] of after.seats.entries()) {
        expectSame(seat.bush, cutTo[i]!.bush);
        expectSame(seat.journal, moved(cutTo[i]!.journal, factor * move));
        if (off[2 * i] === 0) expectSame(seat.journal, moved(before.seats[i]!.journal, factor * move));
      }
      // The same journal, broken off at the same places of itself.
      const [now, then] = cutFrames({ before, after, cutTo });
      for (const end of ['journalLeft', 'journalRight'] as const)
        expect(then[end] - now[end]).toBeCloseTo(1000 * factor * move, 6);
    }),
    { numRuns: 200, seed: 16 },
  );
});

/** mm: least distance of a seat's drawn lines, by plain geometry; less than nothing where one lies in the other. */
function drawnFilm(drawn: Drawn, seat: number): number {
  const { bush, journal } = drawn.seats[seat]!;
  const { least, overlap } = drawnMeeting(bush, journal);
  return 1000 * (overlap ? -least : least);
}

const planned = DEMOS.flatMap(({ file, design }) => {
  const cut = cutSection(design);
  return cut && cut.steps.length > 0 ? [{ file, design, cut, after: designWithCut(design, cut) }] : [];
});

test('there are plans among the demo designs that move the journal', () => {
  expect(
    planned.filter(({ design, cut }) => Math.abs(cut.position - (design.position ?? 0)) > 0.02).length,
  ).toBeGreaterThan(1);
});

test.each(planned)('$file: films after the cut are drawn as large as they are, in the order of their size', (job) => {
  const pair: CutPair = {
    before: linesOf(job.design),
    after: linesOf(job.after),
    from: metres(job.design.position ?? 0),
    to: metres(job.cut.position),
  };
  const factor = cutFactor(pair, 400);
  const drawn = drawnCut(pair, factor);
  const films = fitSection(job.after).seats.map(({ leastFilm }) => leastFilm!);
  const seen = films.map((_, i) => drawnFilm(drawn.after, i));
  for (const [i, film] of films.entries()) expect(seen[i]! / factor).toBeCloseTo(film, 5);
  const order = (of: readonly number[]) => of.map((_, i) => i).sort((a, b) => of[a]! - of[b]! || a - b);
  const apart = films.every((film, i) => films.every((other, k) => i === k || Math.abs(film - other) > 1e-5));
  if (apart) expect(order(seen)).toEqual(order(films));
});

test.each(planned)(
  '$file: a close-up has the films of now and after, and what the move makes of them',
  ({ design, after }) => {
    for (const [i, seat] of fitSection(after).seats.entries()) {
      const { bush, journal } = closeUpPlaces(design, after, i);
      const straight = [bush.after, journal.after, journal.cut].every(({ length }) => length === 2);
      if (!straight) continue;
      // Of straight lines the least gap is at an end of what both have.
      const at = (line: typeof bush.now, z: number) =>
        line[0]![1] + ((line[1]![1] - line[0]![1]) * (z - line[0]![0])) / (line[1]![0] - line[0]![0]);
      const low = Math.max(...[bush.after, journal.after].map((line) => Math.min(line[0]![0], line[1]![0])));
      const high = Math.min(...[bush.after, journal.after].map((line) => Math.max(line[0]![0], line[1]![0])));
      const gaps = [low, high].map((z) => at(bush.after, z) - at(journal.after, z));
      expect(Math.min(...gaps)).toBeCloseTo(seat.leastFilm!, 5);
      const move = (after.position ?? 0) - (design.position ?? 0);
      const sin = Math.sin((design.seats[i]!.journal.halfAngle * Math.PI) / 180);
      expect(at(journal.after, high) - at(journal.cut, high)).toBeCloseTo(-move * sin, 4);
    }
  },
);
